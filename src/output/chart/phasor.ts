/** Picture of the coils' phasors, one after the other, up to the resultant of each phase. */
import type { CoilPhasor, CoilPhasors, PhasePhasor } from '../../analysis/coil-phasor.ts'
import { formatNumber } from '../../units/format.ts'
import type { ChartTable } from './chart-table.ts'
import { lineAt, linesOfParagraph } from './paragraph.ts'
import { phaseInk, phaseLetter } from './phase-letter.ts'
import { type Point, picture, px, textAt } from './picture.ts'

export interface PhasorChart {
  readonly width: number
  readonly phasors: CoilPhasors
  /** Coils of each phase that are drawn, for a picture that grows coil by coil; all where left out. */
  readonly upTo?: number
  /** Winding factor of each phase, pitch included, where it is known. */
  readonly windingFactors?: readonly (number | undefined)[]
}

const title = 'Phasors of the coils'

/** Arrow heads [px]. */
const head = 8

/** Peak over the speed as volts of a turning machine: per 1000 rpm. */
const perThousandRpm = (1000 * 2 * Math.PI) / 60

/** The first phase points up; what leads stands counter-clockwise of it. */
const direction = (lead: number): Point => [-Math.sin(lead), -Math.cos(lead)]

export function arrow([x0, y0]: Point, [x1, y1]: Point, className: string): string {
  const length = Math.hypot(x1 - x0, y1 - y0)
  if (length < 0.5) return ''
  const [ux, uy] = [(x1 - x0) / length, (y1 - y0) / length]
  const tip = Math.min(head, length * 0.6)
  const [bx, by] = [x1 - ux * tip, y1 - uy * tip]
  const side = tip * 0.42
  return (
    `<path class="phasor ${className}" d="M${px(x0)} ${px(y0)}L${px(bx)} ${px(by)}"/>` +
    `<path class="phasor-head ${className}" d="M${px(x1)} ${px(y1)}L${px(bx - uy * side)} ${px(by + ux * side)}L${px(bx + uy * side)} ${px(by - ux * side)}Z"/>`
  )
}

interface Drawn {
  readonly coil: CoilPhasor
  readonly from: Point
  readonly to: Point
}

/** In the order in which they are put one behind the other. */
const inOrder = ({ coils }: PhasePhasor): CoilPhasor[] =>
  [...coils].sort((a, b) => a.branch - b.branch || a.number - b.number)

/** Coils that a picture growing coil by coil puts down together, one of each phase, step by step. */
export function phasorSteps({ phases }: CoilPhasors): readonly (readonly CoilPhasor[])[] {
  const orders = phases.map(inOrder)
  return Array.from({ length: Math.max(0, ...orders.map((coils) => coils.length)) }, (_, n) =>
    orders.flatMap((coils) => coils[n] ?? []),
  )
}

/** The coils of a phase put one behind the other, in units of the picture with the origin at 0. */
function chained(phase: PhasePhasor, scale: number): Drawn[] {
  let at: Point = [0, 0]
  return inOrder(phase).map((coil) => {
    const [ux, uy] = direction(coil.lead)
    const from = at
    at = [at[0] + ux * coil.size * scale, at[1] + uy * coil.size * scale]
    return { coil, from, to: at }
  })
}

const signed = ({ number, sense }: Pick<CoilPhasor, 'number' | 'sense'>): string =>
  sense < 0 ? `−${number}` : String(number)

const degrees = (angle: number): number => (angle * 180) / Math.PI

const phaseWords = ({ size, lead, inStep, coils }: PhasePhasor, phase: number): string => {
  const against = coils.filter((coil) => coil.against)
  return `Phase ${phaseLetter(phase)}: ${coils.length} ${coils.length === 1 ? 'coil' : 'coils'}, resultant ${formatNumber(size * perThousandRpm)} V peak per 1000 rpm, ${behindWords(lead)}, ${formatNumber(100 * inStep)} % of what the coils would give in step${against.length > 0 ? `; against it: ${against.map(signed).join(', ')}` : ''}`
}

/** How far a phase is off the first. */
function behindWords(lead: number): string {
  const behind = Math.round(degrees(-lead) * 10) / 10
  return behind === 0
    ? 'in step with A'
    : `${formatNumber(Math.abs(behind))}° ${behind > 0 ? 'behind' : 'ahead of'} A`
}

/** What goes on from the line above stands in by so much. */
const inset = '    '

/** Lines under the picture: what each phase comes to. */
function notes({ phases }: CoilPhasors, factors: readonly (number | undefined)[], width: number): string[] {
  return phases.flatMap(({ size, lead, inStep, coils }, phase) => {
    const factor = factors[phase]
    const against = coils.filter((coil) => coil.against)
    const name = phaseLetter(phase)
    const columns = Math.floor((width - 8) / 6.9)
    if (inStep === 0) return linesOfParagraph(`${name}: its coils cancel, nothing is left`, columns, inset)
    const parts = [
      `${name}: ${formatNumber(size * perThousandRpm)} V peak per 1000 rpm${phase === 0 ? '' : `, ${behindWords(lead)}`}`,
      `${formatNumber(100 * inStep)} % in step${factor === undefined ? '' : `, winding factor ${formatNumber(factor)}`}`,
      ...(against.length > 0
        ? [`against the others: coil ${against.map(({ number }) => number).join(', ')}`]
        : []),
    ]
    const whole = parts.join('; ')
    const fits = linesOfParagraph(whole, columns, inset)
    if (fits.length === 1) return fits
    return parts.flatMap((part, k) => linesOfParagraph(k === 0 ? part : inset + part, columns, inset))
  })
}

