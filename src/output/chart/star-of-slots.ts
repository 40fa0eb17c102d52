/** Picture of the star of slots: the electrical angle of every coil, and the belts of the phases round it. */
import type { CoilPhasor, CoilPhasors } from '../../analysis/coil-phasor.ts'
import { formatNumber } from '../../units/format.ts'
import type { ChartTable } from './chart-table.ts'
import { lineAt, linesOfParagraph } from './paragraph.ts'
import { phaseInk, phaseLetter } from './phase-letter.ts'
import { type Point, picture, px, textAt } from './picture.ts'

export interface StarOfSlotsChart {
  readonly width: number
  readonly phasors: CoilPhasors
}

const title = 'Star of slots'

interface Spoke {
  /** Electrical [rad]. */
  readonly angle: number
  readonly coils: readonly { readonly coil: CoilPhasor; readonly phase: number }[]
}

/** Angles that are one spoke [rad]. */
const alike = 1e-6

const turn = 2 * Math.PI

function spokesOf({ phases }: CoilPhasors): Spoke[] {
  const all = phases
    .flatMap(({ coils }, phase) => coils.map((coil) => ({ coil, phase })))
    .sort((a, b) => a.coil.axis - b.coil.axis || a.coil.number - b.coil.number)
  const spokes: { angle: number; coils: { coil: CoilPhasor; phase: number }[] }[] = []
  for (const one of all) {
    const last = spokes.at(-1)
    if (last !== undefined && Math.abs(one.coil.axis - last.angle) < alike) last.coils.push(one)
    else spokes.push({ angle: one.coil.axis, coils: [one] })
  }
  return spokes
}

/** What a spoke belongs to: its phase with the sign of its sense; several where its coils are joined unlike. */
const beltOf = ({ coils }: Spoke): string =>
  [...new Set(coils.map(({ coil, phase }) => `${coil.sense < 0 ? '−' : ''}${phaseLetter(phase)}`))].join('/')

interface Belt {
  readonly name: string
  readonly phase: number
  readonly from: number
  readonly to: number
}

/** Neighbouring spokes of one phase and sense, half a step to either side of them included. */
function beltsOf(spokes: readonly Spoke[]): Belt[] {
  const names = spokes.map(beltOf)
  const starts = names.flatMap((name, k) =>
    name === names[(k + names.length - 1) % names.length] ? [] : [k],
  )
  const halfway = (k: number) => {
    const here = spokes[k % spokes.length]!.angle + turn * Math.floor(k / spokes.length)
    const next = spokes[(k + 1) % spokes.length]!.angle + turn * Math.floor((k + 1) / spokes.length)
    return (here + next) / 2
  }
  if (starts.length === 0) return [{ name: names[0]!, phase: spokes[0]!.coils[0]!.phase, from: 0, to: turn }]
  return starts.map((first, n) => {
    const next = starts[n + 1] ?? starts[0]! + spokes.length
    return {
      name: names[first]!,
      phase: spokes[first]!.coils[0]!.phase,
      from: halfway(first + spokes.length - 1) - turn,
      to: halfway(next - 1),
    }
  })
}

/** 0° points up, angles grow counter-clockwise. */
const place = (angle: number, radius: number): Point => [-radius * Math.sin(angle), -radius * Math.cos(angle)]

function arc([x, y]: Point, radius: number, from: number, to: number): string {
  if (to - from > turn - 1e-9) {
    const [a, b] = [place(from, radius), place(from + Math.PI, radius)]
    return `M${px(x + a[0])} ${px(y + a[1])}A${px(radius)} ${px(radius)} 0 1 0 ${px(x + b[0])} ${px(y + b[1])}A${px(radius)} ${px(radius)} 0 1 0 ${px(x + a[0])} ${px(y + a[1])}`
  }
  const [a, b] = [place(from, radius), place(to, radius)]
  return `M${px(x + a[0])} ${px(y + a[1])}A${px(radius)} ${px(radius)} 0 ${to - from > Math.PI ? 1 : 0} 0 ${px(x + b[0])} ${px(y + b[1])}`
}

const degrees = (angle: number): number => Math.round(((angle * 180) / Math.PI) * 100) / 100

