/** A wind logger's file as the page shows it: report, statistics, the fields for the site, the design's year in it. */
import {
  type Design,
  type ImportReport,
  importWind,
  measuredSite,
  parseDesignText,
  Refusal,
  type Steps,
  type WindImportOptions,
  type WindStatistics,
  windStatistics,
} from '../src/index.ts'
import { designInMeasuredWind, windComparison } from '../src/output/wind-comparison.ts'

export interface RecordReport {
  readonly name: string
  readonly report: ImportReport
  readonly statistics: WindStatistics
  readonly site: Partial<Design['site']>
  /** A year of the design in that wind [J]; undefined with the reason where it could not be computed. */
  readonly year:
    | {
        readonly byHistogram: number
        readonly byWeibull: number | undefined
        readonly byMean: number
        /** [m/s] */
        readonly hubWind: number
      }
    | { readonly reason: string }
}

/** Reads the text and computes the design in its wind; a sentence where the file cannot be used. */
export function* recordReport(
  name: string,
  text: string,
  options: WindImportOptions,
  designText: string,
): Steps<RecordReport | string> {
  const steps = importWind(text, options)
  let step = steps.next()
  while (step.done !== true) {
    yield 0.9 * step.value
    step = steps.next()
  }
  const found = step.value
  if (!found.ok) return found.reason
  const statistics = windStatistics(found.series)
  const bare = { name, report: found.report, statistics, site: measuredSite(statistics) }
  const parsed = parseDesignText(designText)
  if (!parsed.ok) return { ...bare, year: { reason: 'The design has entries to mend first.' } }
  yield 0.92
  try {
    const design = designInMeasuredWind(parsed.design, statistics)
    if (!('site' in design)) return { ...bare, year: { reason: design.join('; ') } }
    const { byHistogram, byWeibull, byMean, hubWind } = yield* windComparison(design, statistics)
    return { ...bare, year: { byHistogram, byWeibull, byMean, hubWind } }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return { ...bare, year: { reason: error.message } }
  }
}
