/** Wire sizes as people name them: a diameter, or a gauge. */
import { z } from 'zod'
import { awgDiameter_mm, enamelledWires, intermediateMetricSizes, swgSizes } from '../data/wire.ts'
import { piecewiseLinear } from '../numerics/interpolate.ts'
import { quantity } from './field.ts'

const gaugePattern = /^(AWG|SWG)\s?(\d{1,2})$/i

/** Bare diameter in mm of "AWG 20" or "SWG 21", undefined where there is no such gauge. */
export function gauge(name: string): number | undefined {
  const found = gaugePattern.exec(name.trim())
  if (!found) return undefined
  const number = Number(found[2])
  if (found[1]!.toUpperCase() === 'SWG') return swgSizes.find((size) => size.gauge === number)?.diameter_mm
  return number <= 44 ? awgDiameter_mm(number) : undefined
}

export const wireSizeSchema = z
  .union([
    quantity('mm', { min: 0.02, max: 10, symbol: 'd', help: 'Diameter of the bare wire in millimetres' }),
    z
      .string()
      .max(12)
      .superRefine((name, context) => {
        if (gauge(name) === undefined)
          context.addIssue({
            code: 'custom',
            message:
              'a gauge such as "AWG 20" (AWG 0 to 44) or "SWG 21" (SWG 4 to 45), or a bare diameter in mm',
            params: { code: 'not-a-choice' },
          })
      }),
  ])
  .meta({ description: 'Bare diameter in millimetres, or a gauge: "AWG 20", "SWG 21"' })

const increase_mm = ([1, 2] as const).map((grade) =>
  piecewiseLinear(
    enamelledWires.map((wire) => wire.conductorDiameter_mm),
    enamelledWires.map((wire) => {
      const least = grade === 1 ? wire.grade1MinimumIncrease_mm : wire.grade2MinimumIncrease_mm
      const most = grade === 1 ? wire.grade1MaximumOuter_mm : wire.grade2MaximumOuter_mm
      return (least + most - wire.conductorDiameter_mm) / 2
    }),
  ),
)

/** Outer diameter of a typical wire of that bare diameter: half-way between the least and the greatest allowed. */
export const enamelledDiameter_mm = (bare_mm: number, grade: 1 | 2): number =>
  bare_mm + increase_mm[grade - 1]!(bare_mm)

/** A size as the document names it. */
export type WireSize = number | string

const metricSizes_mm: readonly number[] = [
  ...enamelledWires.map((wire) => wire.conductorDiameter_mm),
  ...intermediateMetricSizes.conductorDiameter_mm,
].sort((a, b) => a - b)

/** Sizes on either side of this one in the family that it is named in, the nearest first. */
export function neighbourSizes(
  size: WireSize,
  count: number,
): { readonly thinner: readonly WireSize[]; readonly thicker: readonly WireSize[] } {
  if (typeof size === 'number') {
    const same = 1e-9
    return {
      thinner: metricSizes_mm
        .filter((other) => other < size - same)
        .slice(-count)
        .reverse(),
      thicker: metricSizes_mm.filter((other) => other > size + same).slice(0, count),
    }
  }
  const [, kind, number] = gaugePattern.exec(size.trim())!
  const beside = (step: 1 | -1) =>
    Array.from(
      { length: count },
      (_, k) => `${kind!.toUpperCase()} ${Number(number) + step * (k + 1)}`,
    ).filter((name) => gauge(name) !== undefined)
  return { thinner: beside(1), thicker: beside(-1) }
}
