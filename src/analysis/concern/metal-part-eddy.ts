/** Concern: metal near the magnets that stands still brakes the rotor by eddy currents. */
import { formatSi } from '../../units/format.ts'
import { triable } from '../ladder/ladder.ts'
import { partFarther, partWithoutMetal, resistiveMetal } from '../ladder/part.ts'
import { tellingWind } from '../telling-wind.ts'
import type { ChainView, ConcernRule } from './concern.ts'

/** Share of the shaft's energy over the year from which it is told: common practice, no source. */
export const partsLimit = 0.03

export const partsTooHigh = (share: number): boolean => share > partsLimit

/** Shares and watts of the parts, the worst first; undefined without parts or without power. */
function lossOf(chain: ChainView) {
  const { year, drag } = chain
  const { shaft, parts } = year.ledger
  if (drag.parts.length === 0 || !(shaft > 0)) return undefined
  const { speed, wind } = tellingWind(chain).row
  const each = drag.parts
    .map(({ name, loss, spread }, k) => ({ name, k, watts: loss(speed), spread }))
    .sort((a, b) => b.watts - a.watts)
  const sum = each.reduce((total, { watts }) => total + watts, 0)
  const upper = sum > 0 ? each.reduce((total, { watts, spread }) => total + watts * (1 + spread), 0) / sum : 1
  return { speed, wind, each, shaft, parts, share: (parts.parts / shaft) * upper }
}

export const metalPartEddy: ConcernRule = {
  code: 'metal-part-eddy',
  title: 'Metal near the magnets brakes the rotor',
  basis:
    'Energy lost to eddy currents in plates, rings and bolts near the magnets, at the upper end of its estimate, over the energy of the shaft, over the year; above 3 % (common practice, no source) a warning.',
  measure: (chain) => {
    const found = lossOf(chain)
    return (
      found && {
        name: 'loss in metal parts over the shaft’s energy, upper end',
        value: found.share,
        limit: partsLimit,
        unit: 'percent',
        sound: 'below',
      }
    )
  },
  answeredBy: 'Torque of the unloaded machine at one speed, with the part in its place and without it.',
  judge: (chain) => {
    const found = lossOf(chain)
    if (found === undefined) return undefined
    const { speed, wind, each, shaft, parts, share } = found
    const worst = each[0]!
    const { design } = chain.machine
    if (!partsTooHigh(share)) return undefined
    return {
      code: 'metal-part-eddy',
      severity: 'warning',
      path: `stator.metalParts[${worst.k}]`,
      what: 'Metal that stands still near the turning magnets brakes them, with or without a load.',
      why: 'The passing poles drive currents round in it; they heat the part and never reach the battery.',
      figures: `${formatSi(parts.parts, 'kWh', 2)} of ${formatSi(shaft, 'kWh', 2)} a year, ${formatSi(share, 'percent', 2)} at the upper end (limit 3 %); at ${formatSi(speed, 'rpm')} in ${formatSi(wind, 'm_per_s', 2)} ${each
        .map(
          ({ name, watts, spread }) => `${name} ${formatSi(watts, 'W', 2)} ± ${Math.round(100 * spread)} %`,
        )
        .join(', ')}.`,
      remedies: [
        triable(
          `Make the ${worst.name.split(' of ')[0]} of plastic, wood or glass-fibre sheet.`,
          partWithoutMetal(design, worst.k),
        ),
        triable(
          'Or of stainless steel, which resists about twenty times as much as aluminium.',
          resistiveMetal(design, worst.k),
        ),
        triable(
          'Move it farther from the magnets: the loss falls about eightfold for every third of a pole pitch.',
          partFarther(design, worst.k),
        ),
        'Cut a plate into strips along the magnets’ length, with gaps, so that no current can go round.',
      ],
    }
  },
}
