/** Checks the field of currents in straight pieces of wire. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { completeElliptic } from '../../numerics/elliptic.ts'
import { turnPointsAboutZ } from '../../numerics/vector.ts'
import { wireFluxDensity } from './wire-field.ts'

const μ0 = 4e-7 * Math.PI

const circle = (radius: number, count: number): Float64Array =>
  Float64Array.from({ length: 3 * (count + 1) }, (_, i) => {
    const angle = (2 * Math.PI * Math.floor(i / 3)) / count
    return i % 3 === 0 ? radius * Math.cos(angle) : i % 3 === 1 ? radius * Math.sin(angle) : 0
  })

const square = (half: number): Float64Array =>
  Float64Array.of(half, -half, 0, half, half, 0, -half, half, 0, -half, -half, 0, half, -half, 0)

describe('agrees: closed forms of simple loops', () => {
  test('square loop on its axis: B = μ0 I 2 a²/(π (h² + a²) √(h² + 2a²)), a half the side', () => {
    const a = 0.03
    for (const h of [0, 0.004, 0.03, 0.2, 5]) {
      const wanted = (μ0 * 2 * a * a) / (Math.PI * (h * h + a * a) * Math.sqrt(h * h + 2 * a * a))
      const B = wireFluxDensity([{ polyline: square(a), current: 1 }], Float64Array.of(0, 0, h))
      expect(B[2]! / wanted).toBeCloseTo(1, 13)
      expect(Math.hypot(B[0]!, B[1]!)).toBeLessThan(1e-15 * wanted + 1e-22)
    }
  })
  test('centre of a regular polygon: μ0 I n tan(π/n)/(2π r)', () => {
    for (const n of [3, 6, 17, 400]) {
      const apothem = 0.05 * Math.cos(Math.PI / n)
      const wanted = (μ0 * n * Math.sin(Math.PI / n)) / (2 * Math.PI * apothem)
      const B = wireFluxDensity([{ polyline: circle(0.05, n), current: 1 }], new Float64Array(3))
      expect(B[2]! / wanted).toBeCloseTo(1, 12)
    }
  })
})

describe('agrees: circular loop by complete elliptic integrals, its polygon refined', () => {
  // Smythe's form: B_z = μ0 I/(2π √((a+r)²+z²)) (K + (a² − r² − z²)/((a−r)² + z²) E), B_r likewise
  const loop = (a: number, r: number, z: number) => {
    const far = (a + r) ** 2 + z * z
    const near = (a - r) ** 2 + z * z
    const { K, E } = completeElliptic(Math.sqrt((4 * a * r) / far), Math.sqrt(near / far))
    const front = μ0 / (2 * Math.PI * Math.sqrt(far))
    return {
      Bz: front * (K + ((a * a - r * r - z * z) / near) * E),
      Br: r === 0 ? 0 : ((front * z) / r) * (-K + ((a * a + r * r + z * z) / near) * E),
    }
  }
  const points = [
    [0.01, 0.003],
    [0.045, 0.01],
    [0.055, 0.004],
    [0.2, 0.1],
  ] as const
  for (const [r, z] of points)
    test(`r = ${r}, z = ${z}`, () => {
      const wanted = loop(0.05, r, z)
      const size = Math.hypot(wanted.Bz, wanted.Br)
      const error = (n: number) => {
        const B = wireFluxDensity([{ polyline: circle(0.05, n), current: 1 }], Float64Array.of(r, 0, z))
        return Math.hypot(B[2]! - wanted.Bz, B[0]! - wanted.Br) / size
      }
      const [coarse, fine] = [error(720), error(1440)]
      // chords inside the circle: the error falls with the square of their number
      expect(fine).toBeLessThan(3e-5)
      expect(coarse / fine).toBeGreaterThan(3.8)
      expect(coarse / fine).toBeLessThan(4.2)
    })
})

describe('law: Biot and Savart', () => {
  const place = fc.double({ min: -1, max: 1, noNaN: true })
  test('cutting a piece in two changes nothing', () => {
    fc.assert(
      fc.property(fc.tuple(place, place, place), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (p, t) => {
        // on the line itself the piece gives nothing, beside it as near as rounding tells the side
        fc.pre(Math.hypot(2 * p[2]! - 3 * p[1]!, 3 * p[0]! - p[2]!, p[1]! - 2 * p[0]!) > 1e-5)
        const whole = wireFluxDensity(
          [{ polyline: Float64Array.of(0, 0, 0, 1, 2, 3), current: 2 }],
          Float64Array.from(p),
        )
        const cut = wireFluxDensity(
          [{ polyline: Float64Array.of(0, 0, 0, t, 2 * t, 3 * t, 1, 2, 3), current: 2 }],
          Float64Array.from(p),
        )
        const size = Math.hypot(...whole)
        for (let i = 0; i < 3; i++)
          expect(Math.abs(whole[i]! - cut[i]!)).toBeLessThanOrEqual(1e-9 * size + 1e-30)
      }),
    )
  })
  test('circulation round a closed path through the loop is μ0 I', () => {
    const count = 400
    const points = new Float64Array(3 * count)
    const radius = 0.01
    // a circle in the plane y = 0 about the wire at x = 0.05
    for (let i = 0; i < count; i++) {
      const φ = (2 * Math.PI * i) / count
      points.set([0.05 + radius * Math.cos(φ), 0, radius * Math.sin(φ)], 3 * i)
    }
    const B = wireFluxDensity([{ polyline: square(0.05), current: 3 }], points)
    let sum = 0
    for (let i = 0; i < count; i++) {
      const φ = (2 * Math.PI * i) / count
      sum += ((-B[3 * i]! * Math.sin(φ) + B[3 * i + 2]! * Math.cos(φ)) * 2 * Math.PI * radius) / count
    }
    expect(Math.abs(sum) / (3 * μ0)).toBeCloseTo(1, 10)
  })
  test('turns with its path, reverses with its current, finite on the wire, its corners and its line', () => {
    const path = square(0.03)
    const point = Float64Array.of(0.011, -0.02, 0.007)
    const here = wireFluxDensity([{ polyline: path, current: 1 }], point)
    const turned = wireFluxDensity(
      [{ polyline: turnPointsAboutZ(path, 0.7), current: -1 }],
      turnPointsAboutZ(point, 0.7),
    )
    const back = turnPointsAboutZ(turned, -0.7)
    for (let i = 0; i < 3; i++) expect(back[i]! / here[i]!).toBeCloseTo(-1, 12)
    const on = wireFluxDensity(
      [{ polyline: path, current: 1 }],
      Float64Array.of(0.03, 0.01, 0, 0.03, 0.03, 0, 0.03, 0.09, 0, 0.03, 0.01, 1e-300),
    )
    for (const value of on) expect(Number.isFinite(value)).toBe(true)
  })
  test('digits survive beyond an end and close to a long wire', () => {
    const line = { polyline: Float64Array.of(0, 0, 0, 0, 0, 1), current: 1 }
    // B = μ0 I/(4π ρ) (sin β₂ − sin β₁)
    for (const [ρ, z] of [
      [1e-7, 0.4],
      [1e-7, 1.5],
      [1e-4, -2],
      [1e-12, 3],
    ] as const) {
      const B = wireFluxDensity([line], Float64Array.of(ρ, 0, z))[1]!
      // the same difference, multiplied out by hand: z/√(ρ²+z²) = sgn − ρ²/(2z²) + 3ρ⁴/(8z⁴) …
      const tail = (d: number) => Math.sign(d) * (1 - (ρ / d) ** 2 / 2)
      const outside = z < 0 || z > 1
      const wanted = outside
        ? (1e-7 * ρ * (1 / (z - 1) ** 2 - 1 / z ** 2)) / 2
        : (1e-7 / ρ) * (tail(z) - tail(z - 1))
      expect(B / (z < 0 ? -wanted : wanted)).toBeCloseTo(1, 7)
    }
  })
  test('softening spreads the wire: least at its middle, unseen from afar', () => {
    const path = { polyline: Float64Array.of(0, 0, -1, 0, 0, 1), current: 1 }
    const at = (x: number, softening: number) =>
      wireFluxDensity([{ ...path, softening }], Float64Array.of(x, 0, 0))[1]!
    expect(at(1e-9, 0.005)).toBeLessThan(1e-6 * at(0.005, 0))
    expect(at(0.1, 0.005) / at(0.1, 0)).toBeGreaterThan(1 - 0.0501 ** 2)
    expect(at(0.1, 0.005)).toBeLessThan(at(0.1, 0))
  })
  test('what has no meaning is refused', () => {
    const line = Float64Array.of(0, 0, 0, 1, 0, 0)
    expect(() => wireFluxDensity([{ polyline: line, current: Number.NaN }], new Float64Array(3))).toThrow(
      RangeError,
    )
    expect(() => wireFluxDensity([{ polyline: line, current: 1 }], new Float64Array(4))).toThrow(RangeError)
    expect(() =>
      wireFluxDensity([{ polyline: new Float64Array(3), current: 1 }], new Float64Array(3)),
    ).toThrow(RangeError)
    expect(() =>
      wireFluxDensity([{ polyline: line, current: 1, softening: -1 }], new Float64Array(3)),
    ).toThrow(RangeError)
  })
})
