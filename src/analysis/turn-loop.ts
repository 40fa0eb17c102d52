/** Turns of a coil closed on themselves: their current, and what it does to the phases around them. */
import { type FourierSeries, seriesScaled, zeroSeries } from '../numerics/fourier.ts'

/** A loop against the speed of the shaft. */
export interface LoopVoltage {
  /** Number of the coil, from 1, and its phase at the terminals, from 0. */
  readonly coil: number
  readonly phase: number
  /** Of the coil's turns. */
  readonly share: number
  /** As wound [V·s/rad]. */
  readonly emf: FourierSeries
  /** At 20 °C [Ω]. */
  readonly resistance: number
  /** [H] */
  readonly inductance: number
  /** Mutual inductance with every phase [H]. */
  readonly coupling: readonly number[]
}

/** Machine as the circuit outside sees it. */
interface LoopedMachine {
  readonly base: number
  readonly order: number
  readonly loops: readonly LoopVoltage[]
  readonly phases: readonly { readonly emf: FourierSeries; readonly resistance: number }[]
  readonly inductance: readonly (readonly number[])[]
}

export interface LoopState {
  /** [rad/s] */
  readonly speed: number
  /** Resistance of the copper over that at 20 °C. */
  readonly copperRatio: number
}

/** I = (E − jhω Σ m_k I_k) / (R + jhωL), order by order; `current` of the phases, none at open terminals. */
export function loopCurrent(
  loop: LoopVoltage,
  base: number,
  { speed, copperRatio }: LoopState,
  current: readonly FourierSeries[] = [],
): FourierSeries {
  const orders = Math.max(loop.emf.cos.length, ...current.map(({ cos }) => cos.length)) - 1
  const series = zeroSeries(orders)
  const R = loop.resistance * copperRatio
  for (let h = 0; h <= orders; h++) {
    const ω = h * base * speed
    const X = ω * loop.inductance
    // phasors cos − j sin
    let re = (loop.emf.cos[h] ?? 0) * speed
    let im = -(loop.emf.sin[h] ?? 0) * speed
    current.forEach(({ cos, sin }, k) => {
      re -= ω * loop.coupling[k]! * (sin[h] ?? 0)
      im -= ω * loop.coupling[k]! * (cos[h] ?? 0)
    })
    const square = R * R + X * X
    series.cos[h] = (re * R + im * X) / square
    series.sin[h] = -(im * R - re * X) / square
  }
  return series
}

const meanSquare = ({ cos, sin }: FourierSeries): number =>
  cos.reduce((sum, a, h) => sum + (h === 0 ? a * a : (a * a + sin[h]! ** 2) / 2), 0)

/** Heat of every loop [W]. */
export const loopLosses = (
  { loops, base }: Pick<LoopedMachine, 'loops' | 'base'>,
  state: LoopState,
  current?: readonly FourierSeries[],
): number[] =>
  loops.map(
    (loop) => meanSquare(loopCurrent(loop, base, state, current)) * loop.resistance * state.copperRatio,
  )

export interface SeenCircuit {
  /** At this speed [V]. */
  readonly emf: readonly FourierSeries[]
  /** [Ω], copper as warm as it is. */
  readonly resistance: readonly number[]
  /** Part of it that stands for the heat in the loops [Ω]. */
  readonly reflected: readonly number[]
  /** [H] */
  readonly inductance: readonly (readonly number[])[]
}

/**
 * The machine as its terminals show it: the loops' current at open terminals takes −jhω m I from every order of the
 * phases' volts, and their answer to the phases' currents adds (ω m_k m_l)²-like terms, taken at the working order,
 * where nearly all of the current is; resistances between different phases, a small part of them, are left out.
 *
 *   E′_k = E_k − jhω Σ m_k E_s/Z_s,  R′ = R + Σ (ω m)² R_s/|Z_s|²,  L′ = L − Σ ω² m_k m_l L_s/|Z_s|²
 */
export function seenCircuit(machine: LoopedMachine, state: LoopState): SeenCircuit {
  const { base, order, loops, phases } = machine
  const { speed, copperRatio } = state
  const emf = phases.map((phase) => seriesScaled(phase.emf, speed))
  const reflected = phases.map(() => 0)
  const inductance = machine.inductance.map((row) => [...row])
  const ω = base * order * speed
  for (const loop of loops) {
    const own = loopCurrent(loop, base, state)
    const R = loop.resistance * copperRatio
    const square = R * R + (ω * loop.inductance) ** 2
    loop.coupling.forEach((m, k) => {
      emf[k]!.cos.forEach((_, h) => {
        const X = h * base * speed * m
        emf[k]!.cos[h]! -= X * (own.sin[h] ?? 0)
        emf[k]!.sin[h]! += X * (own.cos[h] ?? 0)
      })
      reflected[k]! += ((ω * m) ** 2 * R) / square
      loop.coupling.forEach((n, l) => {
        inductance[k]![l]! -= (ω * ω * m * n * loop.inductance) / square
      })
    })
  }
  return {
    emf,
    reflected,
    resistance: phases.map(({ resistance }, k) => resistance * copperRatio + reflected[k]!),
    inductance,
  }
}
