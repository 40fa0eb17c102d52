/** Picture of the machine cut through a magnet and the winding, true to scale, with the stack of the gap in millimetres. */
import type { MachineSection, SectionBody } from '../../analysis/machine-section.ts'
import { spreadApart } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { lengthText, scaleBar } from './drawn-length.ts'
import { hatchPath } from './hatch.ts'
import { lineAt, linesOfParagraph } from './paragraph.ts'
import { phaseInk } from './phase-letter.ts'
import { picture, px, textAt } from './picture.ts'

export interface MachineSectionChart {
  readonly width: number
  readonly section: MachineSection
  /** Of the drawing [px/m]; left out, as large as the width and a legible stack ask. */
  readonly scale?: number
}

const title = 'Section through a magnet'

/** Heights of the drawing itself at most, and room for its labels [px]. */
const greatestHeight = 380
const labelWidth = 158
const labelStep = 17
/** Of a drawing's width, what is not the bodies' own: labels and margins [px]. */
export const sectionMargin = labelWidth + 14
/** How much larger than the whole width allows. */
const mostMagnified = 2.4
/** Of its labels' height, where a stack counts as flat. */
const flatShare = 0.55

/** A round length for the scale's bar [m]. */
const inkOf = ({ kind, phase }: SectionBody): string =>
  kind === 'winding' ? (phase === undefined ? 'ink-phase-1' : phaseInk(phase)) : `body-${kind}`

/** The edge where a drawing is cut short. */
const breakLine = (x: number, y: number, height: number): string => {
  const steps = Math.max(2, Math.round(height / 10))
  const step = (height + 8) / steps
  return `<path class="break" d="M${px(x)} ${px(y - 4)}${Array.from({ length: steps }, (_, k) => `l${k % 2 === 0 ? 3 : -3} ${px(step)}`).join('')}"/>`
}

export function machineSectionChart({ width, section, scale: asked }: MachineSectionChart): string {
  const { bodies, stack, arrangement, axis, windingSide, cornerRise } = section
  const foot = Math.min(...bodies.map((body) => body.foot))
  const top = Math.max(...bodies.map((body) => body.top))
  const start = Math.min(...bodies.map((body) => body.start))
  const end = Math.max(...bodies.map((body) => body.end))
  const room = Math.max(90, width - sectionMargin)
  const labelsHeight = labelStep * stack.length
  const whole = room / (end - start)
  // a long, flat machine is cut short where its layers could not be told apart
  const flat = (top - foot) * whole < flatShare * labelsHeight
  const legible = flat ? Math.min(labelsHeight / (top - foot), mostMagnified * whole) : 0
  const scale = asked ?? Math.min(greatestHeight / (top - foot), Math.max(whole, legible))
  const seen = Math.min(end, start + room / scale)
  const short = seen < end - 1e-9
  const drawn = (top - foot) * scale
  const upper = 8 + Math.max(0, (labelsHeight - drawn) / 2)
  const x = (along: number) => 6 + (along - start) * scale
  const y = (distance: number) => upper + (top - distance) * scale
  const right = x(seen)
  const shapes = bodies.map((body) => {
    if (body.start >= seen) return ''
    const box = {
      x: x(body.start),
      y: y(body.top),
      width: (Math.min(body.end, seen) - body.start) * scale,
      height: (body.top - body.foot) * scale,
    }
    const rect = `<rect class="body body-${body.kind}${body.aside ? ' aside' : ''} ${inkOf(body)}" x="${px(box.x)}" y="${px(box.y)}" width="${px(box.width)}" height="${px(box.height)}"/>`
    if (body.kind === 'steel') return `${rect}<path class="hatch-line" d="${hatchPath(box, 9)}"/>`
    if (body.kind !== 'magnet' || box.height < 11) return rect
    // opposite magnets attract: north is the upper end of both
    const below = body.top <= 1e-9
    const letter = (text: string, at: number) =>
      textAt(box.x + box.width / 2, at, text, { className: 'pole-letter', anchor: 'middle' })
    return box.height < 36
      ? rect + letter(below ? 'N' : 'S', box.y + box.height / 2 + 5)
      : rect + letter('N', box.y + 14) + letter('S', box.y + box.height - 5)
  })
  const wanted = stack.map(({ at }) => y(at))
  const middleOf = upper + drawn / 2
  // more labels than room beside the drawing stand evenly about its middle, the last layer on top
  const heights =
    labelsHeight > drawn
      ? stack.map((_, k) => middleOf + ((stack.length - 1) / 2 - k) * labelStep)
      : spreadApart(wanted, labelStep, [upper, upper + drawn])
  const labels = stack.map(({ label, thickness, kind, at }, k) => {
    const middle = heights[k]!
    return (
      `<path class="leader" d="M${px(right + 2)} ${px(y(at))}h6L${px(right + 20)} ${px(middle)}h4"/>` +
      textAt(right + 28, middle + 4, `${label} ${lengthText(thickness)}`, {
        className: kind === 'air' ? 'line-label ink-wind' : 'tick-text strong-ink',
      })
    )
  })
  const lowest = Math.max(y(foot), ...heights) + 12
  const bar = scaleBar(scale)
  const away = arrangement === 'drum' ? Math.abs(axis) : start
  const where =
    arrangement === 'drum'
      ? `Shaft axis ${lengthText(away)} ${windingSide === 'outside' ? 'below' : 'above'} the magnet faces.`
      : `Shaft axis ${lengthText(away)} to the left.`
  const notes = [
    where,
    ...(cornerRise > 0.05e-3 ? [`Corners of the flat magnets stand ${lengthText(cornerRise)} out.`] : []),
  ]
  const lines = notes.flatMap((note) => linesOfParagraph(note, Math.floor((width - 8) / 6)))
  return picture(
    {
      name: 'machine-section',
      title,
      description: `From one end of the stack to the other: ${stack.map(({ label, thickness }) => `${label} ${lengthText(thickness)}`).join(', ')}. ${notes.join(' ')}`,
      width,
      height: lowest + 34 + 18 * lines.length,
    },
    shapes.join('') +
      (short ? breakLine(right, upper, drawn) : '') +
      labels.join('') +
      `<path class="scale-bar" d="M6 ${px(lowest + 8)}v6h${px(bar.long)}v-6"/>` +
      textAt(14 + bar.long, lowest + 15, `${bar.text}, true to scale${short ? ', cut short' : ''}`, {
        className: 'tick-text',
      }) +
      lines.map((line, k) => lineAt(4, lowest + 36 + 18 * k, line, { className: 'tick-text' })).join(''),
  )
}

export function machineSectionTable({ stack }: MachineSection): ChartTable {
  return {
    caption: 'Stack of the section, from the first body to the last',
    columns: [
      { head: 'layer' },
      { head: 'thickness', unit: 'mm' },
      { head: 'middle above the magnet faces', unit: 'mm' },
    ],
    rows: stack.map(({ label, thickness, at }) => [label, rounded(thickness), rounded(at)]),
  }
}

/** In micrometres' steps: what is finer is rounding. */
const rounded = (length: number): number => Math.round(length * 1e6) / 1e3
