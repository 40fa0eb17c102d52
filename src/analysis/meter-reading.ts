/** What a meter shows of a machine turned by hand with nothing connected, between any two points of it. */
import type { Meter } from '../machine/meter.ts'
import {
  type FourierSeries,
  fourierSeries,
  seriesSamples,
  seriesScaled,
  seriesValue,
} from '../numerics/fourier.ts'
import { idleBridgeHeld, idleBridgeMean } from '../physics/electrics/idle-bridge.ts'
import {
  couplingCorner,
  meterFlutter,
  meterLoading,
  meterResponse,
  throughMeterInput,
} from '../physics/electrics/meter.ts'
import { displayBound, displayStep } from '../physics/electrics/meter-display.ts'
import { requirePositive } from '../refusal/require.ts'
import { envelopeSamples, type ProbePoint, probedResistance, probedSeries } from './probe-point.ts'
import type { TurnSource } from './turn-source.ts'

export type MeterFlag =
  | 'below its band'
  | 'above its band'
  | 'not a sine'
  | 'too few digits'
  | 'flutters'
  | 'loads it'

export interface MeterReading {
  /** Which volts the switch must stand on. */
  readonly function: 'alternating' | 'direct'
  /** As the display rounds it, and how far it may lie on either side [V]. */
  readonly shown: number
  readonly least: number
  readonly most: number
  /** Step of the last digit [V]. */
  readonly step: number
  /** Of the waveform itself, whatever the meter: rms, mean, largest of either sign, sine-calibrated rectified mean [V]. */
  readonly rms: number
  readonly mean: number
  readonly peak: number
  readonly averaged: number
  /** Of the working harmonic [Hz]. */
  readonly frequency: number
  /** Half of the swing of the figure, each averaged over the meter's window [V]. */
  readonly flutter: number
  readonly flags: readonly MeterFlag[]
}

export interface TurnedBy {
  /** Of the shaft [rad/s], above zero. */
  readonly speed: number
  readonly meter: Meter
  readonly probe: ProbePoint
}

/** Behind the bridge [F]: enough for any speed of a hand. */
export const heldCapacitance = 10e-6
/** A first-order coupling of which the sheet says nothing takes at least so much at the end of the band. */
const leastLoss = 0.003
/** Orders of the working harmonic whose swing a slow figure may follow. */
const flutterOrders = 6
const samplesPerOrder = 8
const leastSamples = 480
/** Either side of an ideality: common practice, no source. */
const idealitySpread = 0.2

const countOf = (series: FourierSeries): number => Math.max(leastSamples, samplesPerOrder * series.cos.length)

/** The volts as they are, kind by kind. */
const kindsOf = (series: FourierSeries) => ({
  rms: meterResponse({ response: 'true rms', series }),
  mean: meterResponse({ response: 'mean', series }),
  peak: meterResponse({ response: 'peak', series }),
  averaged: meterResponse({ response: 'rectified mean', series }),
})

const rounded = (value: number, step: number): number => Math.round(value / step) * step

/** Half-swing of |u| or u² in a window, as volts of the figure. */
function alternatingFlutter(series: FourierSeries, frequency: number, order: number, meter: Meter): number {
  const whole = meterResponse({ response: meter.response, series })
  if (!(whole > 0) || meter.window === 0) return 0
  const bend = (u: number) => (meter.response === 'true rms' ? u * u : Math.abs(u))
  const samples = seriesSamples(series, countOf(series)).map(bend)
  const orders = Math.min(flutterOrders * order, Math.floor((samples.length - 1) / 2))
  const swing = meterFlutter({ series: fourierSeries(samples, orders), frequency, window: meter.window })
  const mean = samples.reduce((sum, u) => sum + u, 0) / samples.length
  // a root halves the share
  return whole * (meter.response === 'true rms' ? 0.5 : 1) * (swing / mean)
}

