/** The cable between the machine and the load. */
import { z } from 'zod'
import { choice, quantity } from './field.ts'

export const cableSchema = z.strictObject({
  length_m: quantity('m', {
    min: 0,
    max: 2000,
    help: 'Length of the route, one way; every conductor of the cable is counted for you',
  }),
  area_mm2: quantity('mm2', {
    min: 0.05,
    max: 400,
    symbol: 'A',
    help: 'Copper cross-section of one conductor',
  }),
  place: choice(['before bridge', 'after bridge'], {
    help: 'before bridge: alternating current in the cable; after bridge: direct current',
  }).default('after bridge'),
  series_mohm: quantity('mohm', {
    min: 0,
    max: 100_000,
    symbol: 'R',
    help: 'Resistor put into the direct-current line on purpose; left out, none',
  }).optional(),
})
