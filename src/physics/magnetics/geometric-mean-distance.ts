/** Geometric mean distances of wire and bundle sections: the spacing a thin filament must be given instead. */
import { refuse, requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/**
 * Geometric mean distance of a rectangle from itself.
 *
 *   ln g = ½ ln(a²+b²) − (a²/12b²) ln(1+b²/a²) − (b²/12a²) ln(1+a²/b²) + (2a/3b) atan(b/a) + (2b/3a) atan(a/b) − 25/12
 *
 * Holds: even current over the rectangle, any ratio of sides, one side may be zero. Accuracy: closed form,
 * rounding only. The rule of thumb 0.2235 (a + b) stays within 0.2 % of it.
 *
 * @param section.width      a  ≥ 0                       [m]
 * @param section.thickness  b  ≥ 0, not both zero        [m]
 * @returns                  g                            [m]
 * @throws RangeError        a negative side; both sides zero
 * @source maxwell1891, article 692 (self distance of a rectangle); from memory, not opened
 * @example rectangleMeanDistance({ width: 1, thickness: 1 }) // 0.44705
 */
export function rectangleMeanDistance(section: {
  readonly width: number
  readonly thickness: number
}): number {
  requireNotNegative('section.width', section.width, 'm')
  requireNotNegative('section.thickness', section.thickness, 'm')
  const a = Math.max(section.width, section.thickness)
  requirePositive('longer side of the section', a, 'm')
  const q = Math.min(section.width, section.thickness) / a
  const q2 = q * q
  // with b = q a; the two products that look like 0/0 for a thin strip have the limits 1 and 0
  const steep = q2 > 1e-12 ? Math.log1p(q2) / q2 : 1
  const flat = q > 0 ? q2 * (Math.log1p(q2) - 2 * Math.log(q)) : 0
  const over = q > 0 ? Math.atan(q) / q : 1
  const lnRatio =
    Math.log1p(q2) / 2 -
    steep / 12 -
    flat / 12 +
    (2 / 3) * (over + q * (Math.PI / 2 - Math.atan(q))) -
    25 / 12
  return a * Math.exp(lnRatio)
}

/**
 * Geometric mean distance of a round wire from itself.
 *
 *   g = r exp(−1/4)
 *
 * Holds: even current over the wire (no skin effect). Accuracy: exact.
 *
 * @param radius      r  of the bare wire, > 0   [m]
 * @returns           g                          [m]
 * @throws RangeError radius not above zero
 * @source maxwell1891, article 692 (circular area); from memory, not opened
 * @example roundWireMeanDistance(1) // 0.7788
 */
export function roundWireMeanDistance(radius: number): number {
  requirePositive('radius', radius, 'm')
  return radius * Math.exp(-0.25)
}

/** ∫∫ ln√(x²+y²) dx dy up to the corner (x, y). */
function cornerPotential(x: number, y: number): number {
  const r2 = x * x + y * y
  if (r2 === 0) return 0
  return (
    (x * y * (Math.log(r2) - 3) +
      x * x * Math.atan(x === 0 ? 0 : y / x) +
      y * y * Math.atan(y === 0 ? 0 : x / y)) /
    2
  )
}

/**
 * Geometric mean distance of a point from a rectangle centred on the origin.
 *
 *   ln g = (1/ab) ∫∫ ln√((x−u)² + (y−v)²) du dv
 *
 * Holds: point anywhere, inside or outside; both sides above zero. Accuracy: closed form; far away (beyond 1e4
 * sides) the corner sum cancels and the distance to the middle is returned, good to 1e-9.
 *
 * @param place.width      a  > 0                                [m]
 * @param place.thickness  b  > 0                                [m]
 * @param place.across     x  from the middle, along a           [m]
 * @param place.normal     y  from the middle, along b           [m]
 * @returns                g                                     [m]
 * @throws RangeError      a side not above zero; a value not finite
 * @source derived, from the definition of the mean of the logarithm
 * @example pointRectangleMeanDistance({ width: 1, thickness: 1, across: 0, normal: 0 }) // 0.34605
 */
export function pointRectangleMeanDistance(place: {
  readonly width: number
  readonly thickness: number
  readonly across: number
  readonly normal: number
}): number {
  requirePositive('width', place.width, 'm')
  requirePositive('thickness', place.thickness, 'm')
  requireFinite('across', place.across, 'm')
  requireFinite('normal', place.normal, 'm')
  const scale = Math.max(place.width, place.thickness)
  const a = place.width / scale
  const b = place.thickness / scale
  const x = place.across / scale
  const y = place.normal / scale
  if (Math.hypot(x, y) > 1e4) return scale * Math.hypot(x, y)
  // corners as seen from the point; all four terms are even, so signs are taken off in pairs
  const right = a / 2 - x
  const left = -a / 2 - x
  const top = b / 2 - y
  const bottom = -b / 2 - y
  const sum =
    cornerPotential(right, top) -
    cornerPotential(left, top) -
    cornerPotential(right, bottom) +
    cornerPotential(left, bottom)
  return scale * Math.exp(sum / (a * b))
}

/**
 * Distance each filament of a bundle must be given from itself, so that the filaments' sum of logarithms is right.
 *
 *   w_i ln g_i = mean ln|s_i − s′| over the section − Σ_{j≠i} w_j ln|s_i − s_j|
 *
 * Holds: distinct filaments inside a rectangle with even current; weights that sum to 1. Accuracy: exact for
 * even density in straight bundles.
 *
 * @param section.width      a  of the bundle, ≥ 0                                [m]
 * @param section.thickness  b  of the bundle, ≥ 0, not both zero                 [m]
 * @param section.offsets    s  (across, normal) of each filament, from any line: their weighted mean is the middle [m]
 * @param section.weights    w  share of each filament, sum 1                     [1]
 * @returns                  g  one for each filament                             [m]
 * @throws RangeError        no filament; two at one place; both sides zero
 * @source derived, from Neumann's integral with even current over the section
 * @example sectionSelfDistances({ width: 1, thickness: 1, offsets: [[0, 0]], weights: [1] })[0] // 0.44705
 */
export function sectionSelfDistances(section: {
  readonly width: number
  readonly thickness: number
  readonly offsets: readonly (readonly [across: number, normal: number])[]
  readonly weights: ArrayLike<number>
}): Float64Array {
  const { width, thickness, offsets, weights } = section
  if (offsets.length === 0 || weights.length !== offsets.length)
    refuse({
      name: 'weights',
      condition: 'one for each of one or more filaments',
      value: weights.length,
      code: 'wrong-length',
    })
  const whole = rectangleMeanDistance(section)
  if (offsets.length === 1) return Float64Array.of(whole)
  let middleX = 0
  let middleY = 0
  for (let i = 0; i < offsets.length; i++) {
    middleX += weights[i] * offsets[i][0]
    middleY += weights[i] * offsets[i][1]
  }
  // a side without extent: a sliver thin enough to leave the logarithm alone
  const a = Math.max(width, 1e-9 * thickness)
  const b = Math.max(thickness, 1e-9 * width)
  const logs = new Float64Array(offsets.length)
  let mean = 0
  for (let i = 0; i < offsets.length; i++) {
    const [x, y] = offsets[i]
    const target = Math.log(
      pointRectangleMeanDistance({ width: a, thickness: b, across: x - middleX, normal: y - middleY }),
    )
    let others = 0
    for (let j = 0; j < offsets.length; j++) {
      if (j === i) continue
      const d = Math.hypot(x - offsets[j][0], y - offsets[j][1])
      requirePositive(`distance of filaments ${i} and ${j}`, d, 'm')
      others += weights[j] * Math.log(d)
    }
    logs[i] = (target - others) / weights[i]
    mean += weights[i] * target
  }
  // the points' own rule misses the mean of the potential by a little; one common factor puts it right
  let squares = 0
  for (let i = 0; i < offsets.length; i++) squares += weights[i] * weights[i]
  const shift = (Math.log(whole) - mean) / squares
  return logs.map((value) => Math.exp(value + shift))
}
