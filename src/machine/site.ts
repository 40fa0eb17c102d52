/** The wind and air where the machine stands. */
import { z } from 'zod'
import { quantity } from './field.ts'
import { windRecordSchema } from './wind-record.ts'

export const siteSchema = z.strictObject({
  meanWind_m_per_s: quantity('m_per_s', {
    min: 0.1,
    max: 25,
    symbol: 'v̄',
    help: 'Mean wind speed of a year at the height where it was measured',
  }),
  measuredHeight_m: quantity('m', {
    min: 0.5,
    max: 300,
    symbol: 'z',
    help: 'Height above ground of that mean wind',
  }).default(10),
  hubHeight_m: quantity('m', {
    min: 0.2,
    max: 200,
    symbol: 'z',
    help: 'Height of the rotor hub above ground',
  }).default(10),
  shearExponent: quantity('1', {
    min: 0,
    max: 0.6,
    symbol: 'α',
    help: 'Exponent of the power law of wind with height: 0.14 open field, 0.2 hedges, 0.3 scattered trees',
  }).default(0.2),
  weibullShape: quantity('1', {
    min: 1,
    max: 6,
    symbol: 'k',
    help: 'Shape of the Weibull distribution of the wind; 2 is the Rayleigh distribution',
  }).default(2),
  averaging_s: quantity('s', {
    min: 0.01,
    max: 86_400,
    help: 'Time over which each reading behind the mean was averaged: 600 for ten minutes, 3600 for a station’s hours',
  }).optional(),
  turbulenceIntensity: quantity('1', {
    min: 0,
    max: 0.6,
    symbol: 'I',
    help: 'Standard deviation over mean within ten minutes: 0.1 over open fields, 0.2 and more among trees and houses',
  }).optional(),
  monthlyMean_m_per_s: z
    .array(z.number().min(0).max(30))
    .length(12)
    .meta({ description: 'Mean wind of each month, January first, at the height of the mean; m/s' })
    .optional(),
  windHistogram: z
    .strictObject({
      binWidth_m_per_s: quantity('m_per_s', {
        min: 0.05,
        max: 5,
        help: 'Width of each bin; the first begins at calm',
      }).default(0.5),
      count: z
        .array(z.number().min(0).max(1e12))
        .min(2)
        .max(400)
        .meta({ description: 'Readings or hours in each bin, the calmest first' }),
    })
    .meta({ description: 'Measured frequencies of the wind; they take the place of the Weibull shape' })
    .optional(),
  record: windRecordSchema,
  airDensity_kg_per_m3: quantity('kg_per_m3', {
    min: 0.5,
    max: 1.6,
    symbol: 'ρ',
    help: 'Density of the air; left out, it follows from altitude and temperature',
  }).optional(),
  altitude_m: quantity('m', { min: -430, max: 5000, help: 'Altitude above the sea' }).default(0),
  ambient_degC: quantity('degC', { min: -60, max: 60, symbol: 'ϑ', help: 'Temperature of the air' }).default(
    15,
  ),
  stormWind_m_per_s: quantity('m_per_s', {
    min: 5,
    max: 80,
    help: 'Gust that the machine must survive with the load lost',
  }).default(25),
})
