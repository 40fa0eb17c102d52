/** A machine turned by hand, meter in hand, as a page of text and as JSON. */
import type { Diagnosis } from '../analysis/fault-diagnosis.ts'
import type { VoltsComparison } from '../analysis/kind-of-volts.ts'
import type { LoadedReading } from '../analysis/loaded-reading.ts'
import type { MeterReading } from '../analysis/meter-reading.ts'
import type { OhmReading } from '../analysis/ohm-reading.ts'
import type { ProbePoint } from '../analysis/probe-point.ts'
import type { TurnSource } from '../analysis/turn-source.ts'
import type { TurnVerdict } from '../analysis/turn-verdict.ts'
import type { Meter } from '../machine/meter.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { textTable, wrapped } from './text-table.ts'
import {
  comparisonSentences,
  displayText,
  flagSentence,
  functionWords,
  leadSentence,
  ohmSentence,
  verdictSentences,
} from './turn-words.ts'

export interface Turned {
  readonly source: TurnSource
  /** [rad/s] */
  readonly speed: number
  readonly meter: Meter
  readonly readings: readonly { readonly probe: ProbePoint; readonly reading: MeterReading }[]
  readonly verdict: TurnVerdict
  readonly ohms: readonly OhmReading[]
  readonly loaded: LoadedReading | undefined
  readonly comparison: { readonly probe: ProbePoint; readonly volts: VoltsComparison } | undefined
  readonly diagnosis: Diagnosis | undefined
}

const columns = 96
const plain = (text: string): PageLine => ({ text, tone: 'plain' })
const title = (text: string): PageLine => ({ text, tone: 'title' })
const faint = (text: string): PageLine => ({ text, tone: 'faint' })
const warning = (text: string): PageLine => ({ text, tone: 'warning' })
const blank = plain('')
const lines = (text: string, make: (line: string) => PageLine, indent = '  '): PageLine[] =>
  wrapped(`  ${text}`, columns, indent).map(make)

