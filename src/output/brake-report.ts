/** The study of the brake as a sentence and a table. */
import type { BrakeEnd, BrakeStudy } from '../analysis/brake-wind.ts'
import { formatSi } from '../units/format.ts'
import { bareNumber, copperText } from './scenario-number.ts'

export const brakeColumns = [
  'wind m/s',
  'working rpm',
  'to rpm',
  'no load rpm',
  'to rpm then',
  'parked to rpm',
  'copper °C',
] as const

export const brakeSentence = ({ rows, stops, stopsUnloaded, parks }: BrakeStudy): string => {
  const top = rows.at(-1)?.wind ?? 0
  const upTo = (wind: number): string =>
    wind >= top
      ? 'in every wind up to the storm'
      : wind > 0
        ? `up to ${formatSi(wind, 'm_per_s', 2)}`
        : 'in no wind'
  const least = Math.min(stops, stopsUnloaded)
  return `Shorted by itself, without the mechanical limiter, the winding stops the working rotor ${upTo(stops)}, one that has lost its load ${upTo(stopsUnloaded)}, and keeps a parked one ${upTo(parks)}.${
    least >= top
      ? ''
      : ` Above that the rotor turns on and the copper takes the heat: ${
          least > 0
            ? `never rely on the short above ${formatSi(least, 'm_per_s', 2)}`
            : 'never rely on the short'
        }.`
  }`
}

const endOf = ({ speed, holds }: BrakeEnd): string => `${bareNumber(speed, 'rpm')}${holds ? '' : ' lets go'}`

/** Every second row keeps the table short; the first and the last stay. */
export const brakeRows = ({ rows }: BrakeStudy): string[][] =>
  rows
    .filter((_, k) => rows.length <= 15 || k % 2 === (rows.length - 1) % 2)
    .map(({ wind, working, unloaded, parked }) => [
      bareNumber(wind, 'm_per_s'),
      bareNumber(working.from, 'rpm'),
      endOf(working),
      bareNumber(unloaded.from, 'rpm'),
      endOf(unloaded),
      endOf(parked),
      copperText(Math.max(working.copperTemperature, unloaded.copperTemperature)),
    ])
