/** Remedy: electronics between bridge and battery that draw what the blades give best at each speed. */
import { copperRatio } from '../load-point.ts'
import { limiterWind, usualLimiterWind } from '../power-curve.ts'
import { type Steps, within } from '../step.ts'
import { type Change, inSteps } from './change.ts'
import { bestAttempt } from './search.ts'
import type { Attempt, RemedyContext, RemedyRule, Trial } from './trial.ts'
import { turnsChanges } from './turns-change.ts'

/** A converter that raises the voltage needs a winding below the battery's: turns over those at hand. */
const turnShares = [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3] as const

/** Of the blades' best: a little less lets the rotor run on the safe side of stall. */
const firstShare = 0.95
const otherShares = [0.8, 0.88, 1] as const

const curvePoints = 14

/** Copper temperature for which the curve is laid out [K]. */
const warm = 323.15

/** Amps behind the bridge over rms amps of a line, for three phases and smooth direct current: π/√6. */
const directPerLine = Math.PI / Math.sqrt(6)

/** Watts behind the bridge when the shaft takes `shaft`, currents in step with the volts. */
function bridgePower({ chain }: RemedyContext, speed: number, shaft: number, turnShare: number): number {
  const { voltage, machine, drag, circulating } = chain
  const { friction, eddy, parts } = drag.at(speed)
  const inner = shaft - friction - eddy - parts - circulating.branches(speed)
  if (!(inner > 0)) return 0
  const ratio = copperRatio(machine, warm)
  // R and E² both go with the square of the turns: the winding's loss for a power does not change
  const stiffness = voltage.phases.reduce(
    (sum, { rms, resistance }) => sum + (rms * speed) ** 2 / (ratio * resistance),
    0,
  )
  const copper = inner ** 2 / stiffness
  const meanVolts = voltage.phases.reduce((sum, { rms }) => sum + rms, 0) / voltage.phases.length
  const amps = inner / (voltage.phases.length * meanVolts * speed * turnShare)
  const delta = machine.stator.connection === 'delta' ? Math.sqrt(3) : 1
  const direct = directPerLine * amps * delta
  const { threshold, slope } = machine.diode
  const before = machine.cable.place === 'before bridge'
  const line = machine.cable.conductorResistance * (before ? 3 * (amps * delta) ** 2 : 2 * direct ** 2)
  return Math.max(0, inner - copper - direct * 2 * (threshold + slope * direct) - line)
}

/** Power over speed that keeps the blades at their best. */
function followingCurve(context: RemedyContext, turnShare: number, share: number) {
  const { rotor, blades, machine } = context.chain
  const { best } = rotor
  // electronics are bought for the watts of a usual limiter's wind, and hold their power in stronger winds
  const limit = machine.protection.mechanical === 'none' ? usualLimiterWind : limiterWind(machine)
  const top = Math.min(limit, machine.site.stormWind)
  const unit = blades.tipSpeedRatio(1, 1)
  const fastest = (best.tipSpeedRatio * top) / unit
  return Array.from({ length: curvePoints }, (_, k) => {
    const speed = (fastest * (k + 1)) / curvePoints
    const wind = (speed * unit) / best.tipSpeedRatio
    const shaft = share * blades.power(wind, speed)
    return {
      speed_rpm: inSteps((speed * 60) / (2 * Math.PI), 0.1),
      power_W: inSteps(bridgePower(context, speed, shaft, turnShare), 0.01),
    }
  })
}

function attempt(context: RemedyContext, turnShare: number, share: number): Attempt {
  const { design } = context
  const turns = Math.max(1, Math.round(turnShare * design.stator.winding.turns))
  const curve = followingCurve(context, turns / design.stator.winding.turns, share)
  const converter: Change = {
    path: ['converter'],
    from: undefined,
    to: { curve: [{ speed_rpm: 0, power_W: 0 }, ...curve] },
  }
  return {
    changes: [...(turns === design.stator.winding.turns ? [] : turnsChanges(design, turns)), converter],
  }
}

const turnShareOf = (context: RemedyContext, trial: Trial): number =>
  trial.design.stator.winding.turns / context.design.stator.winding.turns

function* search(context: RemedyContext): Steps<Trial | string> {
  const first = yield* within(
    bestAttempt(
      context,
      turnShares.map((turnShare) => attempt(context, turnShare, firstShare)),
    ),
    0,
    0.7,
  )
  if (typeof first === 'string') return first
  const turnShare = turnShareOf(context, first)
  const other = yield* within(
    bestAttempt(
      context,
      otherShares.map((share) => attempt(context, turnShare, share)),
    ),
    0.7,
    0.3,
  )
  return typeof other !== 'string' && other.figures.energy > first.figures.energy ? other : first
}

export const converterRemedy: RemedyRule = {
  kind: 'converter',
  unfit: ({ design, chain }) =>
    design.converter !== undefined
      ? 'there is one already'
      : design.load.kind !== 'battery'
        ? 'only a battery takes what such electronics give'
        : chain.rotor.best.tipSpeedRatio > 0
          ? undefined
          : 'the blades give no power',
  search,
}
