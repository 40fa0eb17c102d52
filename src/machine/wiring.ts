/** Fuse, switch and surroundings of the wiring, as far as the checks need them. */
import { z } from 'zod'
import { choice, quantity } from './field.ts'

export const wiringSchema = z.strictObject({
  fuse_A: quantity('A', { min: 0.1, max: 1000, help: 'Rated amps of the fuse of the battery' }).optional(),
  fusePlace: choice(['near the battery', 'elsewhere', 'none', 'not said'], {
    help: 'Where the fuse of the battery sits: within a hand’s breadth of its terminal, or elsewhere',
  }).default('not said'),
  switchKind: choice(['for direct current', 'for alternating current only', 'none', 'not said'], {
    help: 'What the switch behind the bridge is made to break',
  }).default('not said'),
  switchVoltage_V: quantity('V', {
    min: 1,
    max: 2000,
    help: 'Direct volts on the label of that switch',
  }).optional(),
  surroundings: choice(['dry', 'wet', 'class room'], {
    help: 'Where people may touch the wiring: a dry room, outdoors or damp, among children',
  }).default('dry'),
  earthing: choice(['by a licensed person', 'not yet'], {
    help: 'Protective earthing and lightning protection are planned and checked by a licensed person, or not yet',
  }).default('not yet'),
})
