/** How far a round plate or ring bends, and how hard it is stressed, under rings of force and bands of pressure. */
import { linearSolve } from '../../numerics/linear-solve.ts'
import { refuse, requireFinite, requireNotNegative, requirePositive } from '../../refusal/require.ts'

/** How an edge is held: clamped w = w′ = 0; supported w = M = 0; guided w′ = V = 0; free M = V = 0. */
export type PlateEdge = 'clamped' | 'supported' | 'guided' | 'free'

export interface PlateState {
  /** Along the load [m]. */
  readonly deflection: number
  /** dw/dr [rad]. */
  readonly slope: number
  /** Per length, positive where the loaded face is pressed [N]. */
  readonly radialMoment: number
  readonly tangentialMoment: number
}

/** Greatest deflection over thickness up to which the linear plate is meant to hold. */
export const plateDeflectionRange: readonly [number, number] = [0, 0.5]

/** w, w′ and (r w′)′ / r of one cause in a plate of unit stiffness. */
type Shape = readonly [w: number, slope: number, curvature: number]

/** Force 1 per turn at s: nothing inside, log outside. */
const ring = (r: number, s: number): Shape => {
  if (r <= s) return [0, 0, 0]
  const l = Math.log(r / s)
  const k = 1 / (2 * Math.PI)
  return [
    k * (((r * r + s * s) / 4) * l - (r * r - s * s) / 4),
    k * ((r / 2) * l - (r * r - s * s) / (4 * r)),
    k * l,
  ]
}

/** Pressure 1 from s outward. */
const pressed = (r: number, s: number): Shape => {
  if (r <= s) return [0, 0, 0]
  // s² ln(r/s) goes to nothing with s.
  const l = s > 0 ? Math.log(r / s) : 0
  const r2 = r * r
  const s2 = s * s
  return [
    (r2 * r2 - 5 * s2 * s2 + 4 * r2 * s2 - 4 * s2 * s2 * l - 8 * r2 * s2 * l) / 64,
    ((r2 * r2 - s2 * s2) / r - 4 * s2 * r * l) / 16,
    (r2 - s2) / 4 - (s2 * l) / 2,
  ]
}

/**
 * Bending of a thin plate, round or a ring, under loads even around the axis.
 *
 *   d/dr ((1/r) d(r w′)/dr) = Q(r) / D,  D = E t³ / (12 (1 − ν²)),  σ = 6 max(|Mr|, |Mt|) / t²
 *
 * Holds: thin (t under a quarter of the span), elastic, deflection within plateDeflectionRange of t, loads and
 * holds even around the axis: magnets on a circle stand for a ring of force. Accuracy: exact solution of
 * Kirchhoff's plate, rounding about 1e-16 (a / (a − b))³; shear adds of order (t / span)².
 *
 * @param plate.outer      a  > 0                                                           [m]
 * @param plate.inner      b  of the hole or of the hub that clamps, 0 for a full disc, at most 0.999 a [m]
 * @param plate.thickness  t  > 0                                                           [m]
 * @param plate.modulus    E  > 0                                                           [Pa]
 * @param plate.poisson    ν  from 0 to below 0.5; 0.3 if left out                          [1]
 * @param plate.outerEdge  how the rim is held                                              [1]
 * @param plate.innerEdge  how the hole is held; no meaning if b = 0; free if left out      [1]
 * @param plate.rings      force F, whole circle, at radius r from b to a, above zero       [N, m]
 * @param plate.bands      pressure p from radius `from` to `to`, within b to a             [Pa, m]
 * @returns                state at any radius; greatest deflection [m] and stress [Pa], both ≥ 0
 * @throws RangeError      a value not finite or out of its bounds; edges that hold nothing
 * @source timoshenko1959, equations 54 and 58, from memory, not opened
 * @example plateBending({ outer: 1, inner: 0, thickness: 0.01, modulus: 1.0e9, outerEdge: 'clamped', bands: [{ from: 0, to: 1, pressure: 1 }] }).greatestDeflection // 1.70625e-4
 */
