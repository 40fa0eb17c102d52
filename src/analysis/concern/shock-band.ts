/** Concern: volts that can hurt appear at runaway. */
import type { SafetyClass } from '../../machine/purpose.ts'
import { formatSi } from '../../units/format.ts'
import { electricCaution } from './caution.ts'
import type { ConcernRule, Severity } from './concern.ts'

/**
 * Voltage bands: alternating rms and direct [V]. From general knowledge of IEC 61140 and IEC 60364-4-41, not opened;
 * verify the edition in force.
 */
export const shockLimits = {
  /** Above this it is no longer extra-low voltage. */
  extraLow: { alternating: 50, direct: 120 },
  /** Above this bare parts need cover even in the dry; taken for the class of demonstrations. */
  dryTouch: { alternating: 25, direct: 60 },
  /** Above this bare parts need cover wherever it is wet or people are in full contact. */
  wetTouch: { alternating: 12, direct: 30 },
} as const

export type ShockBand = 'harmless' | 'cover when wet' | 'cover always' | 'dangerous'

export interface Volts {
  /** Between lines, rms [V]. */
  readonly alternating: number
  /** Behind the bridge [V]. */
  readonly direct: number
}

export function shockBand({ alternating, direct }: Volts): ShockBand {
  const above = (limit: Volts) => alternating > limit.alternating || direct > limit.direct
  if (above(shockLimits.extraLow)) return 'dangerous'
  if (above(shockLimits.dryTouch)) return 'cover always'
  return above(shockLimits.wetTouch) ? 'cover when wet' : 'harmless'
}

export function shockSeverity(band: ShockBand, safetyClass: SafetyClass): Severity | undefined {
  if (band === 'harmless') return undefined
  if (safetyClass === 'demonstration') return band === 'cover when wet' ? 'warning' : 'blocking'
  if (band === 'dangerous') return safetyClass === 'outdoor' ? 'blocking' : 'warning'
  return band === 'cover always' && safetyClass === 'outdoor' ? 'warning' : 'note'
}

const meaning: Readonly<Record<Exclude<ShockBand, 'harmless'>, string>> = {
  dangerous: 'That is above extra-low voltage: a touch can kill.',
  'cover always': 'That is extra-low voltage, but bare parts need cover even in a dry place.',
  'cover when wet': 'That is low enough for dry hands, but not for wet ones or for children.',
}

export const shockBandRule: ConcernRule = {
  code: 'shock-band',
  title: 'Volts at runaway that can hurt',
  basis:
    'Line volts (rms) and direct volts behind the bridge with the load lost in the storm wind and no limiter at work, against 50 V AC / 120 V DC (extra-low voltage), 25 V AC / 60 V DC (bare parts in the dry) and 12 V AC / 30 V DC (wet): IEC 61140 and IEC 60364-4-41, from general knowledge, verify the edition in force; national rules differ. Above the first band: blocks the outdoor class, a warning on the bench. The demonstration class is blocked from the second band on. Else a warning or a note.',
  judge: (chain) => {
    const { runaway, machine } = chain
    const volts = { alternating: runaway.lineVoltage, direct: runaway.directVoltage }
    const band = shockBand(volts)
    const severity = shockSeverity(band, machine.safetyClass)
    if (severity === undefined || band === 'harmless') return undefined
    const normal = chain.rows.reduce((most, { loadVoltage }) => Math.max(most, loadVoltage), 0)
    const limit = machine.safetyClass === 'demonstration' ? shockLimits.dryTouch : shockLimits.extraLow
    const share = Math.max(volts.alternating / limit.alternating, volts.direct / limit.direct)
    return {
      code: 'shock-band',
      severity,
      path: 'stator',
      what: `With the load lost the machine raises ${formatSi(volts.alternating, 'V')} between its lines and ${formatSi(volts.direct, 'V')} behind the bridge. ${meaning[band]}`,
      why: 'A battery holds the volts down only as long as it is connected; without it they follow the speed, and the speed follows the gust.',
      figures: `${formatSi(volts.alternating, 'V')} rms (limits 12, 25 and 50 V) and ${formatSi(volts.direct, 'V')} direct (limits 30, 60 and 120 V) at ${formatSi(runaway.speed, 'rpm')}; at the load in service ${formatSi(normal, 'V')}.`,
      remedies: [
        'Insulate and enclose every live part to the tip of the last wire, mark the box with the runaway volts, and keep it locked.',
        ...(share > 1
          ? [
              `Fewer turns of thicker wire${machine.stator.connection === 'star' ? ', or delta in place of star,' : ''} bring the volts down; for this band at most ${formatSi(1 / share, 'percent', 2)} of them may stay.`,
            ]
          : []),
        'Stop or short the rotor and prove with a meter that it is dead before touching anything.',
        electricCaution,
      ],
    }
  },
}
