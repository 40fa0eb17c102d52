/** Picture of the winding rolled out beside the poles: coils in their places, the way they are wound, how they are joined. */
import type { PlanCoil, WindingPlan } from '../../analysis/winding-plan.ts'
import type { ChartTable } from './chart-table.ts'
import { dashes } from './panel.ts'
import { lineAt, linesOfParagraph } from './paragraph.ts'
import { phaseInk, phaseLetter } from './phase-letter.ts'
import { lineThrough, type Point, picture, px, textAt } from './picture.ts'
import { type CoilEnd, coilChains, windingNets } from './winding-net.ts'
import { extremes, type Track, tracksOf } from './winding-track.ts'

export interface WindingDiagram {
  readonly width: number
  readonly plan: WindingPlan
  /** Least room along the picture for a pole and for a coil [px]; what does not fit goes on in a further strip. */
  readonly leastRoom?: number
  /** Without the words under it, for a page that sets them itself. */
  readonly bare?: true
}

const title = 'Winding diagram'
const turn = 2 * Math.PI

/** Room for a pole and for a coil where none is asked for [px]: as much as a phone can show. */
const usualRoom = 44
const margin = 4
/** Heights within a strip [px]. */
const boxes = 22
const above = 10
const trackStep = 11
const leadRoom = 34
const stripGap = 22

/** A part of the drawing and where it lies along the rolled-out circumference [px]. */
interface Piece {
  readonly from: number
  readonly to: number
  readonly svg: string
}

interface Layout {
  /** Azimuth at the left end [rad]. */
  readonly origin: number
  readonly strips: number
  readonly stripWidth: number
  readonly x: (azimuth: number) => number
  readonly y: (across: number) => number
  readonly bandTop: number
  readonly bandFoot: number
}

/** As many strips as give everything its room; a few more where each then holds whole coils. */
function stripCount(most: number, stripWidth: number, parts: number, room: number): number {
  const needed = Math.max(1, Math.ceil((most * room) / stripWidth))
  for (let count = needed; count <= 1 + 1.5 * needed; count++) if (parts % count === 0) return count
  return needed
}

function layoutOf({ plan, width, leastRoom = usualRoom }: WindingDiagram): Layout {
  const { coils, poles, radius, magnetAcross } = plan
  const stripWidth = Math.max(120, width - 2 * margin)
  const wave = coils.some((coil) => coil.wave)
  const most = Math.max(poles.length, wave ? 0 : coils.length)
  const strips = stripCount(most, stripWidth, wave ? poles.length : coils.length, leastRoom)
  const scale = (strips * stripWidth) / turn
  const origin = wave ? -Math.PI / poles.length : coils[0]!.angle - Math.PI / coils.length
  const [low, high] = extremes([magnetAcross, ...coils.map(({ across }) => across)])
  const band = Math.min(170, Math.max(76, (high - low) * (scale / radius)))
  const bandTop = boxes + above
  return {
    origin,
    strips,
    stripWidth,
    x: (azimuth) => (azimuth - origin) * scale,
    y: (across) => bandTop + ((high - across) / (high - low)) * band,
    bandTop,
    bandFoot: bandTop + band,
  }
}

/** A piece at an azimuth and wherever it shows again, a whole turn on. */
function turned({ x }: Layout, from: number, to: number, draw: (shift: number) => string): Piece[] {
  const whole = x(turn) - x(0)
  return [-whole, 0, whole]
    .filter((shift) => to + shift > 0 && from + shift < whole)
    .map((shift) => ({ from: from + shift, to: to + shift, svg: draw(shift) }))
}

/** Least of a box that carries its letter [px]. */
const leastBox = 12

/** Middles of what is seen of a box that the ends of strips may cut. */
function seenParts(from: number, to: number, stripWidth: number): number[] {
  const cuts = [from, to]
  for (let border = Math.ceil(from / stripWidth) * stripWidth; border < to; border += stripWidth)
    if (border > from) cuts.splice(-1, 0, border)
  return cuts.slice(1).flatMap((end, k) => (end - cuts[k]! >= leastBox ? [(cuts[k]! + end) / 2] : []))
}

