/** Concern: the steel behind the magnets is too thin for their flux. */
import { mildSteel } from '../../data/steel.ts'
import { formatSi } from '../../units/format.ts'
import type { ConcernRule } from './concern.ts'

export const yokeSaturated = (fluxDensity: number): boolean => fluxDensity > mildSteel.knee_T

export const yokeSaturation: ConcernRule = {
  code: 'yoke-saturation',
  title: 'The steel behind the magnets is too thin',
  basis: `Half a pole’s flux through the section of the plate against ${mildSteel.knee_T} T, where the curve of mild steel bends (common practice; curve of nakata1992). A warning.`,
  judge: ({ yokeFluxDensity, machine }) => {
    if (yokeFluxDensity === undefined || !yokeSaturated(yokeFluxDensity)) return undefined
    const { backIron } = machine.rotor
    const wanted = ((backIron ?? 0) * yokeFluxDensity) / mildSteel.knee_T
    return {
      code: 'yoke-saturation',
      severity: 'warning',
      path: 'rotor.backIron.thickness_mm',
      what: 'The plate behind the magnets is full of flux; the rest leaks out at its back, and the field in the gap is weaker than computed.',
      why: 'Half of each pole’s flux turns round through the plate to the next magnet; steel carries only so much.',
      figures: `${formatSi(yokeFluxDensity, 'T')} in ${formatSi(backIron ?? 0, 'mm')} of steel against ${formatSi(mildSteel.knee_T, 'T')}.`,
      remedies: [
        `Use a plate about ${formatSi(wanted, 'mm', 2)} thick.`,
        'More and narrower magnets share the flux out among more poles.',
        'Hold a paper clip to the back of the plate: if it sticks firmly, flux leaks.',
      ],
    }
  },
}
