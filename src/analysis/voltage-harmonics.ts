/** The harmonics of the volts of a phase beside those between the lines, as shares of the fundamental. */
import { type FourierSeries, harmonicAmplitude } from '../numerics/fourier.ts'
import type { Chain } from './compute.ts'

export interface HarmonicRow {
  /** n, of the working frequency. */
  readonly order: number
  /** Peak over the speed [V·s/rad]; of the line undefined where the phases are not joined. */
  readonly phase: number
  readonly line: number | undefined
  /** The same over the fundamental of each. */
  readonly phaseShare: number
  readonly lineShare: number | undefined
  /** In the phases, but next to nothing of it between the lines. */
  readonly cancels: boolean
}

export interface VoltageHarmonics {
  readonly connection: 'star' | 'delta' | 'separate' | 'single'
  readonly rows: readonly HarmonicRow[]
  /** Rms of all orders but the fundamental over its own rms. */
  readonly phaseDistortion: number
  readonly lineDistortion: number | undefined
  /** Rms of what lies between the orders, in a machine whose poles are unlike, over the fundamental's rms. */
  readonly betweenOrders: number
}

/** Of a phase's share, what may be left between the lines of a harmonic that cancels. */
const leastLeft = 0.1
/** Shares of the fundamental below which an order is not worth a row. */
const leastShare = 5e-4
/** Odd orders up to here have a row in any case: a reader looks for them. */
const alwaysShown = 7

const ratio = (part: number, whole: number): number => (whole > 0 ? part / whole : 0)

function distortion(series: FourierSeries, working: number): number {
  let sum = 0
  for (let h = 1; h < series.cos.length; h++) if (h !== working) sum += harmonicAmplitude(series, h) ** 2
  return ratio(Math.sqrt(sum), harmonicAmplitude(series, working))
}

/** Of one phase, from 0, and the line that begins at it. */
export function voltageHarmonics(
  { machine, voltage }: Pick<Chain, 'machine' | 'voltage'>,
  phase = 0,
): VoltageHarmonics {
  const { connection } = machine.stator
  const { order, phases, lines } = voltage
  const own = phases[phase]!.emf
  const joined = phases.length > 1 && (connection === 'star' || connection === 'delta')
  const line = joined ? lines[phase]?.emf : undefined
  const first = harmonicAmplitude(own, order)
  const firstLine = line === undefined ? 0 : harmonicAmplitude(line, order)
  const most = Math.floor((Math.max(own.cos.length, line?.cos.length ?? 0) - 1) / order)
  const rows = Array.from({ length: Math.max(most, alwaysShown) }, (_, k): HarmonicRow => {
    const n = k + 1
    const ofPhase = harmonicAmplitude(own, n * order)
    const ofLine = line === undefined ? undefined : harmonicAmplitude(line, n * order)
    const phaseShare = ratio(ofPhase, first)
    const lineShare = ofLine === undefined ? undefined : ratio(ofLine, firstLine)
    return {
      order: n,
      phase: ofPhase,
      line: ofLine,
      phaseShare,
      lineShare,
      cancels: lineShare !== undefined && phaseShare >= leastShare && lineShare < leastLeft * phaseShare,
    }
  })
  let between = 0
  for (let h = 1; h < own.cos.length; h++) if (h % order !== 0) between += harmonicAmplitude(own, h) ** 2
  return {
    connection,
    rows: rows.filter(
      ({ order: n, phaseShare, lineShare }) =>
        (n % 2 === 1 && n <= alwaysShown) || Math.max(phaseShare, lineShare ?? 0) >= leastShare,
    ),
    phaseDistortion: distortion(own, order),
    lineDistortion: line === undefined ? undefined : distortion(line, order),
    betweenOrders: ratio(Math.sqrt(between), first),
  }
}
