/** How exactly it is built: the scatter to expect of magnets, rotor, coils and wire, and what a build must still reach. */
import { z } from 'zod'
import { count, quantity } from './field.ts'

/** Half-width that nine of ten builds keep within. */
const within = (suffix: string, most: number, usual: number, help: string) =>
  quantity(suffix, { min: 0, max: most, help }).default(usual)

// the defaults are those of careful hand work with a jig: common practice, no source; that of the wire is the ± 1 % which
// IEC 60317-0-1 allows medium wire, from memory, not opened
export const toleranceSchema = z.strictObject({
  magnetAround_mm: within('mm', 20, 0.5, 'Each magnet beside its place, along the circumference'),
  magnetAcross_mm: within(
    'mm',
    20,
    0.5,
    'Each magnet along the radius of a disc, or along the shaft of a drum',
  ),
  magnetHeight_mm: within(
    'mm',
    5,
    0.2,
    'Each magnet’s face nearer or farther: glue bed, seat, its own thickness',
  ),
  magnetStrength_percent: within('percent', 50, 2, 'Each magnet’s strength against the mean of its batch'),
  rotorCentre_mm: within(
    'mm',
    10,
    0.2,
    'Ring of magnets off the shaft’s axis; a dial at the rim swings by twice this',
  ),
  discWobble_mm: within('mm', 10, 0.4, 'Swing of a dial on a disc’s face at the magnets, over one turn'),
  faceDistance_mm: within('mm', 10, 0.3, 'Distance of the two faces, or of the plate opposite'),
  statorDistance_mm: within('mm', 10, 0.3, 'The whole winding nearer or farther from the magnets'),
  statorTilt_mm: within('mm', 20, 0.5, 'Gap on the wide side less that on the narrow side'),
  statorCentre_mm: within('mm', 20, 0.5, 'Middle of the stator off the shaft’s axis'),
  coilAround_mm: within(
    'mm',
    20,
    1,
    'Each coil, or each run of a wave, beside its place along the circumference',
  ),
  coilAcross_mm: within('mm', 20, 1, 'Each coil along the radius of a disc, or along the shaft of a drum'),
  coilHeight_mm: within('mm', 10, 0.2, 'Each coil nearer or farther than the others'),
  bundleDepth_mm: within('mm', 10, 0.3, 'Depth of each bundle'),
  turnLength_percent: within('percent', 30, 2, 'Wire of a turn, by how tightly each coil is wound'),
  miscounted_percent: quantity('percent', {
    min: 0,
    max: 100,
    help: 'Coils whose turns are miscounted, as many too few as too many',
  }).default(10),
  mostTurnsOff: count({ min: 1, max: 50, help: 'By how many turns at most' }).default(1),
  wireDiameter_percent: within('percent', 10, 1, 'Diameter of the reel’s wire against its label'),
  target: z
    .strictObject({
      volts_percent: quantity('percent', {
        min: 0.1,
        max: 100,
        help: 'Mean volts of the phases may differ from the drawing’s by so much',
      }).default(5),
      power_percent: quantity('percent', {
        min: 0.1,
        max: 100,
        help: 'Watts in the wind of the goal may fall short of the drawing’s by so much',
      }).default(5),
      imbalance_percent: quantity('percent', {
        min: 0.1,
        max: 100,
        help: 'Strongest phase less the weakest, over their mean, beyond what the drawing has',
      }).default(5),
      clearance_mm: quantity('mm', {
        min: 0,
        max: 20,
        help: 'Air that must be left all round between rotor and stator',
      }).default(0.5),
    })
    .prefault({}),
})

/** Every tolerance by its name in the document, without those that only shape another. */
export const toleranceNames = [
  'magnetAround_mm',
  'magnetAcross_mm',
  'magnetHeight_mm',
  'magnetStrength_percent',
  'rotorCentre_mm',
  'discWobble_mm',
  'faceDistance_mm',
  'statorDistance_mm',
  'statorTilt_mm',
  'statorCentre_mm',
  'coilAround_mm',
  'coilAcross_mm',
  'coilHeight_mm',
  'bundleDepth_mm',
  'turnLength_percent',
  'miscounted_percent',
  'wireDiameter_percent',
] as const satisfies readonly (keyof z.output<typeof toleranceSchema>)[]

export type ToleranceName = (typeof toleranceNames)[number]
