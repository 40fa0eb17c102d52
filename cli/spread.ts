/** The verb that draws all guesses at once: how far they let the results be off, and what to measure next. */
import { Refusal, spreadStudy } from '../src/index.ts'
import { spreadPage } from '../src/output/spread-page.ts'
import { spreadResult } from '../src/output/spread-result.ts'
import { chainOrFaults, type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export interface SpreadVerbOptions {
  readonly samples?: number
  readonly seed?: number
  readonly json: boolean
}

export async function spreadVerb(file: string, { json, ...options }: SpreadVerbOptions): Promise<ExitStatus> {
  const chain = chainOrFaults(await readDesign(file))
  if (!('machine' in chain)) return printFaults(chain, json)
  try {
    const study = withProgress(spreadStudy(chain, options))
    if (json) process.stdout.write(`${JSON.stringify(spreadResult(study), null, 2)}\n`)
    else print(spreadPage({ name: chain.machine.name, study }))
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const { message: condition, code } = error
    return printFaults([{ path: 'the spread', condition, received: 'these options', code }], json)
  }
  return 0
}
