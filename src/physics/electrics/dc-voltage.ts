/** Direct voltage of ideal bridges: what comes out unloaded, where charging begins, what a clamped battery leaves. */
import { refuse, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Mean output of an ideal three-phase bridge on sinusoidal voltages.
 *
 *   Vdc = (3√2/π) U
 *
 * Holds: ideal diodes, sinusoidal symmetrical voltages, no source impedance. Accuracy: exact.
 *
 * @param lineVoltageRms  U  line to line, rms  [V]
 * @returns               Vdc  mean             [V]
 * @throws RangeError     negative voltage
 * @source mohan2003, section 5-6-1, Vdo = 1.35 VLL (from memory, not opened)
 * @example bridgeMeanVoltage(1) // 1.350474
 */
export function bridgeMeanVoltage(lineVoltageRms: number): number {
  requireNotNegative('lineVoltageRms', lineVoltageRms, 'V')
  return ((3 * Math.SQRT2) / Math.PI) * lineVoltageRms
}

/**
 * Phase EMF at which the bridge begins to conduct into a constant voltage.
 *
 *   star: E = V/√6;  delta, single, separate: E = V/√2  (rms of a sine)
 *
 * Holds: sinusoidal symmetrical EMF. Accuracy: exact for V = load voltage and the thresholds of two diodes.
 *
 * @param onset.connection  how the phases are joined                           [1]
 * @param onset.voltage     V  of the load with the thresholds of two diodes    [V]
 * @returns                 E  rms per phase                                    [V]
 * @throws RangeError       negative voltage; unknown connection
 * @source derived, peak line voltage √6 E of a star and √2 E of a delta
 * @example cutInPhaseVoltage({ connection: 'star', voltage: 14 }) // 5.715476
 */
export function cutInPhaseVoltage(onset: {
  readonly connection: 'star' | 'delta' | 'separate' | 'single'
  readonly voltage: number
}): number {
  requireNotNegative('voltage', onset.voltage, 'V')
  if (onset.connection === 'star') return onset.voltage / Math.sqrt(6)
  if (['delta', 'separate', 'single'].includes(onset.connection)) return onset.voltage / Math.SQRT2
  return refuse({
    name: 'connection',
    condition: 'star, delta, separate or single',
    value: onset.connection,
    code: 'not-a-choice',
  })
}

/**
 * Share of the electrical power that reaches a battery which holds the voltage while the speed rises.
 *
 *   η = V / (k V0)
 *
 * Holds: EMF in proportion to speed, current in phase with it (no inductance), loss in resistance and diodes only.
 * Accuracy: upper bound; harmonics and reactance lower it. Below k = 1 nothing flows.
 *
 * @param clamp.batteryVoltage  V   at the battery                                  [V]
 * @param clamp.cutInVoltage    V0  peak line voltage where charging begins, ≥ V    [V]
 * @param clamp.speedRatio      k   speed over cut-in speed, ≥ 1                    [1]
 * @returns                     η                                                   [1]
 * @throws RangeError           voltage not above zero; V0 below V; k below 1
 * @source derived, power into V over power from the EMF k V0 at equal current
 * @example clampedBatteryEfficiency({ batteryVoltage: 12.6, cutInVoltage: 14, speedRatio: 1.5 }) // 0.600
 */
export function clampedBatteryEfficiency(clamp: {
  readonly batteryVoltage: number
  readonly cutInVoltage: number
  readonly speedRatio: number
}): number {
  const { batteryVoltage: V, cutInVoltage: V0, speedRatio: k } = clamp
  requirePositive('batteryVoltage', V, 'V')
  requirePositive('cutInVoltage', V0, 'V')
  requirePositive('speedRatio', k)
  if (V0 < V)
    refuse({
      name: 'cutInVoltage',
      condition: `at least the battery voltage ${V} V`,
      value: V0,
      unit: 'V',
      code: 'below-minimum',
    })
  if (k < 1) refuse({ name: 'speedRatio', condition: 'at least 1', value: k, code: 'below-minimum' })
  return V / (k * V0)
}
