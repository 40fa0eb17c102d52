/** The verb that tries what helps against the concerns of a design. */
import { type ConcernRemedyReport, concernCodes, concernRemedies } from '../src/index.ts'
import { concernRemedyPage, concernRemedyResult } from '../src/output/concern-remedy-page.ts'
import { chainOrFaults, type ExitStatus, printFaults, statusOf } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export interface RemediesOptions {
  readonly concern: string | undefined
  readonly json: boolean
}

export async function remediesVerb(file: string, { concern, json }: RemediesOptions): Promise<ExitStatus> {
  if (concern !== undefined && !concernCodes.includes(concern))
    return printFaults(
      [
        {
          path: '--concern',
          condition: `one of ${[...concernCodes].sort().join(', ')}`,
          received: concern,
          code: 'not-a-choice',
        },
      ],
      json,
    )
  const parsed = await readDesign(file)
  const chain = chainOrFaults(parsed)
  if (!('machine' in chain)) return printFaults(chain, json)
  const report: ConcernRemedyReport = withProgress(
    concernRemedies(chain.machine.design, {
      chain,
      ...(concern === undefined ? {} : { codes: [concern] }),
    }),
  )
  if (json) process.stdout.write(`${JSON.stringify(concernRemedyResult(report), null, 2)}\n`)
  else print(concernRemedyPage(report))
  return statusOf(chain.concerns)
}
