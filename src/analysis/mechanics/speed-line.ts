/** Where along its speeds a rotor charges, works, is held, whirls and runs away. */
import { whirlingMarginRange } from '../../physics/mechanics/whirling.ts'
import type { Chain } from '../compute.ts'
import { limiterWind } from '../power-curve.ts'
import { shaftResult } from './shaft-result.ts'

export interface SpeedLine {
  /** Where current begins [rad/s]; undefined where it never does. */
  readonly cutIn: number | undefined
  /** Slowest and fastest of the power curve while it charges [rad/s]; undefined where it never does. */
  readonly work: { readonly slowest: number; readonly fastest: number } | undefined
  /** What holds the rotor, and the wind [m/s] and speed [rad/s] at which it begins to; undefined for none. */
  readonly limiter: { readonly kind: string; readonly wind: number; readonly speed: number } | undefined
  /** First critical speed, and between which speeds the rotor should not run for long [rad/s]; undefined where it cannot be told. */
  readonly critical: { readonly speed: number; readonly from: number; readonly to: number } | undefined
  /** Without load and limiter in the storm: wind [m/s] and speed [rad/s]. */
  readonly runaway: { readonly wind: number; readonly speed: number }
}

export function speedLine(chain: Chain): SpeedLine {
  const { machine, generator, rows, runaway } = chain
  const giving = rows.filter(({ speed, dcCurrent }) => speed > 0 && dcCurrent > 0)
  const speeds = giving.map(({ speed }) => speed)
  const limit = limiterWind(machine)
  const last = rows.filter(({ wind }) => wind <= limit).at(-1)
  const critical = shaftResult(chain)?.critical
  const [low, high] = whirlingMarginRange
  return {
    cutIn: Number.isFinite(generator.cutIn) ? generator.cutIn : undefined,
    work: speeds.length === 0 ? undefined : { slowest: Math.min(...speeds), fastest: Math.max(...speeds) },
    limiter:
      machine.protection.mechanical === 'none' || last === undefined || limit >= runaway.wind
        ? undefined
        : { kind: machine.protection.mechanical, wind: limit, speed: last.speed },
    critical:
      critical === undefined ? undefined : { speed: critical, from: low * critical, to: high * critical },
    runaway: { wind: runaway.wind, speed: runaway.speed },
  }
}
