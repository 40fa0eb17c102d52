/** The name of a file that is taken along: of the design, of the picture, and of the wind where it belongs to one. */

/** Letters with marks lose them; whatever else a file system may dislike becomes a hyphen. */
export const safe = (text: string): string =>
  text
    .replaceAll('ß', 'ss')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')

/** Of each part; some systems end at 255 for the whole. */
const mostLetters = 60

const part = (text: string): string => safe(text).slice(0, mostLetters).replace(/-+$/, '')

export interface TakenAlong {
  readonly design: string
  readonly picture: string
  /** That the picture belongs to [m/s]. */
  readonly wind?: number
}

/** "hen-house-drum-waveform-6.5-m-s.svg" */
export function takenName({ design, picture, wind }: TakenAlong, ending: string): string {
  const at = wind === undefined || !Number.isFinite(wind) ? [] : [`${Number(wind.toPrecision(6))}-m-s`]
  const parts = [part(design) || 'design', part(picture) || 'picture', ...at]
  return `${parts.join('-')}.${ending}`
}
