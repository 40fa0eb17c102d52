/** Coils joined in series and parallel to phases: EMF with all harmonics, resistance and inductance. */
import type { FourierSeries } from '../../numerics/fourier.ts'
import { harmonicAmplitude, seriesScaled, seriesSum } from '../../numerics/fourier.ts'
import { refuse } from '../../refusal/require.ts'
import { type EmfCircuit, requireEmfCircuit } from './emf-circuit.ts'

/** A coil's place in the circuit; sense −1 exchanges start and finish. */
export interface CoilInSeries {
  /** Index into the list of coils, from 0. */
  readonly coil: number
  readonly sense: 1 | -1
}
/** Parallel branches, each a string of coils in series. */
export interface PhaseWiring {
  readonly branches: readonly (readonly CoilInSeries[])[]
}
/** Coils with their senses as wound; EMFs all over the same period, in volts or volts per unit speed. */
export type WoundCoils = EmfCircuit
export interface ConnectedBranch {
  readonly emf: FourierSeries
  readonly resistance: number
  /** |Σ| / Σ|·| of the coils' EMF by order, 1: all in step; orders without EMF count as 1 [1]. */
  readonly inStepRatio: Float64Array
  /** Part of the phase current that flows here when resistance alone decides; the parts sum to 1 [1]. */
  readonly share: number
}
export interface ConnectedPhases {
  /** Of each phase, open circuit. */
  readonly emf: readonly FourierSeries[]
  /** Of each phase [Ω]. */
  readonly resistance: readonly number[]
  /** Phase × phase [H]. */
  readonly inductance: readonly (readonly number[])[]
  readonly branches: readonly (readonly ConnectedBranch[])[]
}

/**
 * How well EMFs in series add, by order.
 *
 *   ratio_h = |Σ_k s_k E_k,h| / Σ_k |E_k,h|
 *
 * Holds: any waveforms over one period. Accuracy: exact. Orders whose members are all under 1e-12 of the
 * largest amplitude have no phase worth naming and count as 1.
 *
 * @param emf          E  of each member                                   [V]
 * @param senses       s  ±1 of each, all +1 if not given                  [1]
 * @returns            ratio by order from 0, 1: in step, 0: cancelled     [1]
 * @throws RangeError  lists of unlike length
 * @source derived, from the sum of phasors
 * @example inStepRatio([{ cos: Float64Array.of(0, 1), sin: Float64Array.of(0, 0) }, { cos: Float64Array.of(0, 0), sin: Float64Array.of(0, 1) }])[1] // 0.70711
 */
export function inStepRatio(
  emf: readonly FourierSeries[],
  senses: readonly (1 | -1)[] = emf.map(() => 1 as const),
): Float64Array {
  if (senses.length !== emf.length)
    refuse({ name: 'senses', condition: `${emf.length} long`, value: senses.length, code: 'wrong-length' })
  const total = seriesSum(emf.map((f, k) => (senses[k] === 1 ? f : seriesScaled(f, -1))))
  const ratio = new Float64Array(total.cos.length)
  const below = ratio.map((_, h) => emf.reduce((sum, f) => sum + harmonicAmplitude(f, h), 0))
  const floor = 1e-12 * below.reduce((most, value) => Math.max(most, value), 0)
  return ratio.map((_, h) => (below[h] <= floor ? 1 : Math.min(1, harmonicAmplitude(total, h) / below[h])))
}

/**
 * Joins coils to phases.
 *
 *   E = Cᵀ e,  R = Cᵀ r C,  L = Cᵀ l C;  C_kφ = ± share of the phase current in coil k
 *
 * Holds: series strings and parallel groups of them, any number of phases and coils; a coil may be left out, but
 * not used twice. Branches share the phase current by their conductances, exact for alike branches and wherever
 * resistance outweighs reactance; the current that unlike branches drive round through each other is given by
 * `branchCirculation`. Accuracy: exact within that sharing.
 *
 * @param coils      e, r, l  of each coil, see `WoundCoils`        [V], [Ω], [H]
 * @param phases     wiring of each phase                           [1]
 * @returns          E, R, L of the phases and their branches       [V], [Ω], [H]
 * @throws RangeError  lists of unlike length; resistance not above zero; a coil used twice or not there; an empty branch
 * @source derived, from Kirchhoff's laws and the invariance of power
 * @example connectPhases({ emf: [{ cos: Float64Array.of(0, 2), sin: Float64Array.of(0, 0) }], resistance: [3], inductance: [[0.1]] }, [{ branches: [[{ coil: 0, sense: 1 }]] }]).resistance[0] // 3
 */
export function connectPhases(coils: WoundCoils, phases: readonly PhaseWiring[]): ConnectedPhases {
  const n = requireEmfCircuit(coils)
  const used = new Set<number>()
  const currents: { readonly coil: number; readonly part: number }[][] = []
  const branches = phases.map(({ branches: strings }, phase): ConnectedBranch[] => {
    if (strings.length === 0 || strings.some((string) => string.length === 0))
      refuse({
        name: `phase ${phase}`,
        condition: 'made of branches with at least one coil each',
        value: strings.map((string) => string.length),
        code: 'wrong-length',
      })
    for (const { coil } of strings.flat()) {
      if (!Number.isInteger(coil) || coil < 0 || coil >= n)
        refuse({ name: 'coil', condition: `one of 0…${n - 1}`, value: coil, code: 'not-a-choice' })
      if (used.has(coil))
        refuse({ name: 'coil', condition: 'wired only once', value: coil, code: 'conflict' })
      used.add(coil)
    }
    const resistance = strings.map((string) =>
      string.reduce((sum, { coil }) => sum + coils.resistance[coil], 0),
    )
    const conductance = resistance.reduce((sum, R) => sum + 1 / R, 0)
    const made = strings.map((string, b): ConnectedBranch => {
      const members = string.map(({ coil }) => coils.emf[coil])
      const senses = string.map(({ sense }) => sense)
      return {
        emf: seriesSum(string.map(({ coil, sense }) => seriesScaled(coils.emf[coil], sense))),
        resistance: resistance[b],
        inStepRatio: inStepRatio(members, senses),
        share: 1 / resistance[b] / conductance,
      }
    })
    currents.push(
      strings.flatMap((string, b) =>
        string.map(({ coil, sense }) => ({ coil, part: sense * made[b].share })),
      ),
    )
    return made
  })
  return {
    emf: branches.map((made) => seriesSum(made.map(({ emf, share }) => seriesScaled(emf, share)))),
    resistance: branches.map((made) => 1 / made.reduce((sum, { resistance }) => sum + 1 / resistance, 0)),
    inductance: currents.map((row) =>
      currents.map((column) => {
        let sum = 0
        for (const a of row) for (const b of column) sum += a.part * b.part * coils.inductance[a.coil][b.coil]
        return sum
      }),
    ),
    branches,
  }
}
