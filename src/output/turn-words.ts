/** What readings by hand mean, in the words that page and terminal share. */
import type { VoltsComparison } from '../analysis/kind-of-volts.ts'
import type { MeterFlag, MeterReading } from '../analysis/meter-reading.ts'
import type { OhmReading } from '../analysis/ohm-reading.ts'
import type { TurnSource } from '../analysis/turn-source.ts'
import type { TurnVerdict } from '../analysis/turn-verdict.ts'
import type { Meter } from '../machine/meter.ts'
import { displayStep } from '../physics/electrics/meter-display.ts'
import { formatNumber, formatSi } from '../units/format.ts'

/** A figure with the digits that the display has. */
export function displayText(value: number, step: number, unit: string): string {
  const decimals = Math.max(0, Math.min(6, -Math.floor(Math.log10(step) + 1e-9)))
  return `${value.toFixed(decimals).replace('-', '−')} ${unit}`
}

const signed = (share: number): string =>
  `${share < 0 ? '−' : '+'}${formatNumber(100 * Math.abs(share), 2)} %`

/** One sentence for a flag, with its numbers. */
export function flagSentence(flag: MeterFlag, reading: MeterReading, meter: Meter): string {
  switch (flag) {
    case 'below its band':
      return `${formatSi(reading.frequency, 'Hz')} is below the ${formatSi(meter.lowest, 'Hz')} from which this meter is made to read: the figure may be steady and too low.`
    case 'above its band':
      return `${formatSi(reading.frequency, 'Hz')} is above the ${formatSi(meter.highest, 'Hz')} up to which this meter is made to read.`
    case 'not a sine':
      return `This meter averages and assumes a sine. The wave is none: by its shape alone the figure is ${signed(reading.averaged / reading.rms - 1)} off the true rms.`
    case 'too few digits':
      return `The last digits, ${displayText(reading.step, reading.step, 'V')} each, are a large part of so small a figure.`
    case 'flutters':
      return `The figure swings by ±${formatNumber(reading.flutter, 2)} V: the wave is slow against the meter’s own time.`
    case 'loads it':
      return 'The meter’s own resistance draws the volts down.'
  }
}

/** What the switch stands on. */
export const functionWords = ({ function: kind }: Pick<MeterReading, 'function'>): string =>
  kind === 'alternating' ? 'V alternating (V~)' : 'V direct (V⎓)'

export interface Sentence {
  readonly head: string
  readonly text: string
}

/** What the reading proves and what it does not; what to do next. */
export function verdictSentences(
  source: TurnSource,
  verdict: TurnVerdict,
  { speed, meter }: { readonly speed: number; readonly meter: Meter },
): Sentence[] {
  const watts = (power: number) => formatSi(power, 'W')
  const rpm = (value: number) => formatSi(value, 'rpm')
  const never = !Number.isFinite(verdict.cutIn)
  const battery = source.loadKind === 'battery'
  const into = battery ? 'into its battery' : 'into its load'
  const trusted = Math.max(verdict.bandSpeed, verdict.digitSpeed)
  return [
    {
      head: 'What power does it prove?',
      text: `None by itself: with nothing connected no current flows. No resistor could draw more than ${watts(verdict.ceiling)} out of all phases at this speed (V²/4R of each, with as much again heating the copper).`,
    },
    {
      head: `What would go ${into}?`,
      text:
        source.loadKind === 'open'
          ? 'The design has no load.'
          : never
            ? 'Nothing: the volts never reach it.'
            : speed <= verdict.cutIn
              ? `Nothing at ${rpm(speed)}: current begins at ${rpm(verdict.cutIn)}, ${formatNumber(verdict.cutIn / speed, 3)} times as fast.`
              : `${watts(verdict.delivered)} at ${rpm(speed)}, ${formatSi(verdict.current, 'A')} direct with the copper cold; current begins at ${rpm(verdict.cutIn)}.`,
    },
    {
      head: 'What to read next?',
      text: `Put a resistor of about ${formatNumber(verdict.testResistor, 2)} Ω, good for ${watts(Math.max(verdict.testPower, 0.001))} or more, between the two points and read volts and amps together while you turn: their product is power. About ${formatSi(verdict.testVolts, 'V')} and ${formatSi(verdict.testVolts / verdict.testResistor, 'A')}, ${watts(verdict.testPower)}, should come of it before inductance.`,
    },
    {
      head: 'How slow may I turn?',
      text:
        meter.lowest === 0
          ? `This meter reads from direct current on; below ${rpm(verdict.digitSpeed)} its last digits are over 3 % of the volts.`
          : `From ${rpm(trusted)} on its alternating volts can be trusted${
              verdict.bandSpeed >= verdict.digitSpeed
                ? ` (${formatSi(meter.lowest, 'Hz')}, ${source.polePairs} pole pairs)`
                : ' (its last digits are over 3 % of the volts below that)'
            }. Slower, read direct volts behind a bridge with a capacitor of 10 µF, or use an oscilloscope.`,
    },
  ]
}

/** What the meter shows for ohms by two wires and by four. */
export function ohmSentence({ resistance, twoWire, volts, spread }: OhmReading, meter: Meter): string {
  const four = `four wires at 1 A: ${formatNumber(1000 * volts)} mV, so ${formatNumber(resistance)} ± ${formatNumber(spread, 2)} Ω`
  if (twoWire === undefined) return four
  const step = displayStep({ value: twoWire, counts: meter.counts, finest: meter.ohmsStep })
  return `two wires show ${displayText(twoWire, step, 'Ω')}; ${four}`
}

/** Leads above this share of the winding's own ohms are worth a word: common practice, no source. */
const spoiled = 0.05

/** Said once for all pairs, where the leads are a large part of what is read. */
export function leadSentence(ohms: readonly OhmReading[], meter: Meter): string | undefined {
  const worst = Math.max(0, ...ohms.map(({ leadShare }) => leadShare))
  return meter.ohmsStep > 0 && worst > spoiled
    ? `Of two wires ${formatNumber(meter.leads, 2)} Ω are the leads, ${signed(worst)}: subtract what the meter shows with its probes held together, or use four wires.`
    : undefined
}

/** Read and shown as near as this count as the same: common practice, no source. */
const alike = 0.05

/** What the ratio of read to shown suggests. */
export function comparisonSentences({ ratio, within, explanations }: VoltsComparison): string[] {
  const head = `You read ${formatNumber(ratio, 3)} times what this meter should show`
  if (within)
    return [
      Math.abs(Math.log(ratio)) < alike
        ? `${head}: as computed.`
        : `${head}. It may be that far off at this speed and on these volts, so the reading says little: turn faster or take a finer meter.`,
    ]
  const field = Math.abs(Math.log(ratio)) < Math.log(1.35)
  return [
    `${head}.`,
    ...explanations.map(
      ({ words, volts, factor, off }) =>
        `Perhaps ${words}: that would be ${formatSi(volts, 'V')}, ${formatNumber(factor, 4)} times (what you read is ${signed(off)} off that).`,
    ),
    ...(field
      ? [
          `If nothing was confused, the field through the winding is ${formatNumber(100 * ratio, 3)} % of the computed one: magnets, gap or turns differ.`,
        ]
      : explanations.length === 0
        ? [
            'No usual confusion gives that. Check speed, turns and the number of poles; read all pairs and compare them.',
          ]
        : []),
    'Do not pick the explanation that fits best and go on: change one thing and read again.',
  ]
}
