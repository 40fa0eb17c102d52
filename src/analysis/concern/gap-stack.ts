/** Concern: too little air is left between rotor and stator when every dimension errs. */
import { formatSi } from '../../units/format.ts'
import { widerGap } from '../ladder/gap.ts'
import { triable } from '../ladder/ladder.ts'
import { type ClearanceLoss, type ClearanceSide, clearances, tightestSide } from '../mechanics/clearance.ts'
import { cornerRise } from '../mechanics/drawn-gap.ts'
import { turningCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'

/** Least air that should be left with all errors at their worst [m]: common practice, no source. */
export const leastClearance = 1e-3

/** What one loss takes at its worst [m]. */
const takes = ({ closing, halfWidth }: ClearanceLoss): number => closing + halfWidth

/** The greatest losses in words, each with how it is known. */
export function lossWords({ losses }: ClearanceSide, most = 3): string {
  return [...losses]
    .filter((loss) => takes(loss) > 5e-6)
    .sort((a, b) => takes(b) - takes(a))
    .slice(0, most)
    .map((loss) => `${loss.name} ${formatSi(takes(loss), 'mm', 2)} (${loss.known})`)
    .join(', ')
}

const tightest = (chain: ChainView): ClearanceSide => tightestSide(clearances(chain))

export const gapStack: ConcernRule = {
  code: 'gap-stack',
  title: 'Rotor and stator may touch',
  basis:
    'Air by the drawing on both sides of the winding, less cover and the standing-out corners of flat blocks on a drum, less bending of the discs under their own pull, growth by heat and damp, print tolerance, bearing play and warp, all at their worst at once; at least 1 mm must be left (common practice, no source). What was measured and entered stands in place of what is computed or guessed. Contact at the worst blocks the outdoor class; otherwise a warning.',
  measure: (chain) => ({
    name: 'air at the worst',
    value: tightest(chain).clearance.worst,
    limit: leastClearance,
    unit: 'mm',
    sound: 'above',
  }),
  answeredBy:
    'Feeler gauge between winding and magnets, turned once round, with the rotor pushed and pulled along the shaft, cold and warm.',
  judge: (chain) => {
    const { machine } = chain
    const sides = clearances(chain)
    const side = tightestSide(sides)
    const { drawn, clearance } = side
    const { worst, likely } = clearance
    if (worst >= leastClearance - 1e-12) return undefined
    const [inner, outer] = sides
    const corner = cornerRise(machine)
    const shifted =
      outer !== undefined && inner!.drawn + outer.drawn > 0
        ? (outer.clearance.worst - inner!.clearance.worst) / 2
        : 0
    const enough = Math.min(...sides.map((one) => one.clearance.worst)) + Math.abs(shifted)
    return {
      code: 'gap-stack',
      severity: worst < 0 ? severityFor(chain, ['outdoor']) : 'warning',
      path:
        machine.stator.winding.kind === 'serpentine' ? 'stator.winding.phases' : 'stator.winding.distance_mm',
      what:
        drawn <= 0
          ? 'By the drawing the winding and the rotor are in each other’s way.'
          : worst < 0
            ? 'Rotor and stator can touch when the dimensions err together.'
            : 'Little air is left between rotor and stator when the dimensions err together.',
      why: 'Print tolerance, bearing play, warp, heat, damp and the bending under the magnets’ pull all eat from the same gap; rust and a push of the wind take more.',
      figures: `By the drawing ${formatSi(drawn, 'mm')}${
        side.side === 'inner' ? ' on the magnets’ side' : ' on the far side'
      }; at the worst ${formatSi(worst, 'mm')}, likely ${formatSi(likely, 'mm')}; wanted ${formatSi(leastClearance, 'mm')}. Most is taken by ${lossWords(side)}.${
        corner > machine.rotor.cover
          ? ` The corners of the flat magnets stand ${formatSi(corner, 'mm')} beyond their faces.`
          : ''
      }`,
      remedies: [
        ...(Math.abs(shifted) > 0.3e-3
          ? [
              `Move the winding by ${formatSi(Math.abs(shifted), 'mm', 2)} ${shifted > 0 ? 'away from' : 'towards'} these magnets, into the middle of the gap${enough < leastClearance ? ', and widen the gap' : ''}.`,
            ]
          : []),
        triable(
          outer !== undefined
            ? 'Set the two faces farther apart with the winding in the middle, and see what it costs in volts.'
            : 'Set the winding farther from the magnets, and see what it costs in volts.',
          widerGap(machine.design),
        ),
        'Make the winding thinner: a wider and flatter bundle.',
        'Stiffen the discs, true the rotor, take up the bearings, and enter what you measure.',
        `Turn it by hand with the rotor pushed and pulled along the shaft, then once more with the stator warm, before any power. ${turningCaution}`,
      ],
    }
  },
}
