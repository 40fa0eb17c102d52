/** Picture of the match: blades in several winds, the generator with its ribbons, every steady state, the zones. */
import type { MatchMap, MatchState, MatchWind } from '../../analysis/match-map.ts'
import { pathKind } from '../../analysis/path-kind.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { chosenText, measuredText } from '../measuring.ts'
import { said } from '../telling.ts'
import { linearScale, niceDomain, type Plot, type Scale } from './axis.ts'
import { clearPlace } from './clear-place.ts'
import { dashes, overlap, type PanelLine, panelBody, type WordBox, wordBox } from './panel.ts'
import { lineThrough, type Point, picture, px, textAt } from './picture.ts'

export interface MatchChart {
  readonly width: number
  readonly height: number
  readonly map: MatchMap
  /** Index of the wind that is looked at. */
  readonly chosen: number
}

const rpmOf = (speed: number): number => (speed * 60) / (2 * Math.PI)

/** Curves of blades drawn beside the chosen one. */
const familySize = 6

/** Of the strongest wind's power: curves flatter than this lie on the axis. */
const leastShown = 0.06

const greatest = (values: Float64Array): number => values.reduce((most, value) => Math.max(most, value), 0)

/** Winds of the family, the strongest among them, those beside the chosen one left out. */
function familyOf({ winds }: MatchMap, chosen: number): number[] {
  const step = Math.max(1, Math.ceil(winds.length / familySize))
  const most = greatest(winds[winds.length - 1]!.bladePower)
  return winds
    .map((_, k) => k)
    .filter((k) => (winds.length - 1 - k) % step === 0 && Math.abs(k - chosen) > step / 3)
    .filter((k) => greatest(winds[k]!.bladePower) > leastShown * most)
}

const bladePoints = ({ bladeFractions }: MatchMap, { fastest, bladePower }: MatchWind): Point[] =>
  Array.from(bladeFractions, (share, k): Point => [rpmOf(share * fastest), bladePower[k]!])

const curvePoints = ({ speed, power }: { speed: Float64Array; power: Float64Array }): Point[] =>
  Array.from(speed, (value, k): Point => [rpmOf(value), power[k]!])

interface Frame {
  readonly plot: Plot
  readonly across: Scale
  readonly up: Scale
}

const placed = ({ across, up }: Frame, points: readonly Point[]): Point[] =>
  points.map(([x, y]): Point => [across(x), up(y)])

const outline = (frame: Frame, points: readonly Point[]): string => `${lineThrough(placed(frame, points))}Z`

type Zone = 'idle' | 'stall' | 'fast'

const zoneInk: Readonly<Record<Zone, string>> = { idle: 'ink-wind', stall: 'ink-against', fast: 'ink-chosen' }

/** Lines over a box, their direction another for every zone, so that zones are told apart without colour. */
function hatchLines(zone: Zone, width: number, height: number): string {
  const gap = zone === 'idle' ? 8 : 12
  const slope = zone === 'idle' ? 0 : zone === 'stall' ? -height : height
  const first = Math.min(0, -Math.abs(height))
  let path = ''
  for (let x = first; x < width + height; x += gap) path += `M${px(x)} 0l${px(slope)} ${px(height)}`
  return `<path class="hatch ${zoneInk[zone]}" d="${path}"/>`
}

/** A hatched surface inside the plot. */
const hatched = (frame: Frame, zone: Zone, points: readonly Point[]): string =>
  `<clipPath id="match-zone-${zone}"><path d="${outline(frame, points)}"/></clipPath>` +
  `<g clip-path="url(#match-zone-${zone})">${hatchLines(zone, frame.plot.width, frame.plot.height)}</g>`

/** Zones under the curves: no current, stalled, overspeed. */
function zones(frame: Frame, map: MatchMap, [right, top]: Point): string {
  const { zones: zone, winds } = map
  const last = winds[winds.length - 1]!
  const cutIn = Number.isFinite(zone.cutInSpeed) ? Math.min(rpmOf(zone.cutInSpeed), right) : right
  const fast = rpmOf(zone.overspeed)
  const stallRpm = rpmOf(last.stallSpeed)
  const stallEdge = [
    ...curvePoints(zone.stallLine),
    ...bladePoints(map, last)
      .filter(([rpm]) => rpm < stallRpm)
      .reverse(),
  ]
  const block = (from: number, to: number): Point[] => [
    [from, 0],
    [to, 0],
    [to, top],
    [from, top],
  ]
  return [
    hatched(frame, 'idle', block(0, cutIn)),
    hatched(frame, 'stall', stallEdge),
    fast < right ? hatched(frame, 'fast', block(fast, right)) : '',
  ].join('')
}

