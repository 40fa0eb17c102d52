/** Concern: an upright rotor does not start by itself, or not from every position. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { coarserPitch, evenDrums, moreBlades, widerChord } from '../ladder/blade.ts'
import { triable, whereTriable } from '../ladder/ladder.ts'
import type { TurnTorque } from '../vertical-rotor.ts'
import type { ChainView, ConcernRule } from './concern.ts'

/** Wind in which a useful machine should leave rest from any position [m/s]: common practice, no source. */
export const uprightStartWind = 5

export interface StartQuestion {
  readonly tipSpeedRatio: ArrayLike<number>
  /** C_q at each. */
  readonly torque: ArrayLike<number>
  readonly best: number
  readonly turn: Pick<TurnTorque, 'restMean' | 'restLeast'>
  /** C_q that the starting friction asks for in that wind. */
  readonly friction: number
}

/** Tip-speed ratio below the best at which the blades brake; undefined where they drive all the way up. */
export function deadBand({ tipSpeedRatio, torque, best }: StartQuestion): number | undefined {
  for (let k = 0; k < tipSpeedRatio.length && tipSpeedRatio[k]! < best; k++)
    if (torque[k]! < 0) return tipSpeedRatio[k]
  return undefined
}

export type UprightStart = 'dead band' | 'dead spot' | 'starts'

export const uprightStart = (question: StartQuestion): UprightStart =>
  deadBand(question) !== undefined
    ? 'dead band'
    : question.turn.restLeast < question.friction
      ? 'dead spot'
      : 'starts'

/** Undefined for rotors without an upright axis; `unit` is the torque of C_q = 1 in that wind [N·m]. */
function questionOf({ rotor, machine, airDensity }: ChainView) {
  const { turn } = rotor
  if (turn === undefined || !('height' in machine.blades)) return undefined
  const { radius, height } = machine.blades
  const unit = 0.5 * airDensity * 2 * radius * height * radius * uprightStartWind ** 2
  const question = {
    tipSpeedRatio: rotor.tipSpeedRatio,
    torque: rotor.torque,
    best: rotor.best.tipSpeedRatio,
    turn,
    friction: machine.shaft.startingFriction / unit,
  }
  return { question, unit }
}

export const uprightStartRule: ConcernRule = {
  code: 'upright-start',
  title: 'An upright rotor does not start by itself, or not from every position',
  basis: `Torque of the blades against tip-speed ratio in 6 m/s: a stretch below the best ratio in which they brake is a warning. Least torque at rest round the turn in ${uprightStartWind} m/s (common practice, no source) against the starting friction: a note. Rotors with an upright axis only.`,
  measure: (chain) => {
    const found = questionOf(chain)
    return (
      found && {
        name: `least torque at rest in ${uprightStartWind} m/s`,
        value: found.question.turn.restLeast * found.unit,
        limit: chain.machine.shaft.startingFriction,
        unit: 'mNm',
        sound: 'above',
      }
    )
  },
  answeredBy: 'The rotor let go from eight positions round the turn in a steady, logged wind.',
  judge: (chain) => {
    const { rotor, machine, blades } = chain
    const found = questionOf(chain)
    if (found === undefined) return undefined
    const { question, unit } = found
    const { turn } = question
    const { startingFriction } = machine.shaft
    const verdict = uprightStart(question)
    if (verdict === 'starts') return undefined
    const torques = `In ${formatSi(uprightStartWind, 'm_per_s')} the blades give ${formatSi(blades.torque(uprightStartWind, 0), 'mNm')} at rest on the mean of the turn and ${formatSi(turn.restLeast * unit, 'mNm')} where they give least; the starting friction is ${formatSi(startingFriction, 'mNm')}.`
    if (verdict === 'dead band')
      return {
        code: 'upright-start',
        severity: 'warning',
        path: 'blades',
        what: 'The rotor leaves rest but does not get up to speed by itself.',
        why: 'While the blades are slower than about the wind they are stalled nearly all round the turn, and what drives them in front brakes them behind.',
        figures: `The blades brake at a tip-speed ratio of ${formatNumber(deadBand(question)!, 2)}; their best is at ${formatNumber(rotor.best.tipSpeedRatio, 2)}. ${torques}`,
        remedies: [
          ...whereTriable(
            'Wider blades: the torque at low speed grows with them.',
            widerChord(machine.design),
          ),
          ...whereTriable('Or one blade more.', moreBlades(machine.design)),
          triable(
            'Turn the leading edges outward by a few degrees, up to what the best power bears.',
            coarserPitch(machine.design),
          ),
          'Start it with the machine as a motor, or by hand.',
          'Put small half drums on the same shaft, and count what they cost at full speed.',
        ],
      }
    return {
      code: 'upright-start',
      severity: 'note',
      path: 'blades',
      what: 'In some positions the rotor does not leave rest.',
      why: 'The torque of an upright rotor at rest depends on where its blades stand to the wind; a change of direction frees it.',
      figures: torques,
      remedies:
        machine.blades.kind === 'drag-rotor'
          ? [
              triable(
                'Two storeys a quarter turn apart, where one always pulls; or three buckets, at the cost of power.',
                evenDrums(machine.design),
              ),
            ]
          : [
              ...whereTriable('More blades: the torque at rest is more even.', moreBlades(machine.design)),
              ...whereTriable('Wider blades.', widerChord(machine.design)),
              'Ease the bearings.',
            ],
    }
  },
}
