/** Picture of a storm, second by second: wind, speed, volts, amps and copper temperature above one time. */
import type { StormTrace } from '../../analysis/storm-trace.ts'
import { formatSi } from '../../units/format.ts'
import { fromSi, unit } from '../../units/unit.ts'
import { measuredText } from '../measuring.ts'
import { niceDomain } from './axis.ts'
import type { ChartTable } from './chart-table.ts'
import { dashes, labelRoom, type PanelLine, panelBody } from './panel.ts'
import { type Point, picture } from './picture.ts'

export interface StormTraceChart {
  readonly width: number
  readonly trace: StormTrace
  /** What fails, as words. */
  readonly words: string
}

const panelHeight = 84
const gap = 34
const top = 28

/** The most of each quantity, and when. */
function description(trace: StormTrace): string {
  const { time } = trace
  const most = (name: Exclude<keyof StormTrace, 'time' | 'kept'>, suffix: string) => {
    const at = trace[name].reduce((best, value, k, all) => (value > all[best]! ? k : best), 0)
    return `${measuredText(trace[name][at] ?? 0, suffix)} after ${formatSi(time[at] ?? 0, 's')}`
  }
  return `At most: wind ${most('wind', 'm_per_s')}, speed ${most('speed', 'rpm')}, direct volts ${most('voltage', 'V')}, direct current ${most('current', 'A')}, current of a phase ${most('phaseCurrent', 'A')}, copper ${most('copperTemperature', 'degC')}. At the end the rotor turns at ${formatSi(trace.speed[trace.speed.length - 1] ?? 0, 'rpm')}.`
}

export function stormTraceChart({ width, trace, words }: StormTraceChart): string {
  const left = 52
  const room = labelRoom(['as limited'])
  const { time, kept } = trace
  const through = (values: ArrayLike<number>, suffix: string): Point[] => {
    const target = unit(suffix)
    return Array.from(values, (value, k): Point => [time[k]!, fromSi(value, target)])
  }
  const limited = kept.some((share) => share < 0.999)
  const line = (label: string, className: string, points: readonly Point[], dash?: string): PanelLine => ({
    label,
    className,
    points,
    labelAt: 'end',
    ...(dash === undefined ? {} : { dash }),
  })
  const panels: readonly {
    readonly label: string
    readonly suffix?: string
    readonly lines: readonly PanelLine[]
  }[] = [
    {
      label: 'wind',
      suffix: 'm_per_s',
      lines: [
        line('wind', 'ink-wind', through(trace.wind, 'm_per_s')),
        ...(limited
          ? [
              line(
                'as limited',
                'ink-shaft',
                through(
                  trace.wind.map((v, k) => v * kept[k]!),
                  'm_per_s',
                ),
                dashes[1],
              ),
            ]
          : []),
      ],
    },
    { label: 'speed, rpm', lines: [line('speed', 'ink-shaft', through(trace.speed, 'rpm'))] },
    { label: 'direct volts, V', lines: [line('volts', 'ink-phase-1', through(trace.voltage, 'V'))] },
    {
      label: 'amps, A',
      lines: [
        line('direct', 'ink-store', through(trace.current, 'A')),
        line('phase', 'ink-phase-2', through(trace.phaseCurrent, 'A'), dashes[2]),
      ],
    },
    {
      label: 'copper',
      suffix: 'degC',
      lines: [line('copper', 'ink-phase-3', through(trace.copperTemperature, 'degC'))],
    },
  ]
  const body = panels.map(({ label, suffix, lines }, k) => {
    const values = lines.flatMap(({ points }) => points.map(([, y]) => y))
    const most = values.reduce((a, b) => Math.max(a, b), 1e-6)
    const least = values.reduce((a, b) => Math.min(a, b), 0)
    return panelBody({
      plot: {
        left,
        top: top + k * (panelHeight + gap),
        width: Math.max(60, width - left - room),
        height: panelHeight,
      },
      footed: k === panels.length - 1,
      x: { label: 'time, s', domain: [0, time[time.length - 1] ?? 1] },
      y: { label, domain: niceDomain([least, most], 3, suffix), ...(suffix === undefined ? {} : { suffix }) },
      lines,
    })
  })
  return picture(
    {
      name: 'storm-trace',
      title: `In a storm: ${words}`,
      description: description(trace),
      width,
      height: top + panels.length * (panelHeight + gap) - gap + 50,
    },
    body.join(''),
  )
}

export function stormTraceTable(trace: StormTrace): ChartTable {
  const columns = [
    ['wind', 'm/s', trace.wind, 'm_per_s'],
    ['speed', 'rpm', trace.speed, 'rpm'],
    ['direct volts', 'V', trace.voltage, 'V'],
    ['direct current', 'A', trace.current, 'A'],
    ['current of a phase', 'A rms', trace.phaseCurrent, 'A'],
    ['copper', '°C', trace.copperTemperature, 'degC'],
  ] as const
  return {
    caption: 'The storm, sample by sample',
    columns: [
      { head: 'time', unit: 's' },
      ...columns.map(([head, symbol]) => ({ head, unit: symbol })),
      { head: 'wind left by the limiter', unit: '%' },
    ],
    rows: Array.from(trace.time, (time, k) => [
      time,
      ...columns.map(([, , values, suffix]) => fromSi(values[k]!, unit(suffix))),
      100 * trace.kept[k]!,
    ]),
  }
}