/** Words drawn, and the places that they take. */
interface Words {
  readonly drawn: string
  readonly boxes: readonly WordBox[]
}

/** Words on the zones where they are wide enough to carry them; the legend tells the hatches in any case. */
function zoneLabels(
  { plot, across, up }: Frame,
  map: MatchMap,
  right: number,
  taken: readonly WordBox[],
): Words {
  const { zones: zone, winds } = map
  const last = winds[winds.length - 1]!
  const { left, top, height } = plot
  const boxes: WordBox[] = []
  const label = (x: number, y: number, text: string, ink: string) => {
    const box = wordBox([left + x, y], text, 'middle')
    // the legend tells the hatches as well
    if (taken.some((other) => overlap(box, other))) return ''
    boxes.push(box)
    return textAt(left + x, y, text, { className: `line-label halo ${ink}`, anchor: 'middle' })
  }
  const fast = across(rpmOf(zone.overspeed))
  const rpm = 0.62 * rpmOf(last.stallSpeed)
  const at = (points: readonly Point[]) =>
    points.reduce((near, point) => (Math.abs(point[0] - rpm) < Math.abs(near[0] - rpm) ? point : near))[1]
  const [upper, lower] = [up(at(bladePoints(map, last))), up(at(curvePoints(zone.stallLine)))]
  const drawn = [
    fast < across(right) - 84
      ? label((fast + across(right)) / 2, top + height - 10, 'overspeed', 'ink-chosen')
      : '',
    lower - upper > 26 && across(rpm) > 36
      ? label(across(rpm), top + (upper + lower) / 2 + 4, 'stalled', 'ink-against')
      : '',
  ]
  return { drawn: drawn.join(''), boxes }
}

type Glyph = 'dot' | 'square' | 'ring' | 'cross'

function glyph(kind: Glyph, [x, y]: Point, size: number, ink: string): string {
  const at = `${px(x)} ${px(y)}`
  switch (kind) {
    case 'dot':
      return `<circle class="mark ${ink}" cx="${px(x)}" cy="${px(y)}" r="${px(size)}"/>`
    case 'ring':
      return `<circle class="ring ${ink}" cx="${px(x)}" cy="${px(y)}" r="${px(size)}"/>`
    case 'square':
      return `<rect class="mark ${ink}" x="${px(x - size)}" y="${px(y - size)}" width="${px(2 * size)}" height="${px(2 * size)}"/>`
    case 'cross':
      return `<path class="cross ${ink}" d="M${at}m${px(-size)} ${px(-size)}l${px(2 * size)} ${px(2 * size)}m0 ${px(-2 * size)}l${px(-2 * size)} ${px(2 * size)}"/>`
  }
}

/** Which sign a steady state gets: how it is reached counts before what it is. */
function glyphOf(each: MatchWind, index: number): Glyph | undefined {
  const state = each.states[index]!
  if (!state.stable) return 'ring'
  if (index === each.rising) return state.kind === 'stalled' ? 'cross' : 'dot'
  return index === each.falling ? 'square' : undefined
}

function points(frame: Frame, { winds }: MatchMap, chosen: number): string {
  const sign = (each: MatchWind, size: number, ink: string) =>
    each.states
      .map(({ speed, power }, k) => {
        const kind = glyphOf(each, k)
        const [at] = placed(frame, [[rpmOf(speed), power]])
        return kind === undefined ? '' : glyph(kind, at!, size, ink)
      })
      .join('')
  return (
    winds.map((each, k) => (k === chosen ? '' : sign(each, 3, 'ink-generator'))).join('') +
    sign(winds[chosen]!, 6, 'ink-chosen')
  )
}

/** Of the points of a drawn line, so close to each other that no word slips between them [px]. */
const closeBy = 6

/** Points along a line on the sheet. */
const along = (line: readonly Point[]): Point[] =>
  line.flatMap(([x, y], k) => {
    const [u, v] = line[k + 1] ?? [x, y]
    const steps = Math.min(400, Math.max(1, Math.ceil(Math.hypot(u - x, v - y) / closeBy)))
    return Array.from(
      { length: steps },
      (_, i): Point => [x + ((u - x) * i) / steps, y + ((v - y) * i) / steps],
    )
  })

