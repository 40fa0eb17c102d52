/** Checks of the figures of merit: a published statement, an independent route, laws of scale and of winding. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { designOf } from '../../test/example.ts'
import { fixedDocument } from '../../test/fixed-document.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { type FourierSeries, seriesValue } from '../numerics/fourier.ts'
import { rotorField } from './air-gap-field.ts'
import { conductorLayout } from './conductor-layout.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { woundMachine } from './winding.ts'
import {
  comparedTemperature,
  endTurnShare,
  lineConstants,
  motorConstants,
  windingFigure,
  windingVolume,
} from './winding-figure.ts'

type Document = ReturnType<typeof fixedDocument>

/** The winding without leads, joints and the rest of the chain. */
function woundOf(name: 'drum' | 'disc' | 'twoDiscs', change: (document: Document) => void = () => {}) {
  const document = fixedDocument(name)
  document.stator.leadLength_m = 0
  document.stator.jointResistance_mohm = 0
  change(document)
  const machine = resolveDesign(designOf(document))
  const layout = conductorLayout(machine)
  const wound = woundMachine(machine, layout)
  const field = rotorField(machine, machine.site.ambient)
  return { machine, layout, wound, voltage: openCircuitVoltage(machine, field, layout, wound) }
}

const constants = (wound: ReturnType<typeof woundOf>) => motorConstants(wound, comparedTemperature)

describe('source: motor-constants-encyclopedia, section “Motor constant” — 6 turns of 2 parallel wires instead of 12 turns of single wire', () => {
  // "will double the velocity constant, K_v, but K_M remains unchanged": exact statements, not rounded digits
  const exact = { absolute: 1e-9 }
  const wind = (turns: number, strands: number) =>
    woundOf('disc', ({ stator }) => {
      stator.winding.turns = turns
      stator.wire.strands = strands
    })
  const single = wind(12, 1)
  const double = wind(6, 2)
  check(
    'K_v doubles',
    () => windingFigure(single).lineVolts.rms / windingFigure(double).lineVolts.rms,
    '2',
    exact,
  )
  check('K_M stays', () => constants(single).motorConstant / constants(double).motorConstant, '1', exact)
})

/** A sine of the first order with that peak, lagging by an angle [rad]. */
const sine = (peak: number, lag: number): FourierSeries => ({
  cos: Float64Array.of(0, peak * Math.cos(lag)),
  sin: Float64Array.of(0, peak * Math.sin(lag)),
})

const third = (2 * Math.PI) / 3

describe('agrees: torque and watts averaged over a period of sine currents', () => {
  const samples = 72
  /** T²/P of phase currents, the best over the phase of balanced line currents. */
  function bestMotorConstant(emf: readonly FourierSeries[], resistance: readonly number[], sense: 1 | -1) {
    let best = 0
    for (let turn = 0; turn < 360; turn++) {
      const shift = (turn * Math.PI) / 180
      let torque = 0
      let watts = 0
      for (let s = 0; s < samples; s++) {
        const θ = (2 * Math.PI * s) / samples
        emf.forEach((series, k) => {
          const current = Math.cos(θ - shift - sense * k * third)
          torque += (seriesValue(series, θ) * current) / samples
          watts += (resistance[k]! * current ** 2) / samples
        })
      }
      best = Math.max(best, torque / Math.sqrt(watts))
    }
    return best
  }
  const cases = [
    ['three alike', [sine(1, 0), sine(1, third), sine(1, 2 * third)], [2, 2, 2]],
    ['of three distances', [sine(1.2, 0), sine(1, third), sine(0.7, 2 * third)], [2, 2.1, 2.3]],
    ['out of step', [sine(1, 0), sine(1, third + 0.3), sine(0.9, 2 * third - 0.2)], [2, 2, 2]],
    ['turning the other way', [sine(1, 0), sine(1, -third), sine(1, -2 * third)], [2, 2, 2]],
    ['one reversed', [sine(1, 0), sine(1, third), sine(-1, 2 * third)], [2, 2, 2]],
  ] as const
  for (const [title, emf, resistance] of cases)
    test(title, () => {
      const best = Math.max(bestMotorConstant(emf, resistance, 1), bestMotorConstant(emf, resistance, -1))
      const star = lineConstants({ connection: 'star', emf, order: 1, resistance })
      const delta = lineConstants({ connection: 'delta', emf, order: 1, resistance })
      expect(star.motorConstant / best).toBeCloseTo(1, 4)
      expect(delta.motorConstant).toBeCloseTo(star.motorConstant, 12)
      // a line of a delta carries √3 times what a phase does
      expect(star.torqueConstant / delta.torqueConstant).toBeCloseTo(Math.sqrt(3), 12)
      expect(star.resistance / delta.resistance).toBeCloseTo(3, 12)
      expect(delta.torqueConstant / Math.sqrt(delta.resistance)).toBeCloseTo(delta.motorConstant, 12)
    })
  test('single and separate phases each use their own volts', () => {
    const emf = [sine(1, 0), sine(2, 0.5)]
    const { torqueConstant, resistance } = lineConstants({
      connection: 'separate',
      emf,
      order: 1,
      resistance: [1, 3],
    })
    expect(torqueConstant).toBeCloseTo(3 / Math.SQRT2, 12)
    expect(resistance).toBe(4)
  })
})

