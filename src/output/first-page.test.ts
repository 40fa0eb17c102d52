/** Checks of the page of first machines: every machine and every reason stands there, no number that is none. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { finished } from '../analysis/step.ts'
import { parseDesign } from '../machine/parse.ts'
import { parseStock } from '../machine/stock.ts'
import { firstMachines } from '../search/first-machine.ts'
import { firstPage, firstResult } from './first-page.ts'

const stock = JSON.parse(
  readFileSync(new URL('../../examples/stock/shed-drawer.json', import.meta.url), 'utf8'),
)

describe('law: the page of first machines', () => {
  const parsed = parseStock({ ...stock, magnetCount: 8, printerBed_mm: 90 })
  if (!parsed.ok) throw new Error('the example is no stock')
  const found = finished(firstMachines(parsed.stock, { trials: 3 }))
  const text = firstPage(found)
    .map((line) => line.text)
    .join('\n')

  test('every kind is told, as a machine or with a reason; what the printer cannot hold is said', () => {
    for (const { kind } of [...found.machines, ...found.without]) expect(text).toContain(kind)
    expect(found.machines[0]!.fitsPrinter).toBe(false)
    expect(text).toContain('must be printed in pieces')
    expect(text).not.toMatch(/NaN|undefined|Infinity/)
  })

  test('the result is JSON, and its designs parse', () => {
    const result = JSON.parse(JSON.stringify(firstResult(found))) as { machines: { design: unknown }[] }
    expect(result.machines.length).toBe(found.machines.length)
    for (const { design } of result.machines) expect(parseDesign(design).ok).toBe(true)
  })
})
