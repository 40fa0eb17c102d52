/** The verb that builds a design many times as sloppily as its document says. */
import { buildTolerance, Refusal } from '../src/index.ts'
import { tolerancePage, toleranceResult } from '../src/output/tolerance-page.ts'
import { chainOrFaults, type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export interface ToleranceOptions {
  readonly json: boolean
  readonly builds?: number
  readonly seed?: number
}

export async function toleranceVerb(
  file: string,
  { json, ...options }: ToleranceOptions,
): Promise<ExitStatus> {
  const chain = chainOrFaults(await readDesign(file))
  if (!('machine' in chain)) return printFaults(chain, json)
  try {
    const study = withProgress(buildTolerance(chain, options))
    if (json) process.stdout.write(`${JSON.stringify(toleranceResult(study), null, 2)}\n`)
    else print(tolerancePage(study))
    return 0
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const { message: condition, code } = error
    return printFaults([{ path: 'the machine', condition, received: 'this design', code }], json)
  }
}
