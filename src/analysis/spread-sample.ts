/** Draws of all guesses at once, each put through the chain. */
import type { Chain } from './compute.ts'
import { type Guess, supposedMachine } from './guess.ts'
import { baseState, type MachineState, machineState, sampledChain, sampleOf } from './sampled-chain.ts'
import { type Draw, spreadOutputNames, spreadOutputs, usefulCurve } from './spread-output.ts'
import type { Drawn, SpreadPlan } from './spread-plan.ts'
import { type Steps, within } from './step.ts'

const outputsOf = (draw: Draw): number[] => spreadOutputNames.map((name) => spreadOutputs[name](draw))

/** Numbers that a draw gives: the outputs, then the power in each wind that the plan names. */
export const drawWidth = ({ curveWinds }: Pick<SpreadPlan, 'curveWinds'>): number =>
  spreadOutputNames.length + curveWinds.length

/** What the chain itself gives. */
export const plainOutputs = (chain: Chain, { asked }: Pick<SpreadPlan, 'asked'>): number[] =>
  outputsOf({ chain: sampleOf(chain), asked, way: 0 })

const guessesIn = (drawn: readonly Drawn[]): Guess[] =>
  drawn.flatMap(({ guess }) => (guess === undefined ? [] : [guess]))

/**
 * The samples from `from` up to, but without, `to`: all outputs of each and its curve, sample after sample. Parts of a plan computed
 * anywhere and set side by side are the samples of the whole. Yields the fraction done.
 */
export function* spreadSamples(
  chain: Chain,
  plan: SpreadPlan,
  [from, to]: readonly [number, number],
): Steps<Float64Array> {
  const { drawn, stateDimensions, perState, points, stormWind, asked, curveWinds } = plan
  const d = drawn.length
  const count = drawWidth(plan)
  const values = new Float64Array((to - from) * count)
  const guesses = guessesIn(drawn)
  const stateGuesses = guesses.slice(0, stateDimensions)
  const base = baseState(chain)
  const share = 1 / Math.max(1, to - from)
  let state: MachineState | undefined
  let held: number[] = []
  for (let n = from; n < to; n++) {
    const done = (n - from) * share
    const shifts = drawn.map(({ shift }, k) => shift(points[n * d + k]!))
    if (state === undefined || n % perState === 0) {
      const supposed = supposedMachine(chain.machine, stateGuesses, shifts)
      held = shifts.slice(0, stateDimensions).map((shift) => supposed.share * shift)
      state = yield* within(
        machineState(supposed.machine, supposed.assumptions, { stormWind, base }),
        done,
        share / 2,
      )
    }
    const all = [...held, ...shifts.slice(stateDimensions)]
    const { machine, assumptions } = supposedMachine(chain.machine, guesses, all, stateDimensions)
    const way = guesses.length < d ? shifts[d - 1]! : 0
    const draw = { chain: sampledChain(machine, assumptions, state), asked, way }
    values.set([...outputsOf(draw), ...usefulCurve(draw, curveWinds)], (n - from) * count)
    yield done + share
  }
  return values
}
