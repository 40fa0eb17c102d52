/** The verb that draws up first machines from what a maker has. */
import { firstMachines, parseStock, Refusal } from '../src/index.ts'
import { firstPage, firstResult } from '../src/output/first-page.ts'
import { type ExitStatus, printFaults } from './compute.ts'
import { readText } from './read.ts'
import { print, withProgress } from './terminal.ts'

export interface FirstOptions {
  readonly json: boolean
  readonly trials?: number
  /** Print the design of the best machine, or of the best of this kind, instead of the page. */
  readonly design?: string | true
}

export async function firstVerb(file: string, { json, trials, design }: FirstOptions): Promise<ExitStatus> {
  const text = await readText(file)
  if (typeof text !== 'string') return printFaults([text], json)
  let input: unknown
  try {
    input = JSON.parse(text)
  } catch {
    return printFaults(
      [{ path: 'the stock', condition: 'JSON', received: `${text.length} letters`, code: 'not-json' }],
      json,
    )
  }
  const parsed = parseStock(input)
  if (!parsed.ok) return printFaults(parsed.faults, json)
  try {
    const found = withProgress(firstMachines(parsed.stock, trials === undefined ? {} : { trials }))
    if (design === undefined) {
      if (json) process.stdout.write(`${JSON.stringify(firstResult(found), null, 2)}\n`)
      else print(firstPage(found))
      return found.machines.length > 0 ? 0 : 1
    }
    const chosen = found.machines.find(({ kind }) => design === true || kind === design)
    if (chosen === undefined)
      return printFaults(
        [
          {
            path: '--design',
            condition: `one of ${found.machines.map(({ kind }) => kind).join('; ')}`,
            received: String(design),
            code: 'not-a-choice',
          },
        ],
        json,
      )
    process.stdout.write(`${JSON.stringify(chosen.design, null, 2)}\n`)
    return 0
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const { message: condition, code } = error
    return printFaults([{ path: 'the stock', condition, received: 'this stock', code }], json)
  }
}
