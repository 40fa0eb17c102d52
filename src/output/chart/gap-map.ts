/** Picture of the field in the gap over two poles: bands of strength, arrows for its direction, the winding's sides upon them. */
import type { GapMap } from '../../analysis/gap-map.ts'
import { tickStep, tickText } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { phaseInk, phaseLetter } from './phase-letter.ts'
import { picture, px, textAt } from './picture.ts'

export interface GapMapChart {
  readonly width: number
  readonly map: GapMap
}

const title = 'Field in the gap over two poles'

/** Bands of strength at most; each has a class of its own. */
const bandCount = 9

/** Part of the cells that the bands are made for. */
const usualShare = 0.96

/** Arrows along the picture and up. */
const arrowsAcross = (width: number): number => Math.min(24, Math.max(12, Math.floor(width / 28)))

function bandsOf({ normal, tangential }: GapMap): { readonly size: Float64Array; readonly step: number } {
  const size = normal.map((value, k) => Math.hypot(value, tangential[k]!))
  // corners of magnets stand out far above the rest: all that is stronger shares the last band
  const sorted = Float64Array.from(size).sort()
  const most = Math.max(1e-9, sorted[Math.floor(usualShare * (sorted.length - 1))]!)
  // in millitesla, so that the borders are round numbers there
  let step = tickStep([0, 1000 * most], bandCount) / 1000
  while (most / step > bandCount) step *= 2
  return { size, step }
}

/** Arrow of a fixed length about a place, along a direction. */
function arrowPath(x: number, y: number, dx: number, dy: number, length: number): string {
  const size = Math.hypot(dx, dy)
  if (size === 0) return ''
  const [ux, uy] = [dx / size, dy / size]
  const half = length / 2
  const [tx, ty] = [x + ux * half, y + uy * half]
  const wing = length * 0.32
  return (
    `M${px(x - ux * half)} ${px(y - uy * half)}L${px(tx)} ${px(ty)}` +
    `M${px(tx - wing * (ux - uy * 0.6))} ${px(ty - wing * (uy + ux * 0.6))}L${px(tx)} ${px(ty)}L${px(tx - wing * (ux + uy * 0.6))} ${px(ty - wing * (uy - ux * 0.6))}`
  )
}

