/** Many builds of one drawing as a page of text, and as JSON in workshop units. */
import type { BuildFigures, BuildTolerance } from '../analysis/build-tolerance.ts'
import { fromSi, unit, unitOfName } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { textTable, wrapped } from './text-table.ts'
import { figureColumns, shareColumns, toldFigures, toleranceReport } from './tolerance-report.ts'

const columns = 96

export function tolerancePage(study: BuildTolerance): PageLine[] {
  const { name, builds, sentences, goals, figures, figureNote, tolerances, toleranceNote } =
    toleranceReport(study)
  const plain = (text: string): PageLine => ({ text, tone: 'plain' })
  const faint = (text: string): PageLine => ({ text, tone: 'faint' })
  const title = (text: string): PageLine => ({ text, tone: 'title' })
  const blank = plain('')
  const table = (lines: readonly string[]) =>
    lines.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`)))
  const left = (head: string) => ({ head, align: 'left' as const })
  const right = (head: string) => ({ head, align: 'right' as const })
  const note = (text: string): PageLine[] => wrapped(`  ${text}`, columns, '  ').map(faint)
  return [
    title(`${name} — built ${builds} times`),
    ...wrapped(`  ${sentences.join(' ')}`, columns, '  ').map(plain),
    blank,
    title('The target'),
    ...table(
      textTable(
        [left('goal'), left('limit'), right('reached')],
        goals.map(({ words, limit, reached }) => [words, limit, reached]),
      ),
    ),
    blank,
    title('What comes out'),
    ...table(
      textTable(
        [left(''), ...figureColumns.map(right)],
        figures.map(({ words, cells }) => [words, ...cells]),
      ),
    ),
    ...note(figureNote),
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
                ...shareColumns.map((head) => right(`${head} %`)),
                right('if halved %'),
              ],
              tolerances.map(({ words, width, shares, yieldHalved }) => [
                words,
                width,
                ...shares,
                yieldHalved,
              ]),
            ),
          ),
          ...note(toleranceNote),
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
      toldFigures(study).map((name) => {
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
