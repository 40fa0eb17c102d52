/** Star of slots: which phase and sense each of Q concentrated coils takes on p pole pairs. */
import { refuse, requireFinite } from '../../refusal/require.ts'
import { pitchFactor } from './winding-factor.ts'

export interface StarCoil {
  /** Electrical angle of the coil's axis, 0…2π [rad]. */
  readonly electricalAngle: number
  /** From 0. */
  readonly phase: number
  /** −1: wired with start and finish exchanged. */
  readonly sense: 1 | -1
}

export interface StarOfSlots {
  /** t: the machine is t times the same pattern. */
  readonly repeats: number
  /** Three equal phases 120° apart are possible. */
  readonly balanced: boolean
  /** Of one coil for the fundamental, its legs 2π/Q apart: sin(π p/Q) [1]. */
  readonly pitchFactor: number
  readonly coils: readonly StarCoil[]
  /** Fundamental winding factor of each phase (pitch × distribution); all alike when balanced [1]. */
  readonly phaseFactor: readonly [number, number, number]
  /** The least of the three, what may be counted on [1]. */
  readonly windingFactor: number
}

/** Least pitch factor that still makes sense: below it a coil mostly cancels itself (common practice). */
export const leastPitchFactor = 0.5

const greatestCount = 10_000

function requireCount(name: string, value: number): void {
  if (!Number.isInteger(value) || value < 1 || value > greatestCount)
    refuse({ name, condition: `a whole number from 1 to ${greatestCount}`, value, code: 'not-a-choice' })
}

function commonDivisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b]
  return a
}

/**
 * Phase and sense of each of Q evenly placed coils, by belts of π/m in the star of their electrical angles.
 *
 *   α_k = 2π p k/Q;  belt = ⌊2m α_k/2π⌋
 *
 * Holds: coil k at the azimuth 2π k/Q, m phases. An odd number of phases follows 2π/m apart (m = 3: belts A, −C,
 * B, −A, C, −B), an even one π/m apart; phase 1 follows phase 0 when the rotor turns by +θ; m = 1 only sets the
 * senses. Accuracy: integer arithmetic, exact.
 *
 * @param counts.coilCount   Q                                              [1]
 * @param counts.polePairs   p                                              [1]
 * @param counts.phaseCount  m                                              [1]
 * @returns                  electrical angle, phase from 0, sense of each coil [1]
 * @throws RangeError        a count that is not a whole number from 1
 * @source pyrhonen2014, section 2.9 (voltage phasor diagram); from memory, not opened
 * @example phaseBelts({ coilCount: 9, polePairs: 6, phaseCount: 3 })[1].phase // 2
 */
export function phaseBelts(counts: {
  readonly coilCount: number
  readonly polePairs: number
  readonly phaseCount: number
}): StarCoil[] {
  const { coilCount: Q, polePairs: p, phaseCount: m } = counts
  requireCount('coilCount', Q)
  requireCount('polePairs', p)
  requireCount('phaseCount', m)
  const t = commonDivisor(Q, p)
  const spokes = Q / t
  return Array.from({ length: Q }, (_, k): StarCoil => {
    const spoke = (k * (p / t)) % spokes
    const belt = Math.floor((2 * m * spoke) / spokes)
    const first = m % 2 === 0 ? belt < m : belt % 2 === 0
    return {
      electricalAngle: (2 * Math.PI * spoke) / spokes,
      phase: m % 2 === 0 ? belt % m : first ? belt / 2 : ((belt + m) / 2) % m,
      sense: first ? 1 : -1,
    }
  })
}

/**
 * Whether evenly placed coils can be dealt out to m equal phases, evenly apart.
 *
 *   t = gcd(Q, p); (Q/t) mod m = 0 for odd m, (Q/t) mod 2m = 0 for even m
 *
 * Holds: alike coils; an even number of phases stands π/m apart, an odd one 2π/m. Accuracy: integer arithmetic, exact.
 *
 * @param counts.coilCount   Q                                [1]
 * @param counts.polePairs   p                                [1]
 * @param counts.phaseCount  m                                [1]
 * @returns                  true where the phases are alike  [1]
 * @throws RangeError        a count that is not a whole number from 1
 * @source pyrhonen2014, section 2.9 (symmetry conditions); from memory, not opened
 * @example Number(phasesBalance({ coilCount: 12, polePairs: 5, phaseCount: 3 })) // 1
 */
export function phasesBalance(counts: {
  readonly coilCount: number
  readonly polePairs: number
  readonly phaseCount: number
}): boolean {
  const { coilCount: Q, polePairs: p, phaseCount: m } = counts
  requireCount('coilCount', Q)
  requireCount('polePairs', p)
  requireCount('phaseCount', m)
  return (Q / commonDivisor(Q, p)) % (m % 2 === 0 ? 2 * m : m) === 0
}

