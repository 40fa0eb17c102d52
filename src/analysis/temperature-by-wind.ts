/** Temperatures wind by wind beside what the materials bear. */
import type { Chain } from './compute.ts'
import type { WindRow } from './power-curve.ts'

export interface TemperatureLine {
  readonly label: string
  /** At each time or wind [K]. */
  readonly values: Float64Array
}

export interface TemperatureLimit {
  readonly label: string
  /** [K] */
  readonly temperature: number
}

export interface TemperatureByWind {
  /** [m/s] */
  readonly wind: Float64Array
  readonly lines: readonly TemperatureLine[]
  readonly limits: readonly TemperatureLimit[]
}

/** What enamel, what holds the winding, the magnets, and what holds them bear. */
export function temperatureLimits({ stator, rotor }: Chain['machine']): TemperatureLimit[] {
  const { retention, magnet } = rotor
  return [
    { label: `enamel, class ${stator.wire.insulationClass}`, temperature: stator.wire.highestTemperature },
    { label: `${stator.support.name} round the winding`, temperature: stator.support.softening },
    ...(magnet.highestTemperature === undefined
      ? []
      : [{ label: `magnets, grade ${magnet.grade}`, temperature: magnet.highestTemperature }]),
    ...(retention.kind === 'glue' || retention.hold !== undefined
      ? []
      : [{ label: `${retention.material} of the magnets’ wall`, temperature: retention.softening }]),
  ]
}

export function temperatureByWind({ machine, rows }: Pick<Chain, 'machine' | 'rows'>): TemperatureByWind {
  const line = (label: string, of: (row: WindRow) => number): TemperatureLine => ({
    label,
    values: Float64Array.from(rows, of),
  })
  return {
    wind: Float64Array.from(rows, ({ wind }) => wind),
    lines: [
      line('hot spot', ({ temperatures }) => temperatures.hotSpot),
      line('copper', ({ copperTemperature }) => copperTemperature),
      line('support', ({ temperatures }) => temperatures.support),
      line('magnets', ({ temperatures }) => temperatures.magnets),
      line('site', () => machine.site.ambient),
    ],
    limits: temperatureLimits(machine),
  }
}
