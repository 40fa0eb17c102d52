/** Wire sizes as people name them: a diameter, or a gauge. */
import { z } from 'zod'
import { enamelledWires } from '../data/wire.ts'
import { gauge } from '../data/wire-gauge.ts'
import { piecewiseLinear } from '../numerics/interpolate.ts'
import { quantity } from './field.ts'

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
