/** What a sloppy build costs: scatter of what it gives, share of builds that reach the target, and what to tighten first. */
import type { BuildTarget } from '../machine/resolve-tolerance.ts'
import { type ToleranceName, toleranceNames } from '../machine/tolerance.ts'
import { sampleMoments } from '../numerics/sample-moment.ts'
import { sampleQuantile, sortedSample } from '../numerics/sample-quantile.ts'
import { refuse } from '../refusal/require.ts'
import { buildBasis } from './build-basis.ts'
import { type BuildDraw, buildDraws, type ErrorGroup, errorGroups } from './build-draw.ts'
import {
  type BuildError,
  drawnBuild,
  isRotorTolerance,
  rotorError,
  type Scale,
  statorError,
} from './build-error.ts'
import { type BuildOutcome, buildReader, mayCirculate } from './build-outcome.ts'
import { type BuildWatts, type WattsSurface, wattsSurface } from './build-watts.ts'
import type { Chain } from './compute.ts'
import { usualBalanceGrade } from './mechanics/shaft-load.ts'
import { type Steps, within } from './step.ts'
import { tellingWind } from './telling-wind.ts'

/** What is told of every build, in SI units. */
export interface BuildFigures extends BuildWatts {
  /** Mean volts of the phases over the drawing's [1], and ohms of a phase [1]. */
  readonly volts: number
  readonly ohms: number
  /** Speed at which current begins [rad/s]; infinite where it never does. */
  readonly cutIn: number
  /** Strongest phase less the weakest over their mean [1]. */
  readonly spread: number
  readonly hum: number
  /** Largest circulating current, rms [A], and its watts. */
  readonly circulatingCurrent: number
  readonly circulatingLoss: number
  readonly clearance: number
  readonly unbalance: number
  readonly couple: number
  readonly grade: number
}

export const buildFigureNames = [
  'volts',
  'ohms',
  'cutIn',
  'useful',
  'energy',
  'spread',
  'hum',
  'circulatingCurrent',
  'circulatingLoss',
  'clearance',
  'grade',
  'unbalance',
  'couple',
] as const satisfies readonly (keyof BuildFigures)[]

export interface FigureScatter {
  readonly drawn: number
  readonly mean: number
  /** 5, 50 and 95 of 100 builds stay below. */
  readonly low: number
  readonly middle: number
  readonly high: number
}

export interface BuildGoalLimits extends BuildTarget {
  /** [m/s] */
  readonly grade: number
  /** Whether the document asks for that grade; else a build that misses it counts, for it can be balanced. */
  readonly gradeAsked: boolean
}

/** What a build must reach. */
export const buildGoals = ['volts', 'power', 'imbalance', 'clearance', 'grade'] as const
export type BuildGoal = (typeof buildGoals)[number]

/** The figures whose departure from the drawing is laid to single tolerances. */
export const sharedFigures = ['volts', 'useful', 'spread', 'clearance', 'grade'] as const
export type SharedFigure = (typeof sharedFigures)[number]

export interface ToleranceEffect {
  readonly name: ToleranceName
  /** As the document has it, in SI. */
  readonly width: number
  /** Of the mean square departures from the drawing that each tolerance makes by itself, this one's part. */
  readonly shares: Readonly<Record<SharedFigure, number>>
  /** Mean of the telling watts with this tolerance alone, over the drawing's [1]. */
  readonly meanUseful: number
  /** Share of builds that reach all goals if it were halved. */
  readonly yieldHalved: number
}

export interface BuildTolerance {
  readonly name: string
  readonly builds: number
  readonly seed: number
  /** Wind of the telling watts [m/s]. */
  readonly wind: number
  readonly scatter: Readonly<Record<keyof BuildFigures, FigureScatter>>
  readonly target: BuildGoalLimits
  /** Share of builds that reach each goal, and all of them. */
  readonly reached: Readonly<Record<BuildGoal, number>>
  readonly yield: number
  /** Share that would, were everything twice as good. */
  readonly yieldAllHalved: number
  /** That errors have an effect and are not zero; the one that gains most when halved comes first. */
  readonly tolerances: readonly ToleranceEffect[]
  /** Whether anything can circulate. */
  readonly circulates: boolean
}

