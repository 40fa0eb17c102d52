/** The verb that shows the electrical side: volts and amps, ratings, order of switching, who to ask. */
import { safetyPage, safetyResult } from '../src/output/safety-page.ts'
import { chainOrFaults, type ExitStatus, printFaults, statusOf } from './compute.ts'
import { readDesign } from './read.ts'
import { print } from './terminal.ts'

export async function safetyVerb(file: string, { json }: { readonly json: boolean }): Promise<ExitStatus> {
  const chain = chainOrFaults(await readDesign(file))
  if (!('machine' in chain)) return printFaults(chain, json)
  const result = safetyResult(chain)
  if (json) process.stdout.write(`${JSON.stringify(result, null, 2)}\n`)
  else print(safetyPage(chain))
  return statusOf(chain.concerns.filter(({ code }) => result.concerns.some((one) => one.code === code)))
}
