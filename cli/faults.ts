/** The verb that shows a design with one defect at a time beside itself without any. */
import { type FaultStudy, faultStudy, Refusal } from '../src/index.ts'
import { faultPage, faultResult } from '../src/output/fault-page.ts'
import { type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export async function faultsVerb(file: string, { json }: { readonly json: boolean }): Promise<ExitStatus> {
  const parsed = await readDesign(file)
  if (!parsed.ok) return printFaults(parsed.faults, json)
  let study: FaultStudy
  try {
    study = withProgress(faultStudy(parsed.design))
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const { message: condition, code } = error
    return printFaults([{ path: 'the machine', condition, received: 'this design', code }], json)
  }
  if (json) process.stdout.write(`${JSON.stringify(faultResult(study), null, 2)}\n`)
  else print(faultPage(study))
  return 0
}
