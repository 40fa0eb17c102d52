/** A machine that has stood warming in a steady wind from cold: each part's temperature in time, until it has settled. */
import type { Chain } from './compute.ts'
import { heatTransient, partLimits } from './heat-transient.ts'
import type { HeatFlow } from './machine-heat.ts'
import { settledSpeed } from './match.ts'
import { limiterWind } from './power-curve.ts'
import { type TemperatureLimit, type TemperatureLine, temperatureLimits } from './temperature-by-wind.ts'

/** Speed and losses that blades and generator settle at in a wind, the copper as warm as it has become. */
export function workingFlow(
  { blades, generator }: Pick<Chain, 'blades' | 'generator'>,
  { wind, from }: { readonly wind: number; readonly from: number },
): (copperTemperature: number) => HeatFlow {
  let speed = from
  return (T) => {
    speed = settledSpeed(
      (at) => blades.power(wind, at),
      (at) => generator.shaftPower(at, T),
      { from: speed, fastest: blades.fastest(wind) },
    )
    const { watts } = generator.at(speed, T)
    return { speed, wind, copper: watts.winding + watts.eddy, metal: watts.parts }
  }
}

/** The wind in which the mechanical limiter acts, or the storm where nothing limits before [m/s]. */
export const heldWind = ({ machine }: Pick<Chain, 'machine'>): number =>
  machine.protection.mechanical === 'none'
    ? machine.site.stormWind
    : Math.min(limiterWind(machine), machine.site.stormWind)

export interface WarmUp {
  /** [m/s] */
  readonly wind: number
  /** Since it began to turn [s]; steps as long as the temperatures allow. */
  readonly time: Float64Array
  readonly lines: readonly TemperatureLine[]
  readonly limits: readonly TemperatureLimit[]
  /** When the copper had come all but a twentieth of its way [s]; undefined where it never settles. */
  readonly settledAt: number | undefined
}

/** As long as a page has patience for [s]. */
const longest = 12 * 3600

/** In the wind of a row of the table; undefined where the rotor stands. Above the limiter's wind that one blows. */
export function warmUp(
  chain: Pick<Chain, 'machine' | 'heat' | 'rows' | 'blades' | 'generator'>,
  row: number,
): WarmUp | undefined {
  const { machine, heat, rows } = chain
  const { wind, speed } = rows[row]!
  if (!(speed > 0)) return undefined
  const flow = workingFlow(chain, { wind: Math.min(wind, heldWind(chain)), from: speed })
  const { samples, settledAt } = heatTransient(heat, {
    start: new Float64Array(heat.body.nodes.length),
    flow,
    limits: partLimits(machine),
    duration: longest,
  })
  const line = (label: string, of: (sample: (typeof samples)[number]) => number): TemperatureLine => ({
    label,
    values: Float64Array.from(samples, of),
  })
  return {
    wind,
    time: Float64Array.from(samples, ({ time }) => time),
    lines: [
      line('hot spot', ({ hotSpot }) => hotSpot),
      line('copper', ({ copper }) => copper),
      line('support', ({ support }) => support),
      line('magnets', ({ magnets }) => magnets),
      line('site', () => machine.site.ambient),
    ],
    limits: temperatureLimits(machine),
    settledAt,
  }
}
