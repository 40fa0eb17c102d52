/** Picture of the machine cut along its shaft, true to scale: blades, bearings, discs or drum, winding, and what lies between them. */
import type { ShaftBody, ShaftSection } from '../../analysis/mechanics/shaft-section.ts'
import { said } from '../telling.ts'
import { spreadApart } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { lengthText, scaleBar } from './drawn-length.ts'
import { hatchPath } from './hatch.ts'
import { lineAt, linesOfParagraph } from './paragraph.ts'
import { picture, px, shortNumber, textAt } from './picture.ts'

export interface ShaftLineChart {
  readonly width: number
  readonly section: ShaftSection
}

const title = 'Cut along the shaft'

/** Heights of the drawing itself at most, and of half of it at least, and of what stands above and below it [px]. */
const greatestHeight = 360
const leastHalf = 34
const letterRoom = 30
const dimensionStep = 34
const keyStep = 18
/** A bearing whose size nobody said is drawn as a sign so large [px]. */
const signSize = 16
/** Blades are drawn so wide, and cut short [px]. */
const bladeWidth = 8

interface Part {
  readonly label: string
  /** Middle along the shaft [m], and distance of its outer edge from the axis [px]. */
  readonly at: number
  readonly reach: number
}

/** Where one disc alone looks is a guess of the drawing; nothing is to be said of two, or of a drum. */
const facingSentence = ({ facingGuessed, upright }: ShaftSection): string =>
  !facingGuessed
    ? ''
    : upright
      ? 'Which way the disc looks is not said: it is drawn with its magnets up, to the right.'
      : 'Which way the disc looks is not said: it is drawn with its magnets towards the blades, to the right.'

/** How blades, bearings and magnets lie, in one sentence. */
export function shaftSentence(section: ShaftSection): string {
  const { bearings, blades, distances, diameter, enter } = section
  const facing = facingSentence(section)
  const also = facing === '' ? '' : ` ${facing}`
  if (bearings === undefined)
    return `Where the bearings sit is not said; the middle of the magnets is drawn at zero.${also}`
  const spacing = bearings.front - bearings.rear
  const lever =
    blades === undefined
      ? ''
      : ` The blades hang ${shortNumber(Number((blades.at / spacing).toPrecision(2)))} times the bearings’ distance ahead of them.`
  const dimensions = distances
    .map(({ label, from, to }) => `${label} ${lengthText(Math.abs(to - from))}`)
    .join(', ')
  const missing =
    diameter === undefined
      ? ' The diameter of the shaft is not said.'
      : enter.length > 0
        ? ' The size of the bearings is not said; a sign stands for each.'
        : ''
  return `${dimensions}.${lever}${missing}${also}`
}

const letterOf = (k: number): string => String.fromCharCode(97 + k)