const tableLines = (rows: readonly string[]): PageLine[] =>
  rows.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`)))

/** Every pair of points; each caution once, where it first arises. */
function readingLines({ readings, meter }: Turned): PageLine[] {
  const told = new Set<string>()
  return [
    ...tableLines(
      textTable(
        [
          { head: 'probes on', align: 'left' },
          { head: 'switch on', align: 'left' },
          { head: 'shows', align: 'right' },
          { head: 'may be', align: 'right' },
          { head: 'true rms', align: 'right' },
          { head: 'peak', align: 'right' },
        ],
        readings.map(({ probe, reading }) => [
          probe.words,
          functionWords(reading),
          displayText(reading.shown, reading.step, 'V'),
          `${formatNumber(reading.least)} … ${formatNumber(reading.most)} V`,
          formatSi(reading.rms, 'V'),
          formatSi(reading.peak, 'V'),
        ]),
      ),
    ),
    ...readings.flatMap(({ probe, reading }) =>
      reading.flags.flatMap((flag) => {
        if (told.has(flag)) return []
        told.add(flag)
        return lines(`! On ${probe.words}: ${flagSentence(flag, reading, meter)}`, warning, '    ')
      }),
    ),
  ]
}

function loadedLines({ loaded, meter, source }: Turned): PageLine[] {
  if (!loaded) return []
  return [
    title('With the design’s load connected'),
    ...loaded.figures.map(({ words, unit: sign, shown, bound, true: truth }) =>
      plain(
        `  ${words}: ${formatNumber(shown)} ± ${formatNumber(bound, 2)} ${sign} shown, ${formatNumber(truth)} ${sign} true`,
      ),
    ),
    ...lines(
      source.loadKind === 'battery' || source.loadKind === 'resistor'
        ? `Direct volts times direct amps: ${formatSi(loaded.shownPower, 'W')} shown, ${formatSi(loaded.power, 'W')} true.${
            meter.shunt > 0 && loaded.burden < 0.98
              ? ` The ammeter’s own ${formatNumber(1000 * meter.shunt, 2)} mΩ take the current down to ${formatNumber(100 * loaded.burden)} %; a clamp would not.`
              : ''
          }`
        : `Into the load ${formatSi(loaded.power, 'W')}.`,
      plain,
    ),
    blank,
  ]
}

function diagnosisLines(diagnosis: Diagnosis): PageLine[] {
  return [
    title('Which defect explains it'),
    ...diagnosis.likely
      .slice(0, 5)
      .map(({ words, distance, amount }, k) =>
        plain(
          `  ${k + 1}  ${words}${amount === 1 ? '' : `, ${formatNumber(amount, 2)} times as much`}: off by ${formatNumber(distance, 2)} spreads of the meter`,
        ),
      ),
    ...(diagnosis.next === undefined ? [] : lines(diagnosis.next, faint)),
    blank,
  ]
}

export function turnPage(turned: Turned): PageLine[] {
  const { source, speed, meter, verdict, ohms, comparison, diagnosis } = turned
  const leads = leadSentence(ohms, meter)
  const frequency = turned.readings[0]?.reading.frequency ?? 0
  return [
    title(`${source.name} — turned by hand at ${formatSi(speed, 'rpm')}, ${formatSi(frequency, 'Hz')}`),
    faint(`  ${meter.name}, nothing connected`),
    blank,
    ...readingLines(turned),
    blank,
    ...(comparison
      ? [
          title(`What you read between ${comparison.probe.words}`),
          ...comparisonSentences(comparison.volts).flatMap((text) => lines(text, plain)),
          blank,
        ]
      : []),
    ...(diagnosis ? diagnosisLines(diagnosis) : []),
    ...verdictSentences(source, verdict, { speed, meter }).flatMap(({ head, text }) => [
      title(head),
      ...lines(text, plain),
    ]),
    blank,
    ...loadedLines(turned),
    title('Ohms, cold and at rest'),
    ...(leads === undefined ? [] : lines(leads, warning)),
    ...ohms.flatMap((each) => lines(`${each.words}: ${ohmSentence(each, meter)}.`, plain, '    ')),
    blank,
    ...lines(
      'Fix what you turn, keep hair and sleeves away, and treat bare ends as live: a drill brings some machines past the volts that hurt. Local codes and licensed people come first.',
      faint,
    ),
  ]
}

/** The same for other programs. */
export const turnResult = ({
  source,
  speed,
  meter,
  readings,
  verdict,
  ohms,
  loaded,
  comparison,
  diagnosis,
}: Turned) => {
  const rpm = (value: number) => (Number.isFinite(value) ? fromSi(value, unit('rpm')) : null)
  return {
    name: source.name,
    speed_rpm: rpm(speed),
    meter: meter.name,
    readings: readings.map(({ probe, reading }) => ({
      between: probe.id,
      function: reading.function,
      shown_V: reading.shown,
      least_V: reading.least,
      most_V: reading.most,
      rms_V: reading.rms,
      mean_V: reading.mean,
      peak_V: reading.peak,
      averageResponding_V: reading.averaged,
      frequency_Hz: reading.frequency,
      flutter_V: reading.flutter,
      flags: reading.flags,
    })),
    ceiling_W: verdict.ceiling,
    pairCeiling_W: verdict.pairCeiling,
    delivered_W: verdict.delivered,
    direct_A: verdict.current,
    cutIn_rpm: rpm(verdict.cutIn),
    trustedFrom_rpm: rpm(Math.max(verdict.bandSpeed, verdict.digitSpeed)),
    testResistor_ohm: verdict.testResistor,
    testPower_W: verdict.testPower,
    ohms: ohms.map(({ words, resistance, twoWire, spread }) => ({
      between: words,
      resistance20_ohm: resistance,
      twoWire_ohm: twoWire ?? null,
      fourWireSpread_ohm: spread,
    })),
    loaded: loaded ?? null,
    comparison: comparison ? { between: comparison.probe.id, ...comparison.volts } : null,
    diagnosis: diagnosis ?? null,
  }
}
