/** A coil whose hole widens along the radius, with rounded corners. */
import { z } from 'zod'
import { quantity } from '../field.ts'
import { si } from '../si.ts'
import { coilShape } from './coil-shape.ts'
import { cornerFaults, noRise, overShaftFaults, planarForm } from './planar-coil.ts'

export const wedge = coilShape({
  schema: z.strictObject({
    shape: z.literal('wedge').meta({ description: 'a hole that widens outwards' }),
    holeInnerWidth_mm: quantity('mm', { min: 0.5, max: 400, help: 'Width of the hole at its inner end' }),
    holeOuterWidth_mm: quantity('mm', { min: 0.5, max: 400, help: 'Width of the hole at its outer end' }),
    holeLength_mm: quantity('mm', { min: 0.5, max: 400, help: 'Hole along the radius' }),
    cornerRadius_mm: quantity('mm', { min: 0, max: 100, help: 'Radius of the corners of the hole' }).default(
      2,
    ),
  }),
  toSi: (hole) => ({
    shape: 'wedge' as const,
    innerWidth: si(hole.holeInnerWidth_mm, 'mm'),
    outerWidth: si(hole.holeOuterWidth_mm, 'mm'),
    length: si(hole.holeLength_mm, 'mm'),
    cornerRadius: si(hole.cornerRadius_mm, 'mm'),
  }),
  form: ({ innerWidth, outerWidth, length, cornerRadius }, place) =>
    planarForm(
      { kind: 'wedge', innerWidth, outerWidth, length, cornerRadius },
      (innerWidth + outerWidth) / 2,
      place,
    ),
  faults: (hole, bench) => [
    ...cornerFaults(hole.cornerRadius_mm, {
      length_mm: hole.holeLength_mm,
      inner_mm: hole.holeInnerWidth_mm,
      outer_mm: hole.holeOuterWidth_mm,
    }),
    ...overShaftFaults(bench, hole.holeLength_mm),
  ],
  rise: () => noRise,
})
