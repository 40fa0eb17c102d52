/** Concern: a magnet may leave the rotor at runaway. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { turningCaution } from './caution.ts'
import { type ConcernRule, severityFor } from './concern.ts'

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

export const magnetRetention: ConcernRule = {
  code: 'magnet-retention',
  title: 'What holds the magnets without glue is too weak at runaway',
  basis: `Pull m r ω² at the speed reached with the load lost in the storm wind and no limiter at work, times ${retentionFactor} (common practice, no source), against the wall, the band or the force found by test; glue counts for nothing. Magnets inside a ring are pressed into it and are not judged. Blocks the outdoor class; a warning in the others.`,
  judge: (chain) => {
    const { machine, runaway } = chain
    const { rotor } = machine
    if (rotor.arrangement === 'drum' && rotor.windingSide === 'inside') return undefined
    const retaining = { force: runaway.magnetForce, hold: runaway.magnetHold }
    if (!retentionFails(retaining)) return undefined
    const glue = rotor.retention.kind === 'glue' && rotor.retention.hold === undefined
    const thicker = (retaining.force * retentionFactor) / retaining.hold
    // a pocket's wall bears with the square of its thickness, a band in proportion
    const wall = rotor.retention.wall * (rotor.retention.kind === 'band' ? thicker : Math.sqrt(thicker))
    return {
      code: 'magnet-retention',
      severity: severityFor(chain, ['outdoor']),
      path: 'rotor.retention',
      what: glue
        ? 'Nothing but glue holds the magnets against being thrown out.'
        : 'The magnets pull on their holder more than it may bear at runaway.',
      why: 'The pull grows with the square of the speed, so it must be judged at the speed the rotor reaches without its load; bonds let go by age, frost, rust or a greasy face.',
      figures: `Each magnet of ${formatSi(runaway.magnetMass, 'g')} pulls outward with ${formatSi(retaining.force, 'N')} at ${formatSi(runaway.speed, 'rpm')}; held without glue: ${formatSi(retaining.hold, 'N')}${
        glue ? '' : ` (${formatNumber(retentionMargin(retaining), 2)} times; wanted ${retentionFactor} times)`
      }.`,
      remedies: [
        glue || rotor.retention.hold !== undefined || !(retaining.hold > 0)
          ? 'Put a rim, a pocket wall or a wound band of fibre outside the magnets, so that they stay if the bond fails.'
          : `Make the ${rotor.retention.kind === 'band' ? 'band' : 'pocket wall'} of ${rotor.retention.material} about ${formatSi(wall, 'mm', 2)} thick instead of ${formatSi(rotor.retention.wall, 'mm')}, or wind a band of glass fibre round it.`,
        'Pull one magnet out of a spare holder with a spring scale, warm and aged, and enter the force.',
        'Limit the speed: an earlier and independent limiter lowers the pull by the square.',
        turningCaution,
      ],
    }
  },
}
