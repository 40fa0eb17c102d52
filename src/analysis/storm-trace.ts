/** The trace of a storm: its quantities at even times, for pictures and tables. */
import type { StormWind } from './storm-wind.ts'

export const traceColumns = [
  'time',
  'wind',
  'speed',
  'voltage',
  'current',
  'phaseCurrent',
  'copperTemperature',
  'kept',
] as const
export type TraceColumn = (typeof traceColumns)[number]

/** [s], [m/s], [rad/s], [V], [A], [A rms], [K], and the share of the wind that the limiter leaves. */
export type StormTrace = Readonly<Record<TraceColumn, Float64Array>>

type Sample = Readonly<Record<Exclude<TraceColumn, 'time' | 'wind'>, number>>

const mostSamples = 600
const leastInterval = 0.05

/** Keeps samples at even times, straight between the steps. */
export function traceRecorder(wind: StormWind): {
  readonly trace: StormTrace
  readonly record: (time: number, sample: Sample) => void
} {
  const count = Math.min(mostSamples, Math.max(2, Math.ceil(wind.duration / leastInterval)))
  const trace = Object.fromEntries(
    traceColumns.map((name) => [name, new Float64Array(count + 1)]),
  ) as unknown as StormTrace
  let next = 0
  let before: { readonly time: number; readonly sample: Sample } | undefined
  return {
    trace,
    record: (time, sample) => {
      for (; next <= count && (next * wind.duration) / count <= time + 1e-9; next++) {
        const t = (next * wind.duration) / count
        const span = before === undefined ? 0 : time - before.time
        const share = before === undefined || span <= 0 ? 1 : Math.min(1, (t - before.time) / span)
        trace.time[next] = t
        trace.wind[next] = wind.at(t)
        for (const name of Object.keys(sample) as (keyof Sample)[]) {
          const from = before?.sample[name] ?? sample[name]
          trace[name][next] = from + share * (sample[name] - from)
        }
      }
      before = { time, sample }
    },
  }
}
