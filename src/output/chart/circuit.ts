/** Picture of the circuit of a design, from the phases to the load, each part with its values. */
import type { CircuitPlan } from '../../analysis/circuit-plan.ts'
import type { ChartTable } from './chart-table.ts'
import { along, type CircuitPart, circuitParts, linesOf, rail, rails } from './circuit-part.ts'
import type { Place } from './circuit-symbol.ts'
import { lineAt, linesOfParagraph } from './paragraph.ts'
import { picture } from './picture.ts'

export interface CircuitChart {
  readonly width: number
  readonly plan: CircuitPlan
}

const title = 'Circuit'

/** What a plan says nothing of, or says is missing: nothing stands for it in the picture. */
function missing({ fuse: { place, current }, directSwitch, load }: CircuitPlan): string[] {
  return [
    ...(load.kind === 'battery' && (place === 'none' || (place === 'not said' && current === undefined))
      ? [place === 'none' ? 'no fuse' : 'no fuse is named']
      : []),
    ...(directSwitch.kind === 'none' ? ['no switch for direct current'] : []),
    ...(directSwitch.kind === 'not said' ? ['no switch for direct current is named'] : []),
  ]
}

export const circuitCaution =
  'Not a wiring instruction: earthing, protection and installation follow the local code and belong to a licensed person.'

/** Least room along the flow for a part and its caption where the circuit lies [px]. */
const leastLying = 124

export function circuitChart({ width, plan }: CircuitChart): string {
  const parts = circuitParts(plan)
  const lying = width >= leastLying * parts.length
  const gaps = missing(plan)
  const last = [...(gaps.length > 0 ? [`In this design: ${gaps.join('; ')}.`] : []), circuitCaution].flatMap(
    (sentence) => linesOfParagraph(sentence, Math.floor((width - 8) / 7)),
  )
  const notes = (top: number) =>
    last.map((line, k) => lineAt(4, top + 18 * k, line, { className: 'tick-text' })).join('')
  const captions = (part: CircuitPart, room: number): { text: string; className: string }[] => [
    ...linesOfParagraph(part.name, Math.floor(room / 7.8)).map((text) => ({
      text,
      className: 'caption-name',
    })),
    ...part.values
      .flatMap((sentence) => linesOfParagraph(sentence, Math.floor(room / 7)))
      .map((text) => ({ text, className: 'tick-text' })),
  ]
  let body = ''
  let height = 0
  if (lying) {
    const middle = rail + 16
    const at: Place = (u, v) => [u, middle + v]
    // what is left over goes into the lines between the parts
    const cellLength = (width - 8) / parts.length
    let lowest = 0
    parts.forEach((part, k) => {
      const from = 4 + k * cellLength
      const slack = Math.max(0, cellLength - part.length)
      body += part.draw(at, from)
      if (k < parts.length - 1) body += joined(plan, parts, k, at, from + part.length, slack)
      const lines = captions(part, cellLength - 10)
      lines.forEach(({ text, className }, n) => {
        body += lineAt(from + 2, 2 * middle + 20 + 17 * n, text, { className })
      })
      lowest = Math.max(lowest, lines.length)
    })
    height = 2 * middle + 30 + 17 * lowest
  } else {
    const middle = rail + 12
    const at =
      (top: number): Place =>
      (u, v) => [middle + v, top + u]
    const room = width - 2 * middle - 12
    let top = 4
    parts.forEach((part, k) => {
      const lines = captions(part, room)
      const tall = Math.max(part.length, 17 * lines.length + 10)
      body += part.draw(at(top), 0)
      if (k < parts.length - 1) body += joined(plan, parts, k, at(top), part.length, tall - part.length)
      const start = top + Math.max(14, (part.length - 17 * lines.length) / 2 + 14)
      lines.forEach(({ text, className }, n) => {
        body += lineAt(2 * middle + 10, start + 17 * n, text, { className })
      })
      top += tall
    })
    height = top + 14
  }
  return picture(
    {
      name: 'circuit',
      title,
      description: `From the winding to the load: ${parts.map(({ name, values }) => `${name}: ${values.join(', ')}`).join('; ')}. ${[...(gaps.length > 0 ? [`In this design: ${gaps.join('; ')}.`] : []), circuitCaution].join(' ')}`,
      width,
      height: height + 18 * last.length,
    },
    body + notes(height + 6),
  )
}

/** The lines that go on from a part to the next: those of the winding before the bridge, plus and minus behind it. */
function joined(
  plan: CircuitPlan,
  parts: readonly CircuitPart[],
  k: number,
  at: Place,
  from: number,
  length: number,
): string {
  if (length <= 0) return ''
  const bridge = parts.findIndex(({ name }) => name.startsWith('Bridge'))
  return along(at, k < bridge ? linesOf(plan) : rails, from, length)
}

export function circuitTable(plan: CircuitPlan): ChartTable {
  return {
    caption: 'Parts of the circuit, from the winding to the load',
    columns: [{ head: 'part' }, { head: 'values' }],
    rows: circuitParts(plan).map(({ name, values }) => [name, values.join('; ')]),
  }
}
