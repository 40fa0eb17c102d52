/** Concern: volts that can hurt appear at runaway. */

import type { SafetyClass } from '../../machine/safety-class.ts'
import type { Wiring } from '../../machine/supply-side.ts'
import { formatSi } from '../../units/format.ts'
import { deltaForStar, moreInParallel } from '../ladder/connection.ts'
import { widerGap } from '../ladder/gap.ts'
import { triable, whereTriable } from '../ladder/ladder.ts'
import { fewerTurns } from '../ladder/turns.ts'
import { electricCaution } from './caution.ts'
import type { ConcernRule, Severity } from './concern.ts'

export interface Volts {
  /** Between lines, rms [V]. */
  readonly alternating: number
  /** Behind the bridge [V]. */
  readonly direct: number
}

/**
 * Voltage bands: alternating rms and direct [V]. 50/120 V and 25/60 V as told of IEC 61140 (iec-61140); 12/30 V from
 * general knowledge of IEC 60364-4-41, not opened. Verify the edition in force.
 */
export const shockLimits = {
  /** Above this it is no longer extra-low voltage. */
  extraLow: { alternating: 50, direct: 120 },
  /** Above this bare parts need cover even in the dry. */
  dryTouch: { alternating: 25, direct: 60 },
  /** Above this bare parts need cover wherever it is wet or people are in full contact. */
  wetTouch: { alternating: 12, direct: 30 },
} as const satisfies Readonly<Record<string, Volts>>

export type ShockBand = 'harmless' | 'cover when wet' | 'cover always' | 'dangerous'

export function shockBand({ alternating, direct }: Volts): ShockBand {
  const above = (limit: Volts) => alternating > limit.alternating || direct > limit.direct
  if (above(shockLimits.extraLow)) return 'dangerous'
  if (above(shockLimits.dryTouch)) return 'cover always'
  return above(shockLimits.wetTouch) ? 'cover when wet' : 'harmless'
}

export type Surroundings = Wiring['surroundings']

/** The limit above which the machine must not be left as it is where it stands. */
export const shockLimit = (safetyClass: SafetyClass, surroundings: Surroundings): Volts =>
  safetyClass === 'demonstration' || surroundings !== 'dry' ? shockLimits.dryTouch : shockLimits.extraLow

export function shockSeverity(
  band: ShockBand,
  safetyClass: SafetyClass,
  surroundings: Surroundings = 'dry',
): Severity | undefined {
  if (band === 'harmless') return undefined
  if (safetyClass === 'demonstration' || surroundings === 'class room')
    return band === 'cover when wet' ? 'warning' : 'blocking'
  const outdoor = safetyClass === 'outdoor'
  if (surroundings === 'wet') return band !== 'cover when wet' && outdoor ? 'blocking' : 'warning'
  if (band === 'dangerous') return outdoor ? 'blocking' : 'warning'
  return band === 'cover always' && outdoor ? 'warning' : 'note'
}

/** Share of the volts' limit that is reached, the alternating and the direct part both judged. */
const shareOf = (volts: Volts, limit: Volts): number =>
  Math.max(volts.alternating / limit.alternating, volts.direct / limit.direct)

/** Speed at which either part passes its limit: both go with the speed [rad/s]. */
export const speedAtLimit = (volts: Volts, speed: number, limit: Volts): number =>
  speed / shareOf(volts, limit)

/** The limit that the volts are told against: the gravest that they pass, and the lowest where they pass none. */
function passedLimit(volts: Volts, safetyClass: SafetyClass, surroundings: Surroundings): Volts {
  const limit = shockLimit(safetyClass, surroundings)
  if (shareOf(volts, limit) > 1) return limit
  const touch = surroundings === 'dry' ? shockLimits.dryTouch : shockLimits.wetTouch
  return shareOf(volts, touch) > 1 ? touch : shockLimits.wetTouch
}

const meaning: Readonly<Record<Exclude<ShockBand, 'harmless'>, string>> = {
  dangerous: 'That is above extra-low voltage: a touch can kill.',
  'cover always': 'That is extra-low voltage, but bare parts need cover even in a dry place.',
  'cover when wet': 'That is low enough for dry hands, but not for wet ones or for children.',
}

