/** What keeps the rotor from running away. */
import { z } from 'zod'
import { choice, quantity } from './field.ts'

export const protectionSchema = z.strictObject({
  mechanical: choice(['none', 'furling tail', 'pitching blades', 'friction brake'], {
    help: 'A limiter that works without any electrical part',
  }).default('none'),
  actsAt_m_per_s: quantity('m_per_s', {
    min: 3,
    max: 40,
    help: 'Wind above which the mechanical limiter holds the power',
  }).optional(),
  electrical: choice(['none', 'shorting switch', 'dump load'], {
    help: 'A limiter that needs the winding and its connections to be whole',
  }).default('none'),
})
