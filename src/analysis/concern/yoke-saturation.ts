/** Concern: the steel behind the magnets is too thin for their flux. */
import { mildSteel } from '../../data/steel.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import type { ConcernRule } from './concern.ts'

export const yokeSaturated = (fluxDensity: number): boolean => fluxDensity > mildSteel.knee_T

/** How much more flux the plate is asked to carry than it does up to its knee, as a share of that. */
export const yokeExcess = (fluxDensity: number): number => fluxDensity / mildSteel.knee_T - 1

export const yokeSaturation: ConcernRule = {
  code: 'yoke-saturation',
  title: 'The steel behind the magnets is too thin',
  basis: `Half a pole’s flux through the section of the plate against ${mildSteel.knee_T} T, where the curve of mild steel bends (common practice; curve of nakata1992). The computed field takes the steel as ideal, without feeding saturation back, so above that limit it is too high. A warning.`,
  judge: ({ yokeFluxDensity, machine }) => {
    if (yokeFluxDensity === undefined || !yokeSaturated(yokeFluxDensity)) return undefined
    const { backIron } = machine.rotor
    const wanted = ((backIron?.thickness ?? 0) * yokeFluxDensity) / mildSteel.knee_T
    return {
      code: 'yoke-saturation',
      severity: 'warning',
      path: 'rotor.backIron.thickness_mm',
      what: 'The plate behind the magnets is full of flux and the rest leaks out at its back: the computed field, with all volts and watts that follow from it, is too high.',
      why: 'The field is computed as if the steel took any flux. Half of each pole’s flux turns round through the plate to the next magnet; steel carries only so much.',
      figures: `${formatSi(yokeFluxDensity, 'T')} in ${formatSi(backIron?.thickness ?? 0, 'mm')} of steel against ${formatSi(mildSteel.knee_T, 'T')}: ${formatNumber(100 * yokeExcess(yokeFluxDensity), 2)} % more than it carries well. The field falls short of the computed one by less than that, for what the steel does not carry goes through air beside it.`,
      remedies: [
        `Use a plate about ${formatSi(wanted, 'mm', 2)} thick.`,
        'More and narrower magnets share the flux out among more poles.',
        'Hold a paper clip to the back of the plate: if it sticks firmly, flux leaks.',
      ],
    }
  },
}
