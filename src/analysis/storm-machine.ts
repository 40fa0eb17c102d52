/** All that a storm asks of a machine, as tables: what turns, what brakes, what warms. */
import { type RotorInertia, rotorInertia } from './rotor-inertia.ts'
import { type Steps, within } from './step.ts'
import type { StormChain } from './storm-chain.ts'
import { type LimiterGuess, usualLimiter } from './storm-limiter.ts'
import {
  openWinding,
  soundTables,
  type WindingState,
  type WindingTables,
  windingStates,
  windingTables,
} from './storm-winding.ts'

export interface StormMachine {
  readonly chain: StormChain
  readonly inertia: RotorInertia
  /** Fastest speed of the tables [rad/s]. */
  readonly fastest: number
  readonly limiter: LimiterGuess
  /** By what is whole and what is not; those that were not asked for are missing. */
  readonly winding: Readonly<Partial<Record<WindingState, WindingTables>>> & {
    readonly sound: WindingTables
  }
  /** With every phase open. */
  readonly open: WindingTables
}

/** All tables, for winds up to `top` [m/s], in the states asked for beside the sound one. Yields the fraction done. */
export function* stormMachine(
  chain: StormChain,
  top: number,
  states: readonly WindingState[] = windingStates,
): Steps<StormMachine> {
  const { machine, rotor } = chain
  // past the runaway of the highest wind, and of what the rotor may turn at when the wind drops
  const fastest = Math.max((1.1 * rotor.runaway * top) / machine.blades.radius, 1e-3)
  const faulty = windingStates.filter((state) => state !== 'sound' && states.includes(state))
  const width = 1 / (faulty.length + 1)
  const sound = yield* within(soundTables(chain, fastest), 0, width)
  const winding: Partial<Record<WindingState, WindingTables>> & { readonly sound: WindingTables } = { sound }
  for (const [k, state] of faulty.entries())
    if (state !== 'sound')
      winding[state] = yield* within(windingTables(chain, sound, state, fastest), (k + 1) * width, width)
  return {
    chain,
    inertia: rotorInertia(machine, rotor),
    fastest,
    limiter: usualLimiter(machine.protection.mechanical),
    winding,
    open: openWinding(chain, sound, fastest),
  }
}
