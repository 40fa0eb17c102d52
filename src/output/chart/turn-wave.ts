/** Picture of two periods of what a meter's probes are on, with what the meter shows of it. */
import { formatNumber } from '../../units/format.ts'
import { niceDomain } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { labelRoom, panelBody } from './panel.ts'
import { type Point, picture } from './picture.ts'

export interface TurnWaveChart {
  readonly width: number
  /** At equal steps, both ends included [V]. */
  readonly wave: ArrayLike<number>
  /** Of what is drawn [s]. */
  readonly time: number
  /** [V] */
  readonly shown: number
  readonly rms: number
  readonly direct: boolean
}

const height = 150
const left = 52
const top = 20

export function turnWaveChart({ width, wave, time, shown, rms, direct }: TurnWaveChart): string {
  const last = Math.max(wave.length - 1, 1)
  const points = Array.from(
    { length: wave.length },
    (_, k): Point => [(1000 * time * k) / last, wave[k] ?? 0],
  )
  const size = points.reduce((most, [, y]) => Math.max(most, Math.abs(y)), Math.max(shown, rms, 1e-9))
  const level = (y: number): Point[] => [
    [0, y],
    [1000 * time, y],
  ]
  const labels = ['shown', 'true rms']
  return picture(
    {
      name: 'turn-wave',
      title: 'Two periods between the probes',
      description: `The meter shows ${formatNumber(shown)} V of a wave whose true rms is ${formatNumber(rms)} V and whose peak is ${formatNumber(Array.from(wave).reduce((most, each) => Math.max(most, Math.abs(each)), 0))} V, over ${formatNumber(1000 * time)} ms.`,
      width,
      height: top + height + 50,
    },
    panelBody({
      plot: { left, top, width: Math.max(60, width - left - labelRoom(labels)), height },
      footed: true,
      x: { label: 'time, ms', domain: [0, Math.max(1000 * time, 1e-9)] },
      y: { label: 'volts, V', domain: niceDomain([direct ? 0 : -size, size], 6) },
      lines: [
        { label: 'volts', className: 'ink-field', points, labelAt: 'nowhere' },
        { label: labels[1]!, className: 'ink-shaft', dash: '2 4', points: level(rms), labelAt: 'end' },
        { label: labels[0]!, className: 'ink-chosen', dash: '9 4', points: level(shown), labelAt: 'end' },
      ],
    }),
  )
}

export function turnWaveTable({ wave, time }: Pick<TurnWaveChart, 'wave' | 'time'>): ChartTable {
  return {
    caption: 'Two periods between the probes',
    columns: [
      { head: 'time', unit: 'ms' },
      { head: 'volts', unit: 'V' },
    ],
    rows: Array.from(wave, (value, k) => [(1000 * time * k) / Math.max(wave.length - 1, 1), value]),
  }
}
