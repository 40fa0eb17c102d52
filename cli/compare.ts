/** The verb that sets designs against each other under a stated rule. */
import {
  type ContestOptions,
  type Design,
  type Fault,
  fairContest,
  faultText,
  Refusal,
} from '../src/index.ts'
import { contestPage, refusedPage } from '../src/output/contest-page.ts'
import { contestResult } from '../src/output/contest-result.ts'
import { type ExitStatus, statusOf } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export interface CompareOptions extends Pick<ContestOptions, 'rule' | 'amount' | 'keepTurns'> {
  readonly json: boolean
}

function refused(
  faults: readonly { readonly file: string; readonly fault: Fault }[],
  json: boolean,
): ExitStatus {
  if (json)
    process.stdout.write(
      `${JSON.stringify({ faults: faults.map(({ file, fault }) => ({ file, ...fault })) }, null, 2)}\n`,
    )
  else print(refusedPage(faults.map(({ file, fault }) => `${file}: ${faultText(fault)}`)), process.stderr)
  return 2
}

export async function compareVerb(
  files: readonly string[],
  { json, ...options }: CompareOptions,
): Promise<ExitStatus> {
  const faults: { file: string; fault: Fault }[] = []
  const designs: Design[] = []
  for (const file of files) {
    const parsed = await readDesign(file)
    if (parsed.ok) designs.push(parsed.design)
    else faults.push(...parsed.faults.map((fault) => ({ file, fault })))
  }
  if (faults.length > 0) return refused(faults, json)
  try {
    const contest = withProgress(fairContest(designs, options))
    if (json) process.stdout.write(`${JSON.stringify(contestResult(contest), null, 2)}\n`)
    else print(contestPage(contest))
    return contest.contestants.some(({ chain }) => statusOf(chain.concerns) === 1) ? 1 : 0
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const { message: condition, code } = error
    const fault = { path: 'the contest', condition, received: 'these designs', code }
    if (json) process.stdout.write(`${JSON.stringify({ faults: [fault] }, null, 2)}\n`)
    else print(refusedPage([error.message]), process.stderr)
    return 2
  }
}