function polePieces(layout: Layout, { poles, magnetAcross }: WindingPlan): Piece[] {
  const { x, y } = layout
  return poles.flatMap(({ angle, half, sense }, k) => {
    const [from, to] = [x(angle - half), x(angle + half)]
    const kind = sense > 0 ? 'north' : sense < 0 ? 'south' : 'missing'
    return turned(
      layout,
      from,
      to,
      (shift) =>
        `<g class="pole ${kind}" data-pole="${k + 1}"><rect class="pole-ground ${kind}" x="${px(from + shift)}" y="${px(y(magnetAcross[1]))}" width="${px(to - from)}" height="${px(y(magnetAcross[0]) - y(magnetAcross[1]))}"/>` +
        `<rect class="pole-box ${kind}" x="${px(from + shift)}" y="1" width="${px(to - from)}" height="${boxes - 2}"/>` +
        seenParts(from + shift, to + shift, layout.stripWidth)
          .map((middle) =>
            textAt(middle, boxes - 6, sense > 0 ? 'N' : sense < 0 ? 'S' : '–', {
              className: 'pole-letter',
              anchor: 'middle',
            }),
          )
          .join('') +
        '</g>',
    )
  })
}

const upOf = ({ arrangement }: WindingPlan, direction: 1 | -1): 1 | -1 =>
  (arrangement === 'drum' ? direction : -direction) as 1 | -1

/** A small triangle on a side, in the direction of the current. */
const senseMark = ([x, y]: Point, up: 1 | -1): string => `M${px(x)} ${px(y - 6 * up)}l5 ${px(10 * up)}h-10Z`

function coilPieces(layout: Layout, plan: WindingPlan, coil: PlanCoil): Piece[] {
  const { x, y } = layout
  const ink = phaseInk(coil.phase)
  const xs = coil.around.map((azimuth) => x(azimuth))
  const ys = coil.across.map((across) => y(across))
  const [from, to] = extremes([xs])
  const dash = coil.wave ? dashes[coil.phase % 3] : ''
  const [top, foot] = extremes([ys])
  const middle = (top + foot) / 2
  const outline = (shift: number) =>
    turned(layout, from + shift, to + shift, (again) => {
      const path = lineThrough(Array.from(xs, (at, k): Point => [at + again, ys[k]!]))
      return `<path class="wire ${ink}" d="${path}"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`
    })
  const marks = coil.sides.flatMap(({ angle, direction }) => {
    // the sides are told within half a turn of azimuth 0; the picture begins elsewhere
    const at = x(layout.origin + ((((angle - layout.origin) % turn) + turn) % turn))
    const up = upOf(plan, direction)
    return turned(
      layout,
      at - 6,
      at + 6,
      (shift) =>
        `<path class="sense ${ink}" data-coil="${coil.number}" data-azimuth="${angle.toFixed(6)}" data-up="${up}" d="${senseMark([at + shift, middle], up)}"/>`,
    )
  })
  const name = coil.wave
    ? []
    : turned(layout, x(coil.angle) - 12, x(coil.angle) + 12, (shift) =>
        textAt(x(coil.angle) + shift, middle + 21, `${coil.sense < 0 ? '−' : ''}${coil.number}`, {
          className: `coil-number halo ${ink}`,
          anchor: 'middle',
        }),
      )
  return [...outline(0), ...marks, ...name]
}

/** Where the ends of a coil come out, at its foot: the wire leaves the start the way it runs there. */
function endPlaces(layout: Layout, plan: WindingPlan): (end: CoilEnd) => number {
  const places = new Map<string, number>()
  const taken = new Map<number, number>()
  for (const coil of plan.coils) {
    const before = taken.get(coil.phase) ?? 0
    taken.set(coil.phase, before + 1)
    const { around, across } = coil
    let lowest = 0
    for (let k = 1; k < across.length; k++) if (across[k]! < across[lowest]! - 1e-9) lowest = k
    const next = (lowest + 1) % (across.length - 1)
    const forward = Math.sign(around[next]! - around[lowest]!) || 1
    const azimuth = coil.wave
      ? waveFoot(coil, plan.polePairs) + (turn / plan.polePairs) * (before % plan.polePairs)
      : coil.angle
    const at = layout.x(layout.origin + ((((azimuth - layout.origin) % turn) + turn) % turn))
    places.set(`${coil.number} start`, at + 6 * forward)
    places.set(`${coil.number} finish`, at - 6 * forward)
  }
  return ({ coil, end }) => places.get(`${coil} ${end}`)!
}

