/** Coils, branches or phases as a circuit: what a list of EMFs with resistances and inductances must satisfy. */
import type { FourierSeries } from '../../numerics/fourier.ts'
import { refuse, requireFinite, requirePositive } from '../../refusal/require.ts'

export interface EmfCircuit {
  readonly emf: readonly FourierSeries[]
  /** Of each [Ω]. */
  readonly resistance: readonly number[]
  /** Each with each, self on the diagonal [H]. */
  readonly inductance: readonly (readonly number[])[]
}

/** @internal How many there are; refuses lists of unlike length and values without meaning. */
export function requireEmfCircuit({ emf, resistance, inductance }: EmfCircuit): number {
  const n = emf.length
  if (resistance.length !== n)
    refuse({ name: 'resistance', condition: `${n} long`, value: resistance.length, code: 'wrong-length' })
  if (inductance.length !== n || inductance.some((row) => row.length !== n))
    refuse({ name: 'inductance', condition: `${n} × ${n}`, value: inductance.length, code: 'wrong-length' })
  resistance.forEach((R, k) => {
    requirePositive(`resistance[${k}]`, R, 'Ω')
  })
  for (const row of inductance) for (const L of row) requireFinite('inductance', L, 'H')
  return n
}
