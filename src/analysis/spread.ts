/** How far the guesses in a design let its results be off, and which guess bears most of it. */
import { type Chain, chainOf } from './compute.ts'
import { guessesOf } from './guess.ts'
import { type Steps, within } from './step.ts'
import { tellingRow } from './telling-wind.ts'

/** Results that carry a spread: their names, and how to read them off a chain, in SI units. */
export const spreadOutputs = {
  energy: ({ year }: Chain) => year.energy,
  usefulPower: (chain: Chain) => tellingRow(chain).watts.useful,
  cutInSpeed: ({ generator }: Chain) => generator.cutIn,
  cutInWind: ({ cutInWind }: Chain) => cutInWind,
  phaseVoltage: ({ voltage }: Chain) => voltage.phases[0]!.rms,
  copperTemperature: (chain: Chain) => tellingRow(chain).copperTemperature,
  runawaySpeed: ({ runaway }: Chain) => runaway.speed,
} as const satisfies Record<string, (chain: Chain) => number>

export type SpreadOutput = keyof typeof spreadOutputs

export interface SpreadCause {
  /** Where the guess stands in the document; an assumption of the engine has a plain name. */
  readonly path: string
  /** Share of the variance, 0…1. */
  readonly share: number
}

export interface ResultSpread {
  readonly value: number
  /** Half-width at 90 %; 0 where no guess moves it. */
  readonly spread: number
  /** With some guess at an end of its spread, the thing never happens (no current, no start). */
  readonly mayFail: boolean
  /** The largest first; causes under one per cent are left out. */
  readonly causes: readonly SpreadCause[]
}

export type Spreads = Readonly<Record<SpreadOutput, ResultSpread>>

const leastShare = 0.01

/**
 * How far the unloaded speed may be off with the drag of the blades' sections, as a share: from the Reynolds numbers of
 * a working wind, where sections drag most, to those of a gust, which the runaway is told for. 0 for a table of powers.
 */
function runawayShare({
  byWind,
  tipSpeedRatio,
  power,
  runaway,
}: Pick<Chain['rotor'], 'byWind' | 'tipSpeedRatio' | 'power' | 'runaway'>): number {
  if (byWind === undefined || !(runaway > 0)) return 0
  let last = power.length - 1
  while (last > 0 && !(power[last]! > 0)) last--
  const [λ, P] = [tipSpeedRatio[last]!, power[last]!]
  const beyond = last + 1 < power.length ? last + 1 : last
  const zero = beyond > last ? λ + ((tipSpeedRatio[beyond]! - λ) * P) / (P - power[beyond]!) : λ
  return Math.max(0, 1 - zero / runaway)
}

/**
 * Spread of the results, guess by guess: each is turned to both ends of its spread through the whole chain, the larger
 * of the two changes counts, and they add as independent errors, w = √Σ max(|f₊ − f₀|, |f₋ − f₀|)². Thresholds
 * between the ends are met; guesses that only matter together are not. Where a machine has two states, half of what
 * lies between them in the year's energy counts as one more, and so does the drag of the blade sections for the runaway. Yields the fraction done.
 */
export function* spreadsOf(chain: Chain): Steps<Spreads> {
  const names = Object.keys(spreadOutputs) as SpreadOutput[]
  const values = names.map((name) => spreadOutputs[name](chain))
  const guesses = guessesOf(chain.machine)
  const changes: { readonly path: string; readonly change: readonly number[] }[] = []
  for (const [k, { path, at }] of guesses.entries()) {
    const change = names.map(() => 0)
    for (const [end, side] of ([1, -1] as const).entries()) {
      const { machine, assumptions } = at(side)
      const width = 1 / (2 * guesses.length)
      const turned = yield* within(
        chainOf(machine, { assumptions, previous: chain }),
        (2 * k + end) * width,
        width,
      )
      names.forEach((name, n) => {
        change[n] = Math.max(change[n]!, Math.abs(spreadOutputs[name](turned) - values[n]!))
      })
    }
    changes.push({ path, change })
  }
  if (chain.year.hysteresis > leastShare * chain.year.energy)
    changes.push({
      path: 'two states in the same wind',
      change: names.map((name) => (name === 'energy' ? chain.year.hysteresis : 0)),
    })
  const dragged = runawayShare(chain.rotor) * chain.runaway.speed
  if (dragged > 0)
    changes.push({
      path: 'drag of the blade sections',
      change: names.map((name) => (name === 'runawaySpeed' ? dragged : 0)),
    })
  const results = names.map((name, n): [SpreadOutput, ResultSpread] => {
    const value = values[n]!
    // an end that is never reached is no width but a warning; a value that is never reached has neither
    const finite = changes.map(({ path, change }) => ({
      path,
      width: Number.isFinite(change[n]) ? change[n]! : 0,
    }))
    const variance = finite.reduce((sum, { width }) => sum + width ** 2, 0)
    const causes = finite
      .map(({ path, width }) => ({ path, share: variance > 0 ? width ** 2 / variance : 0 }))
      .filter(({ share }) => share >= leastShare)
      .sort((a, b) => b.share - a.share)
    const mayFail = changes.some(({ change }) => change[n] === Number.POSITIVE_INFINITY)
    return [name, { value, spread: Math.sqrt(variance), mayFail, causes }]
  })
  return Object.fromEntries(results) as unknown as Spreads
}