export function starOfSlotsChart({ width, phasors }: StarOfSlotsChart): string {
  const spokes = spokesOf(phasors)
  const side = Math.min(width, 420)
  const centre: Point = [width / 2, side / 2]
  const outer = side / 2 - 22
  const inner = outer - 66
  const crowded = spokes.length > 24
  const belts = beltsOf(spokes).map(({ name, phase, from, to }) => {
    const pad = Math.min(0.03, (to - from) / 8)
    const [x, y] = place((from + to) / 2, outer + 14)
    return (
      `<path class="belt ${phaseInk(phase)}${name.startsWith('−') ? ' reversed' : ''}" d="${arc(centre, outer, from + pad, to - pad)}"/>` +
      textAt(centre[0] + x, centre[1] + y + 5, name, {
        className: `line-label halo ${phaseInk(phase)}`,
        anchor: 'middle',
      })
    )
  })
  const arms = spokes.map((spoke) => {
    const ink = phaseInk(spoke.coils[0]!.phase)
    const [ax, ay] = place(spoke.angle, 14)
    const [bx, by] = place(spoke.angle, inner)
    const numbers = spoke.coils.map(({ coil }) => coil.number).sort((a, b) => a - b)
    const text = numbers.length > 4 ? `${numbers[0]} … ${numbers.at(-1)}` : numbers.join(' ')
    // a wide label stands farther off where its spoke lies flat
    const [tx, ty] = place(spoke.angle, inner + 13 + 3.3 * text.length * Math.abs(Math.sin(spoke.angle)))
    return (
      `<g class="spoke" data-coils="${numbers.join(' ')}" data-angle="${degrees(spoke.angle)}">` +
      `<path class="phasor thin ${ink}" d="M${px(centre[0] + ax)} ${px(centre[1] + ay)}L${px(centre[0] + bx)} ${px(centre[1] + by)}"/>` +
      `<circle class="joint ${ink}" cx="${px(centre[0] + bx)}" cy="${px(centre[1] + by)}" r="3"/>` +
      textAt(centre[0] + tx, centre[1] + ty + 4, text, {
        className: crowded ? 'tick-text small' : 'tick-text',
        anchor: 'middle',
      }) +
      '</g>'
    )
  })
  const count = spokes.reduce((sum, { coils }) => sum + coils.length, 0)
  const step = spokes.length > 1 ? `${formatNumber(360 / spokes.length)}° apart` : ''
  const even = spokes.every(
    ({ angle }, k) => Math.abs(angle - spokes[0]!.angle - (turn * k) / spokes.length) < 1e-4,
  )
  const words = [
    `${count} coils on ${spokes.length} ${spokes.length === 1 ? 'spoke' : 'spokes'}${even && step !== '' ? `, ${step}` : ''}`,
    '−: start and finish exchanged',
  ].flatMap((sentence) => linesOfParagraph(sentence, Math.floor((width - 8) / 6.9)))
  return picture(
    {
      name: 'star-of-slots',
      title,
      description: `${count} coils on ${spokes.length} spokes of electrical angle, 0 up, counter-clockwise. ${spokes.map((spoke) => `${degrees(spoke.angle)}°: coil ${spoke.coils.map(({ coil }) => coil.number).join(', ')}, ${beltOf(spoke)}`).join('; ')}.`,
      width,
      height: side + 22 + 18 * words.length,
    },
    `<circle class="guide" cx="${px(centre[0])}" cy="${px(centre[1])}" r="${px(outer)}"/>` +
      belts.join('') +
      arms.join('') +
      words
        .map((text, k) =>
          lineAt(width / 2, side + 18 + 18 * k, text, { className: 'tick-text', anchor: 'middle' }),
        )
        .join(''),
  )
}

export function starOfSlotsTable({ phases }: CoilPhasors): ChartTable {
  return {
    caption: title,
    columns: [
      { head: 'coil' },
      { head: 'phase' },
      { head: 'wound' },
      { head: 'axis, electrical', unit: '°' },
      { head: 'sides, electrical', unit: '°' },
    ],
    rows: phases
      .flatMap(({ coils }, phase) => coils.map((coil) => ({ coil, phase })))
      .sort((a, b) => a.coil.number - b.coil.number)
      .map(({ coil, phase }) => [
        coil.number,
        phaseLetter(phase),
        coil.sense > 0 ? 'forward' : 'reversed',
        degrees(coil.axis),
        [...new Set(coil.sides.map(degrees))].join(' '),
      ]),
  }
}