export function gapMapChart({ width, map }: GapMapChart): string {
  const { from, to, height, columns, rows, normal, tangential, poles, opposite, beyond, sides } = map
  const left = 6
  const across = Math.max(80, width - 2 * left)
  const trueHeight = (across * height) / ((to - from) * map.radius)
  const tall = Math.min(320, Math.max(96, trueHeight))
  const magnet = 26
  const top = beyond === 'air' ? 6 : magnet + 4
  const foot = top + tall
  const { size, step } = bandsOf(map)
  const x = (azimuth: number) => left + ((azimuth - from) / (to - from)) * across
  const y = (distance: number) => foot - (distance / height) * tall
  const cells: string[] = []
  const cellHeight = tall / rows
  for (let row = 0; row < rows; row++) {
    const bandAt = (column: number) =>
      Math.min(bandCount - 1, Math.floor(size[row * columns + column]! / step))
    for (let start = 0; start < columns; ) {
      const band = bandAt(start)
      let end = start + 1
      while (end < columns && bandAt(end) === band) end++
      cells.push(
        `<rect class="level level-${band}" x="${px(left + (start / columns) * across)}" y="${px(foot - (row + 1) * cellHeight)}" width="${px(((end - start) / columns) * across + 0.3)}" height="${px(cellHeight + 0.3)}"/>`,
      )
      start = end
    }
  }
  const many = arrowsAcross(across)
  const high = Math.max(3, Math.round((tall / across) * many))
  const length = 0.72 * Math.min(across / many, tall / high)
  let arrows = ''
  for (let row = 0; row < high; row++)
    for (let column = 0; column < many; column++) {
      const k =
        Math.floor(((row + 0.5) / high) * rows) * columns + Math.floor(((column + 0.5) / many) * columns)
      arrows += arrowPath(
        left + ((column + 0.5) / many) * across,
        foot - ((row + 0.5) / high) * tall,
        tangential[k]!,
        -normal[k]!,
        length,
      )
    }
  const pole = ({ angle, half, sense }: GapMap['poles'][number], at: number) => {
    const kind = sense > 0 ? 'north' : sense < 0 ? 'south' : 'missing'
    const [a, b] = [Math.max(left, x(angle - half)), Math.min(left + across, x(angle + half))]
    return (
      `<rect class="pole-box ${kind}" x="${px(a)}" y="${px(at)}" width="${px(Math.max(0, b - a))}" height="${magnet - 4}"/>` +
      `<g class="${kind}">${textAt((a + b) / 2, at + 16, sense > 0 ? 'N' : sense < 0 ? 'S' : '–', { className: 'pole-letter', anchor: 'middle' })}</g>`
    )
  }
  const above =
    beyond === 'magnets'
      ? opposite.map((one) => pole(one, 4)).join('')
      : beyond === 'steel'
        ? `<rect class="body body-steel" x="${px(left)}" y="12" width="${px(across)}" height="${px(top - 14)}"/>` +
          textAt(left + across / 2, 10, 'steel', { className: 'tick-text', anchor: 'middle' })
        : ''
  const edge = left + across
  const wound = sides.map(({ angle, distance, width: band, thickness, phase, outward }) => {
    const half = band / map.radius / 2
    const [a, b] = [Math.max(left, x(angle - half)), Math.min(edge, x(angle + half))]
    if (b - a < 1) return ''
    const [upper, low] = [y(distance + thickness / 2), y(distance - thickness / 2)]
    const lettered = b - a > 34 && low - upper > 13
    const [cx, cy] = [lettered ? b - 10 : (a + b) / 2, (upper + low) / 2]
    const r = Math.min(4, Math.max(1.5, (low - upper) / 4))
    const sign = outward
      ? `<circle class="current" cx="${px(cx)}" cy="${px(cy)}" r="${px(r)}"/>`
      : `<path class="current-line" d="M${px(cx - r)} ${px(cy - r)}l${px(2 * r)} ${px(2 * r)}m0 ${px(-2 * r)}l${px(-2 * r)} ${px(2 * r)}"/>`
    const letter = lettered
      ? textAt(a + 5, cy + 5, phaseLetter(phase), { className: `line-label halo ${phaseInk(phase)}` })
      : ''
    return `<rect class="winding-edge ${phaseInk(phase)}" x="${px(a)}" y="${px(upper)}" width="${px(b - a)}" height="${px(low - upper)}"/>${b - a > 10 ? sign : ''}${letter}`
  })
  const most = size.reduce((a, b) => Math.max(a, b), 0)
  const used = Math.min(bandCount, Math.floor(most / step) + 1)
  const beyondScale = most > bandCount * step
  const swatch = Math.min(42, (across - 46) / used)
  const keyTop = foot + magnet + 12
  const key = Array.from({ length: used }, (_, k) => {
    const at = left + k * swatch
    return (
      `<rect class="level level-${k}" x="${px(at)}" y="${px(keyTop)}" width="${px(swatch)}" height="12"/>` +
      (k % (swatch < 34 ? 2 : 1) === 0
        ? textAt(at, keyTop + 27, tickText(1000 * k * step, 1000 * step), {
            className: 'tick-text',
            anchor: k === 0 ? 'start' : 'middle',
          })
        : '')
    )
  })
  return picture(
    {
      name: 'gap-map',
      title,
      description: `Up to ${tickText(Math.round(1000 * most), 1)} mT between the magnet faces and ${beyond === 'magnets' ? 'the opposite magnets' : beyond === 'steel' ? 'the steel beyond' : 'the air beyond the winding'}, in bands of ${tickText(1000 * step, 1000 * step)} mT; ${sides.length} sides of the winding lie in it.`,
      width,
      height: keyTop + 54,
    },
    cells.join('') +
      `<path class="field-arrow" d="${arrows}"/>` +
      above +
      poles.map((one) => pole(one, foot + 2)).join('') +
      wound.join('') +
      key.join('') +
      textAt(left + used * swatch + 6, keyTop + 11, beyondScale ? 'mT +' : 'mT', { className: 'axis-text' }) +
      textAt(
        left,
        keyTop + 46,
        across < 520
          ? 'Dot: current towards you; cross: away.'
          : `Across and up to ${Math.abs(trueHeight - tall) < 0.5 ? 'one scale' : 'their own scales'}; the rotor at angle 0. Dot: current towards you; cross: away.`,
        {
          className: 'tick-text',
        },
      ),
  )
}

export function gapMapTable({ from, to, height, columns, rows, normal, tangential }: GapMap): ChartTable {
  return {
    caption: title,
    columns: [
      { head: 'azimuth', unit: '°' },
      { head: 'above the magnet faces', unit: 'mm' },
      { head: 'away from the magnets', unit: 'mT' },
      { head: 'along the circumference', unit: 'mT' },
      { head: 'strength', unit: 'mT' },
    ],
    rows: Array.from(normal, (value, k) => [
      ((from + (((k % columns) + 0.5) / columns) * (to - from)) * 180) / Math.PI,
      1000 * ((Math.floor(k / columns) + 0.5) / rows) * height,
      1000 * value,
      1000 * tangential[k]!,
      1000 * Math.hypot(value, tangential[k]!),
    ]),
  }
}
