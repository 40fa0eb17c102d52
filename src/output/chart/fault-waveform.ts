/** Picture of a whole turn by hand: volts of each phase of a sound machine and of the same with a defect. */
import { formatNumber } from '../../units/format.ts'
import { niceDomain } from './axis.ts'
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
      description: `Volts of ${formatNumber(faulty.length)} phases over one turn of the shaft in degrees, each as a sound machine gives them, dashed, and with the defect, plain.`,
      width,
      height: top + faulty.length * (panelHeight + gap) - gap + 50,
    },
    body.join(''),
  )
}
