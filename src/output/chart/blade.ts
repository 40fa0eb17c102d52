/** Picture of the blades: outline in true proportion, twist at stations, power coefficient with the working points. */
import type { BladeFigure } from '../../analysis/blade-figure.ts'
import { formatNumber } from '../../units/format.ts'
import { chosenText, signMeasured } from '../measuring.ts'
import { niceDomain, type Plot } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { lengthNumber, lengthText } from './drawn-length.ts'
import { type PanelMark, panelBody } from './panel.ts'
import { lineThrough, type Point, picture, px, shortNumber, textAt } from './picture.ts'

export interface BladeChart {
  readonly width: number
  readonly figure: BladeFigure
  /** Wind whose working point is named [m/s]. */
  readonly chosenWind?: number
}

const title = 'Blades'

type Shape = NonNullable<BladeFigure['shape']>
type Upright = NonNullable<BladeFigure['upright']>

interface Drawn {
  readonly body: string
  readonly height: number
}

const degrees = (angle: number): number => (angle * 180) / Math.PI

/** Value at a radius, straight between the stations, the ends held. */
function between(station: ArrayLike<number>, values: ArrayLike<number>, at: number): number {
  let k = 1
  while (k < station.length - 1 && station[k]! < at) k++
  const [from, to] = [station[k - 1]!, station[k]!]
  const share = to > from ? Math.min(1, Math.max(0, (at - from) / (to - from))) : 0
  return values[k - 1]! + share * (values[k]! - values[k - 1]!)
}

/** Chord of the largest section drawn [px]. */
const sectionChord = 44

/** Rounded nose at 0, thin tail at 1: marks the way a section looks, not its own form. */
const sectionOutline: readonly Point[] = Array.from({ length: 21 }, (_, k): Point => {
  const angle = (2 * Math.PI * k) / 20
  const x = (1 - Math.cos(angle)) / 2
  const half = 0.17 * (Math.sqrt(x) * (1 - x) + 0.04 * (1 - x))
  return [x, angle < Math.PI ? half : -half]
})

/** Part of the chord that lies ahead of the straight line about which the outline is drawn. */
const ahead = 0.25

function outline(
  { width, figure: { radius } }: BladeChart,
  { hubRadius, station, chord, twist }: Shape,
): Drawn {
  const left = 8
  const scale = (width - 2 * left) / radius
  const x = (at: number) => left + at * scale
  const first = Math.max(hubRadius, station[0]!)
  const steps = 60
  const at = (k: number) => first + (k / steps) * (radius - first)
  const chords = Array.from({ length: steps + 1 }, (_, k) => between(station, chord, at(k)))
  const widest = Math.max(...chords)
  const hub = Math.min(hubRadius * scale, widest * scale * 0.8 + 8)
  const axis = 22 + Math.max(ahead * widest * scale, hub / 2)
  const upper = chords.map((c, k): Point => [x(at(k)), axis - ahead * c * scale])
  const lower = chords.map((c, k): Point => [x(at(k)), axis + (1 - ahead) * c * scale])
  const foot = axis + Math.max((1 - ahead) * widest * scale, hub / 2)
  const count = Math.max(3, Math.min(9, Math.floor(width / 74)))
  const rows = foot + 16
  const middle = rows + sectionChord * 0.5 + 6
  const sections = Array.from({ length: count }, (_, k) => {
    const r = first + ((radius - first) * (k + 0.5)) / count
    const c = between(station, chord, r)
    const β = between(station, twist, r)
    const place = x(first) + ((x(radius) - x(first)) * (k + 0.5)) / count
    const long = (c / widest) * sectionChord
    // the disc lies along the row, the wind comes from below; the nose points to the right
    const points = sectionOutline.map(([u, v]): Point => {
      const [a, b] = [(0.5 - u) * long, v * long]
      return [place + a * Math.cos(β) + b * Math.sin(β), middle - a * Math.sin(β) + b * Math.cos(β)]
    })
    const line = (n: number, text: string) =>
      textAt(place, rows + sectionChord + 26 + 16 * n, text, { className: 'tick-text', anchor: 'middle' })
    return (
      `<path class="tick" d="M${px(place)} ${px(foot + 3)}v7"/>` +
      `<path class="grid" d="M${px(place - 26)} ${px(middle)}h52"/>` +
      `<path class="blade" d="${lineThrough(points)}Z"/>` +
      line(0, lengthNumber(r, 1)) +
      line(1, lengthNumber(c, 0.1)) +
      line(2, `${shortNumber(Math.round(10 * degrees(β)) / 10)}°`)
    )
  })
  const foot2 = rows + sectionChord + 26 + 32
  return {
    body:
      textAt(4, 12, 'Outline of one blade, true to scale', { className: 'axis-text' }) +
      `<path class="guide" d="M${px(x(0))} ${px(axis)}H${px(x(radius))}"/>` +
      `<path class="body" d="M${px(x(0))} ${px(axis - hub / 2)}H${px(x(first))}V${px(axis + hub / 2)}H${px(x(0))}Z"/>` +
      `<path class="blade" d="${lineThrough([...upper, ...lower.reverse()])}Z"/>` +
      sections.join('') +
      textAt(4, foot2 + 20, `From above: radius, chord, ${signMeasured('mm')}; chord to disc.`, {
        className: 'tick-text',
      }),
    height: foot2 + 30,
  }
}