export function plateBending(plate: {
  readonly outer: number
  readonly inner: number
  readonly thickness: number
  readonly modulus: number
  readonly poisson?: number | undefined
  readonly outerEdge: PlateEdge
  readonly innerEdge?: PlateEdge | undefined
  readonly rings?: readonly { readonly radius: number; readonly force: number }[] | undefined
  readonly bands?:
    | readonly { readonly from: number; readonly to: number; readonly pressure: number }[]
    | undefined
}): {
  readonly at: (radius: number) => PlateState
  readonly greatestDeflection: number
  readonly greatestStress: number
} {
  const { outer: a, inner, thickness: t, modulus: E, poisson: ν = 0.3, rings = [], bands = [] } = plate
  const { outerEdge, innerEdge = 'free' } = plate
  requirePositive('outer', a, 'm')
  requireNotNegative('inner', inner, 'm')
  if (inner > 0.999 * a)
    refuse({
      name: 'inner',
      condition: 'at most 0.999 of outer',
      value: inner,
      unit: 'm',
      code: 'above-maximum',
    })
  requirePositive('thickness', t, 'm')
  requirePositive('modulus', E, 'Pa')
  requireNotNegative('poisson', ν)
  requirePositive('0.5 - poisson', 0.5 - ν)
  const within = (name: string, r: number) => {
    requireFinite(name, r, 'm')
    if (r < inner) refuse({ name, condition: 'at least inner', value: r, unit: 'm', code: 'below-minimum' })
    if (r > a) refuse({ name, condition: 'at most outer', value: r, unit: 'm', code: 'above-maximum' })
  }
  rings.forEach(({ radius, force }, i) => {
    within(`rings[${i}].radius`, radius)
    requirePositive(`rings[${i}].radius`, radius, 'm')
    requireFinite(`rings[${i}].force`, force, 'N')
  })
  bands.forEach(({ from, to, pressure }, i) => {
    within(`bands[${i}].from`, from)
    within(`bands[${i}].to`, to)
    requireNotNegative(`bands[${i}].to - from`, to - from, 'm')
    requireFinite(`bands[${i}].pressure`, pressure, 'Pa')
  })
  const full = inner === 0
  const held = (edge: PlateEdge) => edge === 'clamped' || edge === 'supported'
  if (!held(outerEdge) && (full || !held(innerEdge)))
    refuse({ name: 'outerEdge', condition: 'held, or innerEdge held', value: outerEdge, code: 'conflict' })

  // Radii over a and loads over D from here on, so that the system is well scaled and w comes out in metres.
  const D = (E * t ** 3) / (12 * (1 - ν * ν))
  const b = inner / a
  const loads = (r: number): Shape => {
    let w = 0
    let slope = 0
    let curvature = 0
    const add = (k: number, s: Shape) => {
      w += k * s[0]
      slope += k * s[1]
      curvature += k * s[2]
    }
    for (const { radius, force } of rings) add((force * a * a) / D, ring(r, radius / a))
    for (const { from, to, pressure } of bands) {
      const k = (pressure * a ** 4) / D
      add(k, pressed(r, from / a))
      add(-k, pressed(r, to / a))
    }
    return [w, slope, curvature]
  }
  /** Free shapes: lift, slope of the hole, even curvature, force of the hole's edge. */
  const free = (r: number): readonly Shape[] =>
    full
      ? [
          [1, 0, 0],
          [(r * r) / 4, r / 2, 1],
        ]
      : [
          [1, 0, 0],
          [b * Math.log(r / b), b / r, 0],
          [(r * r - b * b) / 4 - ((b * b) / 2) * Math.log(r / b), (r * r - b * b) / (2 * r), 1],
          ring(r, b),
        ]
  // w″ is curvature − w′ / r, so Mr = −(c − (1 − ν) w′ / r); in the middle of a full disc w′ / r is c / 2.
  const tilt = (r: number, [, slope, c]: Shape) => (r > 0 ? slope / r : c / 2)
  const radial = (r: number, s: Shape) => s[2] - (1 - ν) * tilt(r, s)
  const tangential = (r: number, s: Shape) => ν * s[2] + (1 - ν) * tilt(r, s)

  let force = 0
  for (const one of rings) force += (one.force * a * a) / D
  for (const { from, to, pressure } of bands)
    force += ((pressure * Math.PI * (to - from) * (to + from)) / D) * a * a
  const matrix: number[] = []
  const right: number[] = []
  const demand = (row: readonly number[], value: number) => {
    matrix.push(...row)
    right.push(value)
  }
  const demands = (edge: PlateEdge, r: number, loaded: Shape, shear: readonly number[], load: number) => {
    const shapes = free(r)
    if (held(edge))
      demand(
        shapes.map((s) => s[0]),
        -loaded[0],
      )
    else demand(shear, -load)
    if (edge === 'clamped' || edge === 'guided')
      demand(
        shapes.map((s) => s[1]),
        -loaded[1],
      )
    else
      demand(
        shapes.map((s) => radial(r, s)),
        -radial(r, loaded),
      )
  }
  // Shear at the rim is the push of the hole's edge with all the load; a ring at the rim itself counts.
  if (full) demands(outerEdge, 1, loads(1), [], 0)
  else {
    demands(innerEdge, b, [0, 0, 0], [0, 0, 0, 1], 0)
    demands(outerEdge, 1, loads(1), [0, 0, 0, 1], force)
  }
  const x = linearSolve(matrix, right)

  const shapeAt = (r: number): Shape => {
    const sum = [...loads(r)] as [number, number, number]
    free(r).forEach((s, i) => {
      for (let k = 0; k < 3; k++) sum[k] = sum[k]! + x[i]! * s[k]!
    })
    return sum
  }
  const at = (radius: number): PlateState => {
    within('radius', radius)
    const r = radius / a
    const s = shapeAt(r)
    const k = -D / (a * a)
    return {
      deflection: s[0],
      slope: s[1] / a,
      radialMoment: k * radial(r, s),
      tangentialMoment: k * tangential(r, s),
    }
  }
  let greatestDeflection = 0
  let greatestMoment = 0
  const look = (radius: number) => {
    const { deflection, radialMoment, tangentialMoment } = at(radius)
    greatestDeflection = Math.max(greatestDeflection, Math.abs(deflection))
    greatestMoment = Math.max(greatestMoment, Math.abs(radialMoment), Math.abs(tangentialMoment))
  }
  const steps = 64
  for (let i = 0; i < steps; i++) look(inner + ((a - inner) * i) / steps)
  look(a)
  for (const { radius } of rings) look(radius)
  for (const { from, to } of bands) {
    look(from)
    look(to)
  }
  return { at, greatestDeflection, greatestStress: (6 * greatestMoment) / (t * t) }
}
