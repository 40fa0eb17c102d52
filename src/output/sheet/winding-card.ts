/** The winding on the sheet: what to wind, how to join it, and what a meter must show before it is cast. */
import type { Chain } from '../../analysis/compute.ts'
import { meterReading } from '../../analysis/meter-reading.ts'
import { ohmReadings } from '../../analysis/ohm-reading.ts'
import { type ProbePoint, probePoints } from '../../analysis/probe-point.ts'
import type { Spreads } from '../../analysis/spread.ts'
import { type TurnSource, turnSource } from '../../analysis/turn-source.ts'
import { type WindingPlan, windingPlan } from '../../analysis/winding-plan.ts'
import type { CoilHole } from '../../machine/coil-shape/index.ts'
import type { Winding } from '../../machine/machine.ts'
import { type Meter, meterOf } from '../../machine/meter.ts'
import { seriesRms } from '../../numerics/fourier.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { lengthNumber, lengthText } from '../chart/drawn-length.ts'
import { escaped } from '../chart/picture.ts'
import { windingDiagram, windingWords } from '../chart/winding-diagram.ts'
import { measuredText } from '../measuring.ts'
import { said } from '../telling.ts'
import { linesIn } from './letter-width.ts'
import {
  type Block,
  heading,
  headingHeight_mm,
  type Pair,
  pairList,
  pairListHeight,
  printed,
  printedHeight,
  readingsHeight,
  rowTable,
  saidPair,
  subheadingHeight_mm,
} from './sheet-markup.ts'
import { columnGap_mm, lineHeight_mm, room_mm, unitsOf } from './sheet-unit.ts'

/** Width of the card beside the diagram [mm]. */
export const cardWidth = 76
/** The most that the diagram may be high [mm]. */
const tallestDiagram = 72
/** Least room for a pole or a coil in print [drawing units]. */
const printedRoom = 30

const hundredRpm = fromRpm(100)
/** A speed that a hand keeps up with a crank: common practice, no source. */
const handSpeed_rpm = 60

function fromRpm(rpm: number): number {
  return (rpm * 2 * Math.PI) / 60
}

function holeWords(hole: CoilHole): string {
  switch (hole.shape) {
    case 'round':
      return `round, ${lengthText(hole.diameter)}`
    case 'rectangular':
      return `${lengthNumber(hole.width)} × ${lengthText(hole.length)}`
    case 'wedge':
      return `${lengthNumber(hole.innerWidth)} to ${lengthNumber(hole.outerWidth)} × ${lengthText(hole.length)}`
    case 'lap':
      return `lapped, runs of ${lengthText(hole.runLength)}`
  }
}

function bundlePairs(winding: Winding): Pair[] {
  if (winding.kind === 'coils')
    return [
      ['Hole of a coil', holeWords(winding.hole)],
      ['Leg, wide × deep', `${lengthNumber(winding.legWidth)} × ${lengthText(winding.bundleDepth)}`],
    ]
  return [
    ['Straight run', `${lengthText(winding.runLength)}, crowns ${lengthText(winding.crownHeight)} high`],
    ['Bundle, wide × deep', `${lengthNumber(winding.bundleWidth)} × ${lengthText(winding.bundleDepth)}`],
  ]
}

/** What to lay, and of what. */
export function windPairs({ machine, layout, wound, voltage }: Chain): Pair[] {
  const { winding, wire, connection } = machine.stator
  const { shape, strands } = wire
  const bare =
    shape.kind === 'round'
      ? lengthText(shape.diameter)
      : `${lengthNumber(shape.width)} × ${lengthText(shape.thickness)}`
  const size = machine.design.stator.wire.size
  const named = typeof size === 'string' ? `${size}, ${bare}` : bare
  const coil = winding.kind === 'coils' ? 'coil' : 'wave'
  const count = layout.coils.length
  const phases = voltage.phases.length
  return [
    ['Wire', `${named} bare${strands > 1 ? `, ${strands} in hand` : ''}, class ${wire.insulationClass}`],
    ['Turns', `${winding.turns} a ${coil}`],
    [
      winding.kind === 'coils' ? 'Coils' : 'Waves',
      `${count}, ${phases} phase${phases > 1 ? 's' : ''}${layout.groups > 1 ? `, ${layout.groups} branches each` : ''}${phases > 1 ? `, ${connection}` : ''}`,
    ],
    ...bundlePairs(winding),
    ['Wire in all', `${measuredText(wound.wireLength, 'm')}, ${formatSi(wound.copperMass, 'g')} of copper`],
  ]
}

/** Volts with the share by which guesses may let the volts of the phases be off. */
function voltsText(volts: readonly number[], { phaseVoltage: { value, spread } }: Spreads): string {
  const share = value > 0 ? (100 * spread) / value : 0
  return `${volts.map((each) => formatNumber(each)).join(', ')} V${share >= 0.05 ? ` ± ${formatNumber(share, 1)} %` : ''}`
}

