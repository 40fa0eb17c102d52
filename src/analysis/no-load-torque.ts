/** What turning the shaft costs with nothing connected, speed by speed and cause by cause. */
import type { Chain } from './compute.ts'
import type { MetalPartLoss } from './metal-part-loss.ts'

export interface NoLoadRow {
  /** [rad/s] */
  readonly speed: number
  /** All causes [N·m]. */
  readonly torque: number
  /** By cause [W]. */
  readonly watts: {
    readonly friction: number
    readonly strands: number
    readonly parts: number
    /** Currents between unlike parallel branches, and round a closed delta. */
    readonly branches: number
    readonly delta: number
    /** Turns closed on themselves. */
    readonly loops: number
    /** The phases through a shorted diode, with the bridge left on the machine. */
    readonly bridge: number
  }
}

/** Steps that a rev counter and a reader like [rpm]. */
const niceSteps = [1, 2, 2.5, 5] as const

/** Step of `rows` equal steps up to about `most`, a round number. */
function niceStep(most: number, rows: number): number {
  const rough = most / rows
  const power = 10 ** Math.floor(Math.log10(rough))
  return power * (niceSteps.find((step) => step * power >= rough * 0.999) ?? 10)
}

type NoLoadParts = Pick<Chain, 'drag' | 'circulating'>

export function noLoadRow({ drag, circulating }: NoLoadParts, speed: number): NoLoadRow {
  const { friction, eddy, parts } = drag.at(speed)
  const branches = circulating.branches(speed)
  const delta = circulating.delta(speed)
  const loops = circulating.loops(speed)
  const bridge = circulating.bridge(speed)
  const sum = friction + eddy + parts + branches + delta + loops + bridge
  return {
    speed,
    torque: speed > 0 ? sum / speed : 0,
    watts: { friction, strands: eddy, parts, branches, delta, loops, bridge },
  }
}

/** Rows at round speeds up to the fastest that the load lets the machine reach, or past its runaway without one. */
export function noLoadRows(chain: NoLoadParts & Pick<Chain, 'rows' | 'runaway'>, count = 6): NoLoadRow[] {
  const reached = Math.max(...chain.rows.map(({ speed }) => speed))
  const fastest = reached > 0 ? reached : chain.runaway.speed
  if (!(fastest > 0) || !Number.isFinite(fastest)) return []
  const rpm = (2 * Math.PI) / 60
  const step = niceStep(fastest / rpm, count)
  const rows = Math.max(1, Math.ceil(fastest / rpm / step - 1e-9))
  return Array.from({ length: rows }, (_, k) => noLoadRow(chain, (k + 1) * step * rpm))
}

/** Half-width at 90 % of the watts in metal parts, as a share: the parts' own, taken as if they erred together. */
export function partsSpread(parts: readonly MetalPartLoss[], speed: number): number {
  const all = parts.map(({ loss, spread }) => ({ watts: loss(speed), spread }))
  const sum = all.reduce((total, { watts }) => total + watts, 0)
  return sum > 0 ? all.reduce((total, { watts, spread }) => total + watts * spread, 0) / sum : 0
}
