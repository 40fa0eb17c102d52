/** The sheet a chart is drawn on: an SVG with a title and a description, and text set on it. */

import { said } from '../telling.ts'

export interface Sheet {
  /** Part of the identifiers inside, unique on a page. */
  readonly name: string
  readonly title: string
  /** What the picture shows, for those who cannot see it. */
  readonly description: string
  readonly width: number
  readonly height: number
}

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

// control characters may not stand in XML, not even escaped
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const notXml = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g

export const escaped = (text: string): string =>
  text.replace(notXml, '').replace(/[&<>"']/g, (sign) => entities[sign]!)

/** A number that was chosen, not computed: 6 and 6.5, not 6.00. */
export const shortNumber = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '−')

/** A length on the sheet, to a hundredth; what is not finite goes to the sheet's edge. */
export function px(value: number): string {
  const rounded = Math.round((Number.isFinite(value) ? value : 0) * 100) / 100
  return String(rounded === 0 ? 0 : rounded)
}

export interface TextStyle {
  readonly className: string
  readonly anchor?: 'start' | 'middle' | 'end'
  /** It is said in the reader’s language already. */
  readonly told?: true
}

export const textAt = (x: number, y: number, text: string, { className, anchor, told }: TextStyle): string =>
  `<text class="${className}" x="${px(x)}" y="${px(y)}"${anchor ? ` text-anchor="${anchor}"` : ''}>${escaped(told ? text : said(text))}</text>`

export const picture = ({ name, title, description, width, height }: Sheet, body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" class="picture" viewBox="0 0 ${px(width)} ${px(height)}" width="${px(width)}" height="${px(height)}" role="img" aria-labelledby="${name}-title ${name}-description">` +
  `<title id="${name}-title">${escaped(said(title))}</title><desc id="${name}-description">${escaped(said(description))}</desc>${body}</svg>`

export type Point = readonly [x: number, y: number]

/** A broken line through the points; points that are not finite break it. */
export function lineThrough(points: Iterable<Point>): string {
  let path = ''
  let pen = false
  for (const [x, y] of points) {
    const there = Number.isFinite(x) && Number.isFinite(y)
    if (there) path += `${pen ? 'L' : 'M'}${px(x)} ${px(y)}`
    pen = there
  }
  return path
}
