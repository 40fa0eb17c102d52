/** Checks of defects of the winding against plain arithmetic, and of shorted turns against the whole circuit solved at once. */
import { describe, expect, test } from 'vitest'
import { designOf } from '../../test/example.ts'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import { resolveDesign } from '../machine/resolve.ts'
import {
  fourierSeries,
  harmonicAmplitude,
  seriesDelayed,
  seriesSum,
  seriesValue,
} from '../numerics/fourier.ts'
import { linearSolve } from '../numerics/linear-solve.ts'
import { rotorField } from './air-gap-field.ts'
import { circulation } from './circulation.ts'
import { conductorLayout } from './conductor-layout.ts'
import { loadPoint } from './load-point.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { shortCircuit } from './short-circuit.ts'
import { loopCurrent, loopLosses } from './turn-loop.ts'
import { woundMachine } from './winding.ts'

type Change = (document: ReturnType<typeof fixedDocument>) => void

/** Field, wire and volts of a document with some defects; magnets' fields are computed once for each document. */
const fields = new Map<string, ReturnType<typeof rotorField>>()
function machineOf(name: FixedName, defects: readonly object[] = [], change: Change = () => {}) {
  const document = fixedDocument(name)
  change(document)
  document.defects = defects
  const machine = resolveDesign(designOf(document))
  const field = fields.get(name) ?? rotorField(machine)
  fields.set(name, field)
  const layout = conductorLayout(machine)
  const wound = woundMachine(machine, layout)
  return { machine, field, layout, wound, voltage: openCircuitVoltage(machine, field, layout, wound) }
}

const delta: Change = (document) => {
  document.stator.connection = 'delta'
}
const inHand: Change = (document) => {
  document.stator.wire.strands = 4
}

const sound = machineOf('twoDiscs')
const drum = machineOf('drum')
const fundamental = ({ voltage }: typeof sound, phase: number) => voltage.phases[phase]!.fundamental
const lineFundamentals = ({ voltage }: typeof sound) =>
  voltage.lines.map(({ emf }) => harmonicAmplitude(emf, voltage.order))
const corner = ({ voltage }: typeof sound) =>
  harmonicAmplitude(seriesSum(voltage.phases.map(({ emf }) => emf)), voltage.order)

describe('law: the wrong way round', () => {
  test('one of n coils in series leaves (n − 2)/n', () => {
    const n = sound.layout.coils.filter(({ phase }) => phase === 0).length
    const one = machineOf('twoDiscs', [{ kind: 'reversed coil', coil: 4 }])
    const phase = sound.layout.coils[3]!.phase
    expect(fundamental(one, phase) / fundamental(sound, phase)).toBeCloseTo((n - 2) / n, 10)
  })
  test('a phase of a star leaves E, E and √3 E between the lines', () => {
    const E = fundamental(sound, 0)
    const lines = lineFundamentals(machineOf('twoDiscs', [{ kind: 'reversed phase', phase: 2 }]))
    expect(lines.map((line) => line / E)).toEqual([
      expect.closeTo(1, 9),
      expect.closeTo(1, 9),
      expect.closeTo(Math.sqrt(3), 9),
    ])
  })
  test('a phase of a delta leaves 2 E across the open corner, where next to nothing was', () => {
    const whole = machineOf('twoDiscs', [], delta)
    const turned = machineOf('twoDiscs', [{ kind: 'reversed phase', phase: 3 }], delta)
    expect(corner(whole) / fundamental(whole, 0)).toBeLessThan(1e-9)
    expect(corner(turned) / fundamental(whole, 0)).toBeCloseTo(2, 9)
  })
  test('a serpentine phase turned round keeps its volts and points the other way', () => {
    const turned = machineOf('drum', [{ kind: 'reversed phase', phase: 2 }])
    expect(turned.voltage.phases[1]!.rms).toBe(drum.voltage.phases[1]!.rms)
    expect(Math.cos(turned.voltage.phases[1]!.lag - drum.voltage.phases[1]!.lag)).toBeCloseTo(-1, 9)
  })
  test('turned round twice, by its coils and as a phase, it is sound again', () => {
    const twice = machineOf('drum', [
      { kind: 'reversed coil', coil: 2 },
      { kind: 'reversed phase', phase: 2 },
    ])
    expect(twice.voltage.phases).toEqual(drum.voltage.phases)
  })
  test('swapped phases: the same volts, the other order', () => {
    const swapped = machineOf('drum', [{ kind: 'swapped phases', phase: 1, other: 3 }])
    const volts = (of: typeof drum) => of.voltage.phases.map(({ rms }) => rms)
    expect(volts(swapped)).toEqual(volts(drum).reverse())
    const sorted = (of: typeof drum) => lineFundamentals(of).sort((a, b) => a - b)
    sorted(drum).forEach((line, k) => {
      expect(sorted(swapped)[k]! / line).toBeCloseTo(1, 12)
    })
    const order = (of: typeof drum) =>
      Math.sign(Math.sin(of.voltage.phases[1]!.lag - of.voltage.phases[0]!.lag))
    expect(order(swapped)).toBe(-order(drum))
  })
})

