/** The verb that puts a design through a storm, one failure after another. */
import { readFileSync } from 'node:fs'
import { windSeries } from '../src/analysis/wind-series.ts'
import { Refusal, type StormStudy, type StormStudyOptions, stormStudy } from '../src/index.ts'
import { stormCsv, stormPage, stormResult } from '../src/output/storm-page.ts'
import { stormReport } from '../src/output/storm-report.ts'
import { chainOrFaults, type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export interface StormWords extends Omit<StormStudyOptions, 'series'> {
  /** File of a logged wind. */
  readonly log?: string
  readonly csv: boolean
  readonly json: boolean
}

export async function stormVerb(
  file: string,
  { json, csv, log, ...options }: StormWords,
): Promise<ExitStatus> {
  const chain = chainOrFaults(await readDesign(file))
  if (!('machine' in chain)) return printFaults(chain, json)
  let study: StormStudy
  try {
    const series = log === undefined ? {} : { series: windSeries(readFileSync(log, 'utf8')) }
    study = withProgress(stormStudy(chain, { ...options, ...series }))
  } catch (error) {
    if (error instanceof Refusal)
      return printFaults(
        [{ path: 'the storm', condition: error.message, received: 'this request', code: error.code }],
        json,
      )
    if (typeof (error as NodeJS.ErrnoException).code !== 'string') throw error
    const reason = (error as NodeJS.ErrnoException).code
    return printFaults(
      [{ path: 'file', condition: 'readable', received: `${log} (${reason})`, code: 'not-json' }],
      json,
    )
  }
  if (json) process.stdout.write(`${JSON.stringify(stormResult(study), null, 2)}\n`)
  else if (csv) process.stdout.write(stormCsv(study.table.rows[0]!.storm.trace))
  else print(stormPage(stormReport(study)))
  return study.table.rows.some(({ severity }) => severity === 'blocking') ? 1 : 0
}
