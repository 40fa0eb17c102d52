/** The EMF and what a mode answers to its harmonics, at an angle or at the steps of an arc: sums of harmonics. */
import type { ConductionMode } from './conduction-mode.ts'
import { harmonicSums } from './harmonic-sum.ts'
import type { RectifierCircuit } from './rectifier-circuit.ts'

/** An angle from 0 in so many equal steps. */
export interface Arc {
  readonly span: number
  readonly steps: number
}

/** Each writes into the arrays that were handed over. */
export interface Waves {
  /** Sets the angle. */
  readonly turn: (θ: number) => void
  /** The EMF at the angle turned to. */
  readonly emfNow: () => void
  /** The mode's response to the harmonics at the angle turned to. */
  readonly respond: (mode: ConductionMode) => void
  /** Both at the step i of an arc, always the same arc of one circuit: what every march needs is kept. */
  readonly emfAtStep: (i: number, arc: Arc) => void
  readonly respondAtStep: (mode: ConductionMode, i: number, arc: Arc) => void
}

/** cos h θ and sin h θ of all orders, by turning on. */
function harmonics(θ: number, [ch, sh]: readonly [Float64Array, Float64Array]): void {
  const c1 = Math.cos(θ)
  const s1 = Math.sin(θ)
  let c = 1
  let s = 0
  ch[0] = 1
  sh[0] = 0
  for (let h = 1; h < ch.length; h++) {
    const next = c * c1 - s * s1
    s = s * c1 + c * s1
    c = next
    ch[h] = c
    sh[h] = s
  }
}

/**
 * Waves as the sums of their harmonics.
 *
 * @internal a step of mode-response: writes the EMF into `emf`, a mode’s response into `p`
 */
export function summedWaves(circuit: RectifierCircuit, emf: Float64Array, p: Float64Array): Waves {
  const { phases: n, orders } = circuit
  const trig = [new Float64Array(orders + 1), new Float64Array(orders + 1)] as const
  const sources = [circuit.emfCos, circuit.emfSin] as const
  // What was last worked out: most angles are asked about more than once.
  let angle = Number.NaN
  let summedAngle = Number.NaN
  let emfAngle = Number.NaN
  let responded: ConductionMode | undefined
  let respondedAngle = Number.NaN

  const turn = (θ: number) => {
    angle = θ
  }
  const sum = () => {
    if (summedAngle === angle) return
    summedAngle = angle
    harmonics(angle, trig)
  }
  const emfNow = () => {
    if (emfAngle === angle) return
    emfAngle = angle
    sum()
    harmonicSums(emf, n, sources, trig)
  }
  const respond = (mode: ConductionMode) => {
    if (responded === mode && respondedAngle === angle) return
    responded = mode
    respondedAngle = angle
    sum()
    harmonicSums(p, mode.free, [mode.cos, mode.sin], trig)
  }

  // p of each mode, and the EMF, at the steps of the arc: NaN until they are first needed.
  const pAtSteps = new Map<ConductionMode, Float64Array>()
  let emfAtSteps = new Float64Array(0)
  const atSteps = (steps: number, width: number) => new Float64Array((steps + 1) * width).fill(Number.NaN)
  const respondAtStep = (mode: ConductionMode, i: number, { span, steps }: Arc) => {
    const f = mode.free
    if (f === 0) return
    let table = pAtSteps.get(mode)
    if (table === undefined) {
      table = atSteps(steps, f)
      pAtSteps.set(mode, table)
    }
    const θ = span * (i / steps)
    if (Number.isNaN(table[i * f]!)) {
      turn(θ)
      respond(mode)
      for (let j = 0; j < f; j++) table[i * f + j] = p[j]!
      return
    }
    for (let j = 0; j < f; j++) p[j] = table[i * f + j]!
    responded = mode
    respondedAngle = θ
  }
  const emfAtStep = (i: number, { span, steps }: Arc) => {
    if (emfAtSteps.length === 0) emfAtSteps = atSteps(steps, n)
    const θ = span * (i / steps)
    if (Number.isNaN(emfAtSteps[i * n]!)) {
      turn(θ)
      emfNow()
      for (let k = 0; k < n; k++) emfAtSteps[i * n + k] = emf[k]!
      return
    }
    for (let k = 0; k < n; k++) emf[k] = emfAtSteps[i * n + k]!
    emfAngle = θ
  }
  return { turn, emfNow, respond, emfAtStep, respondAtStep }
}
