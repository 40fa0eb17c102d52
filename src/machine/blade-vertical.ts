/** Blades of a rotor with an upright axis: straight blades with lift, or half drums with drag. */
import { z } from 'zod'
import { sectionNames } from '../data/airfoil/index.ts'
import { strutShapes } from '../data/strut.ts'
import { bladePolarSchema, ownSection } from './blade-polar.ts'
import { choice, count, namesOf, quantity } from './field.ts'

const height_m = quantity('m', {
  min: 0.05,
  max: 20,
  symbol: 'H',
  help: 'Height of the rotor; the swept area is height times diameter',
})

export const straightBladeSchema = z.strictObject({
  kind: z
    .literal('straight-blade')
    .meta({ description: 'Upright axis: straight blades that work by lift, as long as the rotor is high' }),
  diameter_m: quantity('m', {
    min: 0.05,
    max: 12,
    symbol: 'D',
    help: 'Diameter of the circle on which the blades go round',
  }),
  height_m,
  bladeCount: count({ min: 1, max: 12, symbol: 'B', help: 'Number of blades' }),
  chord_mm: quantity('mm', { min: 2, max: 3000, symbol: 'c', help: 'Chord, the same over the whole blade' }),
  pitch_deg: quantity('deg', {
    min: -20,
    max: 20,
    symbol: 'β',
    help: 'Angle between the chord and the tangent of the circle at the mounting; positive: leading edge outward',
  }).default(0),
  mountAt: quantity('1', {
    min: 0,
    max: 1,
    help: 'Where the blade is mounted: distance from the leading edge over the chord. The nearer to it, the more the circular path works like a leading edge turned inward',
  }).default(0.25),
  section: choice([...sectionNames, ownSection], {
    help: 'Blade section whose lift and drag are used; symmetric ones are usual, and the NACA 0018 and 0021 are known round the whole circle',
  }),
  polar: bladePolarSchema.optional(),
  strutsPerBlade: count({ min: 0, max: 6, help: 'Arms from the shaft to each blade' }).default(2),
  strutThickness_mm: quantity('mm', {
    min: 0,
    max: 200,
    help: 'Thickness of an arm as the air meets it: for a flat bar lying flat, its small edge',
  }).default(8),
  strutShape: choice(namesOf(strutShapes), { help: 'Shape of the arms, which decides their drag' }).default(
    'flat bar',
  ),
})

export const dragRotorSchema = z.strictObject({
  kind: z
    .literal('drag-rotor')
    .meta({ description: 'Upright axis: half drums that work by drag, slow and strong' }),
  diameter_m: quantity('m', {
    min: 0.05,
    max: 12,
    symbol: 'D',
    help: 'Diameter swept by the outer edges of the buckets',
  }),
  height_m,
  bucketCount: choice(['two', 'three'], {
    help: 'Buckets of a storey: two give more power, three start more evenly',
  }),
  overlap: choice(['none', 'a tenth to a sixth', 'a fifth or more'], {
    help: 'How far the inner edges of the buckets reach past each other, against the width of a bucket',
  }).default('a tenth to a sixth'),
  storeys: choice(['one', 'two'], {
    help: 'two: two sets of buckets on one shaft, each half as high, a quarter turn apart, so that one always starts',
  }).default('one'),
})