/**
 * Winding layout of equal, evenly placed, non-overlapping coils in the best 60° belts.
 *
 *   t = gcd(Q, p); balanced when Q/t is divisible by 3; coil k stands at the electrical angle 2π p k/Q
 *
 * Holds: three phases, coil k at the azimuth 2π k/Q, coil span 2π/Q. Belts in the order A, −C, B, −A, C, −B, so
 * that phase 1 follows phase 0 by 120° when the rotor turns by +θ. Accuracy: integer arithmetic, exact.
 *
 * @param counts.coils      Q                                        [1]
 * @param counts.polePairs  p                                        [1]
 * @returns                 layout, factors and balance              [1]
 * @throws RangeError       a count that is not a whole number from 1
 * @source pyrhonen2014, section 2.9 (voltage phasor diagram, symmetry conditions); from memory, not opened
 * @example starOfSlots({ coils: 9, polePairs: 4 }).windingFactor // 0.9452
 */
export function starOfSlots(counts: { readonly coils: number; readonly polePairs: number }): StarOfSlots {
  const { coils: Q, polePairs: p } = counts
  requireCount('coils', Q)
  requireCount('polePairs', p)
  const t = commonDivisor(Q, p)
  const spokes = Q / t
  const coils = phaseBelts({ coilCount: Q, polePairs: p, phaseCount: 3 })
  const phaseFactor = [0, 1, 2].map((phase) =>
    starFactor(coils, { phase, span: (2 * Math.PI * p) / Q, harmonic: 1 }),
  )
  const [a, b, c] = phaseFactor as [number, number, number]
  return {
    repeats: t,
    balanced: spokes % 3 === 0,
    pitchFactor: Math.abs(Math.sin((Math.PI * p) / Q)) < 1e-12 ? 0 : Math.abs(Math.sin((Math.PI * p) / Q)),
    coils,
    phaseFactor: [a, b, c],
    windingFactor: Math.min(a, b, c),
  }
}

/**
 * Winding factor of one phase of a layout for one harmonic.
 *
 *   k_w = |sin(n W/2)| · |Σ s_k exp(j n α_k)| / count
 *
 * Holds: alike coils in series, thin legs. Accuracy: exact; values under 1e-12 are returned as 0, as is a
 * phase without coils.
 *
 * @param coils             s, α  of every coil of the machine               [1], [rad]
 * @param options.phase     which of the three                               [1]
 * @param options.span      W  electrical angle between a coil's legs        [rad]
 * @param options.harmonic  n                                                [1]
 * @returns                 k_w                                              [1]
 * @throws RangeError       harmonic not a whole number from 1; span not finite
 * @source pyrhonen2014, section 2.6 (winding factor as the vector sum of the phasors); from memory, not opened
 * @example starFactor(starOfSlots({ coils: 12, polePairs: 5 }).coils, { phase: 0, span: (5 / 6) * Math.PI, harmonic: 1 }) // 0.9330
 */
export function starFactor(
  coils: readonly StarCoil[],
  options: { readonly phase: number; readonly span: number; readonly harmonic: number },
): number {
  const { phase, span, harmonic: n } = options
  const pitch = Math.abs(pitchFactor({ span, harmonic: n }))
  let re = 0
  let im = 0
  let count = 0
  for (const coil of coils) {
    if (coil.phase !== phase) continue
    re += coil.sense * Math.cos(n * coil.electricalAngle)
    im += coil.sense * Math.sin(n * coil.electricalAngle)
    count++
  }
  if (count === 0) return 0
  const factor = (pitch * Math.hypot(re, im)) / count
  return factor < 1e-12 ? 0 : factor
}

export interface GoodCount {
  readonly coils: number
  readonly polePairs: number
  readonly windingFactor: number
}

/**
 * Nearest counts that give balanced phases with a sound pitch.
 *
 *   k_w ≥ 0.5, t = gcd(Q, p), Q/t divisible by 3 (three phases), by 4 (two)
 *
 * Holds: evenly placed coils whose legs lie 2π/Q apart, or `span` pole pitches where that is given, as of overlapped
 * coils. Accuracy: exact; the least pitch factor is `leastPitchFactor`. Sorted by distance, then by winding factor;
 * the given pair itself is listed first if it is good.
 *
 * @param counts.coils       Q                                                   [1]
 * @param counts.polePairs   p                                                   [1]
 * @param counts.phaseCount  m, 3 if not given                                   [1]
 * @param counts.span        leg to leg in pole pitches; not given: 2p/Q         [1]
 * @returns                  up to four with p kept, up to four with Q kept      [1]
 * @throws RangeError        a count that is not a whole number from 1; span not finite
 * @source pyrhonen2014, section 2.9 (symmetry conditions); from memory, not opened
 * @example nearestGoodCounts({ coils: 12, polePairs: 6 }).samePoles[0].coils // 9
 */
