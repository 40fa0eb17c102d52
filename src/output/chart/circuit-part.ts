/** The parts of a circuit diagram in their order: each with its name, its values and how it is drawn. */
import type { CircuitPlan } from '../../analysis/circuit-plan.ts'
import { gaugeOfSection } from '../../data/spoken-wire.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { measuredText, wireMeasured } from '../measuring.ts'
import {
  breaker,
  capacitor,
  cell,
  contact,
  converterBox,
  diode,
  dot,
  fuse,
  lamp,
  type Place,
  phaseBranch,
  resistor,
  wire,
} from './circuit-symbol.ts'
import { phaseLetter } from './phase-letter.ts'
import { type Point, textAt } from './picture.ts'

/** Places across the flow [px]: of the lines of the winding, and of plus (−) and minus (+) behind the bridge. */
const lineGap = 26
export const rail = 54

export interface CircuitPart {
  readonly name: string
  readonly values: readonly string[]
  /** Along the flow [px]. */
  readonly length: number
  readonly draw: (at: Place, from: number) => string
}

const thousandRpm = (1000 * 2 * Math.PI) / 60

/** One value, or the least and the greatest of unlike ones. */
function range(values: readonly number[], suffix: string): string {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  return high - low < 5e-3 * high
    ? formatSi(high, suffix)
    : `${formatSi(low, suffix).replace(/[^\d.,−e]+$/, '')} … ${formatSi(high, suffix)}`
}

/** Places of the lines that leave the winding. */
export const linesOf = ({ connection, phases }: CircuitPlan): number[] =>
  connection === 'separate' || phases.length === 1 ? [-lineGap, lineGap] : [-lineGap, 0, lineGap]

export const along = (at: Place, lines: readonly number[], from: number, length: number): string =>
  lines.map((across) => wire(at(from, across), at(from + length, across))).join('')

function windingPart(plan: CircuitPlan): CircuitPart {
  const { connection, phases } = plan
  const lines = linesOf(plan)
  const each = phases.length > 1 ? ' a phase' : ''
  const length = 124
  const letter = (point: Point, phase: number) =>
    textAt(point[0], point[1], phaseLetter(phase), { className: 'line-label ink-joint', anchor: 'middle' })
  const draw = (at: Place, from: number): string => {
    if (connection === 'delta' && phases.length === 3) {
      // a triangle with its tip on the middle line
      const [a, b, tip] = [at(from + 18, -46), at(from + 18, 46), at(from + 104, 0)]
      return (
        phaseBranch(b, a) +
        phaseBranch(a, tip) +
        phaseBranch(tip, b) +
        [a, b, tip].map(dot).join('') +
        wire(a, at(from + length - 10, -46), at(from + length - 10, -lineGap), at(from + length, -lineGap)) +
        wire(b, at(from + length - 10, 46), at(from + length - 10, lineGap), at(from + length, lineGap)) +
        wire(tip, at(from + length, 0))
      )
    }
    if (phases.length > 1 && connection !== 'separate') {
      const star = at(from + 12, 0)
      return (
        wire(at(from + 12, Math.min(...lines)), at(from + 12, Math.max(...lines))) +
        lines.map((across) => phaseBranch(at(from + 12, across), at(from + length, across))).join('') +
        dot(star)
      )
    }
    return (
      phaseBranch(at(from + 12, -lineGap), at(from + length, -lineGap)) +
      wire(at(from + 12, -lineGap), at(from + 12, lineGap), at(from + length, lineGap)) +
      (phases.length > 1 ? letter(at(from + length / 2, 6), 0) : '')
    )
  }
  const words = { star: 'star', delta: 'delta', separate: 'phase A, the others alike', single: 'one phase' }
  return {
    name: `Winding, ${phases.length === 1 ? words.single : words[connection]}`,
    values: [
      `${range(
        phases.map(({ emf }) => emf * thousandRpm),
        'V',
      )} rms${each} per 1000 rpm`,
      `${range(
        phases.map(({ resistance }) => resistance),
        'ohm',
      )}${each} at ${measuredText(293.15, 'degC', 2)}`,
      `${range(
        phases.map(({ inductance }) => inductance),
        'mH',
      )}${each}`,
    ],
    length,
    draw,
  }
}

