/** Invented numbers for pictures that no example alone gives: the pictures are looked at, not the numbers. */

import { buildScatterChart } from '../src/output/chart/build-scatter.ts'
import { causeShareChart } from '../src/output/chart/cause-share.ts'
import { faultWaveformChart } from '../src/output/chart/fault-waveform.ts'
import { type IntervalRow, intervalChart } from '../src/output/chart/interval.ts'
import { stormTraceChart } from '../src/output/chart/storm-trace.ts'
import { turnWaveChart } from '../src/output/chart/turn-wave.ts'
import type { BuildScatter } from '../src/output/tolerance-report.ts'

const intervals: readonly IntervalRow[] = [
  {
    label: 'Energy in a year',
    text: '41 kWh, 22 to 63',
    value: 41,
    low: 22,
    high: 63,
    causes: [
      { label: 'mean wind', share: 0.71 },
      { label: 'shear exponent', share: 0.14 },
      { label: 'friction of the bearings', share: 0.08 },
    ],
  },
  {
    label: 'Speed at cut-in',
    text: '312 rpm, 296 to 330',
    value: 312,
    low: 296,
    high: 330,
    causes: [
      { label: 'remanence of the magnets', share: 0.62 },
      { label: 'air gap', share: 0.33 },
    ],
  },
  {
    label: 'Copper in a strong wind',
    text: '74 °C, 55 to 108',
    value: 74,
    low: 55,
    high: 108,
    causes: [
      { label: 'cooling of the winding', share: 0.9 },
      { label: 'mean wind', share: 0.06 },
    ],
  },
  { label: 'Volts of a phase', text: '12.1 V', value: 12.1, low: 12.1, high: 12.1, causes: [] },
]

const builds: readonly BuildScatter[] = [
  {
    label: 'Volts of a phase',
    text: '97 % to 104 %',
    low: 0.97,
    middle: 1,
    mean: 1.001,
    high: 1.04,
    least: 0.95,
    most: 1.05,
  },
  {
    label: 'Watts in a strong wind',
    text: '80 W to 90 W',
    low: 0.8,
    middle: 0.88,
    mean: 0.88,
    high: 0.9,
    least: 0.95,
  },
  { label: 'Ohms of a phase', text: '0.98 Ω to 1.02 Ω', low: 0.98, middle: 1, mean: 1, high: 1.02 },
]

const wave = (size: number, shift: number) =>
  Float64Array.from({ length: 120 }, (_, k) => size * Math.sin((4 * Math.PI * k) / 119 + shift))
const phases = (sizes: readonly number[]) => sizes.map((size, k) => wave(size, (2 * Math.PI * k) / 3))
const seconds = Float64Array.from({ length: 121 }, (_, k) => k / 2)
/** A gust that grows for half of the time. */
const gust = (least: number, most: number, lag = 0) =>
  seconds.map((t) => least + (most - least) * Math.exp(-(((t - 25 - lag) / 12) ** 2)))

export const samplePictures: Readonly<Record<string, (width: number) => string>> = {
  interval: (width) => intervalChart({ width, rows: intervals }),
  cause: (width) => causeShareChart({ width, row: intervals[0]! }),
  builds: (width) => buildScatterChart({ width, rows: builds }),
  fault: (width) =>
    faultWaveformChart({
      width,
      sound: phases([3, 3, 3]),
      faulty: phases([2.2, 3, 3]),
      words: 'magnet 4 weak to 60 %',
    }),
  turn: (width) =>
    turnWaveChart({ width, wave: wave(3, 0), time: 0.12, shown: 2.2, rms: 2.12, direct: false }),
  storm: (width) =>
    stormTraceChart({
      width,
      words: 'the load is lost after the gust has begun',
      trace: {
        time: seconds,
        wind: gust(8, 24),
        speed: gust(60, 210, 2),
        voltage: gust(25, 70, 2),
        current: gust(4, 0.2, 2),
        phaseCurrent: gust(5, 0.3, 2),
        copperTemperature: gust(300, 345, 14),
        kept: seconds.map((t) => (t > 18 ? 0.7 : 1)),
      },
    }),
}
