/** The verbs on a design: compute the chain, or check it for faults and concerns only. */
import {
  type Chain,
  chainOf,
  type Fault,
  faultText,
  type Parsed,
  Refusal,
  resolveDesign,
  spreadsOf,
  worthOf,
} from '../src/index.ts'
import { chainPage, concernLines, type PageLine } from '../src/output/chain-page.ts'
import { concernResult, designResult } from '../src/output/result.ts'
import { signOff } from '../src/output/sign-off.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

/** 0 fine, 1 concerns that block the design's class, 2 bad input. */
export type ExitStatus = 0 | 1 | 2

const refusalLine = (text: string): PageLine => ({ text, tone: 'blocking' })

export function printFaults(faults: readonly Fault[], json: boolean): ExitStatus {
  if (json) process.stdout.write(`${JSON.stringify({ faults }, null, 2)}\n`)
  else
    print(
      faults.map((fault) => refusalLine(faultText(fault))),
      process.stderr,
    )
  return 2
}

/** The chain, or the refusal of a machine whose numbers are allowed one by one but not together. */
export function chainOrFaults(parsed: Parsed): Chain | readonly Fault[] {
  if (!parsed.ok) return parsed.faults
  try {
    return withProgress(chainOf(resolveDesign(parsed.design)))
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return [{ path: 'the machine', condition: error.message, received: 'this design', code: error.code }]
  }
}

/** What a note answers stands on the word of whoever wrote it, and no longer counts. */
export const statusOf = (concerns: Parameters<typeof signOff>[0]): ExitStatus =>
  signOff(concerns).verdict === 'not' ? 1 : 0

/** Draws that tell a half-width within some 10 %; the verb on the spread itself takes more. */
const quickSamples = 128

export async function computeVerb(file: string, { json }: { readonly json: boolean }): Promise<ExitStatus> {
  const chain = chainOrFaults(await readDesign(file))
  if (!('machine' in chain)) return printFaults(chain, json)
  const spreads = withProgress(spreadsOf(chain, { samples: quickSamples }))
  const worth = withProgress(worthOf(chain))
  if (json) process.stdout.write(`${JSON.stringify(designResult(chain, spreads, worth), null, 2)}\n`)
  else print(chainPage(chain, spreads, worth))
  return statusOf(chain.concerns)
}

export async function checkVerb(file: string, { json }: { readonly json: boolean }): Promise<ExitStatus> {
  const chain = chainOrFaults(await readDesign(file))
  if (!('machine' in chain)) return printFaults(chain, json)
  if (json)
    process.stdout.write(`${JSON.stringify({ concerns: chain.concerns.map(concernResult) }, null, 2)}\n`)
  else print(concernLines(chain.concerns))
  return statusOf(chain.concerns)
}
