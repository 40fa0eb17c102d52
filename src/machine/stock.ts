/** What a maker has at hand before there is any design: magnets, wire, a battery, a wind, a printer. */
import { z } from 'zod'
import { batteryChemistries } from '../data/battery.ts'
import { magnetGrades } from '../data/magnet-grade.ts'
import { type Fault, faultsOf } from './fault.ts'
import { choice, count, flag, namesOf, quantity } from './field.ts'
import { safetyClasses } from './safety-class.ts'
import { wireSizeSchema } from './wire-size.ts'

const thickness_mm = quantity('mm', {
  min: 0.5,
  max: 100,
  help: 'Edge along the magnetisation, from pole face to pole face',
})

export const stockSchema = z.strictObject({
  class: choice(safetyClasses, {
    help: 'demonstration: by hand or fan, under about 5 W; bench: driven by a drill or lathe; outdoor: must survive unattended',
  }).default('outdoor'),
  magnet: z.discriminatedUnion('shape', [
    z.strictObject({
      shape: z.literal('block').meta({ description: 'A block with square corners' }),
      length_mm: quantity('mm', { min: 2, max: 200, help: 'Longer edge of the pole face' }),
      width_mm: quantity('mm', { min: 2, max: 200, help: 'Shorter edge of the pole face' }),
      thickness_mm,
    }),
    z.strictObject({
      shape: z.literal('disc').meta({ description: 'A round disc, its poles on the round faces' }),
      diameter_mm: quantity('mm', { min: 3, max: 150, help: 'Diameter of the round faces' }),
      thickness_mm,
    }),
  ]),
  magnetCount: count({ min: 4, max: 120, help: 'How many of these magnets you have' }),
  grade: choice(namesOf(magnetGrades), { help: 'Grade as the shop names it; N35 is the least sold' }).default(
    'N35',
  ),
  wire: z.strictObject({
    size: wireSizeSchema,
    reelMass_g: quantity('g', {
      min: 1,
      max: 1e6,
      help: 'Weight of the wire on the reels that you have; left out, as much as it takes',
    }).optional(),
  }),
  store: z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('battery').meta({ description: 'A battery to be charged' }),
      chemistry: choice(namesOf(batteryChemistries), { help: 'Chemistry of the cells' }),
      label_V: quantity('V', { min: 1, max: 60, help: 'Volts on its label: 12, 24, 48' }),
      capacity_Ah: quantity('Ah', { min: 0.05, max: 10_000, help: 'Charge it holds' }).optional(),
    }),
    z.strictObject({
      kind: z.literal('resistor').meta({ description: 'A resistor or small lamp of about that resistance' }),
      resistance_ohm: quantity('ohm', { min: 0.1, max: 1e5, symbol: 'R', help: 'Its resistance when hot' }),
    }),
  ]),
  meanWind_m_per_s: quantity('m_per_s', {
    min: 1,
    max: 15,
    symbol: 'v',
    help: 'Mean wind of a year where the rotor will stand; before a fan, the fan’s wind',
  }),
  wish: z
    .strictObject({
      power_W: quantity('W', { min: 0.001, max: 20_000, symbol: 'P', help: 'Power wished for' }),
      atWind_m_per_s: quantity('m_per_s', {
        min: 0.5,
        max: 40,
        symbol: 'v',
        help: 'Wind in which it is wished for; a power without its wind says nothing',
      }),
    })
    .meta({ description: 'Power wished for; left out, as much as the stock gives' })
    .optional(),
  printerBed_mm: quantity('mm', {
    min: 60,
    max: 1000,
    help: 'Shorter side of what your printer prints; left out, parts are cut or cast',
  }).optional(),
  steelPlates: flag({ help: 'Whether you can get steel plates cut to size' }).default(true),
  winding: choice(['coils', 'serpentine', 'either'], {
    help: 'Single coils, one wave of wire for each phase, or whichever does better',
  }).default('either'),
})

/** What a maker has, with defaults filled in. */
export type Stock = z.output<typeof stockSchema>

export type ParsedStock =
  | { readonly ok: true; readonly stock: Stock }
  | { readonly ok: false; readonly faults: readonly Fault[] }

export function parseStock(input: unknown): ParsedStock {
  const result = stockSchema.safeParse(input)
  return result.success
    ? { ok: true, stock: result.data }
    : { ok: false, faults: faultsOf(result.error, stockSchema, input) }
}
