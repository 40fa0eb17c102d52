/** Metal that stands still near the turning magnets: plates, rings and bolts in which eddy currents brake the rotor. */
import { z } from 'zod'
import { conductors } from '../data/conductor.ts'
import { choice, count, namesOf, quantity } from './field.ts'

const material = choice(namesOf(conductors), { help: 'What it is made of' })
const thickness_mm = quantity('mm', { min: 0.01, max: 100, help: 'Thickness of the sheet' })
const distance_mm = quantity('mm', {
  min: 0,
  max: 500,
  help: 'From the magnet faces to the side of the metal that looks at them',
})
const length_mm = quantity('mm', {
  min: 1,
  max: 2000,
  help: 'Along the magnets’ length: along the shaft on a drum, along the radius on a disc',
})

export const metalPartSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z
      .literal('plate')
      .meta({ description: 'A sheet that the magnets pass over, such as a carrier of the stator' }),
    material,
    thickness_mm,
    distance_mm,
    length_mm,
    covers_deg: quantity('deg', {
      min: 0.1,
      max: 360,
      help: 'Angle about the shaft that it covers, all pieces together',
    }).default(360),
  }),
  z.strictObject({
    kind: z
      .literal('ring')
      .meta({ description: 'A closed ring or sleeve about the shaft that stands still' }),
    material,
    thickness_mm,
    distance_mm,
    length_mm,
  }),
  z.strictObject({
    kind: z.literal('bolt').meta({ description: 'A round bar or screw' }),
    material,
    diameter_mm: quantity('mm', { min: 0.1, max: 100, help: 'Diameter of its metal' }),
    length_mm: quantity('mm', { min: 0.5, max: 1000, help: 'Length of it that is in the field' }),
    axis: choice(['through', 'along'], {
      help: 'Through: from the magnets away; along: along the magnets’ length',
    }).default('through'),
    distance_mm: quantity('mm', { min: 0, max: 500, help: 'From the magnet faces to its middle' }),
    offset_mm: quantity('mm', {
      min: -2000,
      max: 2000,
      help: 'Its middle beside the middle of the magnets, along their length; outward on a disc',
    }).default(0),
    count: count({ min: 1, max: 200, help: 'How many of them' }).default(1),
  }),
])
