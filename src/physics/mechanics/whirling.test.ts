/** Checks of whirling speeds. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { whirlingSpeed } from './whirling.ts'

const steel = { modulus: 2.11e11, density: 7810 }

/** A steel disc bored for a 50 mm shaft. */
function disc(position: number, diameter: number, width: number) {
  const [R2, r2] = [(diameter / 2) ** 2, 0.025 ** 2]
  const mass = 7810 * Math.PI * (R2 - r2) * width
  return {
    position,
    mass,
    polarInertia: (mass * (R2 + r2)) / 2,
    diametralInertia: (mass * (3 * (R2 + r2) + width * width)) / 12,
  }
}

// The reference lets the shaft shear as well, which lowers the speeds by up to 0.3 % here.
const sheared = { relative: 4e-3 }
const spin = (4000 * Math.PI) / 30

describe('source: friswell2010, example 5.9.9, page 218 — overhung disc, rad/s, at rest and at 4000 rpm', () => {
  const rotor = {
    shaft: { ...steel, length: 1.5, diameter: 0.05 },
    bearings: [
      { position: 0, stiffness: 10e6 },
      { position: 1, stiffness: 10e6 },
    ],
    discs: [disc(1.5, 0.35, 0.07)],
  } as const
  check('at rest', () => whirlingSpeed({ ...rotor, spinRatio: 0 }).speed, '90.14', sheared)
  check('forward', () => whirlingSpeed({ ...rotor, spinRatio: spin / 103.91 }).speed, '103.91', sheared)
  check('backward', () => whirlingSpeed({ ...rotor, spinRatio: -spin / 76.19 }).speed, '76.19', sheared)
})

describe('source: friswell2010, example 5.9.1, page 206 — two discs between soft bearings, rad/s', () => {
  const rotor = {
    shaft: { ...steel, length: 1.5, diameter: 0.05 },
    bearings: [
      { position: 0, stiffness: 1e6 },
      { position: 1.5, stiffness: 1e6 },
    ],
    discs: [disc(0.5, 0.28, 0.07), disc(1, 0.35, 0.07)],
  } as const
  check('at rest', () => whirlingSpeed({ ...rotor, spinRatio: 0 }).speed, '86.66', sheared)
  check('forward', () => whirlingSpeed({ ...rotor, spinRatio: spin / 87.8 }).speed, '87.80', sheared)
  check('backward', () => whirlingSpeed({ ...rotor, spinRatio: -spin / 85.39 }).speed, '85.39', sheared)
})

describe('source: timoshenko1974, table of bars (from memory, not opened) — roots βL of the bare shaft', () => {
  const [d, length] = [0.02, 0.8]
  const shaft = { ...steel, length, diameter: d }
  const root = (speed: number) =>
    Math.sqrt(speed / Math.sqrt((steel.modulus * d * d) / 16 / steel.density / length ** 4))
  check('clamped and free', () => root(whirlingSpeed({ shaft, discs: [] }).speed), '1.8751')
  // The shaft's mass stands in 8 points.
  check(
    'on bearings at both ends',
    () => root(whirlingSpeed({ shaft, bearings: [{ position: 0 }, { position: length }], discs: [] }).speed),
    '3.14159',
    { absolute: 1.5e-4 },
  )
})

describe('agrees: disc at the tip of a massless stub, characteristic polynomial solved by hand', () => {
  const [L, d, E, m] = [0.25, 0.03, 2.05e11, 12]
  const EI = (E * Math.PI * d ** 4) / 64
  for (const [title, spinRatio] of [
    ['forward', 1],
    ['backward', -1],
    ['at rest', 0],
  ] as const)
    test(title, () => {
      const [Id, Ip] = [0.7, 1.4]
      const J = Id - spinRatio * Ip
      const [y, c, θ] = [L ** 3 / (3 * EI), L ** 2 / (2 * EI), L / EI]
      // 1 − ω² (m y + J θ) + ω⁴ m J (y θ − c²) = 0, in 1 / ω².
      const half = (m * y + J * θ) / 2
      const lowest = 1 / Math.sqrt(half + Math.sqrt(half ** 2 - m * J * (y * θ - c * c)))
      const { speed } = whirlingSpeed({
        shaft: { length: L, diameter: d, modulus: E, density: 0 },
        discs: [{ position: L, mass: m, diametralInertia: Id, polarInertia: Ip }],
        spinRatio,
      })
      expect(speed / lowest).toBeCloseTo(1, 9)
    })
})

