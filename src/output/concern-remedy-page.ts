/** What helps against the concerns of a design, tried on the whole chain, as a page of text and as JSON. */

import { isOpen } from '../analysis/concern/concern.ts'
import type {
  ConcernRemedyReport,
  ConcernTrials,
  Standing,
  TriedRemedy,
} from '../analysis/concern-remedies.ts'
import { pathText } from '../analysis/remedy/change.ts'
import { fromSi, unit } from '../units/unit.ts'
import { type PageLine, severityWord } from './chain-page.ts'
import { measureText, outcomeText, triedNote, triedSentences } from './concern-remedy-words.ts'
import { wrapped } from './text-table.ts'

const columns = 96
const indent = '      '

const plain = (text: string): PageLine => ({ text, tone: 'plain' })
const block = (text: string, by = indent): PageLine[] => wrapped(by + text, columns, by).map(plain)

function triedLines(trials: ConcernTrials, tried: TriedRemedy, report: ConcernRemedyReport): PageLine[] {
  const tone =
    tried.outcome === 'settles'
      ? tried.worse.some(({ after }) => after === 'blocking')
        ? 'warning'
        : 'good'
      : tried.outcome === 'softens'
        ? 'warning'
        : 'plain'
  return [
    ...wrapped(`    ${outcomeText(tried)}: ${tried.words}`, columns, indent).map(
      (text) => ({ text, tone }) as const,
    ),
    ...triedSentences(trials, tried, report.before).flatMap((text) => block(text)),
  ]
}

function concernLines(trials: ConcernTrials, report: ConcernRemedyReport): PageLine[] {
  const { concern, before, tried, advice } = trials
  const tone = concern.severity === 'note' ? 'plain' : concern.severity
  return [
    ...wrapped(`  ${severityWord[concern.severity]} ${concern.code}: ${concern.what}`, columns, indent).map(
      (text) => ({ text, tone }) as const,
    ),
    ...(before.measure === undefined ? [] : block(`${measureText(before.measure)}.`)),
    ...(isOpen(concern) ? [] : block('Answered by a note; the remedies stand for whoever doubts it.')),
    ...(tried.length === 0 ? block('Nothing here that a document can hold.') : []),
    ...tried.flatMap((one) => triedLines(trials, one, report)),
    ...advice.flatMap((text) => block(`→ ${text}`)),
    plain(''),
  ]
}

export function concernRemedyPage(report: ConcernRemedyReport): PageLine[] {
  return [
    { text: `${report.name} — what helps`, tone: 'title' },
    ...wrapped(triedNote, columns).map((text) => ({ text, tone: 'faint' }) as const),
    plain(''),
    ...(report.concerns.length === 0
      ? [{ text: 'No concern to settle.', tone: 'good' } as const]
      : report.concerns.flatMap((trials) => concernLines(trials, report))),
  ]
}

const inUnit = (suffix: string, value: number): number | null =>
  Number.isFinite(value) ? fromSi(value, unit(suffix)) : null

const standingResult = ({ severity, measure }: Standing) => ({
  severity: severity ?? null,
  measure:
    measure === undefined
      ? null
      : {
          name: measure.name,
          value: inUnit(measure.unit, measure.value),
          limit: inUnit(measure.unit, measure.limit),
          unit: measure.unit,
          sound: measure.sound,
        },
})

const figuresResult = (figures: ConcernRemedyReport['before']) => ({
  energy_kWh: inUnit('kWh', figures.energy),
  useful_W: figures.usefulPower,
  start_m_per_s: inUnit('m_per_s', figures.startWind),
  cutIn_m_per_s: inUnit('m_per_s', figures.cutInWind),
  hottestCopper_degC: inUnit('degC', figures.hottestCopper),
  runaway_rpm: inUnit('rpm', figures.runawaySpeed),
  runaway_V: figures.runawayVolts,
  copper_kg: figures.copperMass,
  price: figures.price ?? null,
})

const shiftResult = ({ code, before, after }: TriedRemedy['worse'][number]) => ({
  code,
  before: before ?? null,
  after: after ?? null,
})

const changesResult = (changes: TriedRemedy['changes']) =>
  changes.map(({ path, from, to }) => ({ path: pathText(path), from: from ?? null, to: to ?? null }))

/** The same for other programs. */
export const concernRemedyResult = (report: ConcernRemedyReport) => ({
  name: report.name,
  wind_m_per_s: report.wind,
  before: figuresResult(report.before),
  concerns: report.concerns.map(({ concern, before, tried, advice }) => ({
    code: concern.code,
    severity: concern.severity,
    what: concern.what,
    before: standingResult(before),
    remedies: tried.map((one) => ({
      words: one.words,
      outcome: one.outcome,
      changes: changesResult(one.changes),
      after: one.after === undefined ? null : standingResult(one.after),
      figures: one.figures === undefined ? null : figuresResult(one.figures),
      worse: one.worse.map(shiftResult),
      better: one.better.map(shiftResult),
      skipped: one.skipped.map(({ changes, reason }) => ({ changes: changesResult(changes), reason })),
    })),
    advice,
  })),
})
