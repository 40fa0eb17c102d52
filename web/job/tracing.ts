/** The tracings laid over a design: what the pictures show of each. */

import { within } from '../../src/analysis/step.ts'
import { temperatureByWind } from '../../src/analysis/temperature-by-wind.ts'
import { shaftPower } from '../../src/analysis/watts.ts'
import { energyByWind } from '../../src/index.ts'
import { type WindSnapshot, windSnapshotOf } from '../snapshot.ts'
import { type JobSteps, job } from './job.ts'
import { knownChain } from './known-chain.ts'

export interface TracingAsked {
  readonly tracings: readonly { readonly id: string; readonly text: string }[]
  /** The wind looked at, for the waveforms [m/s]. */
  readonly wind: number
}

export interface DrawnTracing {
  readonly kind: 'drawn'
  readonly id: string
  /** Row by row of its own table of winds [m/s], [W]. */
  readonly wind: Float64Array
  readonly shaft: Float64Array
  readonly useful: Float64Array
  readonly energy: ReturnType<typeof energyByWind>
  readonly temperature: ReturnType<typeof temperatureByWind>
  /** One period in the wind looked at [m/s]. */
  readonly wave: WindSnapshot
  readonly waveWind: number
}

export interface RefusedTracing {
  readonly kind: 'refused'
  readonly id: string
  readonly reason: string
}

function* drawn(id: string, text: string, wind: number): JobSteps<DrawnTracing> {
  const chain = yield* knownChain(text)
  const { rows } = chain
  const row = rows.reduce(
    (best, each, k) => (Math.abs(each.wind - wind) < Math.abs(rows[best]!.wind - wind) ? k : best),
    0,
  )
  return {
    kind: 'drawn',
    id,
    wind: Float64Array.from(rows, (each) => each.wind),
    shaft: Float64Array.from(rows, ({ watts }) => shaftPower(watts)),
    useful: Float64Array.from(rows, ({ watts }) => watts.useful),
    energy: energyByWind(chain),
    temperature: temperatureByWind(chain),
    wave: windSnapshotOf(chain, row),
    waveWind: rows[row]!.wind,
  }
}

export const tracing = job({
  name: 'tracing',
  *steps({ tracings, wind }: TracingAsked): JobSteps<readonly (DrawnTracing | RefusedTracing)[]> {
    const answers: (DrawnTracing | RefusedTracing)[] = []
    for (const [k, { id, text }] of tracings.entries()) {
      try {
        const part = 1 / tracings.length
        answers.push(yield* within(drawn(id, text, wind) as Generator<number, DrawnTracing>, k * part, part))
      } catch (error) {
        // one that a newer engine refuses must not hide the others
        if (!(error instanceof RangeError)) throw error
        answers.push({ kind: 'refused', id, reason: error.message })
      }
    }
    return answers
  },
})