describe('law: whirling', () => {
  const rotors = fc.record({
    a: fc.double({ min: 0, max: 0.4, noNaN: true }),
    b: fc.double({ min: 0.6, max: 1, noNaN: true }),
    p: fc.double({ min: 0, max: 1, noNaN: true }),
    q: fc.double({ min: 0, max: 1, noNaN: true }),
    mass: fc.double({ min: 0.01, max: 100, noNaN: true }),
  })
  const of = ({ a, b, p, q, mass }: { a: number; b: number; p: number; q: number; mass: number }, k = 1) => ({
    shaft: { ...steel, length: k, diameter: 0.03 * k },
    bearings: [{ position: a * k }, { position: b * k, stiffness: 1e7 * k }] as const,
    discs: [
      { position: p * k, mass: mass * k ** 3, diametralInertia: 0.01 * k ** 5, polarInertia: 0.02 * k ** 5 },
      { position: q * k, mass: 5 * k ** 3 },
    ],
  })
  test('between Dunkerley and Rayleigh at rest; backward lowest, forward highest', () => {
    fc.assert(
      fc.property(rotors, (one) => {
        const rest = whirlingSpeed({ ...of(one), spinRatio: 0 })
        expect(rest.speed).toBeGreaterThanOrEqual(rest.dunkerley * (1 - 1e-9))
        expect(rest.speed).toBeLessThanOrEqual(rest.rayleigh * (1 + 1e-9))
        const forward = whirlingSpeed(of(one)).speed
        const backward = whirlingSpeed({ ...of(one), spinRatio: -1 }).speed
        expect(forward).toBeGreaterThanOrEqual(rest.speed * (1 - 1e-9))
        expect(backward).toBeLessThanOrEqual(rest.speed * (1 + 1e-9))
      }),
      { numRuns: 40 },
    )
  })
  test('seen from the other end, or with its bearings named the other way round, the speed is the same', () => {
    const one = of({ a: 0.1, b: 0.7, p: 1, q: 0.3, mass: 8 })
    const { speed } = whirlingSpeed(one)
    const [first, second] = one.bearings
    expect(whirlingSpeed({ ...one, bearings: [second, first] }).speed / speed).toBeCloseTo(1, 9)
    const turn = <T extends { readonly position: number }>(part: T) => ({
      ...part,
      position: 1 - part.position,
    })
    const mirrored = { ...one, bearings: [turn(first), turn(second)] as const, discs: one.discs.map(turn) }
    expect(whirlingSpeed(mirrored).speed / speed).toBeCloseTo(1, 9)
  })
  test('twice the size whirls half as fast, and so on over six decades', () => {
    const one = { a: 0.1, b: 0.7, p: 1, q: 0.3, mass: 8 }
    for (const k of [1e-3, 1e3])
      expect((whirlingSpeed(of(one, k)).speed * k) / whirlingSpeed(of(one)).speed).toBeCloseTo(1, 8)
  })
  test('a rotor that cannot move is refused', () => {
    expect(() =>
      whirlingSpeed({
        shaft: { ...steel, density: 0, length: 1, diameter: 0.02 },
        bearings: [{ position: 0 }, { position: 1 }],
        discs: [{ position: 0, mass: 1 }],
      }),
    ).toThrow('free to move')
  })
})
