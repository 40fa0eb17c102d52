/** The blade section's polar as the maker has it: lift and drag against angle, at one Reynolds number or several. */
import { z } from 'zod'
import { nominal } from '../units/quantity.ts'
import { quantity } from './field.ts'
import type { OwnPolar } from './machine.ts'
import { si } from './si.ts'

/** The choice of section that takes `blades.polar`. */
export const ownSection = 'own polar'

/** Rows of one polar, at most. */
export const mostPolarRows = 400

/** Polars of one section, at most. */
export const mostPolars = 12

const rowSchema = z.strictObject({
  angle_deg: quantity('deg', { min: -180, max: 180, symbol: 'α', help: 'Angle between air and chord' }),
  lift: quantity('1', { min: -4, max: 4, symbol: 'C_L', help: 'Lift coefficient' }),
  drag: quantity('1', { min: 1e-5, max: 4, symbol: 'C_D', help: 'Drag coefficient' }),
})

export const bladePolarSchema = z
  .array(
    z.strictObject({
      reynolds: quantity('1', {
        min: 1000,
        max: 1e8,
        symbol: 'Re',
        help: 'Reynolds number on the chord of the measurement or computation',
      }),
      rows: z.array(rowSchema).min(2).max(mostPolarRows).meta({ description: 'Rows of rising angle' }),
    }),
  )
  .min(1)
  .max(mostPolars)
  .meta({
    description: 'Own lift and drag of the section, Reynolds numbers rising; for the section “own polar”',
  })

export type BladePolars = z.infer<typeof bladePolarSchema>

/** The same in SI; undefined where the document holds none. */
export const ownPolars = (polars: BladePolars | undefined): readonly OwnPolar[] | undefined =>
  polars?.map(({ reynolds, rows }) => ({
    reynolds: nominal(reynolds),
    rows: rows.map((row) => ({
      angle: si(row.angle_deg, 'deg'),
      lift: nominal(row.lift),
      drag: nominal(row.drag),
    })),
  }))
