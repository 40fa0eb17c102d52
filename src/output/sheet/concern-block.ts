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
import { severityCount, signOffText } from '../sign-off.ts'
import { said } from '../telling.ts'
import { linesIn, textWidth } from './letter-width.ts'
import { type Block, heading, shortened } from './sheet-markup.ts'
import { lineHeight_mm, room_mm } from './sheet-unit.ts'

/** Whole sentences as far as they fit into a line behind their head; a first one that does not ends at a word. */
export function lineOf(head: string, ours: string): string {
  const what = said(ours)
  const room = room_mm.width - textWidth(`${head} `, 'bold')
  const fits = (text: string) => textWidth(text) <= room
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

/** How many are not shown, and the names of those that block; empty where nothing is left. */
export function restText(left: readonly Pick<Concern, 'severity' | 'code'>[]): string {
  if (left.length === 0) return ''
  const counts = severities.flatMap((severity) => {
    const these = left.filter((each) => each.severity === severity)
    if (these.length === 0) return []
    const names = severity === 'blocking' ? ` (${these.map(({ code }) => code).join(', ')})` : ''
    return [said(severityCount(severity, these.length)) + names]
  })
  return `${said('Not shown here:')} ${counts.join(', ')}.`
}

/** Open concerns, the gravest first, as many as find room with what is said of the rest. */
function shownConcerns({ concerns }: Pick<Chain, 'concerns'>, lines: number) {
  const open = concerns.filter(isOpen)
  const restOf = (count: number) => restText(open.slice(count))
  const taken = (count: number) => count + (count < open.length ? linesIn(restOf(count), room_mm.width) : 0)
  let count = Math.min(open.length, lines)
  while (count > 0 && taken(count) > lines) count--
  return { shown: open.slice(0, count), rest: restOf(count) }
}

/** At least so many are told where so many are open. */
const gravestCount = 3

/** Lines that everything which blocks needs, or the three gravest, with what is said of the rest. */
export function neededLines({ concerns }: Pick<Chain, 'concerns'>): number {
  const open = concerns.filter(isOpen)
  const blocking = open.filter(({ severity }) => severity === 'blocking').length
  const told = Math.min(open.length, Math.max(gravestCount, blocking))
  return told < open.length ? told + linesIn(restText(open.slice(told)), room_mm.width) : told
}

/** As many lines of open concerns as there is room for. */
export function concernBlock(chain: Pick<Chain, 'concerns'>, lines: number): string {
  const { shown, rest } = shownConcerns(chain, lines)
  const items = shown.map(({ severity, code, what }) => {
    const word = said(severityWord[severity])
    return `<li><b>${escaped(word)}</b> ${escaped(code)}: ${escaped(lineOf(`${word} ${code}:`, what))}</li>`
  })
  return (
    heading('What speaks against it', 'h2', said(signOffText(chain.concerns))) +
    `<ul class="concerns">${items.join('')}${rest === '' ? '' : `<li class="rest">${escaped(rest)}</li>`}</ul>`
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
