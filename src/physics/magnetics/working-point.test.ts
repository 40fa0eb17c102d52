/** Checks of the working point: demagnetizing factors, circuit limits, three-dimensional finite elements. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { identityFrame, type Vector3 } from '../../numerics/vector.ts'
import { type BlockMagnet, blockFluxDensity } from './block-magnet.ts'
import { cuboidDemagnetizingFactor } from './demagnetizing-factor.ts'
import { imageMagnets } from './image-plane.ts'
import { alternatingSequence, discMagnets } from './magnet-ring.ts'
import { arrayHarmonicFluxDensity } from './periodic-array.ts'
import {
  magnetLoadFactor,
  recoilPermeabilityRange,
  workingPoint,
  workingPolarization,
} from './working-point.ts'

const μ0 = 4e-7 * Math.PI
const block = (size: Vector3, more: Partial<BlockMagnet> = {}): BlockMagnet => ({
  centre: [0, 0, 0],
  frame: identityFrame,
  size,
  polarization: 1.3,
  ...more,
})

describe('law: a block alone has minus its demagnetizing factor; halves of it make the whole', () => {
  test('alone', () => {
    const size = [40, 20, 10] as const
    expect(magnetLoadFactor({ magnets: [block(size)], own: 0 })).toBe(-cuboidDemagnetizingFactor(size))
  })
  test('four quarters of a block, touching, average to the whole within 1e-3', () => {
    const quarters = [-1, 1].flatMap((i) =>
      [-1, 1].map((k) => block([20, 20, 5], { centre: [10 * i, 0, 2.5 * k] })),
    )
    const mean = quarters.reduce((sum, _, own) => sum + magnetLoadFactor({ magnets: quarters, own }) / 4, 0)
    expect(Math.abs(mean + cuboidDemagnetizingFactor([40, 20, 10]))).toBeLessThan(1e-3)
  })
  test('in any pose, at any place, of either sign', () => {
    const turned = block([40, 20, 10], {
      centre: [7, -3, 90],
      frame: [
        [0, 0.6, 0.8],
        [1, 0, 0],
        [0, 0.8, -0.6],
      ],
      polarization: -0.4,
    })
    const straight = magnetLoadFactor({ magnets: [block([40, 20, 10])], own: 0 })
    expect(magnetLoadFactor({ magnets: [turned], own: 0 })).toBeCloseTo(straight, 12)
  })
})

describe('law: limits of the circuit', () => {
  test('closed by iron, J is the remanence and nothing demagnetises', () => {
    const magnets = imageMagnets({
      magnets: [block([0.04, 0.02, 0.01], { centre: [0, 0, 0.005] })],
      lowerPlane: 0,
      upperPlane: 0.0100001,
      reflections: 60,
    })
    const point = workingPoint({ magnets, own: 0, remanence: 1.3, recoilPermeability: 1.05 })
    expect(point.polarization).toBeCloseTo(1.3, 2)
    expect(point.fluxDensity).toBeCloseTo(1.3, 2)
  })
  test('μrec 1 leaves J at Br; B = μ0 H + J and the recoil line hold', () => {
    const magnets = [block([0.04, 0.02, 0.01])]
    expect(workingPolarization({ magnets, own: 0, remanence: 1.28, recoilPermeability: 1 })).toBe(1.28)
    for (const μrec of [1, 1.05, 1.1]) {
      const p = workingPoint({ magnets, own: 0, remanence: 1.28, recoilPermeability: μrec })
      expect(p.fluxDensity).toBeCloseTo(μ0 * p.fieldStrength + p.polarization, 12)
      expect(p.fluxDensity).toBeCloseTo(1.28 + μrec * μ0 * p.fieldStrength, 12)
      expect(p.permeanceCoefficient).toBeCloseTo(-p.fluxDensity / (μ0 * p.fieldStrength), 10)
    }
  })
  test('the answer does not depend on the J put in', () => {
    const at = (polarization: number) =>
      workingPolarization({
        magnets: [block([0.04, 0.02, 0.01], { polarization })],
        own: 0,
        remanence: 1.28,
        recoilPermeability: 1.05,
      })
    expect(at(0.1)).toBeCloseTo(at(1.3), 13)
  })
  test('a cube alone: permeance coefficient 2, from a factor of a third', () => {
    const p = workingPoint({
      magnets: [block([0.02, 0.02, 0.02])],
      own: 0,
      remanence: 1.3,
      recoilPermeability: 1.05,
    })
    expect(p.permeanceCoefficient).toBeCloseTo(2, 3)
  })
})

describe('agrees: wide poles between iron, the circuit B = Br h/(h + μrec g/2)', () => {
  // Two rows 10 mm thick, Br 1.3 T, μrec 1.05, 20 mm between faces
  const wide = (z: number, polarization = 1.3) => block([4, 4, 0.01], { centre: [0, 0, z], polarization })
  const images = (J: number) =>
    imageMagnets({
      magnets: [wide(-0.015, J), wide(0.015, J)],
      lowerPlane: -0.02,
      upperPlane: 0.02,
      reflections: 600,
    })
  check(
    '20 mm',
    () => {
      const J = workingPolarization({
        magnets: images(1.3),
        own: 0,
        remanence: 1.3,
        recoilPermeability: 1.05,
      })
      return blockFluxDensity(images(J), new Float64Array([0, 0, 0]))[2]!
    },
    '0.634',
  )
})

describe('agrees: two-dimensional finite elements of facing arrays, μrec 1.05 (test/reference/magnetics/array-pitch)', () => {
  const file = new URL('../../../test/reference/magnetics/array-pitch.json', import.meta.url)
  const { runs } = JSON.parse(readFileSync(file, 'utf8')) as {
    runs: Record<string, { x_m: number[]; By_T: number[]; meanMu0Hy_T: number }>
  }
  const { x_m, By_T, meanMu0Hy_T } = runs['air-fine']!
  // Magnets 4 m long, 21 poles in each row: the middle one feels no end
  const row = (z: number) =>
    Array.from({ length: 21 }, (_, k) =>
      block([0.03, 4, 0.01], {
        centre: [(k - 10) * 0.0628, 0, z],
        polarization: (k % 2 === 0 ? 1 : -1) * 1.26,
      }),
    )
  const magnets = imageMagnets({
    magnets: [...row(-0.013), ...row(0.013)],
    lowerPlane: -0.018,
    upperPlane: 0.018,
    reflections: 8,
  })
  const own = 10 * 17
  const point = workingPoint({ magnets, own, remanence: 1.26, recoilPermeability: 1.05 })
  test('mean demagnetising field within 1 %', () => {
    expect(magnets[own]!.centre[0]).toBe(0)
    expect(Math.abs((μ0 * point.fieldStrength) / meanMu0Hy_T - 1)).toBeLessThan(0.01)
  })
  test('series at μrec 1 with the working polarization: fundamental within 0.15 %', () => {
    const shape = {
      polePitch: 0.0628,
      magnetWidth: 0.03,
      magnetThickness: 0.01,
      gap: 0.016,
      remanence: point.polarization,
      recoilPermeability: 1,
      backing: 'iron-pair',
    } as const
    let sum = 0
    for (let i = 1; i < x_m.length; i++) {
      const f = (j: number) => By_T[j]! * Math.cos((Math.PI * x_m[j]!) / 0.0628)
      sum += ((f(i) + f(i - 1)) / 2) * (x_m[i]! - x_m[i - 1]!)
    }
    expect(Math.abs(arrayHarmonicFluxDensity(shape, 1, 0) / ((4 / 0.0628) * sum) - 1)).toBeLessThan(1.5e-3)
  })
})

interface Run {
  recoilPermeability: number
  elements: number
  arc: { angle_rad: number[]; Bz_T: number[] }
  radius: { radius_m: number[]; Bz_T: number[] }
  meanMu0Hz_T: number
}
const file = new URL('../../../test/reference/magnetics/disc-sector.json', import.meta.url)
const { runs } = JSON.parse(readFileSync(file, 'utf8')) as { runs: Record<string, Run> }
const ring = (height: number, polarization: number) =>
  discMagnets({
    count: 12,
    radius: 0.09,
    height,
    radialLength: 0.04,
    width: 0.02,
    thickness: 0.01,
    polarization,
    sequence: alternatingSequence(12),
  })
// Heights as in the finite-element input: field taken 8 mm from the magnets' face
const arrangements = {
  two: {
    height: 0,
    magnets: (J: number) =>
      imageMagnets({
        magnets: [...ring(-0.013, J), ...ring(0.013, J)],
        lowerPlane: -0.018,
        upperPlane: 0.018,
        reflections: 4,
      }),
  },
  plain: {
    height: 0.008,
    magnets: (J: number) =>
      imageMagnets({ magnets: ring(0.021, J), lowerPlane: 0, upperPlane: 0.026, reflections: 6 }),
  },
  single: {
    height: 0.008,
    magnets: (J: number) => imageMagnets({ magnets: ring(0.021, J), upperPlane: 0.026 }),
  },
} as const

/** First harmonic over the half pole 0 … 15° of a field that is even about 0 and odd about 15°. */
function fundamental(angle: readonly number[], B: readonly number[]): number {
  const [θ, f] = [
    [...angle, Math.PI / 12],
    [...B, 0],
  ]
  let sum = 0
  for (let i = 1; i < θ.length; i++) {
    const g = (j: number) => f[j]! * Math.cos(6 * θ[j]!)
    sum += ((g(i) + g(i - 1)) / 2) * (θ[i]! - θ[i - 1]!)
  }
  return (sum * 24) / Math.PI
}

