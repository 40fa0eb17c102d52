/** What the dump load does in one wind: resting while the battery takes the current, and how much it takes once it is full. */
import type { Chain } from './compute.ts'

export interface DumpDuty {
  /** [m/s] */
  readonly wind: number
  /** At the load in that wind, and those at which the dump load is switched [V]. */
  readonly voltage: number
  readonly on: number
  readonly off: number
  /** It is on although the battery still takes the current. */
  readonly working: boolean
  /** What arrives behind the cable in that wind [W]. */
  readonly power: number
  /** Taken at the volts of off and of on [W]. */
  readonly takes: readonly [number, number]
  /** Share of the time in which it is on once the battery takes nothing: at the volts of on and of off. */
  readonly share: readonly [number, number]
  /** It takes all that arrives. */
  readonly holds: boolean
  /** On its label [W]. */
  readonly rated: number
}

/** At a row of the table of winds; undefined without a dump load. */
export function dumpDuty(
  { machine, rows }: Pick<Chain, 'machine' | 'rows'>,
  row: number,
): DumpDuty | undefined {
  const { dump, electrical } = machine.protection
  if (electrical !== 'dump load' || dump === undefined) return undefined
  const { wind, loadVoltage, watts } = rows[row]!
  const power = watts.useful + watts.battery
  const { on, off, resistance } = dump
  const takes = [off ** 2 / resistance, on ** 2 / resistance] as const
  return {
    wind,
    voltage: loadVoltage,
    on,
    off,
    working: loadVoltage >= on,
    power,
    takes,
    share: [Math.min(1, power / takes[1]), Math.min(1, power / takes[0])],
    holds: power <= takes[1],
    rated: dump.power,
  }
}
