/** Many builds of one drawing in words: how many reach the target, what comes out, what to tighten first. */
import {
  type BuildFigures,
  type BuildGoal,
  type BuildTolerance,
  buildFigureNames,
  buildGoals,
  type FigureScatter,
  type SharedFigure,
  sharedFigures,
  type ToleranceEffect,
} from '../analysis/build-tolerance.ts'
import type { ToleranceName } from '../machine/tolerance.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unitOfName } from '../units/unit.ts'

/** Each tolerance as a builder would say it. */
export const toleranceWords: Readonly<Record<ToleranceName, string>> = {
  magnetAround_mm: 'magnets along the circumference',
  magnetAcross_mm: 'magnets across it',
  magnetHeight_mm: 'height of the magnets’ faces',
  magnetStrength_percent: 'strength of the magnets',
  rotorCentre_mm: 'magnet ring off the axis',
  discWobble_mm: 'wobble of a disc’s face',
  faceDistance_mm: 'distance of the faces',
  statorDistance_mm: 'distance of the winding',
  statorTilt_mm: 'stator out of square',
  statorCentre_mm: 'stator off the axis',
  coilAround_mm: 'coils along the circumference',
  coilAcross_mm: 'coils across it',
  coilHeight_mm: 'height of the coils',
  bundleDepth_mm: 'depth of the bundles',
  turnLength_percent: 'wire per turn',
  miscounted_percent: 'miscounted coils',
  wireDiameter_percent: 'diameter of the wire',
}

const goalWords: Readonly<Record<BuildGoal, string>> = {
  volts: 'mean volts of the phases',
  power: 'watts in the wind of the goal',
  imbalance: 'phases apart, beyond the drawing',
  clearance: 'air left all round',
  grade: 'balance before balancing',
}

const percent = (share: number, digits = 3): string => `${formatNumber(100 * share, digits)} %`

/** "G 16" of 0.016 m/s. */
const grade = (speed: number): string => `G ${formatNumber(1000 * speed, 3)}`

const goalLimits = ({ target }: BuildTolerance): Readonly<Record<BuildGoal, string>> => ({
  volts: `within ${percent(target.volts)} of the drawing’s`,
  power: `at least ${percent(1 - target.power)} of the drawing’s`,
  imbalance: `at most ${percent(target.imbalance)}`,
  clearance: `at least ${formatSi(target.clearance, 'mm')}`,
  grade: `${grade(target.grade)} or better${target.gradeAsked ? '' : ' (told, not counted)'}`,
})

interface FigureWords {
  readonly words: string
  readonly say: (value: number) => string
}

const figureWords: Readonly<Record<keyof BuildFigures, FigureWords>> = {
  volts: { words: 'mean volts over the drawing’s', say: (value) => percent(value) },
  ohms: { words: 'ohms of a phase over the drawing’s', say: (value) => percent(value) },
  cutIn: {
    words: 'current begins at',
    say: (value) => (Number.isFinite(value) ? formatSi(value, 'rpm') : 'never'),
  },
  useful: { words: 'stored or used in that wind', say: (value) => formatSi(value, 'W', 4) },
  energy: { words: 'stored or used in a year', say: (value) => formatSi(value, 'kWh') },
  spread: { words: 'phases apart', say: (value) => percent(value, 2) },
  hum: { words: 'volts that repeat once a turn only', say: (value) => percent(value, 2) },
  circulatingCurrent: { words: 'circulating, largest', say: (value) => formatSi(value, 'A', 2) },
  circulatingLoss: { words: 'circulating, lost', say: (value) => formatSi(value, 'W', 2) },
  clearance: { words: 'least air', say: (value) => formatSi(value, 'mm', 2) },
  unbalance: { words: 'unbalance', say: (value) => `${formatNumber(1e6 * value, 2)} g·mm` },
  couple: { words: 'unbalance as a couple', say: (value) => `${formatNumber(1e9 * value, 2)} g·mm²` },
  grade: { words: 'balance grade', say: grade },
}

