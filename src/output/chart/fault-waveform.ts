/** Picture of a whole turn by hand: volts of each phase of a sound machine and of the same with a defect. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { niceDomain } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { labelRoom, panelBody } from './panel.ts'
import { type Point, picture } from './picture.ts'

export interface FaultWaveformChart {
  readonly width: number
  /** Phase by phase, at equal steps of one turn of the shaft, its end left out [V]. */
  readonly sound: readonly ArrayLike<number>[]
  readonly faulty: readonly ArrayLike<number>[]
  readonly words: string
}

const panelHeight = 110
const gap = 30
const top = 28

/** Over 0…360°, the first value again at the end. */
const overTurn = (values: ArrayLike<number>): Point[] =>
  Array.from(
    { length: values.length + 1 },
    (_, k): Point => [(360 * k) / Math.max(values.length, 1), values[k % Math.max(values.length, 1)] ?? 0],
  )

const rmsOf = (values: ArrayLike<number>): number =>
  Math.sqrt(Array.from(values).reduce((sum, value) => sum + value ** 2, 0) / Math.max(1, values.length))

/** A phase's volts with the defect against those it should have. */
function phaseWords(sound: ArrayLike<number>, faulty: ArrayLike<number>, phase: number): string {
  const [should, does] = [rmsOf(sound), rmsOf(faulty)]
  const lost = should > 0 ? 100 * (1 - does / should) : 0
  const changed =
    Math.abs(lost) < 0.05
      ? 'as they should be'
      : `${formatNumber(Math.abs(lost), 2)} % ${lost > 0 ? 'less' : 'more'} than they should be`
  return `volts of phase ${phase + 1} ${formatSi(does, 'V')} rms, ${changed}`
}

export function faultWaveformChart({ width, sound, faulty, words }: FaultWaveformChart): string {
  const left = 52
  const room = labelRoom(['defect', 'sound'])
  const most = [...sound, ...faulty].reduce(
    (least, list) => Math.max(least, ...Array.from(list, Math.abs)),
    1e-9,
  )
  const domain = niceDomain([-most, most], 4)
  const body = faulty.map((values, phase) =>
    panelBody({
      plot: {
        left,
        top: top + phase * (panelHeight + gap),
        width: Math.max(60, width - left - room),
        height: panelHeight,
      },
      footed: phase === faulty.length - 1,
      x: { label: 'turn of the shaft, degrees', domain: [0, 360] },
      y: { label: faulty.length > 1 ? `volts of phase ${phase + 1}, V` : 'volts, V', domain },
      lines: [
        {
          label: 'sound',
          className: 'ink-wind',
          dash: '3 4',
          points: overTurn(sound[phase] ?? []),
          labelAt: 'end',
        },
        {
          label: 'defect',
          className: `ink-phase-${(phase % 3) + 1}`,
          points: overTurn(values),
          labelAt: 'end',
        },
      ],
    }),
  )
  return picture(
    {
      name: 'fault-waveform',
      title: `One turn by hand: ${words}`,
      description: `With ${words}, over one turn of the shaft: ${faulty.map((values, phase) => phaseWords(sound[phase] ?? [], values, phase)).join('; ')}.`,
      width,
      height: top + faulty.length * (panelHeight + gap) - gap + 50,
    },
    body.join(''),
  )
}

export function faultWaveformTable({ sound, faulty, words }: Omit<FaultWaveformChart, 'width'>): ChartTable {
  const count = faulty[0]?.length ?? 0
  return {
    caption: `One turn by hand: ${words}`,
    columns: [
      { head: 'turn', unit: '°' },
      ...faulty.flatMap((_, phase) => [
        { head: `phase ${phase + 1}, sound`, unit: 'V' },
        { head: `phase ${phase + 1}, with the defect`, unit: 'V' },
      ]),
    ],
    rows: Array.from({ length: count }, (_, k) => [
      (360 * k) / count,
      ...faulty.flatMap((values, phase) => [sound[phase]?.[k], values[k]]),
    ]),
  }
}
