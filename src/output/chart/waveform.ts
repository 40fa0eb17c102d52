/** Picture of one period: volts and amps of the phases, volts between the lines, and what is direct of both. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { niceDomain, type Span } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { dashes, labelRoom, type PanelLine, panelBody } from './panel.ts'
import { phaseLetter } from './phase-letter.ts'
import { type Point, picture } from './picture.ts'
import { repeatedWave, type TracingLook, tracedText } from './tracing.ts'

export interface WaveformChart {
  readonly width: number
  /** Phases drawn [V], [A] at equal steps of one period, its end left out. */
  readonly emf: readonly ArrayLike<number>[]
  /** Between the machine's terminals, as it is loaded [V]. */
  readonly lineVoltages: readonly ArrayLike<number>[]
  /** Each phase has two leads of its own: its line volts are those between them. */
  readonly ownLeads: boolean
  readonly phaseCurrent: readonly ArrayLike<number>[]
  /** Behind bridge and cable [V], [A]. */
  readonly dcVoltage: ArrayLike<number>
  readonly dcCurrent: ArrayLike<number>
  /** [Hz] of the period drawn. */
  readonly frequency: number
  /** Other states of the design in the same wind, each in its own rhythm. */
  readonly tracings?: readonly TracedWave[]
}

export interface TracedWave extends TracingLook {
  /** `tracing A`: at the end of its lines. */
  readonly label: string
  /** Of its first phase [V], [A], and direct [V], [A]. */
  readonly emf: ArrayLike<number>
  readonly phaseCurrent: ArrayLike<number>
  readonly dcVoltage: ArrayLike<number>
  readonly dcCurrent: ArrayLike<number>
  /** [Hz] */
  readonly frequency: number
}

const waveformPanelHeight = 120

const closed = (values: ArrayLike<number>, period: number): Point[] =>
  Array.from(
    { length: values.length + 1 },
    (_, k): Point => [(period * k) / Math.max(values.length, 1), values[k % Math.max(values.length, 1)] ?? 0],
  )

const reach = (lists: readonly ArrayLike<number>[]): number =>
  lists.reduce((most, list) => Math.max(most, ...Array.from(list, Math.abs)), 0)

/** Below this it is the dust of rounding, and an axis of ones stands for nothing. */
const span = (most: number): number => (most > 1e-9 ? most : 1)

const rms = (values: ArrayLike<number>): number =>
  Math.sqrt(Array.from(values).reduce((sum, value) => sum + value ** 2, 0) / Math.max(1, values.length))

const mean = (values: ArrayLike<number>): number =>
  Array.from(values).reduce((sum, value) => sum + value, 0) / Math.max(1, values.length)

/** "A–B", "B–C", "C–A": between these terminals; "leads of A" where each phase has two of its own. */
const lineName = (
  { lineVoltages, ownLeads }: Pick<WaveformChart, 'lineVoltages' | 'ownLeads'>,
  k: number,
): string => {
  if (ownLeads) return `leads of ${phaseLetter(k)}`
  return `${phaseLetter(k)}–${phaseLetter(lineVoltages.length === 1 ? 1 : (k + 1) % lineVoltages.length)}`
}

/** What the picture tells, for those who cannot see it. */
function description(chart: WaveformChart): string {
  const { emf, lineVoltages, ownLeads, phaseCurrent, dcVoltage, dcCurrent } = chart
  const flowing = reach([dcCurrent]) > 0
  const resting = Array.from(dcCurrent).filter((value) => value <= 1e-3 * reach([dcCurrent])).length
  const volts = `The magnets raise ${formatSi(rms(emf[0] ?? []), 'V')} rms in a phase, ${formatSi(reach(emf), 'V')} at the peak`
  const lines =
    lineVoltages.length === 0
      ? ''
      : `; between ${ownLeads ? 'the leads of a phase' : 'two lines'} of the loaded machine there are ${formatSi(rms(lineVoltages[0]!), 'V')} rms, ${formatSi(reach(lineVoltages), 'V')} at the peak`
  const direct = `${formatSi(mean(dcCurrent), 'A')} direct in the mean at ${formatSi(mean(dcVoltage), 'V')}`
  return flowing
    ? `${volts}${lines}. A phase carries ${formatSi(rms(phaseCurrent[0] ?? []), 'A')} rms and ${formatSi(reach(phaseCurrent), 'A')} at the peak; ${direct}, ${resting === 0 ? 'never at rest' : `at rest for ${formatNumber((100 * resting) / Math.max(1, dcCurrent.length), 2)} % of the period`}.`
    : `${volts}${lines}. No current flows.`
}

