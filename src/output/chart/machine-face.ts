/** Picture of the machine along its shaft, true to scale: magnets with their poles, and the coils over them. */
import type { FaceMagnet, MachineFace } from '../../analysis/machine-face.ts'
import { formatNumber } from '../../units/format.ts'
import type { ChartTable } from './chart-table.ts'
import { lineAt, linesOfParagraph } from './paragraph.ts'
import { phaseInk, phaseLetter } from './phase-letter.ts'
import { lineThrough, type Point, picture, px, textAt } from './picture.ts'

export interface MachineFaceChart {
  readonly width: number
  readonly face: MachineFace
  /** Of the drawing [px/m]; left out, as large as the width allows. */
  readonly scale?: number
}

const title = 'The machine along its shaft'

/** Room for numbers and letters round the drawing [px]. */
const faceMargin = 28

const pairs = (flat: ArrayLike<number>): Point[] =>
  Array.from({ length: flat.length / 2 }, (_, k): Point => [flat[2 * k]!, flat[2 * k + 1]!])

/** Farthest of everything from the axis [m]. */
export function faceReach({ magnets, coils, steel, sides }: MachineFace): number {
  const far = (points: readonly Point[]) => points.reduce((most, at) => Math.max(most, Math.hypot(...at)), 0)
  return Math.max(
    ...magnets.map(({ outline }) => far(pairs(outline))),
    ...coils.map(({ points, width }) => far(pairs(points)) + width / 2),
    ...steel.map(({ outer }) => outer),
    ...sides.map(({ level, thickness }) => level + thickness / 2),
    1e-6,
  )
}

const kindOf = ({ pole }: FaceMagnet): string => (pole === 'N' ? 'north' : pole === 'S' ? 'south' : 'missing')

/** Layers of a phase stand above each other: one letter tells them all. */
function lettersOf({ sides }: MachineFace): { readonly angle: number; readonly phase: number }[] {
  const known = new Map(sides.map(({ angle, phase }) => [`${phase} ${angle.toFixed(4)}`, { angle, phase }]))
  return [...known.values()]
}

const describe = ({ magnets, coils, sides }: MachineFace): string => {
  const poles = magnets.filter(({ pole }) => pole !== undefined).map(({ place, pole }) => `${place} ${pole}`)
  const wound =
    coils.length > 0
      ? `Coils: ${coils.map(({ number, phase }) => `${number} ${phaseLetter(phase)}`).join(', ')}`
      : `${sides.length} sides of the winding, a dot where the current comes towards the reader, a cross where it goes away`
  return `Poles towards the winding, by place counter-clockwise: ${poles.join(', ')}. ${wound}.`
}

