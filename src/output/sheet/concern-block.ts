/** What speaks against the design on the sheet: open concerns, the gravest first, a line each, and whom to ask. */

import type { Chain } from '../../analysis/compute.ts'
import {
  batteryCaution,
  electricCaution,
  fireCaution,
  towerCaution,
  turningCaution,
} from '../../analysis/concern/caution.ts'
import { type Concern, isOpen, severities } from '../../analysis/concern/concern.ts'
import { severityWord } from '../chain-page.ts'
import { escaped } from '../chart/picture.ts'
import { signOffText } from '../sign-off.ts'
import { said } from '../telling.ts'
import { type Block, heading, shortened } from './sheet-markup.ts'
import { lineHeight_mm, linesIn, room_mm } from './sheet-unit.ts'

/** Whole sentences as far as they fit into a line behind their head; a first one that does not ends at a word. */
export function lineOf(head: string, ours: string): string {
  const what = said(ours)
  const fits = (text: string) => linesIn(`${head} ${text}`, room_mm.width) === 1
  const sentences = what.match(/.*?[.!?](?:\s+|$)/g) ?? [what]
  let line = ''
  for (const sentence of sentences) {
    if (line !== '' && !fits((line + sentence).trim())) break
    line += sentence
  }
  let most = line.length
  while (most > 1 && !fits(shortened(line.trim(), most))) most--
  return shortened(line.trim(), most)
}

/** How many are shown, and the rest in words; empty where nothing is left. */
export function restText(left: readonly Pick<Concern, 'severity'>[]): string {
  if (left.length === 0) return ''
  const counts = severities.flatMap((severity) => {
    const count = left.filter((each) => each.severity === severity).length
    return count === 0 ? [] : [`${count} ${severity}`]
  })
  return said(`Not shown here: ${counts.join(', ')}.`)
}

/** As many lines of open concerns as there is room for. */
export function concernBlock({ concerns }: Pick<Chain, 'concerns'>, lines: number): string {
  const open = concerns.filter(isOpen)
  const shown = open.slice(0, open.length > lines ? Math.max(0, lines - 1) : lines)
  const items = shown.map(({ severity, code, what }) => {
    const word = said(severityWord[severity])
    return `<li><b>${escaped(word)}</b> ${escaped(code)}: ${escaped(lineOf(`${word} ${code}:`, what))}</li>`
  })
  const rest = restText(open.slice(shown.length))
  return (
    heading('What speaks against it', 'h2', said(signOffText(concerns))) +
    `<ul class="concerns">${items.join('')}${rest === '' ? '' : `<li>${escaped(rest)}</li>`}</ul>`
  )
}

const magnetCaution =
  'Large magnets jump together, crush fingers and chip: keep them apart, and away from pacemakers.'
const lastCaution = 'A calculation is not a permit, an inspection or a guarantee.'

export function cautionBlock({ machine }: Pick<Chain, 'machine'>): Block {
  const texts = [
    turningCaution,
    magnetCaution,
    electricCaution,
    ...(machine.load.kind === 'battery' ? [batteryCaution] : []),
    fireCaution,
    ...(machine.safetyClass === 'outdoor' ? [towerCaution] : []),
    lastCaution,
  ]
  const [head, text] = [said('Caution.'), texts.map(said).join(' ')]
  return {
    markup: `<p><b>${escaped(head)}</b> ${escaped(text)}</p>`,
    height: lineHeight_mm * linesIn(`${head} ${text}`, room_mm.width),
  }
}
