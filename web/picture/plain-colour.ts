/** A colour as a browser computes it, in the hexadecimal digits that every viewer of pictures reads. */

export interface PlainColour {
  /** "#1f6383", or "none" where nothing of it is seen. */
  readonly colour: string
  /** 0 … 1 */
  readonly opacity: number
}

const twoDigits = (value: number): string =>
  Math.round(Math.min(Math.max(value, 0), 255))
    .toString(16)
    .padStart(2, '0')

const hex = (red: number, green: number, blue: number): string =>
  `#${twoDigits(red)}${twoDigits(green)}${twoDigits(blue)}`

const numbers = (text: string): number[] =>
  [...text.matchAll(/-?[\d.]+(?:e-?\d+)?%?/g)].map(([number]) =>
    number.endsWith('%') ? Number(number.slice(0, -1)) / 100 : Number(number),
  )

/** Undefined where it is no plain colour: a reference to a pattern, a word. */
export function plainColour(computed: string): PlainColour | undefined {
  const text = computed.trim()
  if (text === 'none' || text === 'transparent') return { colour: 'none', opacity: 1 }
  const [, kind, inside] = /^(rgba?|color)\((.*)\)$/.exec(text) ?? []
  if (kind === undefined || inside === undefined) return undefined
  if (kind === 'color' && !inside.startsWith('srgb ')) return undefined
  const [red, green, blue, opacity = 1] = numbers(inside.replace(/^srgb /, ''))
  if (red === undefined || green === undefined || blue === undefined) return undefined
  if (opacity === 0) return { colour: 'none', opacity: 1 }
  const scale = kind === 'color' ? 255 : 1
  return { colour: hex(red * scale, green * scale, blue * scale), opacity }
}