export interface BuildToleranceOptions {
  readonly builds?: number
  readonly seed?: number
}

export const usualBuilds = 1024
export const fewestBuilds = 64
export const mostBuilds = 65_536
export const usualSeed = 1

/** Builds that tell what a tolerance does by itself, as a part of all. */
const aloneShare = 1 / 8
/** A tolerance that makes less than this of every departure is not worth halving. */
const leastShare = 0.01
/** Deviations of a sum of errors that its reach must hold. */
const reachDeviations = 2

/** How far errors may add up [m], for the steps of the basis. */
function reachOf({ machine }: Chain) {
  const { width } = machine.tolerances
  const drum = machine.rotor.arrangement === 'drum'
  const root = (...parts: readonly number[]) => (reachDeviations * Math.hypot(...parts)) / 1.6
  return {
    across: root(
      width.magnetAcross_mm,
      width.coilAcross_mm,
      drum ? 0 : width.rotorCentre_mm,
      drum ? 0 : width.statorCentre_mm,
    ),
    away: root(
      width.magnetHeight_mm,
      width.statorDistance_mm,
      width.coilHeight_mm,
      drum ? width.rotorCentre_mm : width.discWobble_mm / 2,
      drum ? width.statorCentre_mm : width.statorTilt_mm / 2,
    ),
    apart: root(width.faceDistance_mm, width.discWobble_mm / 2, width.magnetHeight_mm),
  }
}

const goalsReached = (
  drawn: BuildFigures,
  target: BuildGoalLimits,
  { imbalance }: Pick<BuildOutcome, 'imbalance'>,
  figures: BuildFigures,
): Record<BuildGoal, boolean> => ({
  volts: Math.abs(figures.volts - 1) <= target.volts + 1e-12,
  power: figures.useful >= (1 - target.power) * drawn.useful - 1e-12,
  imbalance: imbalance <= target.imbalance + 1e-12,
  clearance: figures.clearance >= target.clearance - 1e-12,
  grade: figures.grade <= target.grade + 1e-12,
})

function requireWhole(name: string, value: number, [least, most]: readonly [number, number]): void {
  if (!Number.isInteger(value) || value < least || value > most)
    refuse({ name, condition: `a whole number from ${least} to ${most}`, value, code: 'not-a-choice' })
}

/** The drawing and what turns an outcome into figures. */
interface Judge {
  readonly drawn: BuildFigures
  /** The speed at which current begins costs the most: `cutIn` is the drawing's in what is `bare`. */
  readonly figures: (outcome: BuildOutcome) => BuildFigures
  readonly bare: (outcome: BuildOutcome) => BuildFigures
  readonly reached: (outcome: BuildOutcome) => Record<BuildGoal, boolean>
  readonly all: (goals: Record<BuildGoal, boolean>) => boolean
}

const limitsOf = ({ machine: { tolerances, shaft } }: Chain): BuildGoalLimits => ({
  ...tolerances.target,
  grade: shaft.balanceGrade ?? usualBalanceGrade,
  gradeAsked: shaft.balanceGrade !== undefined,
})

function judgeOf(chain: Chain, sound: BuildOutcome, surface: WattsSurface): Judge {
  const drawnPeak = sound.peak()
  const figures = (outcome: BuildOutcome, peak?: number): BuildFigures => {
    const { circulating } = outcome
    return {
      volts: outcome.meanVolts,
      ohms: outcome.ohms,
      cutIn: peak === undefined ? chain.generator.cutIn : chain.generator.cutIn * (drawnPeak / peak),
      ...surface.at({ ...outcome, extraLoss: circulating.loss - sound.circulating.loss }),
      spread: outcome.spread,
      hum: outcome.hum,
      circulatingCurrent: circulating.current,
      circulatingLoss: circulating.loss,
      clearance: outcome.clearance,
      unbalance: outcome.unbalance,
      couple: outcome.couple,
      grade: outcome.grade,
    }
  }
  const drawn = figures(sound)
  const target = limitsOf(chain)
  return {
    drawn,
    figures: (outcome) => figures(outcome, outcome.peak()),
    bare: figures,
    all: (goals) => buildGoals.every((goal) => goals[goal] || (goal === 'grade' && !target.gradeAsked)),
    reached: (outcome) => goalsReached(drawn, target, outcome, figures(outcome)),
  }
}

