/** Density of the air from its pressure, temperature and moisture, or from the height above the sea. */
import { requireBetween, requireFinite, requirePositive } from '../../refusal/require.ts'

/** Gas constant of dry air. [J/(kg·K)] (icao7488: R = 287.05287) */
export const dryAirGasConstant = 287.05287

/** Gas constant of water vapour. [J/(kg·K)] (iec61400-12-1, from memory) */
export const vapourGasConstant = 461.5

/** Pressure and temperature at sea level of the standard atmosphere. [Pa], [K] */
export const seaLevelPressure = 101325
export const seaLevelTemperature = 288.15

/** Heights of the layer the pressure formula is for. [m] */
export const standardLayer = [-2000, 11000] as const

/** Temperatures for which the vapour formula is used. [K] */
export const vapourTemperatureRange = [253.15, 323.15] as const

/**
 * Density of moist air.
 *
 *   ρ = (1/T) (p/R_0 − h p_w (1/R_0 − 1/R_w)),   p_w = 2.05e-5 e^(0.0631846 T)
 *
 * Holds: weather on the ground, −20 to 50 °C for the moisture. Accuracy: 0.1 % up to
 * 20 °C saturated, 0.15 % at 30 °C, 0.3 % at 40 °C, against the Magnus formula.
 *
 * @param air.pressure     p    > 0                       [Pa]
 * @param air.temperature  T    > 0                       [K]
 * @param air.humidity     h    relative, 0…1; default 0  [1]
 * @returns                ρ                              [kg/m³]
 * @throws RangeError      pressure or temperature not above zero, humidity outside 0…1
 * @source iec61400-12-1, equation for the air density with humidity, from memory, not opened
 * @example airDensity({ pressure: 101325, temperature: 288.15 }) // 1.2250
 */
export function airDensity(air: {
  readonly pressure: number
  readonly temperature: number
  readonly humidity?: number
}): number {
  const { pressure: p, temperature: T, humidity: h = 0 } = air
  requirePositive('pressure', p, 'Pa')
  requirePositive('temperature', T, 'K')
  requireBetween('humidity', h, [0, 1])
  // Above 100 °C the vapour formula would overflow; no more vapour than there is pressure.
  const vapour = Math.min(h * 2.05e-5 * Math.exp(0.0631846 * Math.min(T, 500)), p)
  return (p / dryAirGasConstant - vapour * (1 / dryAirGasConstant - 1 / vapourGasConstant)) / T
}

/**
 * Pressure of the standard atmosphere at a height above the sea.
 *
 *   p = p_0 (1 − L h / T_0)^5.25588,   L = 6.5 K/km
 *
 * Holds: −2 km to 11 km. Accuracy: the standard exactly; the weather of the day ±3 %.
 *
 * @param altitude  h                [m]
 * @returns         p                [Pa]
 * @throws RangeError  altitude outside −2000…11000 m
 * @source icao7488, section 3 on the first layer, from memory, not opened
 * @example standardPressure(1000) // 89874.6
 */
export function standardPressure(altitude: number): number {
  requireBetween('altitude', altitude, standardLayer, 'm')
  const L = 0.0065
  return seaLevelPressure * (1 - (L * altitude) / seaLevelTemperature) ** (9.80665 / (L * dryAirGasConstant))
}

/**
 * Temperature of the standard atmosphere at a height above the sea.
 *
 *   T = T_0 − L h,   L = 6.5 K/km
 *
 * Holds: −2 km to 11 km. Accuracy: the standard exactly; a site differs by ±20 K with season and place.
 *
 * @param altitude  h                [m]
 * @returns         T                [K]
 * @throws RangeError  altitude outside −2000…11000 m
 * @source icao7488, section 3 on the first layer, from memory, not opened
 * @example standardTemperature(2000) // 275.15
 */
export function standardTemperature(altitude: number): number {
  requireBetween('altitude', altitude, standardLayer, 'm')
  return seaLevelTemperature - 0.0065 * altitude
}

/**
 * Density of the air at a site, from its height and mean temperature.
 *
 *   ρ = p(h) / (R T)
 *
 * Holds: −2 km to 11 km, dry. Accuracy: 3 %, as the standard pressure; without a temperature the standard one is taken.
 *
 * @param site.altitude     h                                [m]
 * @param site.temperature  T  default: standard at h, > 0   [K]
 * @returns                 ρ                                [kg/m³]
 * @throws RangeError       altitude outside −2000…11000 m, temperature not above zero
 * @source icao7488, section 3 on the first layer, from memory, not opened
 * @example airDensityAtAltitude({ altitude: 2000 }) // 1.0065
 */
export function airDensityAtAltitude(site: {
  readonly altitude: number
  readonly temperature?: number
}): number {
  requireFinite('altitude', site.altitude, 'm')
  return airDensity({
    pressure: standardPressure(site.altitude),
    temperature: site.temperature ?? standardTemperature(site.altitude),
  })
}
