/** What the electronics ask of the bridge at each speed, beside what the machine gives them and the blades could. */

import type { Chain } from './compute.ts'
import { curvePower } from './load-balance.ts'
import { shaftPower } from './watts.ts'

export interface ConverterDuty {
  /** As the document gives it [rad/s], [W]. */
  readonly curve: readonly { readonly speed: number; readonly power: number }[]
  /** Wind by wind, from the first in which the rotor turns: where the machine runs, and where the blades give most. */
  readonly winds: readonly {
    readonly wind: number
    readonly speed: number
    /** By the curve at that speed, and drawn there [W]. */
    readonly asked: number
    readonly drawn: number
    /** At the shaft where it runs; the blades’ most, and the speed of it [W], [rad/s]. */
    readonly shaft: number
    readonly best: number
    readonly bestSpeed: number
  }[]
}

/** Of a wind’s speeds among which the blades’ most is looked for. */
const steps = 240

/** Undefined without a converter. */
export function converterDuty({
  machine,
  rows,
  blades,
}: Pick<Chain, 'machine' | 'rows' | 'blades'>): ConverterDuty | undefined {
  const { converter } = machine
  if (converter === undefined) return undefined
  return {
    curve: converter.curve,
    winds: rows
      .filter(({ speed }) => speed > 0)
      .map(({ wind, speed, watts }) => {
        const fastest = blades.fastest(wind)
        let [best, bestSpeed] = [0, 0]
        for (let k = 1; k <= steps; k++) {
          const at = (fastest * k) / steps
          const power = blades.power(wind, at)
          if (power > best) [best, bestSpeed] = [power, at]
        }
        return {
          wind,
          speed,
          asked: curvePower(converter, speed),
          drawn: watts.useful + watts.battery + watts.converter,
          shaft: shaftPower(watts),
          best,
          bestSpeed,
        }
      }),
  }
}
