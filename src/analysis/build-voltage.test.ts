/** Checks of the volts of a build: shifted and scaled copies of one linkage against whole chains, and against closed forms. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import type { Machine } from '../machine/machine.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import type { ToleranceName } from '../machine/tolerance.ts'
import {
  type FourierSeries,
  harmonicAmplitude,
  seriesRms,
  seriesScaled,
  seriesSum,
} from '../numerics/fourier.ts'
import { sampleMoments } from '../numerics/sample-moment.ts'
import { connectPhases } from '../physics/winding/connection.ts'
import { type Pole, rotorField } from './air-gap-field.ts'
import { buildBasis } from './build-basis.ts'
import { buildDraws, errorGroups, nineOfTen } from './build-draw.ts'
import { type BuildError, buildError, drawnBuild, rotorError } from './build-error.ts'
import { buildAssembly, overTurn } from './build-voltage.ts'
import { conductorLayout } from './conductor-layout.ts'
import { oneMagnetShare } from './fault-signature.ts'
import { rotorLinkage } from './flux-linkage.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { finished } from './step.ts'
import { withdrawn } from './tilted-linkage.ts'
import { woundMachine } from './winding.ts'

type Change = (document: ReturnType<typeof fixedDocument>) => void

function machineOf(name: FixedName, change: Change = () => {}): Machine {
  const document = fixedDocument(name)
  change(document)
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return resolveDesign(parsed.design)
}

function partsOf(machine: Machine) {
  const field = rotorField(machine, machine.site.ambient)
  const layout = conductorLayout(machine)
  const wound = woundMachine(machine, layout)
  return { machine, field, layout, wound, voltage: openCircuitVoltage(machine, field, layout, wound) }
}

/** Everything that assembles builds of a machine, for as many draws as are wanted. */
function bench(name: FixedName, change?: Change, count = 64) {
  const machine = machineOf(name, change)
  const parts = partsOf(machine)
  const basis = finished(buildBasis(parts, { across: 1.5e-3, away: 0.8e-3, apart: 0.8e-3 }))
  const draws = buildDraws(errorGroups(machine, parts.layout), count, 5)
  return {
    ...parts,
    basis,
    assemble: buildAssembly(parts, basis),
    error: (build: number, names: readonly ToleranceName[], times = 1) =>
      buildError(machine, parts.layout, draws(build), (one) => (names.includes(one) ? times : 0)),
  }
}

type Bench = ReturnType<typeof bench>

const apart = (a: FourierSeries, b: FourierSeries) =>
  seriesRms(seriesSum([a, seriesScaled(b, -1)])) / seriesRms(b)

/** Worst of the coils and of the phases: the assembly against the chain of the very machine. */
function misses(on: Bench, error: BuildError, made: Machine) {
  const built = on.assemble(error)
  const full = partsOf(made).voltage
  const whole = (emf: FourierSeries) => overTurn(emf, full.base, on.basis.orders)
  const drawn = (emf: FourierSeries) => overTurn(emf, on.voltage.base, on.basis.orders)
  return {
    coil: Math.max(...full.coils.map(({ emf }, k) => apart(built.coils[k]!, whole(emf)))),
    changed: Math.max(...full.coils.map(({ emf }, k) => apart(drawn(on.voltage.coils[k]!.emf), whole(emf)))),
    phase: Math.max(...full.phases.map(({ rms }, k) => Math.abs(seriesRms(built.emf[k]!) / rms - 1))),
  }
}

/** The machine with the very magnets that a build has, one by one in its document’s terms. */
const withMagnets = (machine: Machine, { magnets }: BuildError): Machine => ({
  ...machine,
  rotor: {
    ...machine.rotor,
    alternating: false,
    rings: machine.rotor.rings.map((ring, r) =>
      ring.map((place, k) => ({
        ...place,
        shift: place.shift + magnets[r]![k]!.around,
        strength: place.strength * magnets[r]![k]!.strength,
      })),
    ),
  },
})