function bridgePart(plan: CircuitPlan): CircuitPart {
  const { bridge, connection, phases } = plan
  const lines = linesOf(plan)
  const step = 24
  const length = step * (lines.length + 1) + 8
  return {
    name: connection === 'separate' && phases.length > 1 ? 'Bridge, one for each phase' : 'Bridge',
    values: [
      bridge.kind,
      `${formatSi(bridge.threshold, 'V')} a diode at little current`,
      bridge.reverseVoltage === undefined
        ? 'reverse volts not said'
        : `bears ${formatSi(bridge.reverseVoltage, 'V')} in reverse`,
    ],
    length,
    draw: (at, from) =>
      lines
        .map((across, k) => {
          const leg = from + step * (k + 1)
          return (
            wire(at(from, across), at(leg, across)) +
            diode(at(leg, across), at(leg, -rail)) +
            diode(at(leg, rail), at(leg, across)) +
            dot(at(leg, across))
          )
        })
        .join('') +
      wire(at(from + step, -rail), at(from + length, -rail)) +
      wire(at(from + step, rail), at(from + length, rail)),
  }
}

export const rails = [-rail, rail] as const

/** A section of copper as its reader buys it: by gauge where it is one and gauges are read. */
const sectionText = (area: number): string =>
  (wireMeasured() === 'mm' ? undefined : gaugeOfSection(Number((area * 1e6).toPrecision(12)))) ??
  formatSi(area, 'mm2')

function cablePart({ cable, connection, phases }: CircuitPlan, lines: readonly number[]): CircuitPart {
  const direct = lines.length === 2 && lines[0] === -rail
  const wires = connection === 'separate' ? 2 * phases.length : lines.length
  return {
    name: direct ? 'Cable, direct current' : 'Cable, before the bridge',
    values: [
      `${measuredText(cable.length, 'm')}, ${direct ? 2 : wires} × ${sectionText(cable.area)}`,
      `${formatSi(cable.resistance, 'mohm')} each conductor`,
      ...(direct && cable.series > 0 ? [`${formatSi(cable.series, 'ohm')} put in on purpose`] : []),
    ],
    length: direct && cable.series > 0 ? 104 : 64,
    draw: (at, from) =>
      lines
        .map((across, k) => {
          const end = from + 64
          const more =
            direct && cable.series > 0
              ? k === 0
                ? resistor(at(end, across), at(end + 40, across))
                : wire(at(end, across), at(end + 40, across))
              : ''
          return resistor(at(from, across), at(end, across)) + more
        })
        .join(''),
  }
}

/** Something between plus and minus, the rails going on. */
const between = (length: number, body: (plus: Point, minus: Point, at: Place, from: number) => string) => ({
  length,
  draw: (at: Place, from: number): string => {
    const middle = from + length / 2
    return (
      along(at, rails, from, length) +
      dot(at(middle, -rail)) +
      dot(at(middle, rail)) +
      body(at(middle, -rail), at(middle, rail), at, from)
    )
  },
})

/** Something in the plus line. */
const inPlus = (length: number, body: (from: Point, to: Point) => string) => ({
  length,
  draw: (at: Place, from: number): string =>
    body(at(from, -rail), at(from + length, -rail)) + wire(at(from, rail), at(from + length, rail)),
})

function shortPart(short: NonNullable<CircuitPlan['short']>, lines: readonly number[]): CircuitPart {
  const values = [
    short.order,
    short.actsAt === undefined
      ? 'somebody must close it'
      : `closes by itself at ${formatSi(short.actsAt, 'rpm')}`,
  ]
  if (short.place === 'after the bridge')
    return {
      name: 'Brake switch, shorts plus and minus',
      values,
      ...between(46, (plus, minus) => contact(plus, minus)),
    }
  return {
    name: 'Brake switch, shorts the lines',
    values,
    length: 58,
    draw: (at, from) =>
      along(at, lines, from, 58) +
      lines
        .slice(1)
        .map((across, k) => {
          const u = from + 22 + 14 * k
          return contact(at(u, across), at(u, lines[k]!)) + dot(at(u, across)) + dot(at(u, lines[k]!))
        })
        .join(''),
  }
}

function dumpPart(dump: NonNullable<CircuitPlan['dump']>): CircuitPart {
  return {
    name: `Dump load, ${dump.place}`,
    values: [
      `${formatSi(dump.resistance, 'ohm')}, bears ${formatSi(dump.power, 'W')}`,
      `on at ${formatSi(dump.on, 'V')}, off at ${formatSi(dump.off, 'V')}`,
      `without power ${dump.withoutPower}${dump.ownFuse ? ', fuse of its own' : ''}`,
    ],
    ...between(50, (plus, minus, at, from) => {
      const middle = from + 25
      const points = [-18, 18].map((across) => at(middle, across)) as [Point, Point]
      return (
        (dump.ownFuse ? fuse(plus, points[0]) : wire(plus, points[0])) +
        contact(points[0], points[1]) +
        resistor(points[1], minus)
      )
    }),
  }
}