function scatterOf(drawn: number, values: readonly number[]): FigureScatter {
  // a current that never begins, or air without bound, has no scatter
  if (!Number.isFinite(drawn) || !values.every(Number.isFinite))
    return { drawn, mean: drawn, low: drawn, middle: drawn, high: drawn }
  const sorted = sortedSample(values)
  const at = (p: number) => sampleQuantile(sorted, p).value
  return { drawn, mean: sampleMoments(values).mean, low: at(0.05), middle: at(0.5), high: at(0.95) }
}

/** Draws with one tolerance turned: the other half of the machine is taken over from the build as it is. */
function variantOf(
  chain: Chain,
  draw: BuildDraw,
  base: BuildError,
  name: ToleranceName,
  scale: Scale,
): BuildError {
  return isRotorTolerance(name)
    ? { ...base, ...rotorError(chain.machine, draw, scale) }
    : { ...base, ...statorError(chain.machine, chain.layout, draw, scale) }
}

/** Tolerances that this machine has and the document does not set to nothing; the stator's first, whose builds share their magnets. */
function atWork(chain: Chain, groups: readonly ErrorGroup[]): ToleranceName[] {
  const { width } = chain.machine.tolerances
  const names = groups.filter(({ name, count }) => count > 0 && width[name] > 0).map(({ name }) => name)
  return [...names.filter((name) => !isRotorTolerance(name)), ...names.filter(isRotorTolerance)]
}

/**
 * So many builds of one drawing, each with magnets, coils and wire of its own, from one computed field. The same seed
 * gives the same builds; a tolerance halved, or alone, is tried on the very same draws. Watts follow from volts, ohms
 * and circulating currents by a surface through whole chains. Yields the fraction done.
 */
