/** The circuit of one of the committed netlists, read from its parameters. */
import type { FourierSeries } from '../src/numerics/fourier.ts'
import type { RectifierInput } from '../src/physics/electrics/bridge-rectifier.ts'

const suffix: Readonly<Record<string, number>> = { m: 1e-3, u: 1e-6, n: 1e-9, k: 1e3 }

/** A star into a battery. */
export function netlistCircuit(netlist: string): RectifierInput {
  const values = new Map<string, number>()
  for (const [, name, digits, letter] of netlist.matchAll(/^\.param (\w+)=([-\d.]+)([munk]?)$/gm))
    values.set(name!, Number(digits) * (letter ? suffix[letter]! : 1))
  const value = (name: string): number => {
    const found = values.get(name)
    if (found === undefined) throw new Error(`the netlist has no ${name}`)
    return found
  }
  const phases = [0, 1, 2]
  return {
    connection: 'star',
    emf: phases.map((k): FourierSeries => {
      const cos = new Float64Array(6)
      const sin = new Float64Array(6)
      for (const h of [1, 3, 5]) {
        const amplitude = value(`E${h}`) * value(`s${'abc'[k]}`)
        cos[h] = -amplitude * Math.sin((h * 2 * Math.PI * k) / 3)
        sin[h] = amplitude * Math.cos((h * 2 * Math.PI * k) / 3)
      }
      return { cos, sin }
    }),
    frequency: value('f'),
    resistance: phases.map(() => value('R')),
    inductance: phases.map((i) => phases.map((j) => value('L') * (i === j ? 1 : value('k')))),
    lineResistance: value('Rline'),
    diode: { threshold: value('vth'), slope: value('rs') },
    dcResistance: value('rdc'),
    load: { kind: 'battery', voltage: value('vbat'), resistance: value('rbat') },
  }
}
