/** The circuit that a committed netlist describes, so that simulator and solver are given the same numbers. */
import type { FourierSeries } from '../src/numerics/fourier.ts'
import type {
  DiodeFault,
  MachineConnection,
  RectifierInput,
} from '../src/physics/electrics/bridge-rectifier.ts'

/** The circuit of a netlist, from its `.param` lines and the two comments that name connection and load. */
export function netlistCircuit(netlist: string): RectifierInput {
  const suffix: Readonly<Record<string, number>> = { m: 1e-3, u: 1e-6, n: 1e-9, k: 1e3 }
  const values = new Map<string, number>()
  for (const [, name, digits, letter] of netlist.matchAll(/^\.param (\w+)=([-\d.]+)([munk]?)$/gm))
    values.set(name!, Number(digits) * (letter ? suffix[letter]! : 1))
  const value = (name: string): number => {
    const found = values.get(name)
    if (found === undefined) throw new Error(`the netlist has no ${name}`)
    return found
  }
  const word = (name: string) => new RegExp(`^\\* ${name} (\\w+)$`, 'm').exec(netlist)![1]!
  const connection = word('connection') as MachineConnection
  const n = connection === 'single' ? 1 : 3
  const factor = (letter: string, k: number) => values.get(`${letter}${'abc'[k]}`) ?? 1
  const diodeFaults = [
    ...netlist.matchAll(/^\* fault line=(\w)(?: end=(\w+))? side=(\w+) kind=(\w+)$/gm),
  ].map(
    ([, line, end, side, kind]) =>
      ({
        line: 'abc'.indexOf(line!),
        ...(end === undefined ? {} : { end }),
        side,
        kind,
      }) as DiodeFault,
  )
  const emf = Array.from({ length: n }, (_, k): FourierSeries => {
    const cos = new Float64Array(6)
    const sin = new Float64Array(6)
    for (const h of [1, 3, 5]) {
      const amplitude = value(`E${h}`) * value(`s${'abc'[k]}`)
      const lag = (h * 2 * Math.PI * k) / 3
      cos[h] = -amplitude * Math.sin(lag)
      sin[h] = amplitude * Math.cos(lag)
    }
    return { cos, sin }
  })
  return {
    connection,
    emf,
    frequency: value('f'),
    resistance: Array.from({ length: n }, (_, k) => value('R') * factor('r', k)),
    inductance: Array.from({ length: n }, (_, i) =>
      Array.from({ length: n }, (_, j) => value('L') * (i === j ? factor('l', i) : value('k'))),
    ),
    lineResistance: value('Rline'),
    diode: { threshold: value('vth'), slope: value('rs') },
    dcResistance: value('rdc'),
    load:
      word('load') === 'battery'
        ? { kind: 'battery', voltage: value('vbat'), resistance: value('rbat') }
        : { kind: 'resistor', resistance: value('rload') },
    diodeFaults,
  }
}
