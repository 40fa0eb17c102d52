/** Intervals, causes and what to measure next, as data for other programs; each result with its name and unit. */
import type { ResultSpread, SpreadStudy, Spreads } from '../analysis/spread.ts'
import type { SpreadOutput } from '../analysis/spread-output.ts'
import { fromSi, unit } from '../units/unit.ts'

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json }

/** How a result is told: its line in a table, its name for programs, and its unit, of the SI value times `scale`. */
export interface SpreadWords {
  readonly title: string
  readonly name: string
  readonly suffix: string
  readonly scale: number
}

const words = (title: string, name: string, suffix: string, scale = 1): SpreadWords => ({
  title,
  name,
  suffix,
  scale,
})

const hundredRpm = (100 * 2 * Math.PI) / 60

/** In reading order. */
export const spreadWords: Readonly<Record<SpreadOutput, SpreadWords>> = {
  energy: words('energy of a year', 'energy', 'kWh'),
  usefulPower: words('power in the telling wind', 'usefulPower', 'W'),
  meanWindPower: words('power in the mean wind', 'meanWindPower', 'W'),
  strongWindPower: words('power in twice the mean wind', 'strongWindPower', 'W'),
  startWind: words('wind that starts the rotor', 'startWind', 'm_per_s'),
  cutInWind: words('wind in which current begins', 'cutInWind', 'm_per_s'),
  cutInSpeed: words('speed at which current begins', 'cutInSpeed', 'rpm'),
  phaseVoltage: words('volts of a phase at 100 rpm', 'phaseVoltageAt100rpm', 'V', hundredRpm),
  copperTemperature: words('copper in the telling wind', 'copperTemperature', 'degC'),
  hottestCopper: words('copper at its hottest', 'hottestCopper', 'degC'),
  runawaySpeed: words('speed with the load lost', 'runawaySpeed', 'rpm'),
  runawayVoltage: words('direct volts with the load lost', 'runawayVoltage', 'V'),
  magnetForce: words('pull on a magnet, load lost', 'magnetForce', 'N'),
}

export const spreadNames = Object.values(spreadWords).map(({ name, suffix }) => `${name}_${suffix}`)

/** The result in the SI unit of its words. */
export function scaledSpread(spread: ResultSpread, scale: number): ResultSpread {
  if (scale === 1) return spread
  const { value, low, high, median, spread: half, next } = spread
  return {
    ...spread,
    value: scale * value,
    low: scale * low,
    high: scale * high,
    median: scale * median,
    spread: scale * half,
    next: next.map((each) => ({ ...each, low: scale * each.low, high: scale * each.high })),
  }
}

function intervalResult(
  spread: ResultSpread,
  { suffix, scale }: SpreadWords,
): { readonly [key: string]: Json } {
  const scaled = scaledSpread(spread, scale)
  const at = (si: number) => (Number.isFinite(si) ? fromSi(si, unit(suffix)) : null)
  const { divisor, factor } = unit(suffix)
  return {
    value: at(scaled.value),
    low: at(scaled.low),
    high: at(scaled.high),
    median: at(scaled.median),
    // a temperature's half-width is a difference
    spread: (scaled.spread * divisor) / factor,
    never: scaled.never,
    causes: scaled.causes.map((cause) => ({ ...cause })),
    together: scaled.together,
    pair: scaled.pair ?? null,
  }
}

export const intervalResults = (spreads: Spreads): { readonly [key: string]: Json } =>
  Object.fromEntries(
    Object.entries(spreadWords).map(([output, told]) => [
      `${told.name}_${told.suffix}`,
      intervalResult(spreads[output as SpreadOutput], told),
    ]),
  )

/** The whole study: how it was drawn, every result, and what to measure next for it. */
export function spreadResult({ results, samples, states, seed, drawn, asked }: SpreadStudy): Json {
  const { telling, mean, strong } = asked
  return {
    samples,
    states,
    seed,
    drawn,
    winds_m_per_s: { telling, mean, strong },
    results: Object.fromEntries(
      Object.entries(spreadWords).map(([output, told]) => {
        const spread = results[output as SpreadOutput]
        const at = (si: number) => fromSi(si * told.scale, unit(told.suffix))
        return [
          `${told.name}_${told.suffix}`,
          {
            ...intervalResult(spread, told),
            measureNext: spread.next.map(({ low, high, ...rest }) => ({
              ...rest,
              low: at(low),
              high: at(high),
            })),
          },
        ]
      }),
    ),
  }
}