const sharedWords: Readonly<Record<SharedFigure, string>> = {
  volts: 'volts',
  useful: 'watts',
  spread: 'apart',
  clearance: 'air',
  grade: 'balance',
}

const widthWords = ({ name, width }: ToleranceEffect): string => {
  const own = unitOfName(name)
  const value = `${formatNumber(fromSi(width, own), 3)}${own.symbol}`
  return name === 'miscounted_percent' ? value : `± ${value}`
}

/** Nothing circulates where nothing is in parallel and no delta is closed. */
export const toldFigures = ({ circulates }: BuildTolerance): readonly (keyof BuildFigures)[] =>
  buildFigureNames.filter((name) => circulates || !name.startsWith('circulating'))

/** Error of a share of so many builds, one deviation. */
const shareError = (share: number, builds: number): number => Math.sqrt((share * (1 - share)) / builds)

/** A gain so many times its own error counts as one. */
const tellingGain = 2

/** Builds that only one of two ways lets reach the goal are what their difference is made of. */
const gainError = (gain: number, builds: number): number => Math.sqrt(Math.abs(gain) / builds)

/** Those that halved lift the yield by more than chance, the one that gains most first. */
const worthTightening = ({ tolerances, builds, yield: whole }: BuildTolerance): readonly ToleranceEffect[] =>
  whole > enough
    ? []
    : tolerances.filter(
        ({ yieldHalved }) => yieldHalved - whole > tellingGain * gainError(yieldHalved - whole, builds),
      )

/** A yield above which nothing needs to be better. */
const enough = 0.995

/** What to tighten first, in one sentence. */
export function tightenSentence(study: BuildTolerance): string {
  const { tolerances, yieldAllHalved } = study
  const whole = study.yield
  const [first, second] = worthTightening(study)
  const everything = `With everything twice as exact it would be ${percent(yieldAllHalved)}.`
  if (tolerances.length === 0) return 'No tolerance is above zero: every build is the drawing.'
  if (whole > enough) return 'Nothing needs to be tightened for this target.'
  if (first === undefined)
    return `No single tolerance, halved, lifts that share by more than chance. ${everything}`
  return `Tighten first: ${toleranceWords[first.name]}. Halved, it would lift the share to ${percent(first.yieldHalved)}${
    second === undefined ? '' : `; next, ${toleranceWords[second.name]}, to ${percent(second.yieldHalved)}`
  }. ${everything}`
}

/** What such builds give on the average, in one sentence. */
export function lossSentence({ scatter, wind }: BuildTolerance): string {
  const { drawn, mean } = scatter.useful
  const where = `in ${formatSi(wind, 'm_per_s', 2)}`
  if (!(drawn > 0)) return `The drawing gives nothing ${where}, so that nothing can be lost there.`
  const change = mean / drawn - 1
  if (Math.abs(change) < 5e-4) return `On the average such builds give what the drawing gives ${where}.`
  return `On the average such builds give ${percent(Math.abs(change), 2)} ${change < 0 ? 'less' : 'more'} than the drawing ${where}.`
}

const pathOf = (tolerance: ToleranceName): string => `tolerance.${tolerance}`

export interface ToleranceReport {
  readonly name: string
  readonly builds: number
  /** Share of builds that reach all goals. */
  readonly yield: number
  /** What it comes to, the yield first. */
  readonly sentences: readonly string[]
  /** Fields to tighten, the most rewarding first; two at most. */
  readonly tighten: readonly string[]
  readonly goals: readonly {
    readonly words: string
    readonly limit: string
    readonly reached: string
  }[]
  /** By the drawing, on average, and what 5, 50 and 95 of 100 builds stay below. */
  readonly figures: readonly { readonly words: string; readonly cells: readonly string[] }[]
  readonly figureNote: string
  readonly figureColumns: readonly string[]
  readonly shareColumns: readonly string[]
  readonly tolerances: readonly {
    readonly words: string
    readonly path: string
    readonly width: string
    /** Of the departures of each figure [%], whole numbers. */
    readonly shares: readonly string[]
    readonly yieldHalved: string
  }[]
  readonly toleranceNote: string
  /** Those that are told over the drawing’s: their scatter, and how far off the target lets them be [1]. */
  readonly scatter: readonly BuildScatter[]
}

