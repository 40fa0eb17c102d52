/** Where a meter's two probes may be put on a machine that is turned by hand, and the waveform between them. */
import { type FourierSeries, seriesSamples, seriesSum } from '../numerics/fourier.ts'
import type { TurnSource } from './turn-source.ts'

export interface ProbePoint {
  /** Short and stable: `phase-1`, `line-1-2`, `corner`, `bridge`, `capacitor`. */
  readonly id: string
  readonly words: string
  readonly kind: 'phase' | 'line' | 'corner' | 'bridge' | 'capacitor'
  /** Which phase or line, from 0. */
  readonly index: number
}

export function probePoints({ joined, phases }: Pick<TurnSource, 'joined' | 'phases'>): ProbePoint[] {
  const n = phases.length
  const lines = phases.map((_, k): ProbePoint => {
    const next = ((k + 1) % n) + 1
    return { id: `line-${k + 1}-${next}`, words: `terminals ${k + 1} and ${next}`, kind: 'line', index: k }
  })
  const across = phases.map(
    (_, k): ProbePoint => ({
      id: `phase-${k + 1}`,
      words:
        joined === 'star'
          ? `terminal ${k + 1} and the star point`
          : n > 1
            ? `both ends of phase ${k + 1}`
            : 'both ends of the winding',
      kind: 'phase',
      index: k,
    }),
  )
  const corner: ProbePoint = {
    id: 'corner',
    words: 'the ends of the delta with one corner open',
    kind: 'corner',
    index: 0,
  }
  return [
    ...(joined === 'none' ? across : joined === 'star' ? [...lines, ...across] : [...lines, corner]),
    { id: 'bridge', words: 'plus and minus of the bridge', kind: 'bridge', index: 0 },
    {
      id: 'capacitor',
      words: 'plus and minus of the bridge, with a capacitor of 10 µF',
      kind: 'capacitor',
      index: 0,
    },
  ]
}

/** Volts between the two points over the shaft's speed [V·s/rad]; of the bridge's points what goes into it. */
export function probedSeries(source: TurnSource, { kind, index }: ProbePoint): FourierSeries {
  const { phases, lines } = source
  if (kind === 'phase') return phases[index]!.emf
  if (kind === 'corner') return seriesSum(phases.map(({ emf }) => emf))
  return lines[index]!
}

/** Resistance that the meter sees between them [Ω], at 20 °C. */
export function probedResistance({ joined, phases }: TurnSource, { kind, index }: ProbePoint): number {
  const R = phases.map(({ resistance }) => resistance)
  const whole = R.reduce((sum, each) => sum + each, 0)
  if (kind === 'corner') return whole
  const own = R[index]!
  if (kind === 'phase' || joined === 'none') return own
  return joined === 'star' ? own + R[(index + 1) % R.length]! : (own * (whole - own)) / whole
}

/** Largest volts between any two terminals, at equal steps of the series' period, over speed [V·s/rad]. */
export function envelopeSamples({ joined, phases, lines }: TurnSource, count: number): Float64Array {
  const each = (joined === 'star' ? phases.map(({ emf }) => emf) : lines).map((series) =>
    seriesSamples(series, count),
  )
  return Float64Array.from({ length: count }, (_, k) => {
    const now = each.map((samples) => samples[k]!)
    return joined === 'star' ? Math.max(...now) - Math.min(...now) : Math.max(...now.map(Math.abs))
  })
}