describe('agrees: whole chain of the machine with those very magnets — all beside their places, all of unlike strength', () => {
  for (const name of ['drum', 'twoDiscs', 'disc'] as const)
    test(`${name}: phases to 1e-6, every coil to 1.5e-3 of its volts, at three times the usual errors`, () => {
      const on = bench(name)
      for (const build of [3, 8]) {
        const error = on.error(build, ['magnetAround_mm', 'magnetStrength_percent'], 3)
        const { coil, phase, changed } = misses(on, error, withMagnets(on.machine, error))
        expect(changed).toBeGreaterThan(0.01)
        expect(phase).toBeLessThan(1e-6)
        // the chain drops orders by its own weakest share, build by build
        expect(coil).toBeLessThan(1.5e-3)
      }
    })
})

describe('agrees: whole chain with the winding, or a face, elsewhere', () => {
  test('winding farther or nearer: phases to 2e-4 where the volts change by up to 4 %', () => {
    for (const name of ['drum', 'twoDiscs', 'disc'] as const) {
      const on = bench(name)
      for (const build of [3, 4]) {
        const error = on.error(build, ['statorDistance_mm'], 2)
        expect(misses(on, error, withdrawn(on.machine, error.coils[0]!.away)).phase).toBeLessThan(2e-4)
      }
    }
  })
  test('faces farther apart: to 2e-5, the steel’s saturation left to the drawing', () => {
    const on = bench('twoDiscs')
    for (const build of [3, 4]) {
      const error = on.error(build, ['faceDistance_mm'])
      const { rotor } = on.machine
      const made = { ...on.machine, rotor: { ...rotor, faceDistance: rotor.faceDistance! + error.apart } }
      expect(misses(on, error, made).phase).toBeLessThan(2e-5)
    }
  })
  test('stator out of square, leg by leg: phases to 1e-4; coils moved as a whole keep five sixths of their change', () => {
    for (const name of ['twoDiscs', 'disc'] as const) {
      const on = bench(name)
      for (const build of [3, 4]) {
        const error = on.error(build, ['statorTilt_mm'])
        // the arrow of the tilt from what it does to two coils
        const [a, b] = [on.layout.coils[0]!.angle, on.layout.coils[1]!.angle]
        const [u, v] = [error.coils[0]!.away, error.coils[1]!.away]
        const size = Math.sin(b - a)
        const x = (u * Math.sin(b) - v * Math.sin(a)) / size
        const y = (v * Math.cos(a) - u * Math.cos(b)) / size
        const tilt = { amplitude: Math.hypot(x, y), angle: Math.atan2(-y, -x) }
        const made = { ...on.machine, defects: { ...on.machine.defects, tilt } }
        const { coil, changed, phase } = misses(on, error, made)
        expect(phase).toBeLessThan(1e-4)
        if (name === 'disc') expect(coil).toBeLessThan(changed / 6)
      }
    }
  })
})

