/** The bus and the shorted winding of a machine whose magnets have weakened, from the tables of cold ones. */
import type { BusState, HotBus } from './bus-current.ts'
import type { HotShort } from './storm-winding.ts'

function scale(state: BusState, strength: number): BusState {
  state.dcCurrent *= strength
  state.phaseCurrent *= strength
  state.torque *= strength * strength
  state.windingLoss *= strength * strength
  return state
}

/**
 * Exact: but for the diodes the circuit is linear, and two of them lie in every way of the current, so
 *
 *   I(β E, U) = β I(E, (U + 2 U_D)/β − 2 U_D)
 *
 * at the same speed. `threshold` is that of two diodes [V], `strength` β.
 */
export function weakenedBus(hot: HotBus, threshold: number, strength: number): HotBus {
  if (strength === 1 || !(strength > 0)) return hot
  const asCold = (voltage: number) => (voltage + threshold) / strength - threshold
  return {
    current: (speed, voltage) => strength * hot.current(speed, asCold(voltage)),
    fill: (state, speed, voltage) => scale(hot.fill(state, speed, asCold(voltage)), strength),
  }
}

/** A short has no threshold: all its currents go with the volts. */
export const weakenedShort =
  (short: HotShort, strength: number): HotShort =>
  (state, speed) =>
    scale(short(state, speed), strength)