/** Letter, speed and watts beside the states of the chosen wind: S holds itself, U does not. */
function chosenLabels(frame: Frame, map: MatchMap, chosen: number, right: number): Words {
  const { left, top, width, height } = frame.plot
  const onSheet = (line: readonly Point[]) => placed(frame, line).map(([x, y]): Point => [left + x, top + y])
  const each = map.winds[chosen]!
  const signs = map.winds.flatMap((wind) =>
    wind.states.filter((_, k) => glyphOf(wind, k)).map(({ speed, power }): Point => [rpmOf(speed), power]),
  )
  const blades = onSheet(bladePoints(map, each))
  // there the wind is written on its curve
  const peak = blades.reduce((best, at) => (at[1] < best[1] ? at : best))
  const named = wordBox(
    [peak[0], Math.max(peak[1] - 6, top + 12)],
    chosenText(each.wind, 'm_per_s'),
    'middle',
  )
  const points = [...onSheet(signs), ...along(blades), ...along(onSheet(curvePoints(map.generator.settled)))]
  const within = { left, right: left + width + 14, top: top + 14, bottom: top + height - 4 }
  const boxes: WordBox[] = []
  const drawn = each.states
    .filter(({ speed }) => rpmOf(speed) <= right)
    .map(({ speed, power, stable }) => {
      const text = `${stable ? 'S' : 'U'} ${formatNumber(rpmOf(speed))} rpm, ${formatNumber(power)} W`
      const [from] = onSheet([[rpmOf(speed), power]])
      const { at, anchor, box } = clearPlace(from!, text, { within, points, words: [named, ...boxes] })
      boxes.push(box)
      return textAt(at[0], at[1], text, { className: 'line-label halo ink-chosen', anchor })
    })
  return { drawn: drawn.join(''), boxes }
}

interface Entry {
  readonly text: string
  /** Drawn in a box of 26 by 12 px. */
  readonly sample: string
}

function legendEntries(map: MatchMap, chosen: MatchWind): Entry[] {
  const { battery, winds } = map
  const states = winds.flatMap((each) => each.states.map((_, k) => glyphOf(each, k)))
  const line = (ink: string, dash: string) =>
    `<path class="line ${ink}" d="M0 6h26"${dash === '' ? '' : ` stroke-dasharray="${dash}"`}/>`
  const spot = (kind: Glyph) => glyph(kind, [13, 6], 4, 'ink-generator')
  const zone = (name: Zone) => `<svg width="26" height="12">${hatchLines(name, 26, 12)}</svg>`
  return [
    { text: 'generator, warmed through', sample: line('ink-generator', '') },
    { text: 'its copper cold … hot', sample: '<path class="ribbon ink-shaft" d="M0 1h26v10h-26Z"/>' },
    ...(battery === undefined
      ? []
      : [{ text: 'battery empty … full', sample: '<path class="ribbon ink-store" d="M0 1h26v10h-26Z"/>' }]),
    { text: `blades in ${chosenText(chosen.wind, 'm_per_s')}`, sample: line('ink-chosen', '') },
    { text: 'blades in other winds', sample: line('ink-wind', dashes[2]) },
    { text: 'where a rising wind ends', sample: spot('dot') },
    ...(states.includes('cross') ? [{ text: 'the same, stalled', sample: spot('cross') }] : []),
    ...(states.includes('square')
      ? [{ text: 'where a falling wind ends otherwise', sample: spot('square') }]
      : []),
    ...(states.includes('ring')
      ? [{ text: 'unsteady (U): it leaves to either side', sample: spot('ring') }]
      : []),
    { text: 'no current', sample: zone('idle') },
    { text: 'blades stalled', sample: zone('stall') },
    { text: 'overspeed', sample: zone('fast') },
  ]
}

const letterWidth = 6.9
const rowHeight = 20

/** Entries in rows as wide as the sheet. */
function legend(
  entries: readonly Entry[],
  width: number,
): { readonly rows: number; readonly at: (top: number) => string } {
  let x = 0
  let row = 0
  const spots = entries.map(({ text }) => {
    const wide = 34 + letterWidth * said(text).length + 16
    if (x > 0 && x + wide > width) {
      x = 0
      row += 1
    }
    const spot = { x, row }
    x += wide
    return spot
  })
  return {
    rows: row + 1,
    at: (top) =>
      entries
        .map(({ text, sample }, k) => {
          const y = top + spots[k]!.row * rowHeight
          return (
            `<g transform="translate(${px(spots[k]!.x)} ${px(y)})">${sample}</g>` +
            textAt(spots[k]!.x + 32, y + 10, text, { className: 'tick-text' })
          )
        })
        .join(''),
  }
}

/** The ribbon between two curves over the same speeds. */
const between = (
  frame: Frame,
  low: { speed: Float64Array; power: Float64Array },
  high: { speed: Float64Array; power: Float64Array },
  ink: string,
): string =>
  `<path class="ribbon ${ink}" d="${outline(frame, [...curvePoints(low), ...curvePoints(high).reverse()])}"/>`