describe('agrees: every pole a source of its own', () => {
  test('magnets beside their places across: linkage of the first coil to 2e-4 of its size, change up to some per cent', () => {
    for (const name of ['disc', 'twoDiscs'] as const) {
      const on = bench(name)
      const error = on.error(6, ['magnetAcross_mm'], 2)
      const poles = on.field.poles.flatMap((pole, r): Pole[] =>
        pole.places.map((place, k) => ({
          ...pole,
          sources: pole.sources.map((one) => ({
            ...one,
            centre: [one.centre[0] + error.magnets[r]![k]!.across, one.centre[1], one.centre[2]] as const,
          })),
          places: [place],
        })),
      )
      const unlike = { ...on.machine, rotor: { ...on.machine.rotor, alternating: false } }
      const { flux } = rotorLinkage(unlike, { ...on.field, poles }, on.layout.shapes[0]!)
      const { turns } = on.layout.shapes[0]!
      const built = on.assemble(error).coils[0]!
      for (const h of [1, 2, 3].map((n) => n * on.machine.rotor.polePairs)) {
        const expected = h * turns * harmonicAmplitude(flux, h)
        const whole = on.machine.rotor.polePairs * turns * harmonicAmplitude(flux, on.machine.rotor.polePairs)
        expect(Math.abs(harmonicAmplitude(built, h) - expected) / whole).toBeLessThan(2e-4)
      }
    }
  })
  test('parallel branches are joined as the circuit’s own function joins them', () => {
    const on = bench('twoDiscs', (document) => {
      Object.assign(document.stator.winding, { coilCount: 12, parallelGroups: 2 })
      document.rotor.poleCount = 16
      document.stator.winding.legWidth_mm = 10
    })
    const error = on.error(2, ['coilAround_mm', 'miscounted_percent', 'turnLength_percent'], 4)
    const built = on.assemble(error)
    const resistance = on.wound.coilResistance.map(
      (R, k) =>
        R * (1 + error.coils[k]!.turnLength) * (1 + error.coils[k]!.turns / on.layout.shapes[0]!.turns),
    )
    const joined = connectPhases(
      { emf: built.coils, resistance, inductance: on.wound.coilInductance },
      [0, 1, 2].map((phase) => ({
        branches: [0, 1].map((group) =>
          on.layout.coils.flatMap((one, coil) =>
            one.phase === phase && one.group === group ? [{ coil, sense: one.sense }] : [],
          ),
        ),
      })),
    )
    for (const [k, emf] of joined.emf.entries()) expect(apart(built.emf[k]!, emf)).toBeLessThan(1e-12)
    for (const [k, R] of joined.resistance.entries()) expect(built.resistance[k]! / R).toBeCloseTo(1, 12)
    expect(built.branches.map((own) => own.length)).toEqual([2, 2, 2])
  })
})

describe('law: a build', () => {
  test('without errors is the drawing, to the last bits', () => {
    for (const name of ['drum', 'twoDiscs', 'disc'] as const) {
      const on = bench(name)
      const built = on.assemble(drawnBuild(on.machine, on.layout))
      for (const [k, { rms }] of on.voltage.phases.entries())
        expect(seriesRms(built.emf[k]!) / rms).toBeCloseTo(1, 13)
    }
  })
  test('with one coil a turn short has that coil’s volts and ohms smaller by one of its turns', () => {
    const on = bench('disc')
    const drawn = drawnBuild(on.machine, on.layout)
    const short = drawn.coils.map((coil, k) => (k === 2 ? { ...coil, turns: -1 } : coil))
    const [a, b] = [on.assemble(drawn), on.assemble({ ...drawn, coils: short })]
    for (const k of [0, 1, 2, 3]) {
      const share = k === 2 ? 149 / 150 : 1
      expect(seriesRms(b.coils[k]!) / seriesRms(a.coils[k]!)).toBeCloseTo(share, 12)
    }
    // two coils of 150 turns in series
    expect(b.resistance[on.layout.coils[2]!.phase]! / a.resistance[0]!).toBeCloseTo(299 / 300, 12)
  })
  test('with a thinner wire by 1 % has more ohms by 1/0.99²', () => {
    const on = bench('disc')
    const drawn = drawnBuild(on.machine, on.layout)
    const thin = on.assemble({ ...drawn, wire: -0.01 })
    expect(thin.resistance[0]! / on.assemble(drawn).resistance[0]!).toBeCloseTo(1 / 0.99 ** 2, 12)
  })
  test('with one magnet without strength loses one of its 2p parts, as one that lacks it', () => {
    const on = bench('disc')
    const drawn = drawnBuild(on.machine, on.layout)
    const magnets = drawn.magnets.map((ring) =>
      ring.map((one, k) => (k === 3 ? { ...one, strength: 0 } : one)),
    )
    const built = on.assemble({ ...drawn, magnets })
    const p = on.machine.rotor.polePairs
    const share = harmonicAmplitude(built.emf[0]!, p) / on.voltage.phases[0]!.fundamental
    expect(Math.abs(share - oneMagnetShare(2 * p, 0))).toBeLessThan(1e-3)
    const missing = machineOf('disc', (document) => {
      document.defects = [{ kind: 'missing magnet', position: 4 }]
    })
    expect(misses(on, { ...drawn, magnets }, missing).phase).toBeLessThan(1e-3)
  })
})

