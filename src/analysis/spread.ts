/** How far the guesses in a design let its results be off, and which guess bears most of it. */
import type { Design } from '../machine/design.ts'
import type { Machine } from '../machine/machine.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { type Assumptions, type Chain, chainOf, usualAssumptions } from './compute.ts'
import { thermalSpread } from './stator-cooling.ts'
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
  /** Half-width at 90 %. */
  readonly spread: number
  /** The largest first; causes under one per cent are left out. */
  readonly causes: readonly SpreadCause[]
}

export type Spreads = Readonly<Record<SpreadOutput, ResultSpread>>

/** A guess, turned to either end of its spread. */
interface Guess {
  readonly path: string
  readonly at: (side: 1 | -1) => { readonly machine: Machine; readonly assumptions: Assumptions }
}

type Keys = readonly (string | number)[]

/** Quantities of the document that carry a spread above zero. */
function guessedKeys(value: unknown, keys: Keys = []): Keys[] {
  if (typeof value !== 'object' || value === null) return []
  const record = value as Record<string, unknown>
  if (typeof record.value === 'number' && typeof record.spread === 'number')
    return record.spread > 0 ? [keys] : []
  return Object.entries(record).flatMap(([key, inner]) =>
    guessedKeys(inner, [...keys, Array.isArray(value) ? Number(key) : key]),
  )
}

function shifted(value: unknown, keys: Keys, side: 1 | -1): unknown {
  const [key, ...rest] = keys
  if (key === undefined) {
    const quantity = value as { readonly value: number; readonly spread: number }
    return { ...quantity, value: quantity.value + side * quantity.spread }
  }
  if (Array.isArray(value)) return value.map((inner, k) => (k === key ? shifted(inner, rest, side) : inner))
  const record = value as Record<string, unknown>
  return { ...record, [key]: shifted(record[key], rest, side) }
}

const pathOf = (keys: Keys): string =>
  keys.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? key : `${text}.${key}`),
    '',
  )

function guessesOf(machine: Machine): Guess[] {
  const { design, rotor, stator } = machine
  const documented = guessedKeys(design).map(
    (keys): Guess => ({
      path: pathOf(keys),
      at: (side) => ({
        machine: resolveDesign(shifted(design, keys, side) as Design),
        assumptions: usualAssumptions,
      }),
    }),
  )
  const { remanence, remanenceSpread } = rotor.magnet
  const grade: Guess = {
    path: 'rotor.magnet.grade',
    at: (side) => ({
      machine: {
        ...machine,
        rotor: { ...rotor, magnet: { ...rotor.magnet, remanence: remanence + side * remanenceSpread } },
      },
      assumptions: usualAssumptions,
    }),
  }
  const cooling: Guess = {
    path: 'estimated thermal resistance',
    at: (side) => ({ machine, assumptions: { coolingFactor: 1 + side * thermalSpread } }),
  }
  return [
    ...documented,
    ...(remanenceSpread > 0 && design.rotor.magnet.grade !== undefined ? [grade] : []),
    ...(stator.thermalResistance === undefined ? [cooling] : []),
  ]
}

const leastShare = 0.01

/**
 * Spread of the results, guess by guess: each is turned to both ends of its spread through the whole chain and the
 * half differences add as independent errors, w = √Σ((f₊ − f₋)/2)². Thresholds between the ends are met, but guesses
 * that only matter together are not. Yields the fraction done.
 */
export function* spreadsOf(chain: Chain): Generator<number, Spreads> {
  const names = Object.keys(spreadOutputs) as SpreadOutput[]
  const guesses = guessesOf(chain.machine)
  const halves: { readonly path: string; readonly half: readonly number[] }[] = []
  for (const [k, { path, at }] of guesses.entries()) {
    const ends: number[][] = []
    for (const side of [1, -1] as const) {
      const { machine, assumptions } = at(side)
      const steps = chainOf(machine, assumptions)
      let step = steps.next()
      while (step.done !== true) {
        yield (k + (side === 1 ? 0 : 0.5) + 0.5 * step.value) / guesses.length
        step = steps.next()
      }
      const turned = step.value
      ends.push(names.map((name) => spreadOutputs[name](turned)))
    }
    // an end that is never reached, such as a current that never begins, has no width to add
    const half = names.map((_, n) => Math.abs(ends[0]![n]! - ends[1]![n]!) / 2)
    halves.push({ path, half: half.map((width) => (Number.isFinite(width) ? width : 0)) })
  }
  const results = names.map((name, n): [SpreadOutput, ResultSpread] => {
    const variance = halves.reduce((sum, { half }) => sum + half[n]! ** 2, 0)
    const causes = halves
      .map(({ path, half }) => ({ path, share: variance > 0 ? half[n]! ** 2 / variance : 0 }))
      .filter(({ share }) => share >= leastShare)
      .sort((a, b) => b.share - a.share)
    return [name, { value: spreadOutputs[name](chain), spread: Math.sqrt(variance), causes }]
  })
  return Object.fromEntries(results) as unknown as Spreads
}
