/** What may lie between the volts read and the volts computed: the kinds and places that are taken for each other. */
import type { Meter } from '../machine/meter.ts'
import { seriesRms, seriesScaled, seriesSum } from '../numerics/fourier.ts'
import { requirePositive } from '../refusal/require.ts'
import { meterReading } from './meter-reading.ts'
import { type ProbePoint, probePoints } from './probe-point.ts'
import type { TurnSource } from './turn-source.ts'

export interface VoltsExplanation {
  readonly words: string
  /** What would be read if it were so [V], over what the meter should show where it was put. */
  readonly volts: number
  readonly factor: number
  /** Read over that, less one. */
  readonly off: number
}

export interface ReadVolts {
  readonly read: number
  readonly speed: number
  readonly meter: Meter
  readonly probe: ProbePoint
}

export interface VoltsComparison {
  /** Read over shown. */
  readonly ratio: number
  /** Within what the meter may be off. */
  readonly within: boolean
  /** Those that come within a twelfth, the nearest first; none where nothing needs explaining. */
  readonly explanations: readonly VoltsExplanation[]
}

/** A factor this near is worth naming; beyond, the next one is nearer. */
const near = 0.08
const most = 4

/** Everything else that somebody may have read, or turned, or wound. */
function candidates(
  source: TurnSource,
  { speed, meter, probe }: ReadVolts,
  shown: number,
): { words: string; volts: number }[] {
  const own = meterReading(source, { speed, meter, probe })
  const at = (other: ProbePoint) => meterReading(source, { speed, meter, probe: other }).shown
  const points = probePoints(source)
  const list = [
    { words: 'the peak was read, not the rms', volts: own.peak },
    { words: 'the swing from peak to peak was read, as a scope shows it', volts: 2 * own.peak },
    {
      words: 'the rectified mean was read without the 1.11 of a sine',
      volts: (own.averaged * 2 * Math.SQRT2) / Math.PI,
    },
    {
      words: 'the meter averages: 1.11 times the rectified mean of a wave that is no sine',
      volts: own.averaged,
    },
    { words: 'a true rms without the meter’s limits', volts: own.rms },
  ].filter(() => own.function === 'alternating')
  const seen = new Set<string>([probe.kind])
  for (const point of points) {
    if (seen.has(point.kind)) continue
    seen.add(point.kind)
    list.push({ words: `the probes stood on ${point.words}`, volts: at(point) })
  }
  const turns = source.coilsInSeries
  if (turns > 2 && own.function === 'alternating')
    list.push({
      words: `one coil of the ${turns} in series is the wrong way round`,
      volts: (shown * (turns - 2)) / turns,
    })
  const { phases } = source
  if (source.joined === 'star' && probe.kind === 'line') {
    const flipped = seriesSum([phases[probe.index]!.emf, phases[(probe.index + 1) % phases.length]!.emf])
    list.push({
      words: 'one of the two phases is the wrong way round',
      volts: seriesRms(seriesScaled(flipped, speed)),
    })
  }
  return [
    ...list,
    { words: 'the speed was half of what was said', volts: shown / 2 },
    { words: 'the speed was twice what was said', volts: shown * 2 },
    {
      words: 'every other magnet is missing or the wrong way round, or half of the coils are in the circuit',
      volts: shown / 2,
    },
  ]
}

/** The volts somebody read against what the machine as designed would show, and which confusions come near. */
export function compareVolts(source: TurnSource, reading: ReadVolts): VoltsComparison {
  requirePositive('read', reading.read, 'V')
  const { shown, least, most: highest } = meterReading(source, reading)
  const { read } = reading
  const distance = (volts: number) => Math.abs(Math.log(read / volts))
  const own = shown > 0 ? distance(shown) : Number.POSITIVE_INFINITY
  const within = read >= least && read <= highest
  return {
    ratio: shown > 0 ? read / shown : 0,
    within,
    explanations: (within ? [] : candidates(source, reading, shown))
      .filter(({ volts }) => volts > 0 && distance(volts) < near && distance(volts) < own)
      .sort((a, b) => distance(a.volts) - distance(b.volts))
      .slice(0, most)
      .map(({ words, volts }) => ({
        words,
        volts,
        factor: shown > 0 ? volts / shown : 0,
        off: read / volts - 1,
      })),
  }
}
