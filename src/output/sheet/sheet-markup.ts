/** The few forms that the blocks of a sheet are made of: a pair of name and value, a table, a picture in its size on paper. */
import { escaped } from '../chart/picture.ts'
import { said } from '../telling.ts'
import { linesIn, textWidth } from './letter-width.ts'
import { hairline_mm, lineHeight_mm, unitLength_mm } from './sheet-unit.ts'

/** A part of the sheet, and the height that it takes at most [mm]. */
export interface Block {
  readonly markup: string
  readonly height: number
}

/** Of a heading with the room under it [mm]. */
export const headingHeight_mm = 4.6
export const subheadingHeight_mm = lineHeight_mm + 1.2

export type Pair = readonly [name: string, value: string]

/** A pair as the reader is to see it. */
export const saidPair = ([name, value]: Pair): Pair => [said(name), said(value)]

/** What stands over a block; what stands aside of it is said already. */
export const heading = (text: string, level: 'h2' | 'h3' = 'h2', aside = ''): string =>
  `<${level}>${escaped(said(text))}${aside === '' ? '' : ` <small>${escaped(aside)}</small>`}</${level}>`

/** Names and values under each other. */
export const pairList = (pairs: readonly Pair[]): string =>
  `<dl>${pairs.map(([name, value]) => `<div><dt>${escaped(name)}</dt><dd>${escaped(value)}</dd></div>`).join('')}</dl>`

/** Between a name and its value [mm], and the share of a column that a value takes at most. */
export const pairGap_mm = 2
export const widestValue = 0.75

/** Of names and values under each other in a column of so much width [mm]. */
export function pairListHeight(pairs: readonly Pair[], width_mm: number): number {
  const lines = pairs.map(([name, value]) => {
    const wide = Math.min(textWidth(value, 'bold'), widestValue * width_mm)
    return Math.max(linesIn(name, width_mm - pairGap_mm - wide), linesIn(value, wide + 0.01, 'bold'))
  })
  return lineHeight_mm * lines.reduce((sum, each) => sum + each, 0) + hairline_mm
}

/** Of rows whose texts find room in one line each [mm]. */
export const rowTableHeight = (rows: number): number => rows * (lineHeight_mm + hairline_mm)

/** Room that a reading leaves for what was read, and between its cells [mm]. */
export const boxWidth_mm = 8
const cellGap = 1

/** Of readings: values stand in one column, and their names take what it leaves [mm]. */
export function readingsHeight(pairs: readonly Pair[], width_mm: number): number {
  const values = Math.max(...pairs.map(([, value]) => textWidth(value, 'bold')))
  const room = width_mm - values - boxWidth_mm - cellGap
  const lines = pairs.reduce((sum, [name]) => sum + linesIn(name, room), 0)
  return lineHeight_mm * lines + hairline_mm * pairs.length
}

/** Rows whose first cell names them. */
export const rowTable = (rows: readonly (readonly string[])[], className: string): string =>
  `<table class="${className}"><tbody>${rows
    .map(
      ([head = '', ...cells]) =>
        `<tr><th scope="row">${escaped(head)}</th>${cells.map((cell) => `<td>${escaped(cell)}</td>`).join('')}</tr>`,
    )
    .join('')}</tbody></table>`

const sized = /^(<svg [^>]*?) width="([\d.]+)" height="([\d.]+)"/

/** A picture of the house in millimetres of paper instead of pixels. */
export const printed = (svg: string): string =>
  svg.replace(
    sized,
    (_, head: string, width: string, height: string) =>
      `${head} width="${(Number(width) * unitLength_mm).toFixed(2)}mm" height="${(Number(height) * unitLength_mm).toFixed(2)}mm"`,
  )

/** Of a picture of the house [mm of paper]. */
export const printedHeight = (svg: string): number => Number(sized.exec(svg)?.[3] ?? 0) * unitLength_mm

/** A picture and what is said under it, in a column of so much width [mm]. */
export function figure(svg: string, sentence: string, width_mm: number): Block {
  const caption = said(sentence)
  return {
    markup: `<figure>${printed(svg)}<figcaption>${escaped(caption)}</figcaption></figure>`,
    height: printedHeight(svg) + lineHeight_mm * linesIn(caption, width_mm),
  }
}

/** A sentence no longer than so many letters; one that is longer ends at a word, and says so. */
export function shortened(text: string, most: number): string {
  if (text.length <= most) return text
  const cut = text.slice(0, most - 1)
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), Math.floor(most / 2))).replace(/[ ,;:.]+$/, '')} …`
}
