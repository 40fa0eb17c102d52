/** Which guesses are drawn together, in how many samples, and at which points: the same whoever computes them. */
import type { Machine } from '../machine/machine.ts'
import { sobolPoints } from '../numerics/low-discrepancy.ts'
import { normalQuantile } from '../numerics/normal-quantile.ts'
import { root } from '../numerics/root.ts'
import type { ShareBasis } from '../numerics/variance-share.ts'
import { refuse } from '../refusal/require.ts'
import type { Chain } from './compute.ts'
import { type Guess, guessesOf, supposedMachine } from './guess.ts'
import { stateInputs } from './sampled-chain.ts'
import { type AskedWinds, tableWind } from './spread-output.ts'
import { tellingWind } from './telling-wind.ts'
import { usualAssumptions } from './unjudged-chain.ts'

/** One thing that is drawn: a guess, or which of two states the machine is in. */
export interface Drawn {
  readonly path: string
  readonly basis: ShareBasis
  /** The shift in half-widths that it stays below with probability p. */
  readonly shift: (p: number) => number
  /** Undefined where it is no guess about the machine. */
  readonly guess: Guess | undefined
}

export interface SpreadPlan {
  readonly seed: number
  readonly samples: number
  /** Samples that share one draw of the blades, the magnets, the wire and the circuit. */
  readonly perState: number
  /** Those that move the costly parts come first; `stateDimensions` of them. */
  readonly drawn: readonly Drawn[]
  readonly stateDimensions: number
  /** p of every drawn thing, sample after sample, each strictly between 0 and 1. */
  readonly points: Float64Array
  /** Highest storm of all draws [m/s]. */
  readonly stormWind: number
  readonly asked: AskedWinds
  /** Winds whose useful power every draw tells besides [m/s]. */
  readonly curveWinds: readonly number[]
}

export interface SpreadOptions {
  /** A power of two, 16 … 16384; where none is asked for, 1024, or 256 of a machine whose circuit is dear to solve. */
  readonly samples?: number
  readonly seed?: number
  /** The draws tell the useful power in every wind of the table as well. */
  readonly curve?: boolean
}

/** The path under which two states in one wind are told as a cause. */
export const twoStates = 'two states in the same wind'

/** Half-width at 90 % of a normal distribution over its standard deviation. */
export const ninety = 1.6448536269514722

/** With less of the year between rising and falling winds it is no guess which of both blow. */
const leastHysteresis = 0.01

/** Samples to one state of the costly parts: few samples need states of their own the more. */
const perStateOf = (samples: number, dear: boolean): number =>
  dear || samples > 256 ? 16 : Math.max(1, samples / 32)

/** Where a whole-turn period or a converter makes a state dear, fewer must do. */
const usualSamples = 1024
const dearSamples = 256

export const fewestSamples = 16
export const mostSamples = 16384

/** Probability that a normal quantity stays below its z. */
const normalShare = (z: number): number => root((p) => normalQuantile(p) - z, [1e-6, 1 - 1e-6], 1e-12)

/** Drawn within its limits: a normal spread loses its tails there, a rectangular one its ends. */
export function drawnShift({ shape, limits }: Pick<Guess, 'shape' | 'limits'>): Drawn['shift'] {
  const [from, to] = limits()
  if (shape === 'rectangular') return (p) => from + p * (to - from)
  const [low, high] = [normalShare(from * ninety), normalShare(to * ninety)]
  return (p) => normalQuantile(low + p * (high - low)) / ninety
}

/** All that the chain is computed from; readings of the bench are compared with it, not fed into it. */
const chainInputs = ({ design, ...machine }: Machine): string =>
  JSON.stringify({ ...machine, bench: undefined, design: { ...design, bench: undefined } })

