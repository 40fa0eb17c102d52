/** A round coil. */
import { z } from 'zod'
import { quantity } from '../field.ts'
import { si } from '../si.ts'
import { coilShape } from './coil-shape.ts'
import { noRise, overShaftFaults, planarForm } from './planar-coil.ts'

export const round = coilShape({
  schema: z.strictObject({
    shape: z.literal('round').meta({ description: 'a round hole' }),
    holeDiameter_mm: quantity('mm', { min: 0.5, max: 400, help: 'Diameter of the hole' }),
  }),
  toSi: ({ holeDiameter_mm }) => ({ shape: 'round' as const, diameter: si(holeDiameter_mm, 'mm') }),
  form: ({ diameter }, place) =>
    planarForm(
      { kind: 'round', diameter },
      // mean chord of the middle turn, less the leg that the form adds
      (Math.PI / 4) * (diameter + place.legWidth) - place.legWidth,
      place,
    ),
  faults: ({ holeDiameter_mm }, bench) => overShaftFaults(bench, holeDiameter_mm),
  rise: () => noRise,
})
