/** The cable between machine, bridge and load: resistance of the loop, drop, loss. */
import { refuse, requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Resistance of a two-wire cable, go and return.
 *
 *   R = 2 ρ l / A
 *
 * Holds: two equal conductors. Accuracy: exact for the ρ and A given; joints and terminals are extra.
 *
 * @param cable.route        l  length of the route, counted once      [m]
 * @param cable.area         A  of one conductor                       [m²]
 * @param cable.resistivity  ρ  at the cable's own temperature         [Ω·m]
 * @returns                  R                                         [Ω]
 * @throws RangeError        negative route; area or resistivity not above zero
 * @source derived, R = ρ l / A on the way there and back
 * @example cableLoopResistance({ route: 20, area: 6e-6, resistivity: 1 / 58e6 }) // 0.114943
 */
export function cableLoopResistance(cable: {
  readonly route: number
  readonly area: number
  readonly resistivity: number
}): number {
  requireNotNegative('route', cable.route, 'm')
  requirePositive('area', cable.area, 'm²')
  requirePositive('resistivity', cable.resistivity, 'Ω·m')
  return (2 * cable.resistivity * cable.route) / cable.area
}

/**
 * Voltage drop as a share of the system's voltage.
 *
 *   share = I R / V
 *
 * Holds: direct current. Accuracy: exact.
 *
 * @param cable.current     I  mean                         [A]
 * @param cable.resistance  R  of the whole loop            [Ω]
 * @param cable.voltage     V  of the system, above zero    [V]
 * @returns                 share, 0.05 is five per cent    [1]
 * @throws RangeError       voltage not above zero; negative resistance
 * @source derived, Ohm's law
 * @example voltageDropShare({ current: 15, resistance: 0.114943, voltage: 12.6 }) // 0.13684
 */
export function voltageDropShare(cable: {
  readonly current: number
  readonly resistance: number
  readonly voltage: number
}): number {
  requireFinite('current', cable.current, 'A')
  requireNotNegative('resistance', cable.resistance, 'Ω')
  requirePositive('voltage', cable.voltage, 'V')
  return (cable.current * cable.resistance) / cable.voltage
}

/**
 * Energy lost in a resistance over a history of currents.
 *
 *   W = R Σ I² Δt
 *
 * Holds: each rms current standing for its own share of time. Accuracy: that of the classes of current chosen.
 *
 * @param loss.resistance  R   of the whole loop                                 [Ω]
 * @param loss.currents    I   rms in each class                                 [A]
 * @param loss.durations   Δt  time in each class, as many as currents           [s]
 * @returns                W                                                     [J]
 * @throws RangeError      negative resistance or duration; lists of unequal length
 * @source derived, Joule's law
 * @example cableEnergyLoss({ resistance: 0.5, currents: [2, 4], durations: [10, 5] }) // 60.0
 */
export function cableEnergyLoss(loss: {
  readonly resistance: number
  readonly currents: ArrayLike<number>
  readonly durations: ArrayLike<number>
}): number {
  const { resistance, currents, durations } = loss
  requireNotNegative('resistance', resistance, 'Ω')
  if (currents.length !== durations.length)
    refuse({
      name: 'durations',
      condition: `${currents.length} long`,
      value: durations.length,
      code: 'wrong-length',
    })
  let sum = 0
  for (let k = 0; k < currents.length; k++) {
    requireFinite(`currents[${k}]`, currents[k]!, 'A')
    requireNotNegative(`durations[${k}]`, durations[k]!, 's')
    sum += currents[k]! ** 2 * durations[k]!
  }
  return resistance * sum
}

/**
 * Current in each of three line wires before a bridge that delivers a smooth direct current.
 *
 *   Iac = √(2/3) Idc
 *
 * Holds: each wire carries ±Idc for a third of the period each (no overlap, smooth Idc). Accuracy: exact for that
 * waveform; real battery charging lies within some per cent.
 *
 * @param dcCurrent  Idc                 [A]
 * @returns          Iac rms per wire    [A]
 * @throws RangeError  current not finite
 * @source mohan2003, section 5-6, line current of the ideal three-phase bridge (from memory, not opened)
 * @example threeWireLineCurrent(10) // 8.164966
 */
export function threeWireLineCurrent(dcCurrent: number): number {
  requireFinite('dcCurrent', dcCurrent, 'A')
  return Math.sqrt(2 / 3) * dcCurrent
}

/**
 * Loss in three line wires before the bridge; equal to that of two DC wires of the same resistance each.
 *
 *   P = 3 R Iac² = 2 R Idc²
 *
 * Holds: as threeWireLineCurrent. Accuracy: exact for that waveform.
 *
 * @param cable.dcCurrent       Idc                   [A]
 * @param cable.wireResistance  R    of one wire      [Ω]
 * @returns                     P                     [W]
 * @throws RangeError           negative resistance; current not finite
 * @source derived, three times R Iac² with Iac of threeWireLineCurrent
 * @example threeWireLoss({ dcCurrent: 10, wireResistance: 0.05 }) // 10.0
 */
export function threeWireLoss(cable: {
  readonly dcCurrent: number
  readonly wireResistance: number
}): number {
  requireNotNegative('wireResistance', cable.wireResistance, 'Ω')
  return 3 * cable.wireResistance * threeWireLineCurrent(cable.dcCurrent) ** 2
}
