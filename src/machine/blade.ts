/** The blade rotor: an optimum shape to be computed, blades as measured, or a table of power coefficients. */
import { z } from 'zod'
import { sectionNames } from '../data/airfoil/index.ts'
import { bladePolarSchema, ownSection } from './blade-polar.ts'
import { dragRotorSchema, straightBladeSchema } from './blade-vertical.ts'
import { choice, count, flag, quantity } from './field.ts'

const diameter_m = quantity('m', {
  min: 0.05,
  max: 12,
  symbol: 'D',
  help: 'Diameter swept by the blade tips',
})
const bladeCount = count({ min: 1, max: 24, symbol: 'B', help: 'Number of blades' })
const hubDiameter_mm = quantity('mm', {
  min: 0,
  max: 3000,
  help: 'Diameter inside which there is hub, not blade',
}).optional()
const pitch_deg = quantity('deg', {
  min: -30,
  max: 90,
  symbol: 'β',
  help: 'Angle added to the twist of every station; positive turns the leading edge into the wind',
}).default(0)
const section = choice([...sectionNames, ownSection], { help: 'Blade section whose lift and drag are used' })
const polar = bladePolarSchema.optional()
const mass_kg = quantity('kg', {
  min: 1e-4,
  max: 200,
  symbol: 'm',
  help: 'Mass of one blade, weighed; left out, it is estimated from its shape',
}).optional()

export const bladeSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('optimum').meta({ description: 'Chord and twist computed for a tip-speed ratio' }),
    diameter_m,
    bladeCount,
    hubDiameter_mm,
    pitch_deg,
    section,
    polar,
    mass_kg,
    tipSpeedRatio: quantity('1', {
      min: 0.5,
      max: 14,
      symbol: 'λ',
      help: 'Tip speed over wind speed for which the blade is shaped',
    }),
    ratioFrom: choice(['chosen', 'read under load', 'read turning freely'], {
      help: 'Where that ratio comes from: chosen, or read on a rotor that was loaded or turned freely',
    }).default('chosen'),
    straightTaper: flag({ help: 'Chord and twist run straight from root to tip, for carving' }).default(
      false,
    ),
  }),
  z.strictObject({
    kind: z.literal('stations').meta({ description: 'Blades as drawn or measured' }),
    diameter_m,
    bladeCount,
    hubDiameter_mm,
    pitch_deg,
    section,
    polar,
    mass_kg,
    stations: z
      .array(
        z.strictObject({
          radius_mm: quantity('mm', {
            min: 0,
            max: 6000,
            symbol: 'r',
            help: 'Distance of the station from the shaft',
          }),
          chord_mm: quantity('mm', { min: 1, max: 2000, symbol: 'c', help: 'Chord at the station' }),
          twist_deg: quantity('deg', {
            min: -30,
            max: 90,
            symbol: 'β',
            help: 'Angle between chord and plane of rotation at the station',
          }),
        }),
      )
      .min(2)
      .max(60)
      .meta({ description: 'Stations from root to tip' }),
  }),
  z.strictObject({
    kind: z.literal('table').meta({ description: 'Measured or published power coefficients' }),
    diameter_m,
    bladeCount: bladeCount.optional(),
    mass_kg,
    points: z
      .array(
        z.strictObject({
          tipSpeedRatio: quantity('1', { min: 0, max: 25, symbol: 'λ', help: 'Tip speed over wind speed' }),
          powerCoefficient: quantity('1', {
            min: 0,
            max: 0.592,
            symbol: 'C_P',
            help: 'Power over the power of the wind through the swept area; never above 16/27',
          }),
        }),
      )
      .min(3)
      .max(200)
      .meta({
        description:
          'Points in rising tip-speed ratio; the first and the last give no power: rest and runaway',
      }),
  }),
  straightBladeSchema,
  dragRotorSchema,
])
