/** What has been read on the bench, and what is claimed from it. */
import { z } from 'zod'
import { meterClasses } from '../data/meter.ts'
import { evidenceLevels, evidenceSchema } from './evidence.ts'
import { choice, flag, namesOf, quantity, text } from './field.ts'

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
      print_mm: quantity('mm', {
        min: 0,
        max: 5,
        help: 'Print or casting tolerance, as measured',
      }).optional(),
      bearing_mm: quantity('mm', {
        min: 0,
        max: 5,
        help: 'Play of the bearings along the gap, as measured',
      }).optional(),
      warp_mm: quantity('mm', {
        min: 0,
        max: 10,
        help: 'Warp and runout of rotor and stator, as measured',
      }).optional(),
      deflection_mm: quantity('mm', {
        min: 0,
        max: 20,
        help: 'Bending of one disc under the magnets’ pull, as measured; left out, it is computed',
      }).optional(),
    })
    .default({}),
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
        keptBack: flag({
          help: 'Kept back from every fit, so that it can judge what the others were used for',
        }).default(false),
      }),
    )
    .max(200)
    .meta({ description: 'Volts read at known speeds with nothing connected' })
    .default([]),
  fitted: choice(['nothing', 'remanence', 'air gap', 'remanence and air gap'], {
    help: 'What of this design was set so that it agrees with the volts above',
  }).default('nothing'),
  resistances: z
    .array(
      z.strictObject({
        resistance_ohm: quantity('ohm', { min: 1e-4, max: 1e5, symbol: 'R', help: 'What was read' }),
        place: choice(['phase', 'line to line'], { help: 'Between which points' }),
        method: choice(['two wires', 'four wires', 'not said'], {
          help: 'two wires: the probes of the meter; four wires: a known current, and volts at the winding’s own ends',
        }).default('not said'),
        winding_degC: quantity('degC', {
          min: -60,
          max: 300,
          symbol: 'ϑ',
          help: 'Temperature of the copper while reading; left out, it is not known',
        }).optional(),
      }),
    )
    .max(50)
    .meta({ description: 'Resistances read at the leads' })
    .default([]),
  template: z
    .strictObject({
      drawn_mm: quantity('mm', { min: 10, max: 1000, help: 'Edge of the check square as drawn' }).default(
        100,
      ),
      across_mm: quantity('mm', { min: 1, max: 2000, help: 'The same edge measured across the sheet' }),
      down_mm: quantity('mm', { min: 1, max: 2000, help: 'And measured down the sheet' }),
    })
    .optional()
    .meta({ description: 'The check square of a printed template, measured with a rule' }),
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
        efficiency_percent: quantity('percent', {
          min: 0,
          max: 1000,
          symbol: 'η',
          help: 'Efficiency from shaft to terminals, if one is claimed',
        }).optional(),
        efficiencyFrom: choice(['watts in and watts out', 'resistance when cold', 'resistance when hot'], {
          help: 'How the efficiency was found; left out, it is not said',
        }).optional(),
        level: choice(evidenceLevels, { help: 'What the claim calls itself' }).optional(),
        evidence: evidenceSchema,
        note: text(400, { help: 'Anything else' }).optional(),
      }),
    )
    .max(50)
    .meta({ description: 'Powers that somebody states, each with what it rests on' })
    .default([]),
})