export function nearestGoodCounts(counts: {
  readonly coils: number
  readonly polePairs: number
  readonly phaseCount?: number
  readonly span?: number
}): {
  readonly samePoles: readonly GoodCount[]
  readonly sameCoils: readonly GoodCount[]
} {
  const { coils: Q, polePairs: p, phaseCount = 3, span } = counts
  requireCount('coils', Q)
  requireCount('polePairs', p)
  requireCount('phaseCount', phaseCount)
  if (span !== undefined) requireFinite('span', span)
  const good = (coils: number, polePairs: number): GoodCount[] => {
    if (coils < phaseCount || polePairs < 1 || coils > greatestCount || polePairs > greatestCount) return []
    const electrical = Math.PI * (span ?? (2 * polePairs) / coils)
    const pitch = Math.abs(pitchFactor({ span: electrical, harmonic: 1 }))
    const sizes = { coilCount: coils, polePairs, phaseCount }
    if (!phasesBalance(sizes) || pitch < leastPitchFactor - 1e-12) return []
    const belts = phaseBelts(sizes)
    const factors = Array.from({ length: phaseCount }, (_, phase) =>
      starFactor(belts, { phase, span: electrical, harmonic: 1 }),
    )
    return [{ coils, polePairs, windingFactor: Math.min(...factors) }]
  }
  const around = (middle: number, at: (value: number) => GoodCount[]) => {
    const found: GoodCount[] = []
    for (let step = 0; found.length < 4 && step <= Math.max(24, 2 * middle); step++) {
      const pair = step === 0 ? at(middle) : [...at(middle - step), ...at(middle + step)]
      found.push(...pair.sort((a, b) => b.windingFactor - a.windingFactor))
    }
    return found.slice(0, 4)
  }
  return { samePoles: around(Q, (coils) => good(coils, p)), sameCoils: around(p, (pairs) => good(Q, pairs)) }
}

export interface PhaseOffset {
  /** Electrical offset, 0…2π [rad]. */
  readonly electricalOffset: number
  /**
   * `in-step`: 0°; `third`: 120° or 240°, three phases as they should be; `sixth`: 60° or 300°, right only with
   * the middle phase reversed; `wrong`: none of these.
   */
  readonly verdict: 'in-step' | 'third' | 'sixth' | 'wrong'
  /** Distance from the angle the verdict names (for `wrong`: from the nearest of 120° and 240°), signed [rad]. */
  readonly error: number
}

/** Half-width of the band in which an offset counts as meant (common practice, no source) [rad]. */
export const phaseOffsetTolerance = Math.PI / 60

/**
 * Says whether a mechanical offset between two phases is the electrical one that is wanted.
 *
 *   α = (p · offset) mod 2π
 *
 * Holds: two alike windings on one surface. Accuracy: exact; band ± `phaseOffsetTolerance` unless given.
 *
 * @param placing.mechanicalOffset  azimuth from one phase to the next   [rad]
 * @param placing.polePairs         p                                    [1]
 * @param placing.tolerance         half-width of the band               [rad]
 * @returns                         electrical offset, verdict, error    [rad]
 * @throws RangeError               polePairs not a whole number from 1; an offset that is not finite
 * @source derived, from the definition of the electrical angle
 * @example phaseOffset({ mechanicalOffset: Math.PI / 9, polePairs: 3 }).electricalOffset // 1.0472
 */
export function phaseOffset(placing: {
  readonly mechanicalOffset: number
  readonly polePairs: number
  readonly tolerance?: number
}): PhaseOffset {
  const { mechanicalOffset, polePairs, tolerance = phaseOffsetTolerance } = placing
  requireCount('polePairs', polePairs)
  if (!Number.isFinite(mechanicalOffset))
    refuse({
      name: 'mechanicalOffset',
      condition: 'a finite number',
      value: mechanicalOffset,
      unit: 'rad',
      code: 'not-finite',
    })
  const turn = 2 * Math.PI
  const α = (((mechanicalOffset * polePairs) % turn) + turn) % turn
  const from = (angle: number) => {
    const d = α - angle
    return d > Math.PI ? d - turn : d < -Math.PI ? d + turn : d
  }
  const nearest = (angles: readonly number[]) =>
    angles.map(from).reduce((best, d) => (Math.abs(d) < Math.abs(best) ? d : best))
  const third = nearest([turn / 3, (2 * turn) / 3])
  const sixth = nearest([turn / 6, (5 * turn) / 6])
  const none = from(0)
  const inside = (error: number) => Math.abs(error) <= tolerance + 1e-12
  if (inside(third)) return { electricalOffset: α, verdict: 'third', error: third }
  if (inside(sixth)) return { electricalOffset: α, verdict: 'sixth', error: sixth }
  if (inside(none)) return { electricalOffset: α, verdict: 'in-step', error: none }
  return { electricalOffset: α, verdict: 'wrong', error: third }
}