describe('law: k_m belongs to copper and field, not to turns and connection', () => {
  test('turns at equal copper', () => {
    const wind = (turns: number) =>
      woundOf('twoDiscs', ({ stator }) => {
        stator.winding.turns = turns
        stator.wire.size = 1.5 * Math.sqrt(40 / turns)
      })
    const few = wind(20)
    const many = wind(160)
    expect(many.wound.copperMass).toBeCloseTo(few.wound.copperMass, 9)
    expect(constants(many).motorConstant / constants(few).motorConstant).toBeCloseTo(1, 9)
    expect(constants(many).torqueConstant / constants(few).torqueConstant).toBeCloseTo(8, 6)
  })
  test('star and delta of the same coils', () => {
    const star = constants(woundOf('twoDiscs'))
    const delta = constants(
      woundOf('twoDiscs', ({ stator }) => {
        stator.connection = 'delta'
      }),
    )
    expect(delta.motorConstant).toBeCloseTo(star.motorConstant, 9)
  })
  test('hot copper: k_m falls with the root of the resistance', () => {
    const wound = woundOf('disc')
    const [cold, hot] = [293.15, 393.15].map(
      (temperature) => motorConstants(wound, temperature).motorConstant,
    )
    expect((cold! / hot!) ** 2).toBeCloseTo(1 + 0.00393 * 100, 6)
  })
})

describe('law: all lengths times λ', () => {
  // the field at corresponding points stays, so ψ goes with λ², R of the same turns with 1/λ: k_m² with λ⁵
  test('k_m² over the volume goes with λ²', () => {
    const λ = 1.7
    const grown = woundOf('disc', ({ rotor, stator }) => {
      for (const part of [rotor.magnet, rotor, stator.winding, stator.winding.hole])
        for (const key of Object.keys(part))
          if (key.endsWith('_mm') && typeof part[key] === 'number') part[key] *= λ
      stator.wire.size = 0.4 * λ
    })
    const small = woundOf('disc', ({ stator }) => {
      stator.wire.size = 0.4
    })
    const per = (wound: ReturnType<typeof woundOf>) =>
      constants(wound).motorConstant ** 2 / windingVolume(wound)
    expect(windingVolume(grown) / windingVolume(small)).toBeCloseTo(λ ** 3, 6)
    expect(per(grown) / per(small) / λ ** 2).toBeCloseTo(1, 4)
  })
})

