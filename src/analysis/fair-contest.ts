/** Designs set against each other under a stated rule: figure by figure, and who is ahead beyond what is guessed. */
import type { Design } from '../machine/design.ts'
import { refuse } from '../refusal/require.ts'
import { type Chain, chainOf } from './compute.ts'
import type { ContestRule } from './contest-rule.ts'
import {
  type Fitted,
  fittedDesign,
  type Resource,
  resourceAmount,
  unchangedDesign,
} from './equal-resource.ts'
import { type Guess, guessesOf } from './guess.ts'
import { type Steps, within } from './step.ts'
import { tellingRow } from './telling-wind.ts'
import {
  comparedTemperature,
  motorConstants,
  type WindingFigure,
  windingFigure,
  windingVolume,
} from './winding-figure.ts'

/** One operating point on which drag, loss and heat of all are counted. */
export interface CommonPoint {
  /** Of the shaft [rad/s]. */
  readonly speed: number
  /** Turned into electricity at that speed [N·m]. */
  readonly torque: number
  /** In the copper, for the temperatures [W]. */
  readonly copperWatts: number
  /** For the power into the load [m/s]. */
  readonly wind: number
}

/** How a score is read off a chain at the common point, and which way is ahead. */
interface ScoreKind {
  readonly better: 'more' | 'less'
  readonly of: (chain: Chain, point: CommonPoint) => number
}

const constantOf = (chain: Chain) => motorConstants(chain, comparedTemperature).motorConstant

/** What the contest is decided on, in SI units. */
export const scoreKinds = {
  motorConstant: { better: 'more', of: constantOf },
  perMass: { better: 'more', of: (chain) => constantOf(chain) ** 2 / chain.wound.copperMass },
  perVolume: { better: 'more', of: (chain) => constantOf(chain) ** 2 / windingVolume(chain) },
  copperMass: { better: 'less', of: ({ wound }) => wound.copperMass },
  copperLoss: { better: 'less', of: (chain, { torque }) => (torque / constantOf(chain)) ** 2 },
  drag: { better: 'less', of: ({ generator }, { speed }) => generator.idlePower(speed) / speed },
  temperatureRise: {
    better: 'less',
    of: ({ cooling }, { speed, copperWatts }) => cooling.resistance(speed) * copperWatts,
  },
  usefulPower: { better: 'more', of: ({ rowAt }, { wind }) => rowAt(wind).watts.useful },
  cutInWind: { better: 'less', of: ({ cutInWind }) => cutInWind },
  energy: { better: 'more', of: ({ year }) => year.energy },
} as const satisfies Record<string, ScoreKind>

export type ScoreName = keyof typeof scoreKinds

export const scoreNames = Object.keys(scoreKinds) as readonly ScoreName[]

export interface Contestant {
  readonly name: string
  readonly fitted: Fitted
  readonly chain: Chain
  readonly figure: WindingFigure
  readonly scores: Readonly<Record<ScoreName, number>>
  /** How much of the resource it uses, in the resource's unit; undefined where nothing is held equal. */
  readonly amount: number | undefined
}

/** The first of a pair over the second. */
export interface Pair {
  readonly ratio: number
  /** Half-width at 90 % of the ratio, as a share of it: guesses that both share move both, and cancel where they may. */
  readonly spread: number
  /** Beyond the spread and what nobody can tell in a workshop. */
  readonly told: boolean
  /** The largest cause, where there is one. */
  readonly cause: string | undefined
}

export interface Contest {
  readonly rule: ContestRule
  readonly resource: Resource | undefined
  readonly point: CommonPoint
  readonly contestants: readonly Contestant[]
  /** Parts of the documents that are alike in all, and those that are not. */
  readonly alike: readonly Part[]
  readonly unlike: readonly Part[]
  /** Contestant × contestant; undefined where a ratio has no meaning. */
  readonly pairs: Readonly<Record<ScoreName, readonly (readonly (Pair | undefined)[])[]>>
  /** Guesses that move all contestants together, and so hardly tell them apart; and those that move one alone. */
  readonly shared: readonly string[]
  readonly own: readonly string[]
}