/** Of an upright rotor, from the axis to the farthest part of a blade [m]. */
export const planReach = ({ radius }: Pick<BladeFigure, 'radius'>, upright: Upright): number =>
  upright.buckets ? radius : radius + upright.chord * 0.3

/** An upright rotor seen along its axis, at so many px/m. */
export function planDrawing(
  { radius, bladeCount = 0 }: BladeFigure,
  upright: Upright,
  { centre: [cx, cy], scale }: { readonly centre: Point; readonly scale: number },
): string {
  const blades = Array.from({ length: bladeCount }, (_, k) => {
    const θ = Math.PI / 2 + (2 * Math.PI * k) / bladeCount
    const at = (along: number, out: number): Point => [
      cx + (out * Math.cos(θ) - along * Math.sin(θ)) * scale,
      cy - (out * Math.sin(θ) + along * Math.cos(θ)) * scale,
    ]
    if (upright.buckets) {
      // from the axis to the rim, the round side ahead: the wind drives the hollow one
      const r = radius / 2
      const points = Array.from({ length: 25 }, (_, n): Point => {
        const φ = (Math.PI * n) / 24
        return at(r * Math.sin(φ), radius / 2 - r * Math.cos(φ))
      })
      return `<path class="bucket" d="${lineThrough(points)}"/>`
    }
    const { chord, pitch, mount } = upright
    // turns counter-clockwise: the nose leads along growing azimuth; a positive pitch sets it outward
    const points = sectionOutline.map(([u, v]): Point => {
      const a = (mount - u) * chord
      return at(
        a * Math.cos(pitch) - v * chord * Math.sin(pitch),
        radius + a * Math.sin(pitch) + v * chord * Math.cos(pitch),
      )
    })
    const [ax, ay] = at(0, 0)
    const [bx, by] = at(0, radius)
    return `<path class="guide" d="M${px(ax)} ${px(ay)}L${px(bx)} ${px(by)}"/><path class="blade" d="${lineThrough(points)}Z"/>`
  })
  const r = radius * scale * 0.42
  const turning = `<path class="circuit" d="M${px(cx + r)} ${px(cy)}A${px(r)} ${px(r)} 0 0 0 ${px(cx)} ${px(cy - r)}"/><path class="lead-tip ink-joint" d="M${px(cx - 7)} ${px(cy - r)}l9 -5v10Z"/>`
  return (
    `<circle class="guide" cx="${px(cx)}" cy="${px(cy)}" r="${px(radius * scale)}"/>` +
    blades.join('') +
    turning +
    `<circle class="joint" cx="${px(cx)}" cy="${px(cy)}" r="3"/>`
  )
}

/** Size of an upright rotor, and of its blades. */
export function planWords({ radius, bladeCount = 0 }: BladeFigure, upright: Upright): readonly string[] {
  return [
    `${lengthText(2 * radius, 1)} across, ${lengthText(upright.height, 1)} high`,
    upright.buckets
      ? `${bladeCount} buckets`
      : `${bladeCount} blades, chord ${lengthText(upright.chord, 1)}, pitch ${shortNumber(Math.round(10 * degrees(upright.pitch)) / 10)}°`,
  ]
}

