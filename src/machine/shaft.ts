/** The shaft between blades and magnets: what turns, what it turns in, what drives it. */
import { z } from 'zod'
import { choice, quantity } from './field.ts'

export const balanceGrades = ['G 2.5', 'G 6.3', 'G 16', 'G 40'] as const

/** What keeps a nut from shaking loose. */
export const threadLocks = [
  'wedge-locking washers',
  'prevailing-torque nut',
  'split pin or wire',
  'thread-locking adhesive',
  'two nuts',
  'spring washer',
  'nothing',
  'not said',
] as const

const lock = (help: string) => choice(threadLocks, { help }).default('not said')

const bearings = z
  .strictObject({
    spacing_mm: quantity('mm', {
      min: 2,
      max: 2000,
      symbol: 'L',
      help: 'Between the middles of the two bearings, or of the two rows of a hub',
    }),
    bladeOverhang_mm: quantity('mm', {
      min: 0,
      max: 2000,
      help: 'From the middle of the front bearing forward to the plane of the blades',
    }),
    magnetOverhang_mm: quantity('mm', {
      min: -2000,
      max: 2000,
      help: 'From the middle of the front bearing to the middle of the magnets: forward counts, behind it is below zero',
    }),
    bore_mm: quantity('mm', {
      min: 3,
      max: 200,
      help: 'Bore of the bearings, for ratings where you have no sheet',
    }).optional(),
    dynamicRating_N: quantity('N', {
      min: 50,
      max: 1e6,
      symbol: 'C',
      help: 'Basic dynamic rating of one bearing, from its sheet',
    }).optional(),
    staticRating_N: quantity('N', {
      min: 20,
      max: 1e6,
      symbol: 'C0',
      help: 'Basic static rating of one bearing, from its sheet',
    }).optional(),
    axialPlay_mm: quantity('mm', {
      min: 0,
      max: 5,
      help: 'Play along the shaft, measured by pushing and pulling the rotor',
    }).optional(),
  })
  .meta({ description: 'Two bearings, the front one nearer the blades' })

const key = z
  .strictObject({
    width_mm: quantity('mm', { min: 1, max: 60, symbol: 'b', help: 'Width of the key' }),
    height_mm: quantity('mm', { min: 1, max: 60, symbol: 'h', help: 'Height of the key' }),
    length_mm: quantity('mm', {
      min: 2,
      max: 400,
      symbol: 'l',
      help: 'Length of it that bears, rounded ends left out',
    }),
  })
  .meta({ description: 'A parallel key between shaft and hub' })

export const shaftSchema = z.strictObject({
  friction_mNm: quantity('mNm', {
    min: 0,
    max: 100_000,
    symbol: 'T',
    help: 'Torque of bearings and seals while turning',
  }).default(5),
  startingFriction_mNm: quantity('mNm', {
    min: 0,
    max: 100_000,
    help: 'Torque needed to start from rest; left out, the running friction',
  }).optional(),
  inertia_kg_m2: quantity('kg_m2', {
    min: 1e-7,
    max: 10_000,
    symbol: 'J',
    help: 'Moment of inertia of all that turns; left out, it is estimated from blades, magnets and steel',
  }).optional(),
  locking: z
    .strictObject({
      hub: lock('What keeps the nut that holds the rotor on its shaft'),
      bladeRoots: lock('What keeps the bolts at the blades’ roots'),
      studs: lock('What keeps the nuts of the studs that carry discs and stator'),
    })
    .optional()
    .meta({ description: 'What keeps each thread from shaking loose' }),
  diameter_mm: quantity('mm', {
    min: 2,
    max: 200,
    symbol: 'd',
    help: 'Smallest diameter of the steel shaft between blades and bearings',
  }).optional(),
  bore_mm: quantity('mm', { min: 0, max: 190, help: 'Hole through the shaft, 0 for a solid one' }).optional(),
  bearings: bearings.optional(),
  key: key.optional(),
  balanceGrade: choice(balanceGrades, {
    help: 'How well what turns is to be balanced; left out, G 16',
  }).optional(),
})