/** Where the picture ends: past every state and the best of the strongest blades, not as far as runaway. */
function extent({ winds, zones: zone }: MatchMap, drawn: readonly MatchWind[]): Point {
  const last = winds[winds.length - 1]!
  const peak = last.bladePower.reduce((best, power, k, all) => (power > all[best]! ? k : best), 0)
  const bestSpeed = (last.fastest * peak) / (last.bladePower.length - 1)
  const right = Math.min(last.fastest, Math.max(1.35 * bestSpeed, 1.2 * zone.overspeed))
  const most = drawn.reduce(
    (top, { bladePower, states }) =>
      Math.max(top, ...bladePower, ...states.map(({ power }: MatchState) => power)),
    1e-6,
  )
  return [Math.max(1e-3, rpmOf(right)), most]
}

/** Where the machine runs in the wind looked at, where it begins, stalls, and goes too fast. */
const description = (each: MatchWind, { zones: zone, greatestWind }: MatchMap): string => {
  const state = each.states[each.rising]
  const kind = pathKind(each, each.rising)
  const begins = Number.isFinite(zone.cutInSpeed)
    ? `Current begins at ${formatSi(zone.cutInSpeed, 'rpm')}${Number.isFinite(zone.cutInWind) ? `, in ${measuredText(zone.cutInWind, 'm_per_s')}` : ', which no wind of the map reaches'}.`
    : 'No speed brings current.'
  const stalls =
    zone.stalledWinds.length === 0
      ? 'The blades stall in no wind.'
      : `The blades stall in ${zone.stalledWinds.length} of the winds, the first at ${chosenText(zone.stalledWinds[0]!, 'm_per_s')}.`
  return `In ${chosenText(each.wind, 'm_per_s')} a rising wind ends ${state === undefined ? 'at rest' : `at ${formatSi(state.speed, 'rpm')} and ${formatSi(state.power, 'W')} of shaft power, ${kind}`}. ${begins} ${stalls} The loaded rotor turns at most at ${formatSi(zone.overspeed, 'rpm')}, up to ${chosenText(greatestWind, 'm_per_s')}.`
}

export function matchChart({ width, height, map, chosen }: MatchChart): string {
  const at = Math.min(Math.max(0, Math.trunc(chosen)), map.winds.length - 1)
  const each = map.winds[at]!
  const family = familyOf(map, at)
  const key = legend(legendEntries(map, each), width)
  const left = 52
  const plot: Plot = { left, top: 30, width: Math.max(60, width - left - 18), height: height - 76 }
  const drawn = [...family.map((k) => map.winds[k]!), each]
  const [right, most] = extent(map, drawn)
  const x = { label: 'speed, rpm', domain: [0, right] } as const
  const y = { label: 'shaft power, W', domain: niceDomain([0, most * 1.06], 5) }
  const frame: Frame = {
    plot,
    across: linearScale(x.domain, [0, plot.width]),
    up: linearScale(y.domain, [plot.height, 0]),
  }
  const bladeLine = (wind: MatchWind, isChosen: boolean): PanelLine => ({
    label: chosenText(wind.wind, 'm_per_s'),
    className: isChosen ? 'ink-chosen' : 'ink-wind',
    dash: isChosen ? dashes[0] : dashes[2],
    points: bladePoints(map, wind).filter(([, power], k, all) => power >= 0 || (all[k - 1]?.[1] ?? 0) > 0),
    labelAt: 'top',
  })
  const lines: PanelLine[] = [
    ...family.map((k) => bladeLine(map.winds[k]!, false)),
    {
      label: 'generator',
      className: 'ink-generator',
      points: curvePoints(map.generator.settled),
      labelAt: 'nowhere',
    },
    bladeLine(each, true),
  ]
  const cut = (inside: string): string =>
    `<svg x="${px(plot.left)}" y="${px(plot.top)}" width="${px(plot.width)}" height="${px(plot.height)}">${inside}</svg>`
  const under = cut(
    zones(frame, map, [right, y.domain[1]]) +
      (map.battery === undefined ? '' : between(frame, map.battery.low, map.battery.high, 'ink-store')) +
      between(frame, map.generator.cold, map.generator.hot, 'ink-shaft'),
  )
  const states = chosenLabels(frame, map, at, right)
  const names = zoneLabels(frame, map, right, states.boxes)
  const total = height + 6 + rowHeight * key.rows
  return picture(
    {
      name: 'match',
      title: 'Blades and generator at every speed',
      description: description(each, map),
      width,
      height: total,
    },
    under +
      panelBody({ plot, footed: true, x, y, lines, taken: [...states.boxes, ...names.boxes] }) +
      names.drawn +
      cut(points(frame, map, at)) +
      states.drawn +
      key.at(height + 4),
  )
}
