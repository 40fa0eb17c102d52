/** The verb that prints a design on one page: HTML for a browser's printer. */
import { InvalidArgumentError } from 'commander'
import { spreadsOf } from '../src/index.ts'
import { designSheet, sheetSamples } from '../src/output/sheet/design-sheet.ts'
import { chainOrFaults, type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { withProgress } from './terminal.ts'

/** A day as somebody writes it behind `--date`. */
export function dayOf(text: string): string {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text))
    throw new InvalidArgumentError('It must be year-month-day, for example 2026-05-31.')
  return text
}

/** The day here, year-month-day, as ISO 8601 writes it. */
function today(): string {
  const now = new Date()
  const two = (value: number) => String(value).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

export async function sheetVerb(
  file: string,
  { date = today() }: { readonly date?: string | undefined },
): Promise<ExitStatus> {
  const chain = chainOrFaults(await readDesign(file))
  if (!('machine' in chain)) return printFaults(chain, false)
  const spreads = withProgress(spreadsOf(chain, { samples: sheetSamples }))
  process.stdout.write(designSheet({ chain, spreads, date }))
  // a design that must not be signed off yet is printed all the same: the sheet says so
  return 0
}