/** Azimuth of a crown at the foot of a wave, beside its first run. */
function waveFoot({ around, across, angle }: PlanCoil, polePairs: number): number {
  const half = Math.PI / polePairs / 2
  const [low, high] = extremes([across])
  const nearest = around.reduce(
    (best, azimuth, k) =>
      Math.abs(azimuth - angle - half) < Math.abs(around[best]! - angle - half) ? k : best,
    0,
  )
  return across[nearest]! < (low + high) / 2 ? angle + half : angle - half
}

function netPieces(layout: Layout, tracks: readonly Track[], leadFoot: number): Piece[] {
  const { bandFoot } = layout
  const yOf = (track: number) => bandFoot + 14 + track * trackStep
  return tracks.flatMap(({ net, places, from, to, track }): Piece[] => {
    const ink = net.phase === undefined ? 'ink-joint' : phaseInk(net.phase)
    const leadAt = net.lead === undefined ? undefined : places[0]!
    const down = places.map((at): Piece => {
      const foot = track < 0 ? leadFoot : yOf(track)
      const dot =
        places.length > 2 ? `<circle class="joint ${ink}" cx="${px(at)}" cy="${px(foot)}" r="2.6"/>` : ''
      return {
        from: at - 3,
        to: at + 3,
        svg: `<path class="link ${ink}" d="M${px(at)} ${px(bandFoot)}V${px(foot)}"/>${dot}`,
      }
    })
    const along: Piece[] =
      track < 0
        ? []
        : [{ from, to, svg: `<path class="link ${ink}" d="M${px(from)} ${px(yOf(track))}H${px(to)}"/>` }]
    const lead: Piece[] =
      leadAt === undefined
        ? []
        : [
            {
              from: leadAt - 12,
              to: leadAt + 12,
              svg:
                (track < 0
                  ? ''
                  : `<path class="link ${ink}" d="M${px(leadAt)} ${px(yOf(track))}V${px(leadFoot)}"/><circle class="joint ${ink}" cx="${px(leadAt)}" cy="${px(yOf(track))}" r="2.6"/>`) +
                `<path class="lead-tip ${ink}" d="M${px(leadAt)} ${px(leadFoot + 7)}l-4 -8h8Z"/>` +
                textAt(leadAt, leadFoot + 22, net.lead!, {
                  className: `line-label halo ${ink}`,
                  anchor: 'middle',
                }),
            },
          ]
    return [...along, ...down, ...lead]
  })
}

/** Letters of start and finish beside the ends. */
function endPieces(layout: Layout, plan: WindingPlan, place: (end: CoilEnd) => number): Piece[] {
  return plan.coils.flatMap(({ number, phase }) => {
    const [start, finish] = [place({ coil: number, end: 'start' }), place({ coil: number, end: 'finish' })]
    const out = Math.sign(start - finish)
    const letter = (at: number, side: number, text: string): Piece => ({
      from: at - 10,
      to: at + 10,
      svg: textAt(at + 6 * side, layout.bandFoot + 10, text, {
        className: `end-letter halo ${phaseInk(phase)}`,
        anchor: 'middle',
      }),
    })
    return [letter(start, out, 'S'), letter(finish, -out, 'F')]
  })
}

const signed = ({ number, sense }: { readonly number: number; readonly sense: 1 | -1 }): string =>
  `${sense < 0 ? '−' : ''}${number}`

const joinedWords: Readonly<Record<WindingPlan['connection'], string>> = {
  star: 'Star: the ends of all phases meet in the star point; the starts lead to the bridge.',
  delta: 'Delta: the end of each phase meets the start of the next; corners 1, 2, 3 lead to the bridge.',
  separate: 'Separate: both ends of each phase lead to a bridge of its own.',
  single: 'One phase: both ends lead to the bridge.',
}

