/** What the machine is for, and how strict its checks must be. */
import { z } from 'zod'
import { choice, quantity, text } from './field.ts'
import { safetyClasses } from './safety-class.ts'

export const purposeSchema = z.strictObject({
  class: choice(safetyClasses, {
    help: 'demonstration: by hand or fan, under about 5 W; bench: driven by a drill or lathe; outdoor: must survive unattended',
  }),
  goal: text(400, { help: 'What the machine is to do, in your own words' }).optional(),
  power_W: quantity('W', { min: 0.001, max: 20_000, symbol: 'P', help: 'Power wanted' }).optional(),
  atWind_m_per_s: quantity('m_per_s', {
    min: 0.5,
    max: 40,
    symbol: 'v',
    help: 'Wind at which that power is wanted; a power without its wind says nothing',
  }).optional(),
})
