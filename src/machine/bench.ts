/** What has been read on the bench, and what is claimed from it. */
import { z } from 'zod'
import { meterClasses } from '../data/meter.ts'
import { choice, namesOf, quantity, text } from './field.ts'

export const voltageKinds = ['rms', 'peak', 'rectified mean', 'direct', 'unsaid'] as const
export const voltagePlaces = ['phase', 'line to line', 'after bridge', 'unsaid'] as const

export const benchSchema = z.strictObject({
  meterLowestFrequency_Hz: quantity('Hz', {
    min: 0,
    max: 1000,
    help: 'Lowest frequency at which your meter still reads alternating volts',
  }).default(45),
  meter: z
    .strictObject({
      kind: choice(namesOf(meterClasses), { help: 'What sort of meter you read with' }),
      lowestFrequency_Hz: quantity('Hz', {
        min: 0,
        max: 1000,
        help: 'From its sheet, if it says another than the one above; 0 where it reads from direct current on',
      }).optional(),
      inputResistance_ohm: quantity('ohm', {
        min: 1000,
        max: 1e12,
        symbol: 'R',
        help: 'What it draws on when it reads volts; hand meters have one or ten million ohms',
      }).optional(),
      lead_mohm: quantity('mohm', {
        min: 0,
        max: 10_000,
        help: 'What it shows in ohms with its two probes held together',
      }).optional(),
    })
    .optional()
    .meta({ description: 'The meter you read with' }),
  clearanceLosses: z
    .strictObject({
      print_mm: quantity('mm', { min: 0, max: 5, help: 'Print or casting tolerance' }).default(0.3),
      bearing_mm: quantity('mm', { min: 0, max: 5, help: 'Play of the bearings along the gap' }).default(0.1),
      warp_mm: quantity('mm', { min: 0, max: 10, help: 'Warp and runout of rotor and stator' }).default(0.3),
      deflection_mm: quantity('mm', { min: 0, max: 20, help: 'Bending under the magnets’ pull' }).default(0),
    })
    .default({ print_mm: 0.3, bearing_mm: 0.1, warp_mm: 0.3, deflection_mm: 0 }),
  readings: z
    .array(
      z.strictObject({
        speed_rpm: quantity('rpm', { min: 0.1, max: 20_000, symbol: 'n', help: 'Speed while reading' }),
        voltage_V: quantity('V', {
          min: 0,
          max: 5000,
          symbol: 'U',
          help: 'What the meter showed, nothing connected',
        }),
        kind: choice(voltageKinds, { help: 'Kind of volts the meter shows' }).default('unsaid'),
        place: choice(voltagePlaces, { help: 'Between which points' }).default('unsaid'),
      }),
    )
    .max(200)
    .meta({ description: 'Volts read at known speeds with nothing connected' })
    .default([]),
  claims: z
    .array(
      z.strictObject({
        power_W: quantity('W', { min: 0, max: 1e6, symbol: 'P', help: 'Power claimed' }),
        from: choice(
          ['volts and amps into a load', 'open-circuit volts', 'open-circuit volts times short-circuit amps'],
          { help: 'What the claim rests on' },
        ),
        speed_rpm: quantity('rpm', {
          min: 0.1,
          max: 20_000,
          symbol: 'n',
          help: 'Speed of the claim',
        }).optional(),
        shaftTorque_Nm: quantity('Nm', {
          min: 0,
          max: 10_000,
          symbol: 'T',
          help: 'Torque at the shaft, if measured',
        }).optional(),
        note: text(400, { help: 'Anything else' }).optional(),
      }),
    )
    .max(50)
    .meta({ description: 'Powers that somebody states, each with what it rests on' })
    .default([]),
})