/** The coils in the order of the current, how they are joined, and from where they are seen. */
export function windingWords(plan: WindingPlan): string[] {
  const chains = coilChains(plan)
  const branched = chains.some(({ group }) => group > 0)
  return [
    ...chains.map(
      ({ phase, group, coils }) =>
        `${phaseLetter(phase)}${branched ? `, branch ${group + 1}` : ''}: ${coils.map(signed).join(', ')}`,
    ),
    joinedWords[plan.phaseCount === 1 ? 'single' : plan.connection],
    'S start, F finish; − the other way round: the current enters at F. Arrows: positive current.',
    plan.arrangement === 'drum'
      ? `Seen from outside, the shaft upright${plan.windingSide === 'inside' ? ', the magnets in front' : ''}.`
      : 'Seen from the winding, the magnets behind it, the rim of the disc below.',
  ]
}

export function windingDiagram(diagram: WindingDiagram): string {
  const { width, plan, bare } = diagram
  const layout = layoutOf(diagram)
  const place = endPlaces(layout, plan)
  const tracks = tracksOf(windingNets(plan), place, plan.phaseCount)
  const trackCount = 1 + tracks.reduce((most, { track }) => Math.max(most, track), -1)
  const leadFoot = layout.bandFoot + 14 + trackCount * trackStep + 4
  const stripHeight = leadFoot + leadRoom
  const pieces = [
    ...polePieces(layout, plan),
    ...netPieces(layout, tracks, leadFoot),
    ...plan.coils.flatMap((coil) => coilPieces(layout, plan, coil)),
    ...endPieces(layout, plan, place),
  ]
  const strips = Array.from({ length: layout.strips }, (_, k) => {
    const [from, to] = [k * layout.stripWidth, (k + 1) * layout.stripWidth]
    const own = pieces.filter((piece) => piece.to > from && piece.from < to)
    return `<svg x="${px(margin)}" y="${px(k * (stripHeight + stripGap))}" width="${px(layout.stripWidth)}" height="${px(stripHeight)}" viewBox="${px(from)} 0 ${px(layout.stripWidth)} ${px(stripHeight)}">${own.map(({ svg }) => svg).join('')}</svg>`
  })
  const foot = layout.strips * stripHeight + (layout.strips - 1) * stripGap
  const columns = Math.max(24, Math.floor((width - 8) / 6.7))
  const lines = (bare ? [] : windingWords(plan)).flatMap((sentence) =>
    linesOfParagraph(sentence, columns, '    '),
  )
  const coils = plan.coils.map(
    ({ number, phase, sense }) => `${signed({ number, sense })} ${phaseLetter(phase)}`,
  )
  return picture(
    {
      name: 'winding-diagram',
      title,
      description: `${plan.poles.length} poles and ${plan.coils.length} ${plan.coils.some(({ wave }) => wave) ? 'waves' : 'coils'} along the circumference, each with its phase: ${coils.join(', ')}. ${windingWords(plan).join(' ')}`,
      width,
      height: foot + 8 + 18 * lines.length,
    },
    strips.join('') +
      lines.map((line, k) => lineAt(4, foot + 14 + 18 * k, line, { className: 'tick-text' })).join(''),
  )
}

export function windingDiagramTable(plan: WindingPlan): ChartTable {
  const chains = coilChains(plan)
  const order = new Map(
    chains.flatMap(({ coils }) => coils.map(({ number }, k): [number, number] => [number, k + 1])),
  )
  return {
    caption: 'Winding table',
    columns: [
      { head: 'coil' },
      { head: 'phase' },
      { head: 'branch' },
      { head: 'place in series' },
      { head: 'joined' },
      { head: 'turns' },
      { head: 'axis', unit: '°' },
      { head: 'axis, electrical', unit: '°' },
    ],
    rows: plan.coils.map(({ number, phase, group, sense, turns, angle }) => [
      number,
      phaseLetter(phase),
      group + 1,
      order.get(number),
      sense > 0 ? 'in at S, out at F' : 'in at F, out at S',
      turns,
      rounded((angle * 360) / turn),
      rounded(((((plan.polePairs * angle) % turn) + turn) % turn) * (360 / turn)) % 360,
    ]),
  }
}

const rounded = (degrees: number): number => Math.round(degrees * 1000) / 1000
