/** The verb that tells whether a machine will burst, rub, bend or seize. */
import { mechanicsStudy } from '../src/index.ts'
import { mechanicsPage, mechanicsResult } from '../src/output/mechanics-page.ts'
import { chainOrFaults, type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

/** Concerns of this side that a class may be blocked by. */
const codes: ReadonlySet<string> = new Set([
  'magnet-retention',
  'gap-stack',
  'disc-bending',
  'creep',
  'bearing-life',
  'shaft-strength',
  'whirling',
])

export async function mechanicsVerb(file: string, { json }: { readonly json: boolean }): Promise<ExitStatus> {
  const chain = chainOrFaults(await readDesign(file))
  if (!('machine' in chain)) return printFaults(chain, json)
  const study = withProgress(mechanicsStudy(chain))
  if (json) process.stdout.write(`${JSON.stringify(mechanicsResult(study), null, 2)}\n`)
  else print(mechanicsPage(study))
  return chain.concerns.some(({ code, severity }) => codes.has(code) && severity === 'blocking') ? 1 : 0
}
