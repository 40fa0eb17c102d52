/** The verb that shows a winding in the wire sizes next to its own. */
import { wireChoices } from '../src/index.ts'
import { wirePage, wireResult } from '../src/output/wire-page.ts'
import { chainOrFaults, type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export async function wiresVerb(
  file: string,
  { json, keepTurns }: { readonly json: boolean; readonly keepTurns: boolean },
): Promise<ExitStatus> {
  const chain = chainOrFaults(await readDesign(file))
  if (!('machine' in chain)) return printFaults(chain, json)
  const choices = withProgress(wireChoices(chain, { keepTurns }))
  if (json) process.stdout.write(`${JSON.stringify(wireResult(choices), null, 2)}\n`)
  else print(wirePage(chain.machine.name, choices))
  return 0
}