function loadPart({ load }: CircuitPlan): CircuitPart {
  const end = (body: (plus: Point, minus: Point, at: Place, from: number) => string) => ({
    length: 54,
    draw: (at: Place, from: number): string =>
      along(at, rails, from, 30) + body(at(from + 30, -rail), at(from + 30, rail), at, from + 30),
  })
  switch (load.kind) {
    case 'battery':
      return {
        name: `Battery, ${load.chemistry}`,
        values: [
          `${formatSi(load.voltage, 'V')}, ${formatSi(load.resistance, 'mohm')}`,
          ...(load.capacity === undefined ? [] : [`${formatNumber(load.capacity / 3600)} Ah`]),
          `full above ${formatSi(load.band[1], 'V')}`,
        ],
        ...end((plus, minus) => cell(plus, minus)),
      }
    case 'resistor':
      return { name: 'Resistor', values: [formatSi(load.resistance, 'ohm')], ...end(resistor) }
    case 'heater':
      return {
        name: 'Heating resistor',
        values: [
          `${formatSi(load.cold, 'ohm')} cold, ${formatSi(load.hot, 'ohm')} hot`,
          formatSi(load.ratedPower, 'W'),
        ],
        ...end(resistor),
      }
    case 'lamp':
      return {
        name: `Lamp, ${load.lamp}`,
        values: [`${formatSi(load.ratedVoltage, 'V')}, ${formatSi(load.ratedPower, 'W')}`],
        ...end(lamp),
      }
    case 'capacitor':
      return {
        name: 'Capacitor and what draws on it',
        values: [
          `${formatNumber(load.capacitance)} F, bears ${formatSi(load.ratedVoltage, 'V')}`,
          `drawn on by ${formatSi(load.drawn, 'ohm')}`,
        ],
        ...end((plus, minus, at, from) => {
          const further = [at(from + 22, -rail), at(from + 22, rail)] as const
          return (
            capacitor(plus, minus) +
            wire(plus, further[0]) +
            wire(minus, further[1]) +
            resistor(further[0], further[1]) +
            dot(plus) +
            dot(minus)
          )
        }),
      }
    case 'open':
      return {
        name: 'Open terminals',
        values: ['nothing is connected'],
        ...end((plus, minus) => dot(plus) + dot(minus)),
      }
  }
}

/** From the winding to the load. */
export function circuitParts(plan: CircuitPlan): CircuitPart[] {
  const { cable, short, dump, converter, directSwitch, load } = plan
  const lines = linesOf(plan)
  const battery = load.kind === 'battery'
  const switched = directSwitch.kind !== 'none' && directSwitch.kind !== 'not said'
  const fused =
    battery &&
    plan.fuse.place !== 'none' &&
    (plan.fuse.place !== 'not said' || plan.fuse.current !== undefined)
  return [
    windingPart(plan),
    ...(short?.place === 'at the machine' ? [shortPart(short, lines)] : []),
    ...(cable.beforeBridge ? [cablePart(plan, lines)] : []),
    bridgePart(plan),
    ...(short?.place === 'after the bridge' ? [shortPart(short, lines)] : []),
    ...(dump?.place === 'behind the bridge' ? [dumpPart(dump)] : []),
    ...(cable.beforeBridge ? [] : [cablePart(plan, rails)]),
    ...(cable.beforeBridge && cable.series > 0
      ? [
          {
            name: 'Series resistance',
            values: [`${formatSi(cable.series, 'ohm')} put in on purpose`],
            ...inPlus(56, resistor),
          },
        ]
      : []),
    ...(switched
      ? [
          {
            name: 'Switch',
            values: [
              directSwitch.kind,
              directSwitch.voltage === undefined
                ? 'volts not said'
                : `breaks ${formatSi(directSwitch.voltage, 'V')}`,
            ],
            ...inPlus(56, breaker),
          },
        ]
      : []),
    ...(converter === undefined
      ? []
      : [
          {
            name: 'Converter',
            values: [
              `starts at ${formatSi(converter.leastInput, 'V')}`,
              converter.greatestInputVoltage === undefined
                ? 'volts it bears not said'
                : `bears ${formatSi(converter.greatestInputVoltage, 'V')}`,
            ],
            length: 84,
            draw: (at: Place, from: number): string =>
              along(at, rails, from, 18) +
              along(at, rails, from + 66, 18) +
              converterBox(at(from + 18, -rail - 8), at(from + 66, rail + 8)),
          },
        ]),
    ...(fused
      ? [
          {
            name: `Fuse, ${plan.fuse.place === 'not said' ? 'place not said' : plan.fuse.place}`,
            values: [plan.fuse.current === undefined ? 'amps not said' : formatSi(plan.fuse.current, 'A')],
            ...inPlus(60, fuse),
          },
        ]
      : []),
    ...(dump?.place === 'at the battery' ? [dumpPart(dump)] : []),
    loadPart(plan),
  ]
}
