/** The winding on the sheet: what to wind, how to join it, and what a meter must show before it is cast. */
import type { Chain } from '../../analysis/compute.ts'
import { meterReading } from '../../analysis/meter-reading.ts'
import { ohmReadings } from '../../analysis/ohm-reading.ts'
import { type ProbePoint, probePoints } from '../../analysis/probe-point.ts'
import type { Spreads } from '../../analysis/spread.ts'
import { type TurnSource, turnSource } from '../../analysis/turn-source.ts'
import { windingPlan } from '../../analysis/winding-plan.ts'
import type { CoilHole } from '../../machine/coil-shape/index.ts'
import type { Winding } from '../../machine/machine.ts'
import { type Meter, meterOf } from '../../machine/meter.ts'
import { seriesRms } from '../../numerics/fourier.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { escaped, shortNumber } from '../chart/picture.ts'
import { windingDiagram, windingWords } from '../chart/winding-diagram.ts'
import { said } from '../telling.ts'
import {
  type Block,
  heading,
  headingHeight_mm,
  type Pair,
  pairList,
  printed,
  printedHeight,
  rowTable,
  saidPair,
} from './sheet-markup.ts'
import { lineHeight_mm, linesIn, room_mm, unitsOf } from './sheet-unit.ts'

/** Width of the card beside the diagram, and the most that the diagram may be high [mm]. */
const cardWidth = 74
const gap = 4
const tallestDiagram = 72
/** Least room for a pole or a coil in print [drawing units]. */
const printedRoom = 30

const hundredRpm = fromRpm(100)
/** A speed that a hand keeps up with a crank: common practice, no source. */
const handSpeed_rpm = 60

function fromRpm(rpm: number): number {
  return (rpm * 2 * Math.PI) / 60
}

const mm = (length: number): string => shortNumber(Math.round(length * 1e5) / 100)

function holeWords(hole: CoilHole): string {
  switch (hole.shape) {
    case 'round':
      return `round, ${mm(hole.diameter)} mm`
    case 'rectangular':
      return `${mm(hole.width)} × ${mm(hole.length)} mm`
    case 'wedge':
      return `${mm(hole.innerWidth)} to ${mm(hole.outerWidth)} × ${mm(hole.length)} mm`
    case 'lap':
      return `lapped, runs of ${mm(hole.runLength)} mm`
  }
}

function bundlePairs(winding: Winding): Pair[] {
  if (winding.kind === 'coils')
    return [
      ['Hole of a coil', holeWords(winding.hole)],
      ['Leg, wide × deep', `${mm(winding.legWidth)} × ${mm(winding.bundleDepth)} mm`],
    ]
  return [
    ['Straight run', `${mm(winding.runLength)} mm, crowns ${mm(winding.crownHeight)} mm high`],
    ['Bundle, wide × deep', `${mm(winding.bundleWidth)} × ${mm(winding.bundleDepth)} mm`],
  ]
}

/** What to lay, and of what. */
export function windPairs({ machine, layout, wound, voltage }: Chain): Pair[] {
  const { winding, wire, connection } = machine.stator
  const { shape, strands } = wire
  const bare =
    shape.kind === 'round' ? `${mm(shape.diameter)} mm` : `${mm(shape.width)} × ${mm(shape.thickness)} mm`
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
    ['Wire in all', `${formatSi(wound.wireLength, 'm')}, ${formatSi(wound.copperMass, 'g')} of copper`],
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
            '… by two wires',
            `${formatNumber(ohms.twoWire, 2)} Ω, leads ${formatNumber(meter.leads, 1)}`,
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

/** What to lay and what to read, the latter with room for what was read. */
function card(chain: Chain, spreads: Spreads): Block {
  const lay = windPairs(chain).map(saidPair)
  const read = meterPairs(chain, spreads).map(saidPair)
  const { name } = meterOf(chain.machine.design.bench)
  const note = said(`By hand: nothing connected; meter: ${name}.`)
  const lines = [...lay, ...read].reduce(
    (sum, [head, value]) => sum + linesIn(`${head}  ${value}`, cardWidth),
    linesIn(note, cardWidth),
  )
  return {
    markup: `<div class="card">${heading('Winding')}${pairList(lay)}${heading('Read before casting', 'h3')}${rowTable(
      read.map(([head, value]) => [head, value, '']),
      'readings',
    )}<p>${escaped(note)}</p></div>`,
    height: 2 * headingHeight_mm + lineHeight_mm * lines,
  }
}

/** The winding rolled out, or its coils in words where the drawing finds no room. */
function drawn(chain: Chain, room: 'drawn' | 'in words'): Block {
  const plan = windingPlan(chain)
  const width_mm = room_mm.width - cardWidth - gap
  const diagram = windingDiagram({ width: unitsOf(width_mm), plan, leastRoom: printedRoom, bare: true })
  const fits = room === 'drawn' && printedHeight(diagram) <= tallestDiagram
  // coils in words are in series order, a phase in each line
  const words = windingWords(plan)
  const chains = words.filter((line) => /^[A-Z](, branch \d+)?: /.test(line))
  const rest = words.slice(chains.length)
  const text = [`${chains.map(said).join('; ')}.`, ...rest.map(said)].join(' ')
  const height = lineHeight_mm * linesIn(text, width_mm)
  return {
    markup: `<div class="drawn">${fits ? printed(diagram) : ''}<p>${escaped(text)}</p></div>`,
    height: height + (fits ? printedHeight(diagram) : 0),
  }
}

export function windingCard(chain: Chain, spreads: Spreads, room: 'drawn' | 'in words'): Block {
  const blocks = [card(chain, spreads), drawn(chain, room)]
  return {
    markup: blocks.map(({ markup }) => markup).join(''),
    height: Math.max(...blocks.map(({ height }) => height)),
  }
}
