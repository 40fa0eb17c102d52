/** Concern: the shorted winding is too weak a brake for the wind in which it is needed. */
import { formatSi } from '../../units/format.ts'
import { type BrakedState, brake, brakedShare, parkedSpeed, unloadedSpeed } from '../braked-rotor.ts'
import { keptAnswer } from '../kept-answer.ts'
import { smallerRotor } from '../ladder/blade.ts'
import { thickerCable } from '../ladder/cable.ts'
import { narrowerGap } from '../ladder/gap.ts'
import { triable, whereTriable } from '../ladder/ladder.ts'
import { limiterAdded, limiterEarlier } from '../ladder/limiter.ts'
import { strongerGrade } from '../ladder/magnet.ts'
import { thickerWire } from '../ladder/wire.ts'
import { limiterWind } from '../power-curve.ts'
import { towerCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'

/** The copper is taken warm, as after a windy hour [K]. */
const copperTemperature = 333.15

interface Failure {
  readonly wind: number
  readonly from: number
  /** Whether the load had gone before the short came. */
  readonly unloaded: boolean
  readonly state: BrakedState
}

/** The least wind in which the short fails, the working rotor and the unloaded one tried in each. */
function firstFailure(
  winds: readonly { readonly wind: number; readonly speed: number }[],
  chain: ChainView,
  stop: (wind: number, from: number) => BrakedState,
): Failure | undefined {
  for (const { wind, speed } of winds)
    for (const [from, unloaded] of [
      [speed, false],
      [unloadedSpeed(chain, wind), true],
    ] as const) {
      const state = stop(wind, from)
      if (!state.holds) return { wind, from, unloaded, state }
    }
  return undefined
}

/** Where the short first fails, in the winds that it must hold and in the storm; undefined where it is no brake. */
const failureOf = keptAnswer((chain: ChainView) => {
  const { machine } = chain
  if (machine.protection.electrical !== 'shorting switch') return undefined
  const alone = machine.protection.mechanical === 'none'
  const { stormWind } = machine.site
  const limited = alone ? stormWind : Math.min(limiterWind(machine), stormWind)
  const fastest = chain.rows.reduce((most, { speed }) => Math.max(most, speed), chain.runaway.speed)
  if (!(fastest > 0)) return undefined
  const { torque, strongest, stop } = brake(chain, { place: 'far end', copperTemperature, fastest })
  const within = chain.rows.filter(({ wind, speed }) => wind <= limited + 1e-9 && speed > 0)
  const inWork = firstFailure(within, chain, stop)
  const inStorm = inWork ?? firstFailure([{ wind: stormWind, speed: 0 }], chain, stop)
  return { alone, stormWind, limited, torque, strongest, inWork, inStorm }
})

export const brakeTorque: ConcernRule = {
  code: 'brake-torque',
  title: 'Shorting the winding does not stop the rotor in the wind where it must',
  basis: `Torque of the shorted winding (fundamental, its inductance, copper at 60 °C, the short at the far end of line wires before the bridge) against the blades’ torque, from the working speed and from the speed without load down. Braked means: settled below ${brakedShare} of that speed and below the speed at which current begins, for there the machine turns slower than it ever works (without such a speed: tip no faster than the wind). Shares common practice, no source. Asked in every wind up to the storm. Blocks the outdoor class where shorting is the only limiter. With a mechanical limiter: a warning where it fails in the limiter’s winds; where it fails above them only, the limiter stuck, a warning outdoors and a note in the other classes.`,
  measure: (chain) => {
    const found = failureOf(chain)
    if (found === undefined) return undefined
    const { inWork, inStorm, stormWind, limited, alone } = found
    const wanted = alone || inWork === undefined ? stormWind : limited
    const held = chain.rows.filter(({ wind }) => inStorm === undefined || wind < inStorm.wind - 1e-9).at(-1)
    return {
      name: 'wind up to which the short holds the rotor',
      value:
        inStorm === undefined ? wanted : Math.min(held?.wind ?? 0, inWork === undefined ? limited : wanted),
      limit: wanted,
      unit: 'm_per_s',
      sound: 'above',
    }
  },
  answeredBy:
    'The winding shorted in rising winds up to the one named, with wind, speed before and speed after written down each time.',
  judge: (chain) => {
    const { machine, blades } = chain
    const found = failureOf(chain)
    if (found?.inStorm === undefined) return undefined
    const { inWork, inStorm, stormWind, limited, alone, torque, strongest } = found
    const { wind, from, unloaded, state } = inStorm
    const parked = parkedSpeed(chain, wind)
    return {
      code: 'brake-torque',
      severity: alone
        ? severityFor(chain, ['outdoor'])
        : inWork !== undefined || machine.safetyClass === 'outdoor'
          ? 'warning'
          : 'note',
      path: 'protection.electrical',
      what:
        inWork === undefined
          ? `Should the mechanical limiter stick, the shorted winding does not stop the rotor in a storm of ${formatSi(wind, 'm_per_s')}.`
          : `From about ${formatSi(wind, 'm_per_s')} on the shorted winding does not stop ${unloaded ? 'a rotor that has lost its load' : 'the working rotor'}.`,
      why: 'The torque of a short has a top: above some speed the winding’s own reactance holds the current, and its resistance does so from the start, while the blades’ torque grows with the square of the wind. A rotor that has lost its load is the fastest, and it is the one that needs the brake.',
      figures: `In ${formatSi(wind, 'm_per_s')} at ${formatSi(from, 'rpm')}${unloaded ? ' without load' : ''} the blades give ${formatSi(Math.max(0, blades.torque(wind, from)), 'Nm')} and the short takes ${formatSi(torque(from), 'Nm')}, at its strongest ${formatSi(strongest, 'Nm')}; ${
        state.speed < from
          ? `it goes on turning at ${formatSi(state.speed, 'rpm')}`
          : 'it cannot even slow the rotor'
      }, parked would be below ${formatSi(Math.min(parked, brakedShare * from), 'rpm')}; wanted up to ${formatSi(inWork === undefined ? stormWind : limited, 'm_per_s')}.`,
      remedies: [
        alone
          ? triable(
              'Add a mechanical limiter and use the short for parking only.',
              limiterAdded(machine.design),
            )
          : inWork === undefined
            ? 'Count on the mechanical limiter in a storm, try it, and short the winding before the wind rises.'
            : triable(
                `Let the mechanical limiter act below ${formatSi(wind, 'm_per_s')}, and short the winding below that wind only.`,
                limiterEarlier(machine.design),
              ),
        machine.cable.place === 'before bridge'
          ? triable(
              'Put the shorting switch at the machine’s own leads, before any long cable, or take thicker cable.',
              thickerCable(machine.design),
            )
          : 'Put the shorting switch at the machine’s own leads, before any long cable.',
        triable(
          'Raise the volts per turn of the shaft and with them the short’s torque: a smaller gap.',
          narrowerGap(machine.design),
        ),
        ...whereTriable('Or stronger magnets.', strongerGrade(machine.design)),
        ...whereTriable('Or thicker wire where it has room: less resistance.', thickerWire(machine.design)),
        triable('Or a smaller rotor, which asks less of the brake.', smallerRotor(machine.design)),
        `Write the greatest wind for the brake beside the switch. ${towerCaution}`,
      ],
    }
  },
}