describe('law: copper that is left', () => {
  test('open strands: S/(S − o) of the phase’s wire, volts untouched, wherever its terminals are', () => {
    const whole = machineOf('twoDiscs', [], inHand)
    const joint = whole.machine.stator.jointResistance
    const broken = machineOf(
      'twoDiscs',
      [
        { kind: 'open strand', phase: 2, strands: 1 },
        { kind: 'swapped phases', phase: 2, other: 3 },
      ],
      inHand,
    )
    const copper = (of: typeof whole, phase: number) => of.voltage.phases[phase]!.resistance - joint
    expect(copper(broken, 2) / copper(whole, 1)).toBeCloseTo(4 / 3, 10)
    expect(copper(broken, 1) / copper(whole, 2)).toBeCloseTo(1, 10)
    expect(broken.voltage.phases[2]!.rms).toBeCloseTo(whole.voltage.phases[1]!.rms, 10)
  })
  test('shorted turns: (N − s)/N of the coil’s volts and ohms, its square of the henries', () => {
    const { turns } = sound.layout.shapes[0]!
    const s = 7
    const shorted = machineOf('twoDiscs', [{ kind: 'shorted turns', coil: 1, turns: s }])
    const left = (turns - s) / turns
    expect(shorted.voltage.coils[0]!.fundamental / sound.voltage.coils[0]!.fundamental).toBeCloseTo(left, 10)
    expect(shorted.wound.coilResistance[0]! / sound.wound.coilResistance[0]!).toBeCloseTo(left, 10)
    expect(shorted.wound.coilInductance[0]![0]! / sound.wound.coilInductance[0]![0]!).toBeCloseTo(
      left ** 2,
      10,
    )
    expect(shorted.voltage.coils[1]!.fundamental).toBe(sound.voltage.coils[1]!.fundamental)
  })
  test('a coil with all its turns shorted gives nothing, and the machine still computes', () => {
    const { turns } = sound.layout.shapes[0]!
    const gone = machineOf('twoDiscs', [{ kind: 'shorted turns', coil: 1, turns }])
    const phase = gone.layout.coils[0]!.phase
    const n = gone.layout.coils.filter((coil) => coil.phase === phase).length
    expect(fundamental(gone, phase) / fundamental(sound, phase)).toBeCloseTo((n - 1) / n, 5)
    expect(
      loadPoint(gone.machine, gone.voltage, { speed: 60, copperTemperature: 300 }).dcCurrent,
    ).toBeGreaterThan(0)
  })
  test('no two loops and coils can store less than nothing', () => {
    for (const turns of [1, 5, 30]) {
      const { wound } = machineOf('twoDiscs', [{ kind: 'shorted turns', coil: 1, turns }])
      const [loop] = wound.loops
      expect(loop!.inductance * wound.coilInductance[0]![0]!).toBeGreaterThan(loop!.mutual[0]! ** 2)
    }
  })
})

describe('law: a loop’s energy', () => {
  const { machine, layout, wound, voltage } = machineOf('twoDiscs', [
    { kind: 'shorted turns', coil: 2, turns: 6 },
  ])
  test('with nothing connected: what the EMF gives is what the copper burns, at every speed', () => {
    const { loops } = circulation(machine, layout, wound, voltage, 100)
    for (const speed of [1, 10, 80]) {
      const [loop] = voltage.loops
      const current = loopCurrent(loop!, voltage.base, { speed, copperRatio: 1 })
      let power = 0
      for (let h = 1; h < loop!.emf.cos.length; h++)
        power += (speed * (loop!.emf.cos[h]! * current.cos[h]! + loop!.emf.sin[h]! * current.sin[h]!)) / 2
      expect(loops(speed) / power).toBeCloseTo(1, 9)
    }
  })
  test('charging: Σ e i of the phases as wound and of the loop is the shaft’s power', () => {
    const speed = 55
    const copperTemperature = 293.15
    const N = 128
    const point = loadPoint(machine, voltage, { speed, copperTemperature, samples: N })
    const sum = point.power
    expect(
      (sum.winding + sum.line + sum.diodes + sum.dcCable + sum.batteryResistance + sum.load) / sum.shaft,
    ).toBeCloseTo(1, 5)
    const current = point.waveforms!.phaseCurrent
    const loop = voltage.loops[0]!
    const inLoop = loopCurrent(
      loop,
      voltage.base,
      { speed, copperRatio: 1 },
      current.map((samples) => fourierSeries(samples, 40)),
    )
    let power = 0
    for (let k = 0; k < N; k++) {
      const x = (2 * Math.PI * k) / N
      voltage.phases.forEach(({ emf }, n) => {
        power += (speed * seriesValue(emf, x) * current[n]![k]!) / N
      })
      power += (speed * seriesValue(loop.emf, x) * seriesValue(inLoop, x)) / N
    }
    expect(Math.abs(power / sum.shaft - 1)).toBeLessThan(0.003)
  })
})

