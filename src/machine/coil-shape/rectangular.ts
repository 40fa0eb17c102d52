/** A coil with a rectangular hole and rounded corners. */
import { z } from 'zod'
import { quantity } from '../field.ts'
import { si } from '../si.ts'
import { coilShape } from './coil-shape.ts'
import { cornerFaults, noRise, overShaftFaults, planarForm } from './planar-coil.ts'

export const rectangular = coilShape({
  schema: z.strictObject({
    shape: z.literal('rectangular').meta({ description: 'a hole with straight sides and rounded corners' }),
    holeWidth_mm: quantity('mm', { min: 0.5, max: 400, help: 'Hole along the circumference' }),
    holeLength_mm: quantity('mm', { min: 0.5, max: 400, help: 'Hole along the shaft or the radius' }),
    cornerRadius_mm: quantity('mm', { min: 0, max: 100, help: 'Radius of the corners of the hole' }).default(
      2,
    ),
  }),
  toSi: (hole) => ({
    shape: 'rectangular' as const,
    width: si(hole.holeWidth_mm, 'mm'),
    length: si(hole.holeLength_mm, 'mm'),
    cornerRadius: si(hole.cornerRadius_mm, 'mm'),
  }),
  form: ({ width, length, cornerRadius }, place) =>
    planarForm({ kind: 'rectangular', width, length, cornerRadius }, width, place),
  faults: ({ holeWidth_mm, holeLength_mm, cornerRadius_mm }, bench) => [
    ...cornerFaults(cornerRadius_mm, {
      length_mm: holeLength_mm,
      inner_mm: holeWidth_mm,
      outer_mm: holeWidth_mm,
    }),
    ...overShaftFaults(bench, holeLength_mm),
  ],
  rise: () => noRise,
})
