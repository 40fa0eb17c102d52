/** The verb that puts a design through every scenario, from the first turn to one failure after another. */
import { readFileSync } from 'node:fs'
import { windSeries } from '../src/analysis/wind-series.ts'
import { Refusal, type ScenarioStudy, type ScenarioStudyOptions, scenarioStudy } from '../src/index.ts'
import { scenarioPage, traceCsv } from '../src/output/scenario-page.ts'
import { scenarioReport } from '../src/output/scenario-report.ts'
import { scenarioResult } from '../src/output/scenario-result.ts'
import { chainOrFaults, type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export interface ScenarioWords extends Omit<ScenarioStudyOptions, 'series'> {
  /** File of a logged wind. */
  readonly log?: string
  readonly csv: boolean
  readonly json: boolean
}

export async function scenariosVerb(
  file: string,
  { json, csv, log, ...options }: ScenarioWords,
): Promise<ExitStatus> {
  const chain = chainOrFaults(await readDesign(file))
  if (!('machine' in chain)) return printFaults(chain, json)
  let study: ScenarioStudy
  try {
    const series = log === undefined ? {} : { series: windSeries(readFileSync(log, 'utf8')) }
    study = withProgress(scenarioStudy(chain, { ...options, ...series }))
  } catch (error) {
    if (error instanceof Refusal)
      return printFaults(
        [{ path: 'the scenarios', condition: error.message, received: 'this request', code: error.code }],
        json,
      )
    if (typeof (error as NodeJS.ErrnoException).code !== 'string') throw error
    const reason = (error as NodeJS.ErrnoException).code
    return printFaults(
      [{ path: 'file', condition: 'readable', received: `${log} (${reason})`, code: 'not-json' }],
      json,
    )
  }
  const { rows, safetyClass, verdict } = study.table
  if (json) process.stdout.write(`${JSON.stringify(scenarioResult(study), null, 2)}\n`)
  else if (csv) {
    const [{ run, scenario }] = rows as [(typeof rows)[number]]
    if (run === undefined)
      return printFaults(
        [
          {
            path: 'the scenarios',
            condition: 'one that can happen to the machine',
            received: `${scenario.key} (${scenario.cannot})`,
            code: 'not-a-choice',
          },
        ],
        json,
      )
    process.stdout.write(traceCsv(run.storm.trace))
  } else print(scenarioPage(scenarioReport(study)))
  return verdict[safetyClass] === 'blocking' ? 1 : 0
}
