/** A winding with one phase open: what is left is another machine, with fewer phases and perhaps another connection. */
import { type FourierSeries, seriesPeak, seriesRms, seriesScaled, seriesSum } from '../numerics/fourier.ts'
import type { MachineConnection } from '../physics/electrics/bridge-rectifier.ts'
import type { OpenCircuitVoltage, PhaseVoltage } from './open-circuit-voltage.ts'

/** Phases as a circuit sees them. */
export interface Phases {
  readonly connection: MachineConnection
  readonly emf: readonly FourierSeries[]
  readonly resistance: readonly number[]
  /** Phase × phase [H]. */
  readonly inductance: readonly (readonly number[])[]
}

/** A phase that is left and the sense it is seen in; undefined for a bare wire. */
type Term = { readonly phase: number; readonly sign: 1 | -1 } | undefined

interface Rest {
  readonly connection: MachineConnection
  readonly terms: readonly Term[]
}

/**
 * What is left of n phases when one opens. A star and separate phases go on without it. Of a delta two phases stay in a
 * V: a star about the terminal where they meet, whose third arm is that terminal's own wire.
 */
function restOf(connection: MachineConnection, n: number, open: number): Rest | undefined {
  if (connection === 'delta') {
    const next = (open + 1) % n
    const last = (open + 2) % n
    if (n !== 3) return undefined
    const terms: Term[] = [undefined, undefined, undefined]
    // phase k runs from terminal k + 1 to terminal k
    terms[open] = { phase: last, sign: -1 }
    terms[next] = { phase: next, sign: 1 }
    return { connection: 'star', terms }
  }
  const terms = Array.from({ length: n }, (_, phase): Term => ({ phase, sign: 1 })).filter(
    (_, k) => k !== open,
  )
  if (terms.length === 0 || (connection === 'star' && terms.length < 2)) return undefined
  return { connection, terms }
}

const still: FourierSeries = { cos: Float64Array.of(0, 0), sin: Float64Array.of(0, 0) }

const coupled = (inductance: readonly (readonly number[])[], a: Term, b: Term): number =>
  a === undefined || b === undefined ? 0 : a.sign * b.sign * inductance[a.phase]![b.phase]!

/** The phases that go on working when `open`, counted from 0, is open; undefined where no current can flow any more. */
export function withoutPhase<Seen extends Phases>(seen: Seen, open: number): Seen | undefined {
  const rest = restOf(seen.connection, seen.emf.length, open)
  if (rest === undefined) return undefined
  const { connection, terms } = rest
  return {
    ...seen,
    connection,
    emf: terms.map((term) => (term === undefined ? still : seriesScaled(seen.emf[term.phase]!, term.sign))),
    resistance: terms.map((term) => (term === undefined ? 0 : seen.resistance[term.phase]!)),
    inductance: terms.map((a) => terms.map((b) => coupled(seen.inductance, a, b))),
  }
}

const bareWire = (like: PhaseVoltage): PhaseVoltage => ({
  ...like,
  emf: still,
  rms: 0,
  peak: 0,
  fundamental: 0,
  resistance: 0,
  inductance: 0,
  branches: [],
  branchMismatch: 0,
})

/** The same of the volts per unit of speed, with the connection that is left. */
export function openPhaseVoltage(
  voltage: OpenCircuitVoltage,
  connection: MachineConnection,
  open: number,
): { readonly connection: MachineConnection; readonly voltage: OpenCircuitVoltage } | undefined {
  const rest = restOf(connection, voltage.phases.length, open)
  if (rest === undefined) return undefined
  const { terms } = rest
  const phases = terms.map((term) => {
    if (term === undefined) return bareWire(voltage.phases[open]!)
    const phase = voltage.phases[term.phase]!
    return { ...phase, emf: seriesScaled(phase.emf, term.sign) }
  })
  const emf = phases.map((phase) => phase.emf)
  const series =
    rest.connection === 'star'
      ? emf.flatMap((a, i) => emf.slice(i + 1).map((b) => seriesSum([a, seriesScaled(b, -1)])))
      : emf
  const lines = series.map((line) => ({ emf: line, rms: seriesRms(line), peak: seriesPeak(line) }))
  return {
    connection: rest.connection,
    voltage: {
      ...voltage,
      phases,
      inductance: terms.map((a) => terms.map((b) => coupled(voltage.inductance, a, b))),
      lines,
      greatestLinePeak: Math.max(...lines.map(({ peak }) => peak)),
      loops: voltage.loops.map((loop) => ({
        ...loop,
        coupling: terms.map((term) => (term === undefined ? 0 : term.sign * loop.coupling[term.phase]!)),
      })),
    },
  }
}
