/** Concern: the generator loads the blades so early that they never reach their working speed. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { coarserPitch, largerRotor, moreBlades, slowerBlades, widerChord } from '../ladder/blade.ts'
import { deltaForStar } from '../ladder/connection.ts'
import { widerGap } from '../ladder/gap.ts'
import { triable, whereTriable } from '../ladder/ladder.ts'
import { fewerTurns } from '../ladder/turns.ts'
import type { WindState } from '../power-curve.ts'
import { type ConcernRule, severityFor } from './concern.ts'

/** Stalled winds from which the rule speaks: fewer may be an accident of the half-metre steps. */
export const stalledWinds = 2

/** Greatest wind in which a useful machine should have left rest [m/s]: common practice, no source. */
export const latestStart = 6

/** Wind in which a rotor of radius R turns with ω at the tip-speed ratio λ [m/s]: v = ω R/λ. */
export const windOfSpeed = (at: {
  readonly speed: number
  readonly radius: number
  readonly tipSpeedRatio: number
}): number => (at.speed * at.radius) / at.tipSpeedRatio

export type StallVerdict = 'never starts' | 'stalls' | 'matched'

export function stallVerdict(curve: {
  readonly states: readonly WindState[]
  readonly startWind: number
}): StallVerdict {
  if (!(curve.startWind <= latestStart) || curve.states.every((state) => state === 'at rest'))
    return 'never starts'
  return curve.states.filter((state) => state === 'stalled').length >= stalledWinds ? 'stalls' : 'matched'
}

export const stallMatch: ConcernRule = {
  code: 'stall-match',
  title: 'The generator holds the blades in stall, or they never start',
  basis: `Winds in which the rotor, speeding up from rest, settles below the blades’ best tip-speed ratio at under two thirds of their best power: from ${stalledWinds} such winds on a warning. A rotor that does not leave rest by ${latestStart} m/s (common practice, no source) blocks the outdoor class.`,
  measure: ({ rows, startWind }) => {
    const states = rows.map(({ state }) => state)
    if (stallVerdict({ states, startWind }) === 'never starts')
      return Number.isFinite(startWind)
        ? {
            name: 'wind that starts the rotor',
            value: startWind,
            limit: latestStart,
            unit: 'm_per_s',
            sound: 'below',
          }
        : undefined
    return {
      name: 'winds in stall',
      value: states.filter((state) => state === 'stalled').length,
      limit: stalledWinds - 1,
      unit: '1',
      sound: 'below',
    }
  },
  answeredBy:
    'Speed and current with the wind logged beside them, in the winds named; for a rotor that does not start, its torque by a thread and a scale.',
  judge: (chain) => {
    const { rows, startWind, rotor, generator, blades } = chain
    const verdict = stallVerdict({ states: rows.map(({ state }) => state), startWind })
    if (verdict === 'matched') return undefined
    const radius = chain.machine.blades.radius
    const best = rotor.best
    if (verdict === 'never starts')
      return {
        code: 'stall-match',
        severity: severityFor(chain, ['outdoor']),
        path: 'shaft.startingFriction_mNm',
        what: Number.isFinite(startWind)
          ? `The rotor does not leave rest before ${formatSi(startWind, 'm_per_s')}.`
          : 'No wind starts the rotor from rest.',
        why: 'At rest the blades work deep in stall and give little torque; friction holds them there.',
        figures: `Torque at rest in ${formatSi(latestStart, 'm_per_s')}: ${formatSi(blades.torque(latestStart, 0), 'mNm')} against ${formatSi(chain.machine.shaft.startingFriction, 'mNm')} of starting friction.`,
        remedies: [
          'Ease the bearings: no rubbing seals, thin grease, no axial squeeze; then measure the torque with a thread and a scale.',
          ...whereTriable('Give the blades more chord.', widerChord(chain.machine.design)),
          ...whereTriable('Or one blade more.', moreBlades(chain.machine.design)),
          ...whereTriable(
            'Or shape them to turn slower, wider near the hub.',
            slowerBlades(chain.machine.design),
          ),
          ...whereTriable('Pitch the blades a few degrees coarser.', coarserPitch(chain.machine.design)),
        ],
      }
    const stalled = rows.filter(({ state }) => state === 'stalled')
    const first = stalled[0]!
    const last = stalled[stalled.length - 1]!
    const working =
      Number.isFinite(generator.cutIn) && best.tipSpeedRatio > 0
        ? ` Current begins at ${formatSi(generator.cutIn, 'rpm')}, which is the blades’ best speed in ${formatSi(windOfSpeed({ speed: generator.cutIn, radius, tipSpeedRatio: best.tipSpeedRatio }), 'm_per_s', 2)} only.`
        : ''
    return {
      code: 'stall-match',
      severity: 'warning',
      path: 'stator.winding.turns',
      what: `Between ${formatSi(first.wind, 'm_per_s')} and ${formatSi(last.wind, 'm_per_s')} the generator holds the blades below their working speed.`,
      why: 'Current begins at so low a speed that it brakes the rotor before the blades come out of stall; from there they cannot pull free.',
      figures: `In ${formatSi(first.wind, 'm_per_s')} the rotor turns at a tip-speed ratio of ${formatNumber(first.tipSpeedRatio)} with a power coefficient of ${formatNumber(first.powerCoefficient, 2)}; its best is ${formatNumber(best.power, 2)} at ${formatNumber(best.tipSpeedRatio)}.${working}`,
      remedies: [
        triable('Let current begin at a higher speed: fewer turns.', fewerTurns(chain.machine.design)),
        ...whereTriable('Or a wider gap.', widerGap(chain.machine.design)),
        ...(chain.machine.stator.connection === 'star'
          ? [triable('Or delta in place of star.', deltaForStar(chain.machine.design))]
          : []),
        triable('Build a larger rotor.', largerRotor(chain.machine.design)),
        ...whereTriable('Or blades for a lower tip-speed ratio.', slowerBlades(chain.machine.design)),
        'Put an electronic load between bridge and battery that follows the blades.',
        'Resistance in series only as a last resort: it frees the blades by burning their power in high wind.',
      ],
    }
  },
}