export function shaftLineChart({ width, section }: ShaftLineChart): string {
  const { bodies, bearings, blades, ends, distances, diameter, upright } = section
  const [rear, front] = ends
  const reach = Math.max(...bodies.map(({ outer }) => outer), (diameter ?? 0) / 2, blades?.hubRadius ?? 0)
  const scale = Math.min((width - 24) / (front - rear), greatestHeight / (2 * reach))
  const half = Math.max(leastHalf, reach * scale)
  const top = letterRoom + (blades === undefined ? 0 : 12)
  const axis = top + half
  const left = (width - scale * (front - rear)) / 2
  const x = (along: number) => left + (along - rear) * scale
  const shaftRadius = (diameter ?? 0) * 0.5 * scale

  const both = (one: (side: 1 | -1) => string): string => one(-1) + one(1)
  const ring = ({ kind, rear: from, front: to, inner, outer }: ShaftBody): string =>
    both((side) => {
      const box = {
        x: x(from),
        y: side < 0 ? axis - outer * scale : axis + inner * scale,
        width: (to - from) * scale,
        height: (outer - inner) * scale,
      }
      const rect = `<rect class="body body-${kind}${kind === 'winding' ? ' ink-phase-1' : ''}" x="${px(box.x)}" y="${px(box.y)}" width="${px(box.width)}" height="${px(box.height)}"/>`
      if (kind === 'steel') return `${rect}<path class="hatch-line" d="${hatchPath(box, 9)}"/>`
      return kind === 'bearing' ? rect + crossed(box) : rect
    })
  const crossed = (box: {
    readonly x: number
    readonly y: number
    readonly width: number
    readonly height: number
  }) =>
    `<path class="bearing-cross" d="M${px(box.x)} ${px(box.y)}l${px(box.width)} ${px(box.height)}M${px(box.x + box.width)} ${px(box.y)}l${px(-box.width)} ${px(box.height)}"/>`
  const signs =
    bearings === undefined || bearings.sized
      ? ''
      : [bearings.front, bearings.rear]
          .map((at) =>
            both((side) => {
              const box = {
                x: x(at) - signSize / 2,
                y: side < 0 ? axis - shaftRadius - signSize - 2 : axis + shaftRadius + 2,
                width: signSize,
                height: signSize,
              }
              return `<rect class="body body-bearing aside" x="${px(box.x)}" y="${px(box.y)}" width="${px(box.width)}" height="${px(box.height)}"/>${crossed(box)}`
            }),
          )
          .join('')
  const bladed =
    blades === undefined
      ? ''
      : both((side) => {
          const hub = Math.max(shaftRadius, Math.min(half, (blades.hubRadius ?? 0) * scale))
          const at = x(blades.at)
          const end = half + 10
          const edge = axis + side * end
          const hubBox =
            blades.hubRadius === undefined
              ? ''
              : `<rect class="body body-hub" x="${px(at - bladeWidth / 2 - 2)}" y="${px(side < 0 ? axis - hub : axis + shaftRadius)}" width="${bladeWidth + 4}" height="${px(hub - shaftRadius)}"/>`
          return (
            hubBox +
            `<rect class="body body-blade" x="${px(at - bladeWidth / 2)}" y="${px(side < 0 ? axis - end : axis + hub)}" width="${bladeWidth}" height="${px(end - hub)}"/>` +
            `<path class="break" d="M${px(at - bladeWidth / 2 - 3)} ${px(edge)}l4 ${-3}l6 6l4 -3"/>`
          )
        })

  const parts: Part[] = [
    ...bodies.map(({ label, rear: a, front: b, outer }) => ({
      label,
      at: (a + b) / 2,
      reach: outer * scale,
    })),
    ...(bearings === undefined || bearings.sized
      ? []
      : [
          { label: 'front bearing', at: bearings.front, reach: shaftRadius + signSize + 2 },
          { label: 'rear bearing', at: bearings.rear, reach: shaftRadius + signSize + 2 },
        ]),
    ...(blades === undefined
      ? []
      : [
          {
            label: `blades, tips at a radius of ${lengthText(blades.radius)}, cut short`,
            at: blades.at,
            reach: half + 10,
          },
        ]),
  ]
  const shaftEnd = (part: Part): Part =>
    part.label === 'shaft' ? { ...part, at: rear + 0.02 * (front - rear) } : part
  // what bears one name bears one letter, at the first of them
  const named = parts
    .filter((part, k) => parts.findIndex(({ label }) => label === part.label) === k)
    .map(shaftEnd)
    .sort((a, b) => a.at - b.at || a.reach - b.reach)
  const places = spreadApart(
    named.map(({ at }) => x(at)),
    15,
    [8, width - 8],
  )
  const letters = named.map(({ at, reach: out }, k) => {
    const tip = axis - Math.max(out, 3) + 3
    return (
      `<path class="leader" d="M${px(places[k]!)} 18L${px(x(at))} ${px(tip)}"/>` +
      `<circle class="leader-tip" cx="${px(x(at))}" cy="${px(tip)}" r="1.8"/>` +
      textAt(places[k]!, 13, letterOf(k), { className: 'line-label halo ink-joint', anchor: 'middle' })
    )
  })

  const foot = axis + half + (blades === undefined ? 6 : 18)
  const dimensions = distances
    .filter(({ from, to }) => Math.abs(to - from) > 1e-9)
    .map(({ label, from, to }, k) => {
      const y = foot + 12 + dimensionStep * k
      const [a, b] = [Math.min(x(from), x(to)), Math.max(x(from), x(to))]
      const words = `${label} ${lengthText(Math.abs(to - from))}`
      const start = Math.max(4, Math.min(a, width - 4 - 7.2 * said(words).length))
      return (
        `<path class="dimension" d="M${px(a)} ${px(y - 5)}v10M${px(b)} ${px(y - 5)}v10M${px(a)} ${px(y)}H${px(b)}"/>` +
        textAt(start, y + 18, words, { className: 'tick-text' })
      )
    })
  let y = foot + 14 + dimensionStep * dimensions.length
  const bar = scaleBar(scale)
  const scaled =
    `<path class="scale-bar" d="M8 ${px(y)}v6h${px(bar.long)}v-6"/>` +
    textAt(16 + bar.long, y + 7, `${bar.text}, true to scale`, {
      className: 'tick-text',
    })
  y += 30
  const columns = Math.floor((width - 34) / 7)
  const keys = named.map(({ label }, k) => {
    const at = y
    y += keyStep
    return (
      textAt(8, at, letterOf(k), { className: 'line-label ink-joint' }) +
      textAt(26, at, label, { className: 'tick-text' })
    )
  })
  const notes = [
    ...(upright
      ? ['The shaft stands upright; it is drawn lying, its upper end to the right.']
      : bearings === undefined
        ? []
        : ['The blades’ side is to the right.']),
    facingSentence(section),
    ...(section.bodies.some(({ kind }) => kind === 'magnet') && bearings === undefined
      ? ['Where the bearings sit is not said.']
      : []),
    ...(diameter === undefined ? ['The diameter of the shaft is not said: only its axis is drawn.'] : []),
  ]
    .filter((sentence) => sentence !== '')
    .flatMap((sentence) => linesOfParagraph(sentence, columns))
  y += 4
  const noted = notes.map((text, k) => lineAt(8, y + keyStep * k, text, { className: 'tick-text' }))
  const shafts = bodies.filter(({ kind }) => kind === 'shaft')
  return picture(
    {
      name: 'shaft-line',
      title,
      description: shaftSentence(section),
      width,
      height: y + keyStep * notes.length,
    },
    bladed +
      shafts.map(ring).join('') +
      bodies
        .filter(({ kind }) => kind !== 'shaft')
        .map(ring)
        .join('') +
      signs +
      `<path class="axis-line" d="M${px(x(rear))} ${px(axis)}H${px(x(front))}"/>` +
      letters.join('') +
      dimensions.join('') +
      scaled +
      keys.join('') +
      noted.join(''),
  )
}