function planView({ width, figure }: BladeChart, upright: Upright): Drawn {
  const side = Math.min(width, 340)
  const scale = (side / 2 - 22) / planReach(figure, upright)
  return {
    body:
      textAt(4, 12, 'Seen along the axis, true to scale', { className: 'axis-text' }) +
      planDrawing(figure, upright, { centre: [width / 2, side / 2 + 10], scale }) +
      planWords(figure, upright)
        .map((words, k) => textAt(4, side + 24 + 18 * k, words, { className: 'tick-text' }))
        .join(''),
    height: side + 52,
  }
}

function coefficients({ width, figure, chosenWind }: BladeChart, top: number): string {
  const { tipSpeedRatio, powerCoefficient, best, states } = figure
  const plot: Plot = { left: 46, top: top + 34, width: Math.max(60, width - 46 - 14), height: 170 }
  const points = Array.from(tipSpeedRatio, (λ, k): Point => [λ, powerCoefficient[k]!]).filter(
    ([, cp]) => cp >= -0.02,
  )
  const highest = points.reduce((most, [, cp]) => Math.max(most, cp), 0.05)
  const chosen = states.reduce<BladeFigure['states'][number] | undefined>(
    (near, state) =>
      chosenWind === undefined ||
      (near !== undefined && Math.abs(near.wind - chosenWind) <= Math.abs(state.wind - chosenWind))
        ? near
        : state,
    undefined,
  )
  const marks: PanelMark[] = [
    ...states.map(
      (state): PanelMark => ({
        at: [state.tipSpeedRatio, state.powerCoefficient],
        className: 'ink-generator',
        radius: 2.5,
      }),
    ),
    ...(chosen === undefined
      ? []
      : [
          {
            at: [chosen.tipSpeedRatio, chosen.powerCoefficient] as Point,
            className: 'ink-chosen',
            radius: 5.5,
          },
        ]),
  ]
  return panelBody({
    plot,
    footed: true,
    x: { label: 'tip-speed ratio', domain: [0, Math.max(1, (points.at(-1)?.[0] ?? 1) * 1.02)] },
    y: {
      label: `power coefficient, best ${formatNumber(best.power)} at ${formatNumber(best.tipSpeedRatio)}`,
      domain: niceDomain([0, highest * 1.12], 4),
    },
    lines: [{ label: 'blades', className: 'ink-wind', points, labelAt: 'nowhere' }],
    marks,
    uprights: [{ x: best.tipSpeedRatio, label: '', className: 'ink-wind' }],
  }).concat(
    chosen === undefined
      ? ''
      : textAt(
          4,
          plot.top + plot.height + 60,
          `Dots: where it works, wind by wind; large: ${chosenText(chosen.wind, 'm_per_s')}.`,
          { className: 'tick-text' },
        ),
  )
}

export function bladeChart(chart: BladeChart): string {
  const { width, figure } = chart
  const drawn =
    figure.shape !== undefined
      ? outline(chart, figure.shape)
      : figure.upright !== undefined
        ? planView(chart, figure.upright)
        : { body: '', height: 0 }
  const { best, radius, bladeCount } = figure
  return picture(
    {
      name: 'blade',
      title,
      description: `${bladeCount === undefined ? 'Blades' : `${bladeCount} ${figure.upright?.buckets ? 'buckets' : 'blades'}`} of ${lengthText(radius, 1)} radius${figure.section === undefined ? '' : `, section ${figure.section}`}. Power coefficient against tip-speed ratio, best ${formatNumber(best.power)} at ${formatNumber(best.tipSpeedRatio)}, with the points where the machine works.`,
      width,
      height: drawn.height + 34 + 170 + 72,
    },
    drawn.body + coefficients(chart, drawn.height),
  )
}

export function bladeStationTable({ shape }: BladeFigure): ChartTable {
  return {
    caption: 'Stations of the blade',
    columns: [
      { head: 'radius', unit: 'mm' },
      { head: 'chord', unit: 'mm' },
      { head: 'chord to disc', unit: '°' },
    ],
    rows:
      shape === undefined
        ? []
        : Array.from(shape.station, (r, k) => [1000 * r, 1000 * shape.chord[k]!, degrees(shape.twist[k]!)]),
  }
}

export function bladeCoefficientTable({ tipSpeedRatio, powerCoefficient }: BladeFigure): ChartTable {
  return {
    caption: 'Power coefficient of the blades',
    columns: [{ head: 'tip-speed ratio' }, { head: 'power coefficient' }],
    rows: Array.from(tipSpeedRatio, (λ, k) => [λ, powerCoefficient[k]!]),
  }
}