export function* buildTolerance(
  chain: Chain,
  { builds = usualBuilds, seed = usualSeed }: BuildToleranceOptions = {},
): Steps<BuildTolerance> {
  requireWhole('builds', builds, [fewestBuilds, mostBuilds])
  requireWhole('seed', seed, [0, 0xffffffff])
  const { machine, layout } = chain
  const { width } = machine.tolerances
  const target = limitsOf(chain)
  const basis = yield* within(buildBasis(chain, reachOf(chain)), 0, 0.05)
  const groups = errorGroups(machine, layout)
  const names = atWork(chain, groups)
  const drawOf = buildDraws(groups, builds, seed)
  const read = buildReader(chain, basis)
  const drawn = drawnBuild(machine, layout)
  const sound = read(drawn)
  const outcomes: BuildOutcome[] = []
  const errorOf = (draw: BuildDraw, scale?: Scale): BuildError => ({
    ...rotorError(machine, draw, scale),
    ...statorError(machine, layout, draw, scale),
  })
  for (let n = 0; n < builds; n++) {
    outcomes.push(read(errorOf(drawOf(n))))
    if (n % 64 === 63) yield 0.05 + (0.1 * (n + 1)) / builds
  }
  const circulates = mayCirculate(chain)
  const reachOfRatio = (pick: (one: BuildOutcome) => readonly number[]) =>
    outcomes.reduce((most, one) => Math.max(most, ...pick(one).map((ratio) => Math.abs(ratio - 1))), 0)
  const surface = yield* within(
    wattsSurface(chain, {
      volts: reachOfRatio(({ meanVolts, volts }) => [
        meanVolts,
        volts.reduce((sum, one) => sum + one, 0) / volts.length,
      ]),
      ohms: reachOfRatio(({ ohms }) => [ohms]),
      mayCirculate: circulates,
    }),
    0.15,
    0.1,
  )
  const judge = judgeOf(chain, sound, surface)
  const figures: BuildFigures[] = []
  for (const [n, outcome] of outcomes.entries()) {
    figures.push(judge.figures(outcome))
    if (n % 64 === 63) yield 0.25 + (0.05 * (n + 1)) / builds
  }
  const goals = outcomes.map(judge.reached)
  const share = (count: number) => count / builds
  const alone = new Map(
    names.map((name) => [
      name,
      { useful: 0, square: Object.fromEntries(sharedFigures.map((one) => [one, 0])) },
    ]),
  )
  const aloneBuilds = Math.max(fewestBuilds, Math.round(aloneShare * builds))
  for (let n = 0; n < aloneBuilds; n++) {
    const draw = drawOf(n)
    for (const name of names) {
      const only = variantOf(chain, draw, drawn, name, (one) => (one === name ? 1 : 0))
      const figure = judge.bare(read(only))
      const sum = alone.get(name)!
      sum.useful += figure.useful
      for (const one of sharedFigures) sum.square[one]! += (figure[one] - judge.drawn[one]) ** 2
    }
    if (n % 8 === 7) yield 0.3 + (0.2 * (n + 1)) / aloneBuilds
  }
  const whole = (one: SharedFigure) => names.reduce((sum, name) => sum + alone.get(name)!.square[one]!, 0)
  const sharesOf = (name: ToleranceName) =>
    Object.fromEntries(
      sharedFigures.map((one) => [one, whole(one) > 0 ? alone.get(name)!.square[one]! / whole(one) : 0]),
    ) as Record<SharedFigure, number>
  const counted = sharedFigures.filter((one) => one !== 'grade' || target.gradeAsked)
  // what moves no figure that counts cannot move the yield
  const worthHalving = names.filter((name) => counted.some((one) => sharesOf(name)[one] >= leastShare))
  const halved = new Map(worthHalving.map((name) => [name, 0]))
  let allHalved = 0
  for (let n = 0; n < builds; n++) {
    const draw = drawOf(n)
    const base = errorOf(draw)
    for (const name of worthHalving) {
      const half = variantOf(chain, draw, base, name, (one) => (one === name ? 0.5 : 1))
      if (judge.all(judge.reached(read(half)))) halved.set(name, halved.get(name)! + 1)
    }
    if (judge.all(judge.reached(read(errorOf(draw, () => 0.5))))) allHalved++
    if (n % 8 === 7) yield 0.5 + (0.5 * (n + 1)) / builds
  }
  const whichReach = goals.filter(judge.all).length
  const effects = names.map((name): ToleranceEffect => {
    const { useful } = alone.get(name)!
    const reach = halved.get(name)
    return {
      name,
      width: width[name],
      shares: sharesOf(name),
      meanUseful: judge.drawn.useful > 0 ? useful / aloneBuilds / judge.drawn.useful : 1,
      yieldHalved: share(reach ?? whichReach),
    }
  })
  const order = new Map(toleranceNames.map((name, k) => [name, k]))
  return {
    name: machine.name,
    builds,
    seed,
    wind: tellingWind(chain).row.wind,
    scatter: Object.fromEntries(
      buildFigureNames.map((name) => [
        name,
        scatterOf(
          judge.drawn[name],
          figures.map((one) => one[name]),
        ),
      ]),
    ) as Record<keyof BuildFigures, FigureScatter>,
    target,
    reached: Object.fromEntries(
      buildGoals.map((goal) => [goal, share(goals.filter((one) => one[goal]).length)]),
    ) as Record<BuildGoal, number>,
    yield: share(whichReach),
    yieldAllHalved: share(allHalved),
    tolerances: effects.sort(
      (a, b) => b.yieldHalved - a.yieldHalved || order.get(a.name)! - order.get(b.name)!,
    ),
    circulates,
  }
}
