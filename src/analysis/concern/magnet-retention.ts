/** Concern: a magnet may leave the rotor at runaway. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { triable } from '../ladder/ladder.ts'
import { pockets } from '../ladder/magnet.ts'
import { fibreBand, thickerWall } from '../ladder/wall.ts'
import { magnetHold } from '../mechanics/magnet-hold.ts'
import { turningCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'

/** What holds a magnet must bear this many times its pull at runaway: common practice, no source. */
export const retentionFactor = 2

export interface Retaining {
  /** Outward on one magnet at runaway [N]. */
  readonly force: number
  /** That its holder bears without glue [N]. */
  readonly hold: number
}

/** Hold over force; infinite at rest. */
export const retentionMargin = ({ force, hold }: Retaining): number =>
  force > 0 ? hold / force : Number.POSITIVE_INFINITY

export const retentionFails = (retaining: Retaining): boolean => retentionMargin(retaining) < retentionFactor

/** Magnets inside a ring are pressed into it by their own pull. */
const pressedIn = ({ machine: { rotor } }: ChainView): boolean =>
  rotor.arrangement === 'drum' && rotor.windingSide === 'inside'

const holders = {
  'a test': 'by test',
  'wall bending': 'the wall’s bending',
  'wall shear': 'the wall’s shear',
  'band hoop': 'the band’s tension',
} as const

export const magnetRetention: ConcernRule = {
  code: 'magnet-retention',
  title: 'What holds the magnets without glue is too weak at runaway',
  basis: `Pull m r ω² at the speed reached with the load lost in the storm wind and no limiter at work, times ${retentionFactor} (common practice, no source), against a fifth of the strength across the layers of the wall (bending as a plate held at its foot and both ends, its top held where a cover ties it; and shear), of the band (tension, its own weight taken off), or against the force found by test; glue counts for nothing. On a drum wound outside, wall or band lie in the gap, and no more than fits there counts. Magnets inside a ring are pressed into it and are not judged. Blocks the outdoor class; a warning in the others.`,
  measure: (chain) =>
    pressedIn(chain)
      ? undefined
      : {
          name: 'pull on one magnet at runaway',
          value: chain.runaway.magnetForce,
          limit: chain.runaway.magnetHold / retentionFactor,
          unit: 'N',
          sound: 'below',
        },
  answeredBy: 'Force at which a magnet leaves a spare holder without glue, warm and aged, by a spring scale.',
  judge: (chain) => {
    const { machine, runaway } = chain
    const { retention } = machine.rotor
    if (pressedIn(chain)) return undefined
    const retaining = { force: runaway.magnetForce, hold: runaway.magnetHold }
    if (!retentionFails(retaining)) return undefined
    const glue = retention.kind === 'glue' && retention.hold === undefined
    const { way, fits, thickness } = magnetHold(machine, runaway.speed)
    return {
      code: 'magnet-retention',
      severity: severityFor(chain, ['outdoor']),
      path: 'rotor.retention',
      what: glue
        ? 'Nothing but glue holds the magnets against being thrown out.'
        : 'The magnets pull on their holder more than it may bear at runaway.',
      why: 'The pull grows with the square of the speed, so it must be judged at the speed the rotor reaches without its load; bonds let go by age, frost, rust or a greasy face.',
      figures: `Each magnet of ${formatSi(runaway.magnetMass, 'g')} pulls outward with ${formatSi(retaining.force, 'N')} at ${formatSi(runaway.speed, 'rpm')}; held without glue: ${formatSi(retaining.hold, 'N')}${
        glue || way === undefined
          ? ''
          : ` ${holders[way]} (${formatNumber(retentionMargin(retaining), 2)} times; wanted ${retentionFactor} times)`
      }.${fits ? '' : ` Of the ${formatSi(retention.wall, 'mm')} only ${formatSi(thickness, 'mm')} fit between the magnets’ faces and the winding.`}`,
      remedies: [
        glue || retention.hold !== undefined
          ? triable(
              'Put a rim, a pocket wall or a wound band of fibre outside the magnets, so that they stay if the bond fails.',
              pockets(machine.design),
            )
          : triable(
              `Make the ${retention.kind === 'band' ? 'band' : 'pocket wall'} of ${retention.material} thicker than ${formatSi(retention.wall, 'mm')}.`,
              thickerWall(machine.design),
            ),
        ...(retention.kind === 'pocket'
          ? [triable('Wind a band of glass fibre round the pockets.', fibreBand(machine.design))]
          : []),
        'Pull one magnet out of a spare holder with a spring scale, warm and aged, and enter the force.',
        'Limit the speed: an independent limiter lowers the pull by the square, but do not count on it here: it is the limiter’s failure that throws magnets.',
        turningCaution,
      ],
    }
  },
}
