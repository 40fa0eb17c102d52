/** Picture of one period: volts and amps of the phases, and the direct current. */
import { formatNumber } from '../../units/format.ts'
import { niceDomain } from './axis.ts'
import { dashes, labelRoom, panelBody } from './panel.ts'
import { type Point, picture } from './picture.ts'

export interface WaveformChart {
  readonly width: number
  /** Phases drawn [V], [A] at equal steps of one period, its end left out. */
  readonly emf: readonly ArrayLike<number>[]
  readonly phaseCurrent: readonly ArrayLike<number>[]
  readonly dcCurrent: ArrayLike<number>
  /** [Hz] of the period drawn. */
  readonly frequency: number
}

export const waveformPanelHeight = 150

const closed = (values: ArrayLike<number>, period: number): Point[] =>
  Array.from(
    { length: values.length + 1 },
    (_, k): Point => [(period * k) / Math.max(values.length, 1), values[k % Math.max(values.length, 1)] ?? 0],
  )

const reach = (lists: readonly ArrayLike<number>[]): number =>
  lists.reduce((most, list) => Math.max(most, ...Array.from(list, Math.abs)), 0)

export function waveformChart({ width, emf, phaseCurrent, dcCurrent, frequency }: WaveformChart): string {
  const period = frequency > 0 ? 1000 / frequency : 1
  const phaseLabels = emf.map((_, k) => (emf.length > 1 ? `phase ${k + 1}` : 'phase'))
  const left = 52
  const room = labelRoom([...phaseLabels, 'direct'])
  const gap = 46
  const top = 28
  const plotOf = (row: number) => ({
    left,
    top: top + row * (waveformPanelHeight + gap),
    width: Math.max(60, width - left - room),
    height: waveformPanelHeight,
  })
  const x = { label: 'time, ms', domain: [0, period] as const }
  const phaseLines = (lists: readonly ArrayLike<number>[]) =>
    lists.map((values, k) => ({
      label: phaseLabels[k]!,
      className: `ink-phase-${(k % 3) + 1}`,
      dash: dashes[k % dashes.length]!,
      points: closed(values, period),
      labelAt: 'end' as const,
    }))
  const both = (most: number) => niceDomain([-Math.max(most, 1e-9), Math.max(most, 1e-9)], 6)
  const body = [
    panelBody({
      plot: plotOf(0),
      footed: false,
      x,
      y: { label: 'volts raised in a phase, V', domain: both(reach(emf)) },
      lines: phaseLines(emf),
    }),
    panelBody({
      plot: plotOf(1),
      footed: false,
      x,
      y: { label: 'current of a phase, A', domain: both(reach(phaseCurrent)) },
      lines: phaseLines(phaseCurrent),
    }),
    panelBody({
      plot: plotOf(2),
      footed: true,
      x,
      y: { label: 'direct current, A', domain: niceDomain([0, Math.max(reach([dcCurrent]), 1e-9)], 3) },
      lines: [
        {
          label: 'direct',
          className: 'ink-store',
          points: closed(dcCurrent, period),
          labelAt: 'end',
          filled: true,
        },
      ],
    }),
  ].join('')
  return picture(
    {
      name: 'waveform',
      title: `One period at ${formatNumber(frequency)} Hz`,
      description:
        'Three plots over one electrical period in milliseconds: volts raised in each phase, amps in each phase, and the direct current behind the bridge in amps.',
      width,
      height: top + 3 * waveformPanelHeight + 2 * gap + 50,
    },
    body,
  )
}
