/** Many builds of one drawing as a page of text, and as JSON in workshop units. */
import {
  type BuildFigures,
  type BuildGoal,
  type BuildTolerance,
  buildFigureNames,
  buildGoals,
  type SharedFigure,
  sharedFigures,
  type ToleranceEffect,
} from '../analysis/build-tolerance.ts'
import type { ToleranceName } from '../machine/tolerance.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit, unitOfName } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96

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
const figuresOf = ({ circulates }: BuildTolerance): readonly (keyof BuildFigures)[] =>
  buildFigureNames.filter((name) => circulates || !name.startsWith('circulating'))

/** Error of a share of so many builds, one deviation. */
const shareError = (share: number, builds: number): number => Math.sqrt((share * (1 - share)) / builds)

/** A gain so many times its own error counts as one. */
const tellingGain = 2

/** Builds that only one of two ways lets reach the goal are what their difference is made of. */
const gainError = (gain: number, builds: number): number => Math.sqrt(Math.abs(gain) / builds)

/** What to tighten first, in one sentence. */
export function tightenSentence(study: BuildTolerance): string {
  const { tolerances, builds, yieldAllHalved } = study
  const whole = study.yield
  const told = tolerances.filter(
    ({ yieldHalved }) => yieldHalved - whole > tellingGain * gainError(yieldHalved - whole, builds),
  )
  const [first, second] = told
  const everything = `With everything twice as exact it would be ${percent(yieldAllHalved)}.`
  if (tolerances.length === 0) return 'No tolerance is above zero: every build is the drawing.'
  if (whole > 0.995) return 'Nothing needs to be tightened for this target.'
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

export function tolerancePage(study: BuildTolerance): PageLine[] {
  const { builds, scatter, reached, tolerances } = study
  const plain = (text: string): PageLine => ({ text, tone: 'plain' })
  const faint = (text: string): PageLine => ({ text, tone: 'faint' })
  const title = (text: string): PageLine => ({ text, tone: 'title' })
  const blank = plain('')
  const table = (lines: readonly string[]) =>
    lines.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`)))
  const left = (head: string) => ({ head, align: 'left' as const })
  const right = (head: string) => ({ head, align: 'right' as const })
  const said = (text: string): PageLine[] => wrapped(`  ${text}`, columns, '  ').map(plain)
  const note = (text: string): PageLine[] => wrapped(`  ${text}`, columns, '  ').map(faint)
  const limits = goalLimits(study)
  const whole = study.yield
  const error = shareError(whole, builds)
  return [
    title(`${study.name} — built ${builds} times`),
    ...said(
      `${percent(whole)} of such builds reach the target${error > 0 ? `, ± ${formatNumber(100 * error, 1)} by chance` : ''}. ${tightenSentence(study)} ${lossSentence(study)}`,
    ),
    blank,
    title('The target'),
    ...table(
      textTable(
        [left('goal'), left('limit'), right('reached')],
        buildGoals.map((goal) => [goalWords[goal], limits[goal], percent(reached[goal])]),
      ),
    ),
    blank,
    title('What comes out'),
    ...table(
      textTable(
        [left(''), right('drawing'), right('mean'), right('5 %'), right('50 %'), right('95 %')],
        figuresOf(study).map((name) => {
          const { words, say } = figureWords[name]
          const { drawn, mean, low, middle, high } = scatter[name]
          return [words, ...[drawn, mean, low, middle, high].map(say)]
        }),
      ),
    ),
    ...note(
      `So many of a hundred builds stay below. Watts and currents in ${formatSi(study.wind, 'm_per_s', 2)}; balance of the generator’s rotor without the blades, at its fastest working speed, before anybody balances it.`,
    ),
    ...(tolerances.length === 0
      ? []
      : [
          blank,
          title('Which tolerance does it'),
          ...table(
            textTable(
              [
                left('tolerance'),
                right('width'),
                ...sharedFigures.map((figure) => right(`${sharedWords[figure]} %`)),
                right('if halved %'),
              ],
              tolerances.map((one) => [
                toleranceWords[one.name],
                widthWords(one),
                ...sharedFigures.map((figure) => String(Math.round(100 * one.shares[figure]))),
                formatNumber(100 * one.yieldHalved, 3),
              ]),
            ),
          ),
          ...note(
            'Nine of ten builds keep within a width. Per cent: what each makes the volts, watts, phases, air and balance depart from the drawing when it is there alone, as a part of all such departures, mean square. Every build has magnets, coils and wire of its own; the field is the drawing’s, each magnet’s share of it moved and scaled; coils move as a whole, steel keeps what it does to the drawing’s field. If halved: builds that reach the target with that tolerance twice as exact. The air is what is left when the disc bends, warm, the bearings’ play taken.',
          ),
        ]),
  ]
}

/** The same for other programs. */
export function toleranceResult(study: BuildTolerance) {
  const { target } = study
  const inUnit = (name: keyof BuildFigures, value: number): number | null => {
    const suffix = figureUnits[name]
    return Number.isFinite(value) ? fromSi(value, unit(suffix)) : null
  }
  return {
    name: study.name,
    builds: study.builds,
    seed: study.seed,
    wind_m_per_s: study.wind,
    yield: study.yield,
    yieldAllHalved: study.yieldAllHalved,
    reached: study.reached,
    target: {
      volts: target.volts,
      power: target.power,
      imbalance: target.imbalance,
      clearance_mm: fromSi(target.clearance, unit('mm')),
      grade_m_per_s: target.grade,
      gradeAsked: target.gradeAsked,
    },
    scatter: Object.fromEntries(
      figuresOf(study).map((name) => {
        const { drawn, mean, low, middle, high } = study.scatter[name]
        const suffix = figureUnits[name]
        return [
          suffix === '1' ? figureKeys[name] : `${figureKeys[name]}_${suffix}`,
          {
            drawn: inUnit(name, drawn),
            mean: inUnit(name, mean),
            quantile5: inUnit(name, low),
            quantile50: inUnit(name, middle),
            quantile95: inUnit(name, high),
          },
        ]
      }),
    ),
    tolerances: study.tolerances.map(({ name, width, shares, meanUseful, yieldHalved }) => ({
      name,
      width: fromSi(width, unitOfName(name)),
      departureShares: shares,
      usefulAlone: meanUseful,
      yieldHalved,
    })),
  }
}

const figureUnits: Readonly<Record<keyof BuildFigures, string>> = {
  volts: '1',
  ohms: '1',
  cutIn: 'rpm',
  useful: 'W',
  energy: 'kWh',
  spread: '1',
  hum: '1',
  circulatingCurrent: 'A',
  circulatingLoss: 'W',
  clearance: 'mm',
  unbalance: '1',
  couple: 'kg_m2',
  grade: 'm_per_s',
}

const figureKeys: Readonly<Record<keyof BuildFigures, string>> = {
  volts: 'voltsOverDrawing',
  ohms: 'ohmsOverDrawing',
  cutIn: 'currentBegins',
  useful: 'useful',
  energy: 'yearEnergy',
  spread: 'phaseSpread',
  hum: 'onceATurn',
  circulatingCurrent: 'circulating_rms',
  circulatingLoss: 'circulatingLoss',
  clearance: 'leastAir',
  unbalance: 'unbalance_kg_m',
  couple: 'coupleUnbalance',
  grade: 'balanceGrade',
}
