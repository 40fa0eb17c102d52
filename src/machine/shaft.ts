/** The shaft between blades and magnets. */
import { z } from 'zod'
import { quantity } from './field.ts'

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
})
