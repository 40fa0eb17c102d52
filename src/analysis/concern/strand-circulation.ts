/** Concern: currents may run round between strands in hand that were not twisted. */
import { formatSi } from '../../units/format.ts'
import type { ChainView, ConcernRule } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Share of the shaft's power, at the greatest speed under load, from which the bound is told: common practice, no source. */
export const betweenLimit = 0.03

export const betweenTooHigh = (share: number): boolean => share > betweenLimit

/** The bound at the greatest speed under load; undefined for a single strand or a rotor at rest. */
function boundOf({ drag, rows }: ChainView) {
  const row = rowOfMost(rows, ({ speed }) => speed)
  if (drag.between === undefined || row === undefined || !(row.speed > 0)) return undefined
  const untwisted = drag.between.untwisted * row.speed ** 2
  const taken = row.powerCoefficient * row.available
  return {
    row,
    untwisted,
    twisted: drag.between.twisted * row.speed ** 2,
    taken,
    share: taken > 0 ? untwisted / taken : 0,
  }
}

export const strandCirculationRule: ConcernRule = {
  code: 'strand-circulation',
  title: 'Currents may run round between untwisted strands in hand',
  basis:
    'The most that strands lying in a row can drive round between them, limited by resistance alone, over the power in the wind that the blades take at the greatest speed under load; above 3 % (common practice, no source) a note. The bound is not counted in the watts.',
  measure: (chain) => {
    const found = boundOf(chain)
    return (
      found && {
        name: 'most between untwisted strands over the shaft’s power',
        value: found.share,
        limit: betweenLimit,
        unit: 'percent',
        sound: 'below',
      }
    )
  },
  answeredBy: 'Torque of the unloaded machine at one speed, with the strands joined and not joined.',
  judge: (chain) => {
    const found = boundOf(chain)
    if (found === undefined || !betweenTooHigh(found.share)) return undefined
    const { row, untwisted, twisted, taken } = found
    const { strands } = chain.machine.stator.wire
    return {
      code: 'strand-circulation',
      severity: 'note',
      path: 'stator.wire.strands',
      what: 'Strands in hand that keep their places all the way may drive current round each other, load or none.',
      why: 'The strand nearer to the magnets raises more volts than the one behind it; joined at both ends, they even that out by a current that only heats and brakes.',
      figures: `${strands} strands in hand at ${formatSi(row.speed, 'rpm')}: at most ${formatSi(untwisted, 'W', 2)} untwisted, ${formatSi(twisted, 'W', 2)} with a twist in every turn; ${formatSi(taken, 'W', 2)} at the shaft.`,
      remedies: [
        'Twist the strands together, at least once in every turn, before winding.',
        'Or join the strands only after two halves of the winding in which they lie in the opposite order.',
        'Read the torque of the unloaded machine with the strands joined and not joined: the difference is this current.',
      ],
    }
  },
}