export function machineFaceChart({ width, face, scale: asked }: MachineFaceChart): string {
  const side = asked === undefined ? Math.min(width, 520) : 2 * (asked * faceReach(face) + faceMargin)
  const scale = (side / 2 - faceMargin) / faceReach(face)
  const centre: Point = [width / 2, side / 2]
  const at = ([x, y]: Point): Point => [centre[0] + x * scale, centre[1] - y * scale]
  const rings = face.steel.map(({ inner, outer }) => {
    const circle = (radius: number) =>
      `M${px(centre[0] + radius)} ${px(centre[1])}A${px(radius)} ${px(radius)} 0 1 0 ${px(centre[0] - radius)} ${px(centre[1])}A${px(radius)} ${px(radius)} 0 1 0 ${px(centre[0] + radius)} ${px(centre[1])}Z`
    return `<path class="body body-steel ring-body" d="${circle(outer * scale)}${inner > 0 ? circle(inner * scale) : ''}"/>`
  })
  const magnets = face.magnets.map(
    (magnet) =>
      `<path class="body body-magnet ${kindOf(magnet)}" d="${lineThrough(pairs(magnet.outline).map(at))}Z"/>`,
  )
  const letters = face.magnets.map((magnet) => {
    if (magnet.pole === undefined) return ''
    const [x, y] = magnet.middle
    const size = Math.hypot(x, y)
    // a drum's magnets are thin: their letters stand beside them, on the side without winding
    const beside =
      face.arrangement !== 'drum'
        ? size
        : face.windingSide === 'outside'
          ? Math.min(...pairs(magnet.outline).map((at) => (at[0] * x + at[1] * y) / size)) - 10 / scale
          : Math.max(...pairs(magnet.outline).map((at) => Math.hypot(...at))) + 10 / scale
    const [u, v] = at([(x / size) * beside, (y / size) * beside])
    const kind = face.arrangement === 'drum' ? 'beside' : kindOf(magnet)
    return `<g class="${kind}">${textAt(u, v + 5, magnet.pole, { className: 'pole-letter', anchor: 'middle' })}</g>`
  })
  const coils = face.coils.map(({ points, phase, width: band }) => {
    const path = lineThrough(pairs(points).map(at))
    return (
      `<path class="coil-band ${phaseInk(phase)}" stroke-width="${px(Math.max(2, band * scale))}" d="${path}"/>` +
      `<path class="wire ${phaseInk(phase)}" d="${path}"/>`
    )
  })
  const edge = side / 2 - 13
  const numbers = face.coils.map(({ number, phase, sense, points }) => {
    const list = pairs(points)
    const [x, y] = list.reduce(([a, b], [c, d]) => [a + c, b + d] as const, [0, 0] as const)
    const size = Math.hypot(x, y)
    // a wave goes all round and has no middle
    if (size < 1e-6 * list.length) return ''
    return textAt(
      centre[0] + (x / size) * edge,
      centre[1] - (y / size) * edge + 4,
      `${sense < 0 ? '−' : ''}${number}`,
      {
        className: `line-label ${phaseInk(phase)}`,
        anchor: 'middle',
      },
    )
  })
  const sides = face.sides.map(({ angle, level, direction, phase, width: band, thickness }) => {
    const [x, y] = at([level * Math.cos(angle), level * Math.sin(angle)])
    const [w, h] = [Math.max(4, band * scale), Math.max(4, thickness * scale)]
    const turned = 90 - (angle * 180) / Math.PI
    const r = Math.min(2.2, h / 2.4)
    const sign =
      direction > 0
        ? `<circle class="current" cx="${px(x)}" cy="${px(y)}" r="${px(r)}"/>`
        : `<path class="current-line" d="M${px(x - r)} ${px(y - r)}l${px(2 * r)} ${px(2 * r)}m0 ${px(-2 * r)}l${px(-2 * r)} ${px(2 * r)}"/>`
    return `<rect class="side ${phaseInk(phase)}" x="${px(x - w / 2)}" y="${px(y - h / 2)}" width="${px(w)}" height="${px(h)}" transform="rotate(${px(turned)} ${px(x)} ${px(y)})"/>${sign}`
  })
  const crowded = (2 * Math.PI * edge) / Math.max(1, face.sides.length) < 13
  const phases = crowded
    ? []
    : lettersOf(face).map(({ angle, phase }) =>
        textAt(
          centre[0] + Math.cos(angle) * edge,
          centre[1] - Math.sin(angle) * edge + 4,
          phaseLetter(phase),
          {
            className: `tick-text small strong ${phaseInk(phase)}`,
            anchor: 'middle',
          },
        ),
      )
  const note =
    face.arrangement === 'drum'
      ? 'Dot: current towards you; cross: away.'
      : face.arrangement === 'two-discs'
        ? 'Seen from the winding, the upper disc off.'
        : 'Seen from the winding’s side.'
  const lines = linesOfParagraph(note, Math.floor(width / 5.7))
  return picture(
    { name: 'machine-face', title, description: describe(face), width, height: side + 6 + 18 * lines.length },
    rings.join('') +
      magnets.join('') +
      coils.join('') +
      letters.join('') +
      sides.join('') +
      numbers.join('') +
      phases.join('') +
      `<path class="axis" d="M${px(centre[0] - 7)} ${px(centre[1])}h14m-7 -7v14"/>` +
      lines
        .map((line, k) =>
          lineAt(width / 2, side + 16 + 18 * k, line, { className: 'tick-text', anchor: 'middle' }),
        )
        .join(''),
  )
}

export function machineFaceTable({ magnets }: MachineFace): ChartTable {
  return {
    caption: 'Magnets by place, counter-clockwise',
    columns: [
      { head: 'place' },
      { head: 'pole towards the winding' },
      { head: 'azimuth', unit: '°' },
      { head: 'distance of its middle from the axis', unit: 'mm' },
    ],
    rows: magnets
      .filter(({ pole }) => pole !== undefined)
      .map(({ place, pole, middle: [x, y] }) => [
        place,
        pole,
        Number(formatNumber((((Math.atan2(y, x) * 180) / Math.PI + 360) % 360) + 0, 6)) % 360,
        Number(formatNumber(1000 * Math.hypot(x, y), 6)),
      ]),
  }
}