function alternatingReading(source: TurnSource, { speed, meter, probe }: TurnedBy): MeterReading {
  const base = (source.base * speed) / (2 * Math.PI)
  const frequency = base * source.order
  const left = meterLoading({ input: meter.input, source: probedResistance(source, probe) })
  const wave = seriesScaled(probedSeries(source, probe), speed)
  const { alternating: sheet, response } = meter
  const loss = Math.max(sheet.share, leastLoss)
  const most = meter.coupled && meter.lowest > 0 ? couplingCorner({ lowest: meter.lowest, loss }) : undefined
  const bandwidth = (meter.highest * (1 - loss)) / Math.sqrt(1 - (1 - loss) ** 2)
  const behind = (corner: number | undefined) =>
    throughMeterInput({ series: seriesScaled(wave, left), frequency: base, corner, bandwidth })
  // what the sheet allows the coupling to take, half of it, or next to nothing
  const usual = behind(
    most === undefined ? undefined : couplingCorner({ lowest: meter.lowest, loss: loss / 2 }),
  )
  const value = meterResponse({ response, series: usual })
  const step = displayStep({ value, counts: meter.counts, finest: sheet.finest })
  const bound = (volts: number) =>
    displayBound({ value: volts, share: sheet.share, digits: sheet.digits, step })
  const kinds = kindsOf(wave)
  const low = meterResponse({ response, series: behind(most) })
  const high = meterResponse({ response, series: behind(undefined) })
  const flutter = alternatingFlutter(usual, base, source.order, meter)
  const flags: MeterFlag[] = []
  if (frequency < meter.lowest) flags.push('below its band')
  if (frequency > meter.highest) flags.push('above its band')
  if (response === 'rectified mean' && Math.abs(kinds.averaged - kinds.rms) > 0.005 * kinds.rms)
    flags.push('not a sine')
  if (sheet.digits * step > fewDigits * value) flags.push('too few digits')
  if (flutter > Math.max(1.5 * step, sheet.share * value)) flags.push('flutters')
  if (left < 0.995) flags.push('loads it')
  return {
    function: 'alternating',
    shown: rounded(value, step),
    least: Math.max(0, low - bound(low)),
    most: high + bound(high),
    step,
    ...kinds,
    frequency,
    flutter,
    flags,
  }
}

/** The sheet's digits are more than this share of the reading. */
const fewDigits = 0.03

function directReading(source: TurnSource, { speed, meter, probe }: TurnedBy): MeterReading {
  const base = (source.base * speed) / (2 * Math.PI)
  const frequency = base * source.order
  const envelope = envelopeSamples(source, countOf(source.lines[0]!)).map((u) => u * speed)
  const series = fourierSeries(envelope, Math.min(12 * source.order, Math.floor((envelope.length - 1) / 2)))
  const summits = 2 * frequency * (source.joined === 'none' ? 1 : source.phases.length)
  const volts = (ideality: number) => {
    const idle = { envelope, input: meter.input, ...source.diode, ideality, temperature: source.temperature }
    return probe.kind === 'capacitor'
      ? idleBridgeHeld({ ...idle, summits, capacitance: heldCapacitance })
      : idleBridgeMean(idle)
  }
  const { ideality } = source.diode
  const value = volts(ideality)
  const sheet = meter.direct
  const step = displayStep({ value, counts: meter.counts, finest: sheet.finest })
  const bound = displayBound({ value, share: sheet.share, digits: sheet.digits, step })
  const flutter =
    probe.kind === 'capacitor' || meter.window === 0
      ? 0
      : meterFlutter({ series, frequency: base, window: meter.window })
  const flags: MeterFlag[] = []
  if (sheet.digits * step > fewDigits * value) flags.push('too few digits')
  if (flutter > Math.max(1.5 * step, sheet.share * value)) flags.push('flutters')
  return {
    function: 'direct',
    shown: rounded(value, step),
    least: Math.max(0, volts(Math.max(1, ideality - idealitySpread)) - bound),
    most: volts(ideality + idealitySpread) + bound,
    step,
    ...kindsOf(series),
    frequency,
    flutter,
    flags,
  }
}

export function meterReading(source: TurnSource, turned: TurnedBy): MeterReading {
  requirePositive('speed', turned.speed, 'rad/s')
  const { kind } = turned.probe
  return kind === 'bridge' || kind === 'capacitor'
    ? directReading(source, turned)
    : alternatingReading(source, turned)
}

/** Volts between the points over two working periods, both ends included: for a picture. */
export function probedWave(
  source: TurnSource,
  { speed, probe }: Omit<TurnedBy, 'meter'>,
  count: number,
): Float64Array {
  if (probe.kind === 'bridge' || probe.kind === 'capacitor') {
    const fine = countOf(source.lines[0]!)
    const envelope = envelopeSamples(source, fine)
    return Float64Array.from({ length: count }, (_, k) => {
      const at = (2 * fine * k) / (source.order * (count - 1))
      const i = Math.floor(at)
      return speed * (envelope[i % fine]! + (at - i) * (envelope[(i + 1) % fine]! - envelope[i % fine]!))
    })
  }
  const series = probedSeries(source, probe)
  return Float64Array.from(
    { length: count },
    (_, k) => speed * seriesValue(series, (4 * Math.PI * k) / (source.order * (count - 1))),
  )
}
