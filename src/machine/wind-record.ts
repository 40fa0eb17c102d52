/** How the wind of a site was found: whose it is, how whole, and where the anemometer stood. */
import { z } from 'zod'
import { choice, flag, quantity } from './field.ts'

export const windRecordSchema = z
  .strictObject({
    origin: choice(['own mast', 'roof', 'weather station', 'map', 'not said'], {
      help: 'Whose wind it is: of a mast at the site, over a roof, of a station elsewhere, off a map',
    }).default('not said'),
    complete_percent: quantity('percent', {
      min: 0,
      max: 100,
      help: 'Readings there are, of those that the time from first to last would hold',
    }).optional(),
    boom_mm: quantity('mm', {
      min: 0,
      max: 20_000,
      help: 'From the middle of the mast to the anemometer beside it; 0 where it stands on the very top',
    }).optional(),
    mastWidth_mm: quantity('mm', {
      min: 1,
      max: 5000,
      help: 'Diameter of the mast at the height of the anemometer',
    }).optional(),
    rotorDistance_m: quantity('m', {
      min: 0,
      max: 5000,
      symbol: 'L',
      help: 'From the anemometer to the mast of the rotor; left out, no rotor turned near it',
    }).optional(),
    rotorBearing_deg: quantity('deg', {
      min: 0,
      max: 360,
      help: 'Compass bearing from the anemometer to the rotor: wind from there comes through the blades',
    }).optional(),
    wakeLeftOut: flag({ help: 'Winds that come through the blades or past the mast were left out' }).default(
      false,
    ),
    clockDrift_s: quantity('s', {
      min: -1e7,
      max: 1e7,
      help: 'How far the logger’s clock was ahead of a good one when it was read out',
    }).optional(),
  })
  .optional()
  .meta({ description: 'How the wind was recorded' })