/** Parts of a document outside the winding that a fair contest holds alike. */
export const contestParts = [
  'site',
  'blades',
  'protection',
  'shaft',
  'rotor',
  'cable',
  'bridge',
  'load',
] as const
export type Part = (typeof contestParts)[number]

export interface ContestOptions {
  readonly rule: ContestRule
  /** Of the resource; the first design's own where nothing is said. */
  readonly amount?: number | undefined
  /** Whether turns stay as they are instead of following the first design's cut-in speed. */
  readonly keepTurns?: boolean
  /** In place of the first design's own telling wind. */
  readonly point?: Partial<CommonPoint>
}

/** Two hand-wound machines of one drawing differ by this much: common practice, no source. */
export const workshopMargin = 0.02

export const fewestContestants = 2
export const mostContestants = 8

function commonPoint(first: Chain, stated: Partial<CommonPoint> = {}): CommonPoint {
  const row = tellingRow(first)
  const { winding, cable, diodes, battery, useful } = row.watts
  const electric = winding + cable + diodes + battery + useful
  const speed = stated.speed ?? row.speed
  const point = {
    speed,
    torque: row.speed > 0 ? electric / row.speed : 0,
    copperWatts: winding,
    wind: row.wind,
    ...stated,
  }
  for (const [name, value] of Object.entries(point))
    if (!(value > 0) || !Number.isFinite(value))
      refuse({
        name: `the common ${name}`,
        condition: `above zero: “${first.machine.name}” gives nothing in its telling wind, so state another`,
        value,
        code: 'below-minimum',
      })
  return point
}

function contestant(
  fitted: Fitted,
  chain: Chain,
  point: CommonPoint,
  resource: Resource | undefined,
): Contestant {
  return {
    name: chain.machine.name,
    fitted,
    chain,
    figure: windingFigure(chain),
    scores: scoresOf(chain, point),
    amount: resource === undefined ? undefined : resourceAmount(resource, chain),
  }
}

const scoresOf = (chain: Chain, point: CommonPoint): Record<ScoreName, number> =>
  Object.fromEntries(scoreNames.map((name) => [name, scoreKinds[name].of(chain, point)])) as Record<
    ScoreName,
    number
  >

const alikeIn = (designs: readonly Design[], part: Part): boolean => {
  const [first, ...rest] = designs.map((design) => JSON.stringify(design[part]))
  return rest.every((text) => text === first)
}

/** One fact that may be off, and whom it moves. */
interface Fact {
  readonly path: string
  readonly moved: readonly { readonly index: number; readonly guess: Guess }[]
}

function factsOf(contestants: readonly Contestant[]): Fact[] {
  const facts = new Map<string, { path: string; moved: { index: number; guess: Guess }[] }>()
  contestants.forEach(({ chain }, index) => {
    for (const guess of guessesOf(chain.machine)) {
      const key = guess.fact ?? `${guess.path} of ${index}`
      const known = facts.get(key)
      if (known) known.moved.push({ index, guess })
      else facts.set(key, { path: guess.path, moved: [{ index, guess }] })
    }
  })
  return [...facts.values()]
}

/** Scores of every contestant with one fact at an end of its spread; those it does not move keep theirs. */
type Turned = { readonly path: string; readonly ends: readonly (readonly Record<ScoreName, number>[])[] }

function* turnedScores(
  contestants: readonly Contestant[],
  facts: readonly Fact[],
  point: CommonPoint,
): Steps<Turned[]> {
  const count = facts.reduce((sum, { moved }) => sum + 2 * moved.length, 0)
  let done = 0
  const turned: Turned[] = []
  for (const { path, moved } of facts) {
    const ends: Record<ScoreName, number>[][] = []
    for (const side of [1, -1] as const) {
      const scores = contestants.map((each) => ({ ...each.scores }))
      for (const { index, guess } of moved) {
        const { machine, assumptions } = guess.at(side)
        const steps = chainOf(machine, { assumptions, previous: contestants[index]!.chain })
        scores[index] = scoresOf(yield* within(steps, done / count, 1 / count), point)
        done++
      }
      ends.push(scores)
    }
    turned.push({ path, ends })
  }
  return turned
}

