/** Hatching of a rectangle by slanted lines, cut at its edges: what steel looks like in a section. */
import { px } from './picture.ts'

export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** Path of lines at 45°, `gap` apart along the edges. */
export function hatchPath({ x, y, width, height }: Box, gap: number): string {
  let path = ''
  for (let start = gap / 2; start < width + height; start += gap) {
    // from the left or lower edge up to the upper or right one
    const [x0, y0] = start < height ? [0, start] : [start - height, height]
    const [x1, y1] = start < width ? [start, 0] : [width, start - width]
    path += `M${px(x + x0)} ${px(y + y0)}L${px(x + x1)} ${px(y + y1)}`
  }
  return path
}
