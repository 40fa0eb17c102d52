/** Copper that keeps all its heat: how fast a current warms it, and how soon it reaches a limit. */
import { refuse, requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Rate at which a conductor warms that gives off no heat.
 *
 *   dT/dt = ρ J² / (c d)
 *
 * Holds: the first seconds of a short, or a well-wrapped coil; the true rate is never above it.
 * Accuracy: exact; that of c and d, 1 %.
 *
 * @param conductor.resistivity     ρ  at the present temperature, > 0  [Ω·m]
 * @param conductor.currentDensity  J  rms, either sign                 [A/m2]
 * @param conductor.heatCapacity    c  per mass, > 0                    [J/(kg·K)]
 * @param conductor.density         d  > 0                              [kg/m3]
 * @returns                         dT/dt                               [K/s]
 * @throws RangeError               a value not finite; a property not above zero
 * @source derived, from the balance of Joule heat and heat stored in a unit volume
 * @example adiabaticHeatingRate({ resistivity: 1e-6 / 58, currentDensity: 6e6, heatCapacity: 385, density: 8890 }) // 0.1813
 */
export function adiabaticHeatingRate(conductor: {
  readonly resistivity: number
  readonly currentDensity: number
  readonly heatCapacity: number
  readonly density: number
}): number {
  const { resistivity: ρ, currentDensity: J, heatCapacity: c, density: d } = conductor
  requirePositive('resistivity', ρ, 'Ω·m')
  requireFinite('currentDensity', J, 'A/m2')
  requirePositive('heatCapacity', c, 'J/(kg·K)')
  requirePositive('density', d, 'kg/m3')
  return (ρ * J * J) / (c * d)
}

/**
 * Time until a conductor that gives off no heat reaches a temperature, its resistance growing on the way.
 *
 *   t = c d / (ρ0 α J²) · ln((1 + α (T2 − T0)) / (1 + α (T1 − T0)))
 *
 * Holds: resistance linear in temperature, c constant. Accuracy: exact there; 2 % for copper up to 200 °C.
 *
 * @param conductor.resistivity     ρ0  at the reference temperature, > 0         [Ω·m]
 * @param conductor.coefficient     α   at the reference temperature, ≥ 0         [1/K]
 * @param conductor.reference       T0  > 0                                       [K]
 * @param conductor.currentDensity  J   rms, not zero                             [A/m2]
 * @param conductor.heatCapacity    c   per mass, > 0                             [J/(kg·K)]
 * @param conductor.density         d   > 0                                       [kg/m3]
 * @param conductor.from            T1  > 0                                       [K]
 * @param conductor.to              T2  at least T1                               [K]
 * @returns                         t                                             [s]
 * @throws RangeError               a value out of its sign; T2 below T1; resistance not above zero at T1
 * @source derived, by integrating dT/dt = ρ0 (1 + α (T − T0)) J² / (c d)
 * @example adiabaticHeatingTime({ resistivity: 1e-6 / 58, coefficient: 0.00393, reference: 293.15, currentDensity: 6e6, heatCapacity: 385, density: 8890, from: 293.15, to: 393.15 }) // 465.08
 */
export function adiabaticHeatingTime(conductor: {
  readonly resistivity: number
  readonly coefficient: number
  readonly reference: number
  readonly currentDensity: number
  readonly heatCapacity: number
  readonly density: number
  readonly from: number
  readonly to: number
}): number {
  const { coefficient: α, reference: T0, currentDensity: J, from: T1, to: T2 } = conductor
  requireNotNegative('coefficient', α, '1/K')
  requirePositive('reference', T0, 'K')
  requirePositive('currentDensity', Math.abs(J), 'A/m2')
  requirePositive('from', T1, 'K')
  requirePositive('to', T2, 'K')
  if (T2 < T1) refuse({ name: 'to', condition: 'at least from', value: T2, unit: 'K', code: 'below-minimum' })
  const start = 1 + α * (T1 - T0)
  requirePositive('resistance ratio at from', start)
  const rate = adiabaticHeatingRate(conductor) * start
  // ln(1 + x)/x by its own series near zero, so that α = 0 needs no branch of the formula.
  const x = (α * (T2 - T1)) / start
  const shrink = x < 1e-8 ? 1 - x / 2 : Math.log1p(x) / x
  return ((T2 - T1) / rate) * shrink
}