export function shaftLineTable({ bodies, blades, bearings }: ShaftSection): ChartTable {
  return {
    caption: `${title}: ends ahead of ${bearings === undefined ? 'the middle of the magnets' : 'the front bearing’s middle'}`,
    columns: [
      { head: 'part' },
      { head: 'rear end', unit: 'mm' },
      { head: 'front end', unit: 'mm' },
      { head: 'inner radius', unit: 'mm' },
      { head: 'outer radius', unit: 'mm' },
    ],
    rows: [
      ...bodies.map(({ label, rear, front, inner, outer }) => [
        label,
        ...[rear, front, inner, outer].map(mm),
      ]),
      ...(bearings === undefined || bearings.sized
        ? []
        : [
            ['front bearing', mm(bearings.front), mm(bearings.front), undefined, undefined],
            ['rear bearing', mm(bearings.rear), mm(bearings.rear), undefined, undefined],
          ]),
      ...(blades === undefined
        ? []
        : [
            [
              'blades',
              mm(blades.at),
              mm(blades.at),
              blades.hubRadius && mm(blades.hubRadius),
              mm(blades.radius),
            ],
          ]),
    ],
  }
}

/** In micrometres' steps: what is finer is rounding. */
const mm = (length: number): number => Math.round(length * 1e6) / 1e3
