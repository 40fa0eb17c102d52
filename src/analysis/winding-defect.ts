/** What defects leave of the winding's copper: strands that still conduct, turns that still work, turns in a loop. */
import type { Machine } from '../machine/machine.ts'
import { type ConductorLayout, terminalPhase } from './conductor-layout.ts'

const μ0 = 4e-7 * Math.PI

/** Turns of a coil that are closed on themselves. */
export interface TurnLoop {
  /** Index of the coil. */
  readonly coil: number
  /** Of the coil's turns. */
  readonly share: number
  /** At 20 °C [Ω]. */
  readonly resistance: number
  /** Self-inductance [H]. */
  readonly inductance: number
  /** Mutual inductance with what is left of every coil, as wound [H]. */
  readonly mutual: readonly number[]
}

/** A coil with no turns left is a joint of next to no resistance. */
const leastShare = 1e-6

/** By phase at the terminals: resistance of its wire over that with all strands whole. */
export function strandFactors({ defects, stator }: Machine, phaseCount: number): number[] {
  const { strands } = stator.wire
  const factors = Array.from({ length: phaseCount }, () => 1)
  for (const { phase, strands: broken } of defects.openStrands) {
    const at = terminalPhase({ defects }, phase - 1)
    // what several entries break in one phase adds up
    factors[at] = strands / Math.max(strands / factors[at]! - broken, leastShare)
  }
  return factors
}

/** By coil: share of its turns in a loop of their own. Several shorts of one coil see the same volts per turn: one loop. */
export const loopShares = ({ defects }: Machine, { coils, shapes }: ConductorLayout): number[] =>
  coils.map(({ number, shape }) => {
    if (defects.shortedTurns.length === 0) return 0
    const shorted = defects.shortedTurns.reduce(
      (sum, { coil, turns }) => (coil === number ? sum + turns : sum),
      0,
    )
    return Math.min(1, shorted / shapes[shape]!.turns)
  })

/** By coil: share of its turns that is left in the circuit, never quite nothing. */
export const workingShares = (loops: readonly number[]): number[] =>
  loops.map((share) => Math.max(1 - share, leastShare))

/**
 * Every loop with its couplings, from the whole coils' values. Its turns link each other and other coils as the whole
 * bundle's turns do; being a thinner bundle of like shape, s of N turns, they have the more field of their own:
 * s² μ0 l / 2π · ln √(N/s), l the length of a turn. Loops of different coils are taken as not felt by each other.
 */
export function turnLoops(
  layout: ConductorLayout,
  whole: { readonly resistance: readonly number[]; readonly inductance: readonly (readonly number[])[] },
  loops: readonly number[],
): TurnLoop[] {
  const working = workingShares(loops)
  return loops.flatMap((share, coil): TurnLoop[] => {
    if (share === 0) return []
    const { turns, turnLength } = layout.shapes[layout.coils[coil]!.shape]!
    const s = share * turns
    return [
      {
        coil,
        share,
        resistance: share * whole.resistance[coil]!,
        inductance:
          share ** 2 * whole.inductance[coil]![coil]! -
          ((s * s * μ0 * turnLength) / (4 * Math.PI)) * Math.log(share),
        mutual: working.map((part, k) => share * part * whole.inductance[coil]![k]!),
      },
    ]
  })
}