describe('law: a serpentine of N turns is half of p full-pitch coils', () => {
  // thin bundles, the ends far beyond short magnets; a coil's legs then lie a pole pitch apart, where the runs lie
  const poles = 12
  const length = 70
  const serpentine = woundOf('drum', ({ rotor, stator }) => {
    rotor.magnet.length_mm = 40
    stator.connection = 'single'
    stator.winding = {
      kind: 'serpentine',
      turns: 20,
      runLength_mm: length,
      crownHeight_mm: 3,
      bundleWidth_mm: 0.5,
      bundleDepth_mm: 0.5,
      phases: [{ offset_deg: 0, distance_mm: 4 }],
    }
    stator.wire.size = 0.05
  })
  const level = serpentine.machine.rotor.pitchRadius + serpentine.machine.rotor.magnet.thickness / 2 + 4e-3
  const pitch_mm = ((2 * Math.PI * level) / poles) * 1000
  const coils = (count: number) =>
    woundOf('drum', ({ rotor, stator }) => {
      rotor.magnet.length_mm = 40
      stator.connection = 'single'
      stator.winding = {
        kind: 'coils',
        coilCount: count,
        phaseCount: 1,
        turns: 20,
        // to the middle of the legs a pole pitch apart
        hole: {
          shape: 'rectangular',
          holeWidth_mm: pitch_mm - 0.5,
          holeLength_mm: length,
          cornerRadius_mm: 0.1,
        },
        legWidth_mm: 0.5,
        bundleDepth_mm: 0.5,
        distance_mm: 4,
      }
      stator.wire.size = 0.05
    })
  const volts = (wound: ReturnType<typeof woundOf>) => wound.voltage.phases[0]!.fundamental
  test('half the EMF of p coils, the EMF of p/2', () => {
    expect(volts(coils(poles)) / volts(serpentine)).toBeCloseTo(2, 2)
    expect(volts(coils(poles / 2)) / volts(serpentine)).toBeCloseTo(1, 2)
  })
  test('about half the copper of p coils, and of p/2 about as much', () => {
    const copper = serpentine.wound.copperMass
    // crowns are arches, coil ends straight: they differ by some per cent of the whole
    expect(coils(poles).wound.copperMass / copper).toBeCloseTo(2, 1)
    expect(coils(poles / 2).wound.copperMass / copper).toBeCloseTo(1, 1)
  })
  test('so k_m² for each kilogram is the same', () => {
    const per = (wound: ReturnType<typeof woundOf>) =>
      constants(wound).motorConstant ** 2 / wound.wound.copperMass
    expect(per(coils(poles)) / per(serpentine)).toBeCloseTo(1, 1)
  })
})

describe('law: wire beyond the magnets', () => {
  const share = (length_mm: number) =>
    endTurnShare(
      woundOf('drum', ({ rotor, stator }) => {
        rotor.magnet.length_mm = length_mm
        stator.winding = {
          ...stator.winding,
          kind: 'serpentine',
          runLength_mm: 60,
          crownHeight_mm: 10,
        }
      }),
    )
  test('none where the magnets reach past the crowns, all but the runs where they end with them', () => {
    expect(share(90)).toBe(0)
    const { machine, layout } = woundOf('drum', ({ rotor, stator }) => {
      rotor.magnet.length_mm = 60
      stator.winding = { ...stator.winding, kind: 'serpentine', runLength_mm: 60, crownHeight_mm: 10 }
    })
    const turns = layout.shapes.reduce((sum, { turnLength }) => sum + turnLength, 0)
    const runs = layout.shapes.length * machine.rotor.poleCount * 0.06
    expect(share(60)).toBeCloseTo(1 - runs / turns, 3)
  })
  test('on a drum half-way along straight runs it is a straight line in the length of the magnets', () => {
    expect(share(30) - share(40)).toBeCloseTo(share(40) - share(50), 9)
    expect(share(30)).toBeGreaterThan(share(50))
  })
  test('on a disc the share falls as the magnets reach farther', () => {
    const coil = (length_mm: number) =>
      endTurnShare(
        woundOf('twoDiscs', ({ rotor }) => {
          rotor.magnet.length_mm = length_mm
        }),
      )
    expect(coil(20)).toBeGreaterThan(coil(30))
    expect(coil(30)).toBeGreaterThan(coil(60))
    expect(coil(60)).toBeGreaterThan(0)
    expect(coil(20)).toBeLessThan(1)
  })
})

describe('law: figures of a winding', () => {
  const figure = windingFigure(woundOf('drum'))
  test('harmonics and fundamental make up the rms', () => {
    const { rms, fundamental, harmonicShare } = figure.phaseVolts
    expect(Math.hypot(fundamental, rms * harmonicShare)).toBeCloseTo(rms, 12)
  })
  test('all finite', () => {
    for (const value of Object.values(figure))
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
  })
})
