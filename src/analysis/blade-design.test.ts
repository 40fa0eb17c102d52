/** Checks of the help in shaping blades. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { designOf, exampleDocument } from '../../test/example.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { betzLimit } from '../physics/aerodynamics/induction.ts'
import { bestGlide, polarAtReynolds } from '../physics/aerodynamics/polar.ts'
import { tunnelDensity, tunnelRotor } from '../physics/aerodynamics/wind-tunnel-rotor.published.ts'
import { type BladeLimits, bladeDesign } from './blade-design.ts'
import { rotorCurve } from './blade-rotor.ts'

const machineWith = (blades: object) => {
  const document = exampleDocument('boathouse-two-disc')
  // through JSON, so that what is undefined is left out
  const text = JSON.stringify({ ...document, blades: { ...document.blades, ...blades } })
  return resolveDesign(designOf(JSON.parse(text)))
}
const rad = Math.PI / 180

describe('source: glauert1935, ideal windmill: inflow angle and σ C_L by local speed ratio (from memory, not opened)', () => {
  // λ 8 on a radius of 1 m: stations at x = 3 and 5; the working lift and angle are taken off first
  const machine = machineWith({ diameter_m: 2, hubDiameter_mm: 300, tipSpeedRatio: 8, bladeCount: 2 })
  const { shape } = bladeDesign(machine).variants[0]!
  const working = bestGlide(polarAtReynolds(shape.polars!, shape.polar.reynolds))
  const rows = [
    [3, '12.290', '0.0917'],
    [5, '7.540', '0.0346'],
  ] as const
  for (const [x, φ, σC] of rows) {
    const r = x / 8
    const at = (values: Float64Array) => {
      let i = 0
      while (i + 2 < shape.station.length && shape.station[i + 1]! < r) i++
      const t = (r - shape.station[i]!) / (shape.station[i + 1]! - shape.station[i]!)
      return values[i]! + t * (values[i + 1]! - values[i]!)
    }
    // the shape is drawn straight between 17 stations: 1 % of chord, 0.2° of twist
    check(`x = ${x}, twist and working angle, °`, (at(shape.twist) + working.angle) / rad, φ, {
      absolute: 0.2,
    })
    check(`x = ${x}, σ C_L`, ((2 * at(shape.chord)) / (2 * Math.PI * r)) * working.lift, σC, {
      relative: 0.02,
    })
  }
})

describe('source: hand2001, mean torque and thrust of the 10 m rotor at 7 m/s, sequence H, through the document', () => {
  const { radius, station, chord, twist, pitch } = tunnelRotor
  const machine = machineWith({
    kind: 'stations',
    tipSpeedRatio: undefined,
    straightTaper: undefined,
    diameter_m: 2 * radius,
    bladeCount: 2,
    hubDiameter_mm: 2515,
    section: 'S809',
    pitch_deg: pitch / rad,
    stations: Array.from(station, (r, i) => ({
      radius_mm: 1000 * r,
      chord_mm: 1000 * chord[i]!,
      twist_deg: twist[i]! / rad,
    })),
  })
  const [wind, speed] = [7, (71.88 * Math.PI) / 30]
  const drawn = bladeDesign(machine, { tipSpeedRatio: (speed * radius) / wind, wind }).variants[0]!
  const force = 0.5 * tunnelDensity * Math.PI * radius ** 2 * wind ** 2
  // attached flow: 5 %
  check('torque N·m', (drawn.power * force * wind) / speed, '789.9', { relative: 0.05 })
  check('thrust N', drawn.thrust * force, '1132', { relative: 0.05 })
})

describe('law: shapes compared', () => {
  const machine = machineWith({})
  const design = bladeDesign(machine)
  test('best first, straight lines cost little, both under Betz, rows from hub to tip', () => {
    const [ideal, straight] = design.variants
    expect(ideal!.kind).toBe('optimum')
    expect(straight!.power).toBeLessThan(ideal!.power)
    expect(straight!.power).toBeGreaterThan(0.93 * ideal!.power)
    for (const { power, stations } of design.variants) {
      expect(power).toBeLessThan(betzLimit)
      expect(stations[0]!.radius).toBeCloseTo(
        machine.blades.kind === 'optimum' ? machine.blades.hubRadius : 0,
        9,
      )
      expect(stations[stations.length - 1]!.radius).toBeCloseTo(machine.blades.radius, 9)
    }
  })
  test('the straight shape is straight', () => {
    const { stations } = design.variants[1]!
    const slope = (k: number, of: 'chord' | 'twist') =>
      (stations[k + 1]![of] - stations[k]![of]) / (stations[k + 1]!.radius - stations[k]!.radius)
    for (let k = 1; k + 1 < stations.length; k++) {
      expect(slope(k, 'twist')).toBeCloseTo(slope(0, 'twist'), 9)
      expect(slope(k, 'chord')).toBeCloseTo(slope(0, 'chord'), 9)
    }
  })
  test('agrees with the curve of the chain at the design ratio', () => {
    const curve = rotorCurve(machineWith({ straightTaper: false }))
    const k = curve.tipSpeedRatio.findIndex((λ) => λ >= design.tipSpeedRatio)
    const t =
      (design.tipSpeedRatio - curve.tipSpeedRatio[k - 1]!) /
      (curve.tipSpeedRatio[k]! - curve.tipSpeedRatio[k - 1]!)
    const power = curve.power[k - 1]! + t * (curve.power[k]! - curve.power[k - 1]!)
    expect(Math.abs(design.variants[0]!.power / power - 1)).toBeLessThan(0.01)
  })
  test('drawn blades come first, compared at their own best ratio', () => {
    const drawn = bladeDesign(
      machineWith({
        kind: 'stations',
        tipSpeedRatio: undefined,
        straightTaper: undefined,
        stations: design.variants[1]!.stations.map(({ radius, chord, twist }) => ({
          radius_mm: 1000 * radius,
          chord_mm: 1000 * chord,
          twist_deg: twist / rad,
        })),
      }),
    )
    expect(drawn.variants.map(({ kind }) => kind)).toEqual(['as drawn', 'optimum', 'straight'])
    expect(Math.abs(drawn.tipSpeedRatio - design.tipSpeedRatio)).toBeLessThan(0.6)
    const own = bladeDesign(machine, { tipSpeedRatio: drawn.tipSpeedRatio }).variants[1]!
    expect(Math.abs(drawn.variants[0]!.power / own.power - 1)).toBeLessThan(0.02)
  })
})

describe('law: limits of plank, pipe and printer', () => {
  const chordsWithin = (limits: BladeLimits, holds: (chord: number, twist: number) => boolean) => {
    const narrow = bladeDesign(machineWith({}), { limits })
    for (const { shape, limited } of narrow.variants) {
      expect(limited).toBe(true)
      shape.chord.forEach((chord, i) => {
        expect(holds(chord, shape.twist[i]!)).toBe(true)
      })
    }
    return narrow
  }
  const slack = 1 + 1e-9
  test('a chord, a plank turned with the blade, a pipe', () => {
    chordsWithin({ chord: 0.09 }, (chord) => chord <= 0.09 * slack)
    chordsWithin(
      { plankWidth: 0.12, plankDepth: 0.03 },
      (chord, θ) => chord * Math.cos(θ) <= 0.12 * slack && Math.abs(chord * Math.sin(θ)) <= 0.03 * slack,
    )
    const pipe = chordsWithin({ pipeRadius: 0.1 }, () => true)
    for (const { camber } of pipe.variants[0]!.stations) expect(camber).toBeLessThanOrEqual(0.1 * slack)
  })
  test('a wide limit changes nothing', () => {
    const [wide, none] = [{ chord: 9 }, {}].map((limits) => bladeDesign(machineWith({}), { limits }))
    expect(wide!.variants[0]!.limited).toBe(false)
    expect(wide!.variants[0]!.power).toBe(none!.variants[0]!.power)
  })
  test('refuses blades without a shape', () => {
    const table = resolveDesign(designOf(exampleDocument('many-faults')))
    expect(() => bladeDesign(table)).toThrow(/optimum or stations/)
  })
})