describe('law: closed forms of chance', () => {
  const many = 3000
  const fundamental = (on: Bench, error: BuildError) => {
    const p = on.machine.rotor.polePairs
    const { cos, sin } = on.assemble(error).emf[0]!
    const drawn = on.voltage.phases[0]!.emf
    // along the drawing's own phasor
    return (cos[p]! * drawn.cos[1]! + sin[p]! * drawn.sin[1]!) / harmonicAmplitude(drawn, 1) ** 2
  }
  test('independent errors of angle leave exp(−(pσ/R)²/2) of the mean volts, and scatter as their number says', () => {
    const on = bench('disc', undefined, many)
    const times = 6
    const values = Array.from({ length: many }, (_, n) =>
      fundamental(on, on.error(n, ['magnetAround_mm'], times)),
    )
    const { polePairs: p, pitchRadius: R, poleCount } = on.machine.rotor
    const σ = (p * times * 0.5e-3) / nineOfTen / R
    const { mean, deviation } = sampleMoments(values)
    // Var cos ε of a normal ε: (1 − e^(−σ²))²/2
    const expected = (1 - Math.exp(-(σ ** 2))) / Math.sqrt(2 * poleCount)
    expect(Math.abs(mean - Math.exp(-(σ ** 2) / 2))).toBeLessThan((4 * expected) / Math.sqrt(many))
    expect(Math.exp(-(σ ** 2) / 2)).toBeLessThan(0.99)
    expect(deviation / expected).toBeGreaterThan(0.9)
    expect(deviation / expected).toBeLessThan(1.1)
  })
  test('independent strengths average as one over the root of their number', () => {
    const on = bench('disc', undefined, many)
    const values = Array.from({ length: many }, (_, n) =>
      fundamental(on, on.error(n, ['magnetStrength_percent'])),
    )
    const { mean, deviation } = sampleMoments(values)
    const expected = 0.02 / nineOfTen / Math.sqrt(on.machine.rotor.poleCount)
    // fellows in the common circuit give and take some per mille
    expect(deviation / expected).toBeGreaterThan(0.95)
    expect(deviation / expected).toBeLessThan(1.05)
    expect(Math.abs(mean - 1)).toBeLessThan((4 * expected) / Math.sqrt(many))
  })
  test('scatter that knows no side favours no phase', () => {
    const on = bench('disc', undefined, many)
    const ratios = Array.from({ length: many }, (_, n) => {
      const built = on.assemble(
        on.error(n, ['coilHeight_mm', 'coilAround_mm', 'statorTilt_mm', 'magnetHeight_mm']),
      )
      return built.emf.map((emf, k) => seriesRms(emf) / on.voltage.phases[k]!.rms)
    })
    const moments = [0, 1, 2].map((k) => sampleMoments(ratios.map((one) => one[k]!)))
    for (const [a, b] of [
      [0, 1],
      [1, 2],
      [0, 2],
    ] as const) {
      const difference = sampleMoments(ratios.map((one) => one[a]! - one[b]!))
      expect(Math.abs(difference.mean)).toBeLessThan((4 * difference.deviation) / Math.sqrt(many))
      expect(moments[a]!.deviation / moments[b]!.deviation).toBeGreaterThan(0.9)
    }
  })
})

describe('law: one millimetre at a radius of 120 mm with six pole pairs, electrical degrees', () => {
  check(
    'p × 1 mm over 120 mm',
    () => {
      const machine = machineOf('twoDiscs', (document) => {
        document.rotor.pitchRadius_mm = 120
        document.tolerance = { magnetAround_mm: nineOfTen }
      })
      const draw = buildDraws(errorGroups(machine, conductorLayout(machine)), 64, 1)(0)
      draw.magnetAround_mm.fill(1)
      const { around } = rotorError(machine, draw, (name) => (name === 'magnetAround_mm' ? 1 : 0))
        .magnets[0]![0]!
      return (machine.rotor.polePairs * around * 180) / Math.PI
    },
    '2.86',
  )
})