describe('agrees: three-dimensional finite elements of twelve-pole discs (test/reference/magnetics/disc-sector)', () => {
  for (const [kind, { height, magnets }] of Object.entries(arrangements))
    for (const murec of ['105', '100'] as const) {
      const fine = runs[`${kind}-${murec}-fine`]!
      const coarse = runs[`${kind}-${murec}-coarse`]!
      const circuit = { magnets: magnets(1.28), own: 0, remanence: 1.28 }
      const point = workingPoint({ ...circuit, recoilPermeability: fine.recoilPermeability })
      const along = (points: number[]) => {
        const field = blockFluxDensity(magnets(point.polarization), new Float64Array(points))
        return points.filter((_, i) => i % 3 === 2).map((_, i) => field[3 * i + 2]!)
      }
      const { angle_rad } = fine.arc
      const arc = along(angle_rad.flatMap((θ) => [0.09 * Math.cos(θ), 0.09 * Math.sin(θ), height]))
      const radius = along(fine.radius.radius_m.flatMap((r) => [r, 0, height]))
      describe(`${kind}, μrec ${fine.recoilPermeability}`, () => {
        test('two mesh densities agree within 0.4 %, which is the error to expect of the fine one', () => {
          expect(fine.elements).toBeGreaterThan(1.8 * coarse.elements)
          expect(Math.abs(coarse.arc.Bz_T[0]! / fine.arc.Bz_T[0]! - 1)).toBeLessThan(4e-3)
        })
        test('over the pole centre within 1 %', () => {
          expect(Math.abs(arc[0]! / fine.arc.Bz_T[0]! - 1)).toBeLessThan(0.01)
        })
        test('fundamental at the mean radius within 1 %', () => {
          const ratio = fundamental(angle_rad, arc) / fundamental(angle_rad, fine.arc.Bz_T)
          expect(Math.abs(ratio - 1)).toBeLessThan(0.01)
        })
        test('whole arc and whole radius within 1.5 % of the largest field', () => {
          const largest = fine.arc.Bz_T[0]!
          arc.forEach((b, i) => {
            expect(Math.abs(b - fine.arc.Bz_T[i]!)).toBeLessThan(0.015 * largest)
          })
          radius.forEach((b, i) => {
            expect(Math.abs(b - fine.radius.Bz_T[i]!)).toBeLessThan(0.015 * largest)
          })
        })
        test('mean demagnetising field within 1 %', () => {
          expect(Math.abs((μ0 * point.fieldStrength) / fine.meanMu0Hz_T - 1)).toBeLessThan(0.01)
        })
      })
    }
  test('μrec 1.1: over the pole centre within 1.5 %, fundamental within 1 %, mean field within 1 %', () => {
    const run = runs['two-110-coarse']!
    const { magnets } = arrangements.two
    const point = workingPoint({ magnets: magnets(1.28), own: 0, remanence: 1.28, recoilPermeability: 1.1 })
    const points = run.arc.angle_rad.flatMap((θ) => [0.09 * Math.cos(θ), 0.09 * Math.sin(θ), 0])
    const field = blockFluxDensity(magnets(point.polarization), new Float64Array(points))
    const arc = run.arc.angle_rad.map((_, i) => field[3 * i + 2]!)
    expect(Math.abs(arc[0]! / run.arc.Bz_T[0]! - 1)).toBeLessThan(0.015)
    const ratio = fundamental(run.arc.angle_rad, arc) / fundamental(run.arc.angle_rad, run.arc.Bz_T)
    expect(Math.abs(ratio - 1)).toBeLessThan(0.01)
    expect(Math.abs((μ0 * point.fieldStrength) / run.meanMu0Hz_T - 1)).toBeLessThan(0.01)
  })
  test('steel of relative permeability 2000 is as good as infinite, within 0.2 %', () => {
    const [real, ideal] = [runs['two-105-fine']!, runs['two-105-ideal']!]
    real.arc.Bz_T.forEach((b, i) => {
      expect(Math.abs(b - ideal.arc.Bz_T[i]!)).toBeLessThan(2e-3 * ideal.arc.Bz_T[0]!)
    })
  })
  check(
    'two discs, μrec 1.05, over the pole centre, as first computed elsewhere',
    () => runs['two-105-fine']!.arc.Bz_T[0]!,
    '0.542',
    // The other computation's steel and mesh are not known: 0.3 %
    { relative: 3e-3 },
  )
})

describe('refusals', () => {
  const magnets = [block([0.04, 0.02, 0.01])]
  test.each([
    ['no such magnet', () => magnetLoadFactor({ magnets, own: 1 })],
    ['missing magnet', () => magnetLoadFactor({ magnets: [block([1, 1, 1], { polarization: 0 })], own: 0 })],
    ['μrec below one', () => workingPoint({ magnets, own: 0, remanence: 1.3, recoilPermeability: 0.99 })],
    [
      'remanence not finite',
      () => workingPoint({ magnets, own: 0, remanence: Number.NaN, recoilPermeability: 1.05 }),
    ],
  ])('law: %s', (_, f) => {
    expect(f).toThrow(RangeError)
  })
  test('law: the range proved covers sintered magnets and hard ferrites', () => {
    expect(recoilPermeabilityRange).toEqual([1, 1.1])
  })
})
