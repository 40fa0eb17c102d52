/** Circuits for checks of the rectifier: plain waves, equal phases, a star into a battery. */
import type { FourierSeries } from '../src/numerics/fourier.ts'
import type { RectifierInput } from '../src/physics/electrics/bridge-rectifier.ts'

/** Σ amplitude_h sin(h (x − lag)), orders 1, 2, 3 … */
export const wave = (amplitudes: readonly number[], lag: number): FourierSeries => {
  const cos = new Float64Array(amplitudes.length + 1)
  const sin = new Float64Array(amplitudes.length + 1)
  amplitudes.forEach((a, k) => {
    cos[k + 1] = -a * Math.sin((k + 1) * lag)
    sin[k + 1] = a * Math.cos((k + 1) * lag)
  })
  return { cos, sin }
}
export const phases = (n: number, amplitudes: readonly number[]) =>
  Array.from({ length: n }, (_, k) => wave(amplitudes, (2 * Math.PI * k) / n))
export const diagonal = (n: number, L: number, M = 0) =>
  Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => (i === j ? L : M)))

/** Star of three phases into a 12 V battery, changed at will. */
export const machine = (change: Partial<RectifierInput> = {}): RectifierInput => ({
  connection: 'star',
  emf: phases(3, [12]),
  frequency: 45,
  resistance: [0.6, 0.6, 0.6],
  inductance: diagonal(3, 1.5e-3),
  lineResistance: 0,
  diode: { threshold: 0.7, slope: 0.02 },
  dcResistance: 0,
  load: { kind: 'battery', voltage: 12, resistance: 0.02 },
  ...change,
})
