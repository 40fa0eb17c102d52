/** The circuit on the sheet: the symbols in a row, each with a letter, and under them what stands at each letter. */
import { type CircuitPlan, circuitPlan } from '../../analysis/circuit-plan.ts'
import type { Chain } from '../../analysis/compute.ts'
import { along, type CircuitPart, circuitParts, linesOf, rail, rails } from '../chart/circuit-part.ts'
import { escaped, picture, px, textAt } from '../chart/picture.ts'
import { said } from '../telling.ts'
import { linesIn, textWidth } from './letter-width.ts'
import { type Block, heading, headingHeight_mm, printed, printedHeight } from './sheet-markup.ts'
import { lineHeight_mm, unitsOf } from './sheet-unit.ts'

/** Width of the block, and of it the letters [mm]. */
const width_mm = 93
const letterColumn = 4
/** Between two parts [units of the drawing]. */
const between = 8
/** Symbols are drawn smaller than on the page, but no smaller than this. */
const smallest = 0.5
const largest = 0.8

const letterOf = (k: number): string => String.fromCharCode(97 + k)

function drawnParts(plan: CircuitPlan, parts: readonly CircuitPart[]): string {
  const whole = parts.reduce((sum, { length }) => sum + length, between * (parts.length - 1))
  const width = unitsOf(width_mm)
  const shrunk = Math.max(smallest, Math.min(largest, (width - 8) / whole))
  const bridge = parts.findIndex(({ name }) => name.startsWith('Bridge'))
  let from = 0
  let body = ''
  let letters = ''
  parts.forEach((part, k) => {
    const at = (u: number, v: number): [number, number] => [u, rail + 12 + v]
    body += part.draw(at, from)
    letters += textAt(4 + shrunk * (from + part.length / 2), shrunk * (2 * rail + 24) + 12, letterOf(k), {
      className: 'part-letter',
      anchor: 'middle',
    })
    from += part.length
    if (k < parts.length - 1) body += along(at, k < bridge ? linesOf(plan) : rails, from, between)
    from += between
  })
  return picture(
    {
      name: 'sheet-circuit',
      title: 'Circuit',
      description: `From the winding to the load: ${parts.map(({ name }, k) => `${letterOf(k)} ${name}`).join('; ')}.`,
      width: Math.max(width, 8 + shrunk * whole),
      height: shrunk * (2 * rail + 24) + 18,
    },
    `<g class="scaled" transform="translate(4 0) scale(${px(shrunk)})">${body}</g>${letters}`,
  )
}

/** What a plan lacks or does not say; nothing in the drawing stands for it. */
export function circuitGaps({ fuse: { place, current }, directSwitch, load }: CircuitPlan): string[] {
  return [
    ...(load.kind === 'battery' && place === 'none' ? ['No fuse.'] : []),
    ...(load.kind === 'battery' && place === 'not said' && current === undefined
      ? ['No fuse is named.']
      : []),
    ...(directSwitch.kind === 'none' ? ['No switch for direct current.'] : []),
    ...(directSwitch.kind === 'not said' ? ['No switch for direct current is named.'] : []),
  ]
}

export function circuitBlock(chain: Chain): Block {
  const plan = circuitPlan(chain)
  const parts = circuitParts(plan)
  const svg = drawnParts(plan, parts)
  const lack = circuitGaps(plan).map(said).join(' ')
  const texts = parts.map(({ name, values }) => ({
    name: said(name),
    value: values.map(said).join('; '),
  }))
  const rows = texts.map(
    ({ name, value }, k) =>
      `<li><b>${letterOf(k)}</b> <span><b>${escaped(name)}:</b> ${escaped(value)}</span></li>`,
  )
  // names are bold, and so is what lacks
  const lines = texts.reduce(
    (sum, { name, value }) => {
      const bolder = textWidth(name, 'bold') - textWidth(name)
      return sum + linesIn(`${name}: ${value}`, width_mm - letterColumn - bolder)
    },
    lack === '' ? 0 : linesIn(lack, width_mm, 'bold'),
  )
  return {
    markup: `${heading('Circuit')}${printed(svg)}<ol class="parts">${rows.join('')}</ol>${lack === '' ? '' : `<p class="lack">${escaped(lack)}</p>`}`,
    height: headingHeight_mm + printedHeight(svg) + lineHeight_mm * lines,
  }
}
