/** The tolerances of a design in SI, and what its builds must reach. */
import { nominal } from '../units/quantity.ts'
import { toSi, unitOfName } from '../units/unit.ts'
import type { Design } from './design.ts'
import { si } from './si.ts'
import { type ToleranceName, toleranceNames } from './tolerance.ts'

export interface Tolerances {
  /** Half-widths that nine of ten builds keep within [m], [1]; of the miscounted coils their share. */
  readonly width: Readonly<Record<ToleranceName, number>>
  readonly mostTurnsOff: number
  readonly target: BuildTarget
}

/** Shares of the drawing's values; clearance [m]. The balance grade stands with the shaft. */
export interface BuildTarget {
  readonly volts: number
  readonly power: number
  readonly imbalance: number
  readonly clearance: number
}

export function resolveTolerances({ tolerance }: Pick<Design, 'tolerance'>): Tolerances {
  const { target, mostTurnsOff } = tolerance
  const width = Object.fromEntries(
    toleranceNames.map((name) => [name, toSi(nominal(tolerance[name]), unitOfName(name))]),
  ) as Record<ToleranceName, number>
  return {
    width,
    mostTurnsOff,
    target: {
      volts: si(target.volts_percent, 'percent'),
      power: si(target.power_percent, 'percent'),
      imbalance: si(target.imbalance_percent, 'percent'),
      clearance: si(target.clearance_mm, 'mm'),
    },
  }
}