function pairOf(
  name: ScoreName,
  [a, b]: readonly [number, number],
  scores: readonly Contestant[],
  turned: readonly Turned[],
): Pair | undefined {
  const log = (of: readonly Readonly<Record<ScoreName, number>>[]) => Math.log(of[a]![name] / of[b]![name])
  const base = log(scores.map((each) => each.scores))
  if (!Number.isFinite(base)) return undefined
  let variance = 0
  let cause: { path: string; width: number } | undefined
  for (const { path, ends } of turned) {
    const moves = ends.map((end) => Math.abs(log(end) - base))
    // an end at which one of the two gives nothing is no width; the table shows that it may fail
    const width = Math.max(0, ...moves.filter(Number.isFinite))
    variance += width ** 2
    if (width > (cause?.width ?? 1e-6)) cause = { path, width }
  }
  const spread = Math.sqrt(variance)
  return {
    ratio: Math.exp(base),
    spread,
    told: Math.abs(base) > Math.hypot(spread, Math.log1p(workshopMargin)),
    cause: cause?.path,
  }
}

/** Designs brought to the rule: the first as it stands, unless an amount is stated; the others to the first. */
function* fittedContestants(
  designs: readonly Design[],
  { rule, amount, keepTurns = false }: ContestOptions,
  first: Chain,
  point: CommonPoint,
): Steps<{ readonly fitted: readonly Fitted[]; readonly resource: Resource | undefined }> {
  if (rule === 'as-they-are') return { fitted: designs.map(unchangedDesign), resource: undefined }
  const bare = { rule, torque: point.torque }
  const resource: Resource = { ...bare, amount: amount ?? resourceAmount(bare, first) }
  const cutIn = keepTurns || first.machine.load.kind !== 'battery' ? undefined : first.generator.cutIn
  const fitted: Fitted[] = []
  for (const [k, design] of designs.entries()) {
    if (k === 0 && amount === undefined) fitted.push(unchangedDesign(design))
    else {
      const turns = k === 0 || !Number.isFinite(cutIn) ? {} : { cutIn }
      fitted.push(
        yield* within(fittedDesign(design, { resource, ...turns }), k / designs.length, 1 / designs.length),
      )
    }
  }
  return { fitted, resource }
}

/**
 * The contest, step by step: yields the fraction done. A figure's spread between two designs is that of their ratio:
 * each guess is turned to both ends in every design that shares it at once, so that what is common cancels. The winding's
 * place and its cooling are each design's own. Differences within `workshopMargin` count as none.
 */
export function* fairContest(designs: readonly Design[], options: ContestOptions): Steps<Contest> {
  if (designs.length < fewestContestants || designs.length > mostContestants)
    refuse({
      name: 'designs',
      condition: `${fewestContestants} to ${mostContestants} of them`,
      value: designs.length,
      code: 'wrong-length',
    })
  const first = yield* within(chainOf(unchangedDesign(designs[0]!).machine), 0, 0.05)
  const point = commonPoint(first, options.point)
  const { fitted, resource } = yield* within(fittedContestants(designs, options, first, point), 0.05, 0.35)
  const contestants: Contestant[] = []
  for (const [k, each] of fitted.entries()) {
    const known = each.design === designs[0] && k === 0 ? first : undefined
    const steps = chainOf(each.machine, { previous: first })
    const chain = known ?? (yield* within(steps, 0.4 + (0.1 * k) / fitted.length, 0.1 / fitted.length))
    contestants.push(contestant(each, chain, point, resource))
  }
  const facts = factsOf(contestants)
  const turned = yield* within(turnedScores(contestants, facts, point), 0.5, 0.5)
  const everyone = contestants.map((_, k) => k)
  const common = facts.filter(({ moved }) => moved.length === contestants.length)
  const paths = (list: readonly Fact[]) => [...new Set(list.map(({ path }) => path))]
  return {
    rule: options.rule,
    resource,
    point,
    contestants,
    alike: contestParts.filter((part) => alikeIn(designs, part)),
    unlike: contestParts.filter((part) => !alikeIn(designs, part)),
    pairs: Object.fromEntries(
      scoreNames.map((name) => [
        name,
        everyone.map((a) => everyone.map((b) => pairOf(name, [a, b], contestants, turned))),
      ]),
    ) as unknown as Contest['pairs'],
    shared: paths(common),
    own: paths(facts.filter((fact) => !common.includes(fact))),
  }
}
