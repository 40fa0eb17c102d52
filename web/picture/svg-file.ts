/** A picture of the page as an SVG file that stands alone: its colours, strokes and letters written into every element. */
import { escaped } from '../../src/output/chart/picture.ts'
import { lightPalette, paletteRules } from './light-palette.ts'
import { plainColour } from './plain-colour.ts'

/** What is written over the picture in the file. */
export interface FileHead {
  readonly title: string
  /** The design, and the wind the picture belongs to. */
  readonly below: string
}

/** Room for the head above the picture, and around all of it [px]. */
const headHeight = 50
const margin = 16

/** What a child takes from its parent unless it says otherwise, with what the root begins with. */
const inherited: Readonly<Record<string, string>> = {
  'fill-opacity': '1',
  'stroke-opacity': '1',
  'stroke-width': '1px',
  'stroke-dasharray': 'none',
  'stroke-linejoin': 'miter',
  'stroke-linecap': 'butt',
  'font-family': '',
  'font-size': '',
  'font-weight': '400',
  'font-style': 'normal',
  'text-anchor': 'start',
}

/** Viewers differ in units after numbers: without one it is the picture's own. */
const bare = (value: string): string => value.replace(/(\d)px\b/g, '$1')

/** Outlines that the browser paints under the letters, as a copy of its own: many viewers know no other order. */
function outlineUnder(text: Element): void {
  const under = text.cloneNode(true) as Element
  under.setAttribute('fill', text.getAttribute('stroke') ?? 'none')
  text.before(under)
  text.setAttribute('stroke', 'none')
}

/** Letters of another type are as wide as those of the page: most machines lack it, and words would run into each other. */
function keepWidths(root: SVGElement): void {
  for (const text of root.querySelectorAll<SVGTextElement>('text')) {
    const wide = text.getComputedTextLength()
    if (!(wide > 0)) continue
    text.setAttribute('textLength', String(Math.round(wide * 10) / 10))
    text.setAttribute('lengthAdjust', 'spacingAndGlyphs')
  }
}

/** Reads how each element is drawn before any is changed, then writes it. */
function writeStyle(root: SVGElement): void {
  const elements = [root, ...root.querySelectorAll<SVGElement>('*')].filter(
    ({ tagName }) => !['title', 'desc'].includes(tagName),
  )
  const read = new Map(elements.map((element) => [element, { ...pick(getComputedStyle(element)) }]))
  const outlined: Element[] = []
  for (const [element, style] of read) {
    const parent = element === root ? undefined : read.get(element.parentElement as unknown as SVGElement)
    for (const name of Object.keys(inherited)) {
      const own = style[name]!
      element.removeAttribute(name)
      if (own !== (parent?.[name] ?? inherited[name])) element.setAttribute(name, bare(own))
    }
    for (const name of ['fill', 'stroke'] as const) {
      const own = style[name]!
      if (parent === undefined || own !== parent[name]) {
        const plain = plainColour(own)
        element.setAttribute(name, plain?.colour ?? own.replace(/url\("?[^#"]*(#[^")]+)"?\)/, 'url($1)'))
        // a colour that lets through by itself does so on top of what the element is told to
        if (plain !== undefined && plain.opacity < 1)
          element.setAttribute(`${name}-opacity`, String(plain.opacity * Number(style[`${name}-opacity`])))
      }
    }
    if (style['opacity'] !== '1') element.setAttribute('opacity', style['opacity']!)
    if (
      element.tagName === 'text' &&
      style['paint-order']!.startsWith('stroke') &&
      style['stroke'] !== 'none'
    )
      outlined.push(element)
  }
  for (const text of outlined) outlineUnder(text)
}

const pick = (style: CSSStyleDeclaration): Record<string, string> =>
  Object.fromEntries(
    [...Object.keys(inherited), 'fill', 'stroke', 'opacity', 'paint-order'].map((name) => [
      name,
      style.getPropertyValue(name),
    ]),
  )

/** Names for style sheets and scripts mean nothing outside the page. */
function dropNames(root: Element): void {
  for (const element of [root, ...root.querySelectorAll('*')])
    for (const { name } of [...element.attributes])
      if (name === 'class' || name.startsWith('data-') || (name === 'role' && element !== root))
        element.removeAttribute(name)
}

/** A place on the page, out of sight, in the light theme's colours. */
function lightPlace(): HTMLElement {
  const place = document.createElement('div')
  place.className = 'drawing taking-along'
  for (const [name, value] of lightPalette(paletteRules(document))) place.style.setProperty(name, value)
  document.body.append(place)
  return place
}

export interface SvgFile {
  readonly text: string
  readonly width: number
  readonly height: number
}

/** The picture, drawn by a chart as text, as the text of a file. */
export function svgFile(drawing: string, { title, below }: FileHead): SvgFile {
  const place = lightPlace()
  try {
    place.innerHTML = drawing
    const picture = place.querySelector('svg')
    if (picture === null) throw new Error('there is no picture to take along yet')
    const [, , wide = 0, tall = 0] = (picture.getAttribute('viewBox') ?? '').split(' ').map(Number)
    const [width, height] = [wide + 2 * margin, tall + headHeight + 2 * margin]
    const name = picture.querySelector('title')
    const told = picture.querySelector('desc')
    const ids = picture.getAttribute('aria-labelledby') ?? ''
    for (const each of [name, told]) each?.remove()
    for (const each of picture.querySelectorAll('.wind-plot')) each.remove()
    picture.insertAdjacentHTML(
      'beforebegin',
      `<svg xmlns="http://www.w3.org/2000/svg" class="picture" role="img" aria-labelledby="${escaped(ids)}" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">` +
        `<rect class="file-ground" width="${width}" height="${height}"/>` +
        `<text class="file-title" x="${margin}" y="${margin + 16}">${escaped(title)}</text>` +
        `<text class="file-below" x="${margin}" y="${margin + 35}">${escaped(below)}</text>` +
        `<g transform="translate(${margin} ${margin + headHeight})"></g></svg>`,
    )
    const whole = place.firstElementChild as SVGSVGElement
    whole.prepend(...[name, told].filter((each) => each !== null))
    whole.querySelector('g')!.append(...picture.childNodes)
    picture.remove()
    keepWidths(whole)
    writeStyle(whole)
    dropNames(whole)
    return { text: `${new XMLSerializer().serializeToString(whole)}\n`, width, height }
  } finally {
    place.remove()
  }
}