export function phasorChart({ width, phasors, upTo, windingFactors = [] }: PhasorChart): string {
  const { phases } = phasors
  const shown = Math.max(0, Math.trunc(upTo ?? Number.POSITIVE_INFINITY))
  const side = Math.min(width, 420)
  const longest = Math.max(
    1e-12,
    ...phases.flatMap((phase) => chained(phase, 1).map(({ to }) => Math.hypot(...to))),
  )
  const scale = (side / 2 - 34) / longest
  const centre: Point = [width / 2, side / 2]
  const moved = ([x, y]: Point): Point => [centre[0] + x, centre[1] + y]
  const drawn = phases.map((phase, k) => {
    const ink = phaseInk(k)
    const chain = chained(phase, scale)
    const [ux, uy] = direction(phase.lead)
    const end: Point = [ux * phase.size * scale, uy * phase.size * scale]
    const whole = shown >= chain.length
    // across the resultant, so that the numbers of a chain that zigzags stand in one row
    const across: Point = [-Math.cos(phase.lead), Math.sin(phase.lead)]
    let numbered = Number.NEGATIVE_INFINITY
    const coils = chain
      .filter((_, n) => n < shown)
      .map(({ coil, from, to }, n) => {
        const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
        const along = middle[0] * ux + middle[1] * uy
        const room = Math.abs(along - numbered) > (Math.abs(ux) > 0.5 ? 25 : 15) && Math.hypot(...middle) > 10
        if (room) numbered = along
        // what works against the others is told on the other side
        const away = coil.against || phase.inStep === 0 ? -17 : 17
        const label: Point = [middle[0] + across[0] * away, middle[1] + across[1] * away]
        return (
          `<g class="coil" id="phasor-coil-${coil.number}" data-coil="${coil.number}" data-step="${n + 1}" data-phase="${k + 1}" data-sense="${coil.sense}">` +
          arrow(moved(from), moved(to), coil.against ? 'ink-against' : ink) +
          (room || coil.against
            ? textAt(moved(label)[0], moved(label)[1] + 4, coil.against ? `${signed(coil)}!` : signed(coil), {
                className: `line-label halo ${coil.against ? 'ink-against' : ink}`,
                anchor: 'middle',
              })
            : '') +
          '</g>'
        )
      })
    const reach = Math.hypot(...end)
    const name: Point = [ux * Math.max(reach, 20) + ux * 18, uy * Math.max(reach, 20) + uy * 18]
    return (
      (whole && reach > 1
        ? `<g class="resultant" data-phase="${k + 1}"><path class="resultant-band ${ink}" d="M${px(centre[0])} ${px(centre[1])}L${px(moved(end)[0])} ${px(moved(end)[1])}"/></g>`
        : '') +
      coils.join('') +
      (whole && phase.inStep > 0
        ? textAt(moved(name)[0], moved(name)[1] + 5, phaseLetter(k), {
            className: `phase-name halo ${ink}`,
            anchor: 'middle',
          })
        : '')
    )
  })
  const lines = notes(phasors, windingFactors, width)
  const ring = side / 2 - 34
  return picture(
    {
      name: 'phasors',
      title,
      description: `${phases.map(phaseWords).join('. ')}. Arrows as long as the working volts of each coil, put one behind the other, a broad band for their sum.`,
      width,
      height: side + 10 + 18 * lines.length,
    },
    `<circle class="guide" cx="${px(centre[0])}" cy="${px(centre[1])}" r="${px(ring)}"/>` +
      drawn.join('') +
      `<circle class="joint" cx="${px(centre[0])}" cy="${px(centre[1])}" r="3"/>` +
      lines.map((line, k) => lineAt(4, side + 14 + 18 * k, line, { className: 'tick-text' })).join(''),
  )
}

export function phasorTable({ phases }: CoilPhasors): ChartTable {
  return {
    caption: title,
    columns: [
      { head: 'coil' },
      { head: 'phase' },
      { head: 'wound' },
      { head: 'branch' },
      { head: 'part of the phase, peak', unit: 'V per 1000 rpm' },
      { head: 'ahead of phase A', unit: '°' },
      { head: 'off its own phase', unit: '°' },
    ],
    rows: phases
      .flatMap(({ coils, lead }, phase) => coils.map((coil) => ({ coil, phase, lead })))
      .sort((a, b) => a.coil.number - b.coil.number)
      .map(({ coil, phase, lead }) => [
        coil.number,
        phaseLetter(phase),
        coil.sense > 0 ? 'forward' : 'reversed',
        coil.branch + 1,
        coil.size * perThousandRpm,
        cleaned(degrees(coil.lead)),
        cleaned(degrees(Math.atan2(Math.sin(coil.lead - lead), Math.cos(coil.lead - lead)))),
      ]),
  }
}

/** Without the dust of rounding. */
const cleaned = (value: number): number => (Math.abs(value) < 1e-9 ? 0 : value)
