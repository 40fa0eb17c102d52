/** Checks the images of wire paths in flat iron against coaxial loops in closed form and against laws. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { coaxialLoopMutualInductance, mutualInductance } from '../physics/magnetics/inductance.ts'
import { imageInductance } from './image-inductance.ts'

function loop(radius: number, z: number, sides = 240): Float64Array {
  const path = new Float64Array(3 * (sides + 1))
  // corners as far out as makes the polygon's area the circle's
  const r = radius * Math.sqrt((2 * Math.PI) / sides / Math.sin((2 * Math.PI) / sides))
  for (let k = 0; k <= sides; k++) {
    const φ = (2 * Math.PI * (k % sides)) / sides
    path.set([r * Math.cos(φ), r * Math.sin(φ), z], 3 * k)
  }
  return path
}

const a = loop(0.03, 0.018)
const b = loop(0.02, 0.022)
const fixed = (repeats: number) => ({ end: { repeats }, far: 'none' as const })
const M = (apart: number) => coaxialLoopMutualInductance({ radiusA: 0.03, radiusB: 0.02, apart })

describe('agrees: coaxial loops in closed form stand for the images', () => {
  // one plate at 0: the image of a loop at 0.022 is at −0.022
  const one = imageInductance([a, b], { lower: 0, upper: undefined }, fixed(9))
  check('one plate below, nH', one.inductance * 1e9, (M(0.018 + 0.022) * 1e9).toFixed(5), { relative: 2e-4 })
  const above = imageInductance([a, b], { lower: undefined, upper: 0.037 }, fixed(9))
  check('one plate above, nH', above.inductance * 1e9, (M(0.074 - 0.022 - 0.018) * 1e9).toFixed(5), {
    relative: 2e-4,
  })
  // two plates at 0 and 0.037, three repeats listed one by one
  const D = 0.037
  const heights = [-0.022, 2 * D - 0.022]
  for (let n = 1; n <= 3; n++)
    heights.push(0.022 + 2 * n * D, 0.022 - 2 * n * D, -0.022 - 2 * n * D, 2 * D - 0.022 + 2 * n * D)
  const listed = heights.reduce((sum, z) => sum + M(Math.abs(z - 0.018)), 0)
  const two = imageInductance([a, b], { lower: 0, upper: D }, fixed(3))
  check('two plates, listed images, nH', two.inductance * 1e9, (listed * 1e9).toFixed(5), { relative: 2e-4 })
  let long = listed
  for (let n = 4; n <= 4000; n++)
    for (const z of [0.022 + 2 * n * D, 0.022 - 2 * n * D, -0.022 - 2 * n * D, 2 * D - 0.022 + 2 * n * D])
      long += M(Math.abs(z - 0.018))
  const tailed = imageInductance([a, b], { lower: 0, upper: D }, { ...fixed(4), far: 'dipole' })
  check('the dipoles beyond four repeats, nH', tailed.inductance * 1e9, (long * 1e9).toFixed(5), {
    relative: 1e-3,
  })
})

describe('law: images', () => {
  test('a coil in the plane of the iron links itself twice', () => {
    const g = { meanDistance: 2e-3 }
    const own = mutualInductance(b, b, g)
    const image = imageInductance([b, b], { lower: 0.022, upper: undefined }, { ...fixed(0), ...g })
    expect(image.inductance / own).toBeCloseTo(1, 6)
  })
  test('iron far away, or none, adds nothing', () => {
    const own = mutualInductance(b, b, { meanDistance: 2e-3 })
    const far = imageInductance([b, b], { lower: -1, upper: undefined }, fixed(0))
    expect(far.inductance / own).toBeLessThan(1e-4)
    const none = { lower: undefined, upper: undefined }
    expect(imageInductance([b, b], none, fixed(9))).toEqual({ inductance: 0, repeats: 0 })
  })
  test('reciprocity, paths at unlike heights', () => {
    const planes = { lower: 0, upper: 0.037 }
    const ab = imageInductance([a, b], planes, fixed(5)).inductance
    expect(imageInductance([b, a], planes, fixed(5)).inductance / ab).toBeCloseTo(1, 9)
  })
  test('between close plates the flux of N I goes straight across: L → μ0 A/D and an edge as long as the rim', () => {
    const D = 0.01
    const edge = (radius: number) => {
      const path = loop(radius, D / 2)
      const g = { meanDistance: 1e-3 }
      const own = mutualInductance(path, path, g)
      const images = imageInductance(
        [path, path],
        { lower: 0, upper: D },
        { end: { reference: own }, far: 'dipole' },
      )
      return own + images.inductance - (4e-7 * Math.PI * Math.PI * radius ** 2) / D
    }
    const small = edge(0.03)
    expect(small).toBeGreaterThan(0)
    expect(edge(0.06) / small).toBeGreaterThan(1.9)
    expect(edge(0.06) / small).toBeLessThan(2.1)
  })
})
