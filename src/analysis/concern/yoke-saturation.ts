/** Concern: steel behind the magnets or beyond the winding is too thin for their flux. */
import { mildSteel } from '../../data/steel.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import type { SteelState } from '../iron-response.ts'
import { triable } from '../ladder/ladder.ts'
import { thickerSteel } from '../ladder/steel.ts'
import type { ChainView, ConcernRule } from './concern.ts'

export const yokeSaturated = (fluxDensity: number): boolean => fluxDensity > mildSteel.knee_T

const names: Readonly<Record<SteelState['place'], string>> = {
  behind: 'behind the magnets',
  opposite: 'opposite the magnets',
  sleeve: 'of the sleeve',
}

const paths: Readonly<Record<SteelState['place'], string>> = {
  behind: 'rotor.backIron.thickness_mm',
  opposite: 'rotor.opposite.thickness_mm',
  sleeve: 'rotor.sleeve.thickness_mm',
}

const fullestOf = (steel: ChainView['steel']): SteelState | undefined =>
  [...steel].sort((a, b) => b.fluxDensity - a.fluxDensity)[0]

export const yokeSaturation: ConcernRule = {
  code: 'yoke-saturation',
  title: 'Steel is too thin for the magnets’ flux',
  basis: `Mean flux density over the steel’s section half-way between two poles, from the field with the steel’s own curve (nakata1992), against ${mildSteel.knee_T} T, where the curve of mild steel bends (common practice). What the steel drops is fed back into the field. A warning.`,
  measure: ({ steel }) => {
    const fullest = fullestOf(steel)
    return (
      fullest && {
        name: 'flux density in the steel',
        value: fullest.fluxDensity,
        limit: mildSteel.knee_T,
        unit: 'T',
        sound: 'below',
      }
    )
  },
  answeredBy: 'The field read behind the steel, and volts at a known speed, on the finished rotor.',
  judge: ({ steel, field, machine }) => {
    const fullest = fullestOf(steel)
    if (fullest === undefined || !yokeSaturated(fullest.fluxDensity)) return undefined
    const { place, thickness, fluxDensity, backFlux, leakage } = fullest
    const wanted = (thickness * fluxDensity) / mildSteel.knee_T / (1 - Math.min(0.8, leakage))
    const lost = 1 - (field.iron?.strength ?? 1)
    return {
      code: 'yoke-saturation',
      severity: 'warning',
      path: paths[place],
      what: `The steel ${names[place]} is full of flux: it takes magnetic force that the gap then lacks, and lets flux out by its other side.`,
      why: 'Half of each pole’s flux turns round through the steel to the next magnet. Steel carries only so much; above the bend of its curve it hardly carries better than air.',
      figures: `${formatSi(fluxDensity, 'T')} in ${formatSi(thickness, 'mm')} of steel against ${formatSi(mildSteel.knee_T, 'T')}; ${formatNumber(1e6 * backFlux, 2)} µWb of each pole’s flux (${formatNumber(100 * leakage, 2)} %) leaves by the far side${lost > 5e-4 ? `, and the field in the gap is ${formatNumber(100 * lost, 2)} % lower for it` : ''}. The volts and watts shown have this in them.`,
      remedies: [
        triable(`Use steel about ${formatSi(wanted, 'mm', 2)} thick.`, thickerSteel(machine.design, place)),
        'More and narrower magnets share the flux out among more poles.',
        'Hold a paper clip to the back of the steel: if it sticks firmly, flux leaks.',
      ],
    }
  },
}