const places: Readonly<Record<Surroundings, string>> = {
  dry: '',
  wet: ' It can be touched where it is wet.',
  'class room': ' It can be touched by children.',
}

export const shockBandRule: ConcernRule = {
  code: 'shock-band',
  title: 'Volts at runaway that can hurt',
  basis:
    'Line volts (rms) and direct volts behind the bridge with the load lost in the storm wind and no limiter at work, each against its limit: 50 V AC / 120 V DC (extra-low voltage), 25 V AC / 60 V DC (bare parts in the dry) and 12 V AC / 30 V DC (wet): IEC 61140 and IEC 60364-4-41, from general knowledge, verify the edition in force; national rules differ. In dry surroundings: above the first band blocks the outdoor class, a warning on the bench; else a warning or a note. Where it is wet: above 25 V / 60 V blocks the outdoor class, else a warning. The demonstration class and any class room are blocked above 25 V / 60 V, warned above 12 V / 30 V.',
  measure: ({ runaway, machine }) => {
    const volts = { alternating: runaway.lineVoltage, direct: runaway.directVoltage }
    const limit = passedLimit(volts, machine.safetyClass, machine.wiring.surroundings)
    const direct = volts.direct / limit.direct > volts.alternating / limit.alternating
    return {
      name: direct ? 'direct volts at runaway' : 'volts between lines at runaway',
      value: direct ? volts.direct : volts.alternating,
      limit: direct ? limit.direct : limit.alternating,
      unit: 'V',
      sound: 'below',
    }
  },
  answeredBy:
    'Volts between the lines with nothing connected at a known speed, and the greatest speed that the rotor was seen to reach.',
  judge: (chain) => {
    const { runaway, machine } = chain
    const { surroundings } = machine.wiring
    const volts = { alternating: runaway.lineVoltage, direct: runaway.directVoltage }
    const band = shockBand(volts)
    const severity = shockSeverity(band, machine.safetyClass, surroundings)
    if (severity === undefined || band === 'harmless') return undefined
    const normal = chain.rows.reduce((most, { loadVoltage }) => Math.max(most, loadVoltage), 0)
    const passed = passedLimit(volts, machine.safetyClass, surroundings)
    const share = shareOf(volts, passed)
    return {
      code: 'shock-band',
      severity,
      path: 'stator',
      what: `With the load lost the machine raises ${formatSi(volts.alternating, 'V')} between its lines and ${formatSi(volts.direct, 'V')} behind the bridge. ${meaning[band]}${places[surroundings]}`,
      why: 'A battery holds the volts down only as long as it is connected; without it they follow the speed, and the speed follows the gust.',
      figures: `${formatSi(volts.alternating, 'V')} rms (limits 12, 25 and 50 V) and ${formatSi(volts.direct, 'V')} direct (limits 30, 60 and 120 V) at ${formatSi(runaway.speed, 'rpm')}; past ${formatSi(passed.alternating, 'V', 2)} rms or ${formatSi(passed.direct, 'V')} direct from ${formatSi(speedAtLimit(volts, runaway.speed, passed), 'rpm')} on without load; at the load in service ${formatSi(normal, 'V')}.`,
      remedies: [
        'Insulate and enclose every live part to the tip of the last wire, mark the box with the runaway volts, and keep it locked.',
        ...(share > 1 && severity !== 'note'
          ? [
              triable(
                `Fewer turns of thicker wire bring the volts down; for this limit at most ${formatSi(1 / share, 'percent', 2)} of them may stay.`,
                fewerTurns(machine.design),
              ),
              ...(machine.stator.connection === 'star'
                ? [triable('Or delta in place of star.', deltaForStar(machine.design))]
                : []),
              ...whereTriable('Or more groups of coils in parallel.', moreInParallel(machine.design)),
              ...whereTriable('Or a wider gap.', widerGap(machine.design)),
            ]
          : []),
        'Stop or short the rotor and prove with a meter that it is dead before touching anything.',
        electricCaution,
      ],
    }
  },
}