/** What a guess moves: the costly parts, the rest of the chain, or nothing that the chain asks for. */
function reachOf({ machine }: Chain, { at }: Guess): 'state' | 'rest' | 'nothing' {
  const inputs = stateInputs(machine, usualAssumptions)
  const whole = chainInputs(machine)
  const ends = ([1, -1] as const).map(at)
  if (ends.some((end) => stateInputs(end.machine, end.assumptions) !== inputs)) return 'state'
  return ends.some(
    (end) =>
      end.assumptions.coolingFactor !== usualAssumptions.coolingFactor || chainInputs(end.machine) !== whole,
  )
    ? 'rest'
    : 'nothing'
}

/** What is drawn for a chain, and where. */
export function spreadPlan(chain: Chain, options: SpreadOptions = {}): SpreadPlan {
  const { machine, year, voltage } = chain
  const dear = voltage.order !== 1 || machine.converter !== undefined
  const { samples = dear ? dearSamples : usualSamples, seed = 1, curve = false } = options
  if (!(samples >= fewestSamples && samples <= mostSamples && Number.isInteger(Math.log2(samples))))
    refuse({
      name: 'samples',
      condition: `a power of two from ${fewestSamples} to ${mostSamples}`,
      value: samples,
      code: 'not-a-choice',
    })
  const reached = guessesOf(machine).map((guess) => ({ guess, reach: reachOf(chain, guess) }))
  const of = (wanted: 'state' | 'rest'): Drawn[] =>
    reached
      .filter(({ reach }) => reach === wanted)
      .map(({ guess }) => ({
        path: guess.path,
        basis: guess.shape === 'normal' ? 'hermite' : 'legendre',
        shift: drawnShift(guess),
        guess,
      }))
  const state = of('state')
  const rest = of('rest')
  if (year.hysteresis > leastHysteresis * year.energy)
    rest.push({ path: twoStates, basis: 'legendre', shift: (p) => 2 * p - 1, guess: undefined })
  const drawn = [...state, ...rest]
  const perState = state.length === 0 ? samples : Math.min(samples / fewestSamples, perStateOf(samples, dear))
  const storms = rest.flatMap(({ guess, shift }) =>
    guess === undefined
      ? []
      : [shift(1e-9), shift(1 - 1e-9)].map(
          (end) => supposedMachine(machine, [guess], [end]).machine.site.stormWind,
        ),
  )
  const { stormWind } = machine.site
  return {
    seed,
    samples,
    perState,
    drawn,
    stateDimensions: state.length,
    points: nestedPoints({ samples, perState, seed, dimensions: drawn.length, state: state.length }),
    stormWind: Math.max(stormWind, ...storms),
    asked: {
      telling: tellingWind(chain).row.wind,
      mean: tableWind(year.meanWind, stormWind),
      strong: tableWind(2 * year.meanWind, stormWind),
    },
    curveWinds: curve ? chain.rows.map(({ wind }) => wind) : [],
  }
}

/**
 * Point n of one scrambled Sobol' sequence for what is drawn for every sample, point ⌊n/perState⌋ of it for what the
 * samples of a state share: each state meets an evenly filled set of the rest, and the states fill their own cube evenly.
 *
 * Accuracy: the 95 % end of a sum of four to ten normal inputs is off by 2 … 3 % of its distance from the middle (root
 * of the mean square over seeds) for 1024 samples and 64 states, 1.1 … 1.5 % for 4096 and 256, some 10 % for 256 and
 * 32; every sample its own state would give 1.9 … 2.7 %, chance 3 … 4.6 % for 1024.
 */
export function nestedPoints({
  samples,
  perState,
  seed,
  dimensions,
  state,
}: Record<'samples' | 'perState' | 'seed' | 'dimensions' | 'state', number>): Float64Array {
  if (dimensions === 0) return new Float64Array(0)
  const own = sobolPoints(samples, dimensions, seed)
  const points = own.slice()
  for (let n = 0; n < samples; n++)
    for (let k = 0; k < state; k++)
      points[n * dimensions + k] = own[Math.floor(n / perState) * dimensions + k]!
  return points
}