function readingText(source: TurnSource, meter: Meter, probe: ProbePoint): string {
  const reading = meterReading(source, { speed: fromRpm(handSpeed_rpm), meter, probe })
  return `${formatNumber(reading.least, 2)} … ${formatNumber(reading.most, 2)} V`
}

/** One of values that are alike, else all of them. */
const alike = (values: readonly number[]): readonly number[] =>
  Math.max(...values) - Math.min(...values) < 0.01 * Math.max(...values) ? values.slice(0, 1) : values

/** What a meter must show on the winding by itself, cold, and turned by hand. */
export function meterPairs(chain: Chain, spreads: Spreads): Pair[] {
  const { phases } = chain.voltage
  const source = turnSource(chain)
  const meter = meterOf(chain.machine.design.bench)
  const probes = probePoints(source)
  const [first] = probes
  const behind = probes.find(({ kind }) => kind === 'capacitor')!
  const [ohms] = ohmReadings(source, meter)
  const one = phases.length > 1 ? 'A phase' : 'Both ends'
  const joined = source.joined !== 'none'
  const resistances = alike(phases.map(({ resistance }) => resistance))
  return [
    [`${one} at 20 °C`, `${resistances.map((R) => formatNumber(R)).join(', ')} Ω`],
    ...(joined ? [['Terminals 1–2 at 20 °C', formatSi(ohms!.resistance, 'ohm')] as Pair] : []),
    ...(ohms?.twoWire === undefined
      ? []
      : [
          [
            `… by two wires, leads ${formatNumber(meter.leads, 1)} Ω`,
            `${formatNumber(ohms.twoWire, 2)} Ω`,
          ] as Pair,
        ]),
    [`${one}, rms, 100 rpm`, voltsText(alike(phases.map(({ rms }) => rms * hundredRpm)), spreads)],
    ...(joined
      ? [
          [
            'Terminals 1–2, rms, 100 rpm',
            voltsText([seriesRms(source.lines[0]!) * hundredRpm], spreads),
          ] as Pair,
        ]
      : []),
    [`… V~ by hand, ${handSpeed_rpm} rpm`, readingText(source, meter, first!)],
    [`Bridge, 10 µF, V direct, ${handSpeed_rpm} rpm`, readingText(source, meter, behind)],
  ]
}

/** What to lay, and of what. */
function layBlock(chain: Chain, width: number): Block {
  const pairs = windPairs(chain).map(saidPair)
  return {
    markup: heading('Winding') + pairList(pairs),
    height: headingHeight_mm + pairListHeight(pairs, width),
  }
}

/** What to read, with room for what was read. */
function readBlock(chain: Chain, spreads: Spreads, width: number): Block {
  const pairs = meterPairs(chain, spreads).map(saidPair)
  const { name } = meterOf(chain.machine.design.bench)
  const note = said(`By hand: nothing connected; meter: ${name}.`)
  return {
    markup: `${heading('Read before casting', 'h3')}${rowTable(
      pairs.map(([head, value]) => [head, value, '']),
      'readings',
    )}<p>${escaped(note)}</p>`,
    height: subheadingHeight_mm + readingsHeight(pairs, width) + lineHeight_mm * linesIn(note, width),
  }
}

/** How the coils are joined; they stand in series order, a phase in each line. */
function joinText(plan: WindingPlan): string {
  const words = windingWords(plan)
  const chains = words.filter((line) => /^[A-Z](, branch \d+)?: /.test(line))
  const rest = words.slice(chains.length)
  return [`${chains.map(said).join('; ')}.`, ...rest.map(said)].join(' ')
}

const column = (className: string, blocks: readonly Block[]): Block => ({
  markup: `<div class="${className}">${blocks.map(({ markup }) => markup).join('')}</div>`,
  height: blocks.reduce((sum, { height }) => sum + height, 0),
})

/** The winding rolled out beside the card, or what to lay in words beside what to read where the drawing finds no room. */
export function windingCard(chain: Chain, spreads: Spreads, room: 'drawn' | 'in words'): Block {
  const plan = windingPlan(chain)
  const text = joinText(plan)
  const words = (width: number): Block => ({
    markup: `<p>${escaped(text)}</p>`,
    height: lineHeight_mm * linesIn(text, width),
  })
  const drawnWidth = room_mm.width - cardWidth - columnGap_mm
  const diagram = windingDiagram({ width: unitsOf(drawnWidth), plan, leastRoom: printedRoom, bare: true })
  const high = printedHeight(diagram)
  const blocks =
    room === 'drawn' && high <= tallestDiagram
      ? [
          column('card', [layBlock(chain, cardWidth), readBlock(chain, spreads, cardWidth)]),
          column('drawn', [{ markup: printed(diagram), height: high }, words(drawnWidth)]),
        ]
      : [
          column('drawn', [layBlock(chain, drawnWidth), words(drawnWidth)]),
          column('card', [readBlock(chain, spreads, cardWidth)]),
        ]
  return {
    markup: blocks.map(({ markup }) => markup).join(''),
    height: Math.max(...blocks.map(({ height }) => height)),
  }
}