export function waveformChart(chart: WaveformChart): string {
  const { width, emf, lineVoltages, phaseCurrent, dcVoltage, dcCurrent, frequency, tracings = [] } = chart
  const period = frequency > 0 ? 1000 / frequency : 1
  const phaseLabels = emf.map((_, k) => (emf.length > 1 ? `phase ${phaseLetter(k)}` : 'phase'))
  const lineLabels = lineVoltages.map((_, k) => lineName(chart, k))
  const left = 52
  const room = labelRoom([...phaseLabels, ...lineLabels, 'direct', ...tracings.map(({ label }) => label)])
  const gap = 46
  const top = 28
  const plotOf = (row: number) => ({
    left,
    top: top + row * (waveformPanelHeight + gap),
    width: Math.max(60, width - left - room),
    height: waveformPanelHeight,
  })
  const x = { label: 'time, ms', domain: [0, period] as const }
  const linesOf = (lists: readonly ArrayLike<number>[], labels: readonly string[]): PanelLine[] =>
    lists.map((values, k) => ({
      label: labels[k] ?? '',
      className: `ink-phase-${(k % 3) + 1}`,
      dash: dashes[k % dashes.length]!,
      points: closed(values, period),
      labelAt: 'end' as const,
    }))
  const direct = (values: ArrayLike<number>): PanelLine[] => [
    {
      label: 'direct',
      className: 'ink-store',
      points: closed(values, period),
      labelAt: 'end',
      filled: true,
    },
  ]
  const traced = (of: 'emf' | 'phaseCurrent' | 'dcVoltage' | 'dcCurrent'): PanelLine[] =>
    tracings.map((tracing) => ({
      label: tracing.label,
      className: tracing.className,
      dash: tracing.dash,
      points: repeatedWave(tracing[of], tracing.frequency > 0 ? 1000 / tracing.frequency : 0, period),
      labelAt: 'end' as const,
    }))
  const both = (lists: readonly ArrayLike<number>[]) => {
    const most = span(reach(lists))
    return niceDomain([-most, most], 6)
  }
  const up = (lists: readonly ArrayLike<number>[]) => niceDomain([0, span(reach(lists))], 3)
  const of = (name: 'emf' | 'phaseCurrent' | 'dcVoltage' | 'dcCurrent') => tracings.map((each) => each[name])
  const panels: readonly (readonly [label: string, domain: Span, lines: PanelLine[]])[] = [
    [
      'volts raised in a phase, V',
      both([...emf, ...of('emf')]),
      [...linesOf(emf, phaseLabels), ...traced('emf')],
    ],
    ...(lineVoltages.length === 0
      ? []
      : [
          [
            chart.ownLeads ? 'volts between leads, V' : 'volts between lines, V',
            both(lineVoltages),
            linesOf(lineVoltages, lineLabels),
          ] as const,
        ]),
    [
      'current of a phase, A',
      both([...phaseCurrent, ...of('phaseCurrent')]),
      [...linesOf(phaseCurrent, phaseLabels), ...traced('phaseCurrent')],
    ],
    ['direct volts, V', up([dcVoltage, ...of('dcVoltage')]), [...direct(dcVoltage), ...traced('dcVoltage')]],
    [
      'direct current, A',
      up([dcCurrent, ...of('dcCurrent')]),
      [...direct(dcCurrent), ...traced('dcCurrent')],
    ],
  ]
  const body = panels.map(([label, domain, lines], k) =>
    panelBody({ plot: plotOf(k), footed: k === panels.length - 1, x, y: { label, domain }, lines }),
  )
  return picture(
    {
      name: 'waveform',
      title: `One period at ${formatNumber(frequency)} Hz`,
      description: description(chart) + tracedText(tracings),
      width,
      height: top + panels.length * waveformPanelHeight + (panels.length - 1) * gap + 50,
    },
    body.join(''),
  )
}

export function waveformTable(chart: Omit<WaveformChart, 'width'>): ChartTable {
  const { emf, lineVoltages, phaseCurrent, dcVoltage, dcCurrent, frequency } = chart
  const count = dcCurrent.length
  return {
    caption: `One period at ${formatNumber(frequency)} Hz`,
    columns: [
      { head: 'time', unit: 'ms' },
      ...emf.map((_, k) => ({ head: `raised in phase ${phaseLetter(k)}`, unit: 'V' })),
      ...lineVoltages.map((_, k) => ({
        head: chart.ownLeads ? lineName(chart, k) : `lines ${lineName(chart, k)}`,
        unit: 'V',
      })),
      ...phaseCurrent.map((_, k) => ({ head: `current of phase ${phaseLetter(k)}`, unit: 'A' })),
      { head: 'direct volts', unit: 'V' },
      { head: 'direct current', unit: 'A' },
    ],
    rows: Array.from({ length: count }, (_, k) => [
      frequency > 0 ? (1000 * k) / count / frequency : 0,
      ...[...emf, ...lineVoltages, ...phaseCurrent, dcVoltage, dcCurrent].map((values) => values[k] ?? 0),
    ]),
  }
}
