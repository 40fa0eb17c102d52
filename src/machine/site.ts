/** The wind and air where the machine stands. */
import { z } from 'zod'
import { quantity } from './field.ts'

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