export interface BuildScatter {
  readonly label: string
  /** Between which values nine of ten builds lie. */
  readonly text: string
  /** Over the drawing's [1]. */
  readonly low: number
  readonly middle: number
  readonly mean: number
  readonly high: number
  /** What the target asks for over the drawing's [1]; undefined where it asks for nothing. */
  readonly least?: number
  readonly most?: number
}

export const figureColumns = ['drawing', 'mean', '5 %', '50 %', '95 %'] as const
export const shareColumns = sharedFigures.map((figure) => sharedWords[figure])

const scatterLabels = {
  volts: 'mean volts of the phases',
  ohms: 'ohms of a phase',
  cutIn: 'speed at which current begins',
  useful: 'watts stored or used in that wind',
  energy: 'energy of a year',
} as const satisfies Partial<Record<keyof BuildFigures, string>>

function scatterOf({ scatter, target }: BuildTolerance): BuildScatter[] {
  return (Object.keys(scatterLabels) as (keyof typeof scatterLabels)[]).flatMap((name) => {
    const { drawn, low, middle, mean, high }: FigureScatter = scatter[name]
    if (!(drawn > 0) || !Number.isFinite(drawn)) return []
    const { say } = figureWords[name]
    const goal =
      name === 'volts'
        ? { least: 1 - target.volts, most: 1 + target.volts }
        : name === 'useful'
          ? { least: 1 - target.power }
          : {}
    return [
      {
        label: scatterLabels[name],
        text: `${say(low)} to ${say(high)}`,
        low: low / drawn,
        middle: middle / drawn,
        mean: mean / drawn,
        high: high / drawn,
        ...goal,
      },
    ]
  })
}

function yieldSentence({ yield: whole, builds }: BuildTolerance): string {
  const error = shareError(whole, builds)
  return `${percent(whole)} of such builds reach the target${error > 0 ? `, ± ${formatNumber(100 * error, 1)} by chance` : ''}.`
}

export function toleranceReport(study: BuildTolerance): ToleranceReport {
  const { name, builds, scatter, reached, tolerances, wind } = study
  const limits = goalLimits(study)
  return {
    name,
    builds,
    yield: study.yield,
    sentences: [yieldSentence(study), tightenSentence(study), lossSentence(study)],
    tighten: worthTightening(study)
      .slice(0, 2)
      .map(({ name }) => pathOf(name)),
    goals: buildGoals.map((goal) => ({
      words: goalWords[goal],
      limit: limits[goal],
      reached: percent(reached[goal]),
    })),
    figures: toldFigures(study).map((figure) => {
      const { words, say } = figureWords[figure]
      const { drawn, mean, low, middle, high } = scatter[figure]
      return { words, cells: [drawn, mean, low, middle, high].map(say) }
    }),
    figureNote: `So many of a hundred builds stay below. Watts and currents in ${formatSi(wind, 'm_per_s', 2)}; balance of the generator’s rotor without the blades, at its fastest working speed, before anybody balances it.`,
    tolerances: tolerances.map((one) => ({
      words: toleranceWords[one.name],
      path: pathOf(one.name),
      width: widthWords(one),
      shares: sharedFigures.map((figure) => String(Math.round(100 * one.shares[figure]))),
      yieldHalved: formatNumber(100 * one.yieldHalved, 3),
    })),
    figureColumns,
    shareColumns,
    toleranceNote:
      'Nine of ten builds keep within a width. Per cent: what each makes the volts, watts, phases, air and balance depart from the drawing when it is there alone, as a part of all such departures, mean square. Every build has magnets, coils and wire of its own; the field is the drawing’s, each magnet’s share of it moved and scaled; coils move as a whole, steel keeps what it does to the drawing’s field. If halved: builds that reach the target with that tolerance twice as exact. The air is what is left when the disc bends, warm, the bearings’ play taken.',
    scatter: scatterOf(study),
  }
}