describe('agrees: shorted turns in a short-circuited star, phases and loop as one system of phasors', () => {
  const { machine, voltage } = machineOf('twoDiscs', [{ kind: 'shorted turns', coil: 1, turns: 9 }])
  for (const speed of [10, 40, 120])
    test(`${speed} rad/s`, () => {
      const [loop] = voltage.loops
      const ω = machine.rotor.polePairs * speed
      // currents of three phases, the loop, then the star point's volts; real and imaginary parts
      const L = [
        ...voltage.inductance.map((row, k) => [...row, loop!.coupling[k]!]),
        [...loop!.coupling, loop!.inductance],
      ]
      const R = [...voltage.phases.map(({ resistance }) => resistance), loop!.resistance]
      const E = [...voltage.phases.map(({ emf }) => emf), loop!.emf]
      const m = 10
      const A = new Float64Array(m * m)
      const b = new Float64Array(m)
      for (let i = 0; i < 4; i++) {
        for (let k = 0; k < 4; k++) {
          const X = ω * L[i]![k]!
          const r = i === k ? R[i]! : 0
          A[2 * i * m + 2 * k] = r
          A[2 * i * m + 2 * k + 1] = -X
          A[(2 * i + 1) * m + 2 * k] = X
          A[(2 * i + 1) * m + 2 * k + 1] = r
        }
        if (i < 3) {
          A[2 * i * m + 8] = 1
          A[(2 * i + 1) * m + 9] = 1
          A[8 * m + 2 * i] = 1
          A[9 * m + 2 * i + 1] = 1
        }
        b[2 * i] = E[i]!.cos[1]! * speed
        b[2 * i + 1] = -E[i]!.sin[1]! * speed
      }
      const x = linearSolve(A, b)
      const square = (i: number) => (x[2 * i]! ** 2 + x[2 * i + 1]! ** 2) / 2
      const loss = [0, 1, 2, 3].reduce((sum, i) => sum + square(i) * R[i]!, 0)
      const ours = shortCircuit(machine, voltage, 'leads')(speed, 293.15)
      // resistances that the loop puts between phases are left out
      expect(Math.abs(ours.loss / loss - 1)).toBeLessThan(0.01)
      expect(
        Math.abs(ours.phaseCurrent / Math.sqrt(Math.max(square(0), square(1), square(2))) - 1),
      ).toBeLessThan(0.01)
    })
  test('with nothing connected the loop is R and L in series', () => {
    const [loop] = voltage.loops
    const speed = 30
    const Z = Math.hypot(loop!.resistance, machine.rotor.polePairs * speed * loop!.inductance)
    const current = loopCurrent(loop!, voltage.base, { speed, copperRatio: 1 })
    expect(harmonicAmplitude(current, 1)).toBeCloseTo((harmonicAmplitude(loop!.emf, 1) * speed) / Z, 9)
    expect(loopLosses(voltage, { speed, copperRatio: 2 })[0]!).toBeGreaterThan(0)
  })
})

describe('law: a defect of no amount changes nothing', () => {
  for (const name of ['drum', 'twoDiscs'] as const)
    test(name, () => {
      const whole = name === 'drum' ? drum : sound
      const { voltage, wound } = machineOf(name, [
        { kind: 'unequal gap', difference_mm: 0 },
        { kind: 'swapped phases', phase: 1, other: 2 },
        { kind: 'swapped phases', phase: 2, other: 1 },
      ])
      expect(voltage.phases).toEqual(whole.voltage.phases)
      expect(wound).toEqual(whole.wound)
    })
  test('a loop of ever fewer turns takes ever less', () => {
    const losses = [8, 4, 2, 1].map(
      (turns) =>
        loopLosses(machineOf('twoDiscs', [{ kind: 'shorted turns', coil: 1, turns }]).voltage, {
          speed: 1,
          copperRatio: 1,
        })[0]!,
    )
    losses.slice(1).forEach((loss, k) => {
      expect(losses[k]! / loss).toBeCloseTo(2, 2)
    })
  })
  test('the waveform of a coil elsewhere on the circle is the first one’s, later', () => {
    const [first, second] = sound.voltage.coils
    const later = seriesDelayed(first!.emf, sound.voltage.base * (second!.coil.angle - first!.coil.angle))
    expect(
      harmonicAmplitude(
        seriesSum([later, { cos: second!.emf.cos.map((a) => -a), sin: second!.emf.sin.map((a) => -a) }]),
        1,
      ),
    ).toBeLessThan(1e-12)
  })
})
