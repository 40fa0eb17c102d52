/** How fast the field of the turning rotor changes at any place that stands still: what drives eddy currents there. */
import type { Machine } from '../machine/machine.ts'
import { gaussLegendre } from '../numerics/quadrature.ts'
import { fieldAt, type RotorField } from './air-gap-field.ts'

/**
 * Writes the mean squares and products of the rates of the field's components, over the square of the shaft's speed
 * [T²/rad²]: 00, 11, 22, 01, 02, 12. Directions: 0 through the winding (radial on a drum, along the shaft on a disc),
 * 1 along the circumference, 2 along the magnets' length (along the shaft on a drum, radial on a disc). `level` is
 * the radius on a drum, the height on a disc; `along` the other of the two [m].
 */
export type MovingField = (level: number, along: number, rates: Float64Array) => void

/** Where the field is wanted. */
export interface FieldRegion {
  /** Levels that will be asked for; if they are many, only the ends of their range count [m]. */
  readonly levels: ArrayLike<number>
  readonly alongLeast: number
  readonly alongMost: number
  /** Range of levels about each over which the rates are averaged [m]. */
  readonly depth: number
  /** From the magnets' faces to the nearest level: the field's finest scale there [m]. */
  readonly distance: number
}

/** Gauss points through the depth: the square of a harmonic fades fast, so three even for a thin bundle. */
const depthOrder = 3

/** Orders past this say nothing more: they fade with exp(−h π d/τ), and their squares count h² times. */
function orders(machine: Machine, distance: number): number {
  const { pitchRadius, poleCount } = machine.rotor
  const τ = (2 * Math.PI * pitchRadius) / poleCount
  const h = Math.ceil((5 * τ) / (Math.PI * Math.max(distance, 0.2e-3)))
  // unlike poles take p times the places, and the few that are unlike hardly change the whole
  return Math.min(Math.max(h, 7), machine.rotor.alternating ? 31 : 15) | 1
}

type Component = (k: number, direction: 0 | 1 | 2) => number

/**
 * Rates from a quarter of a period, k = 0 … n: components 0 and 2 are even about the pole's middle, 1 is odd, and all
 * change their sign after half a period, so that odd orders alone remain, cosines of the one and sines of the other.
 */
function quarterRates(component: Component, n: number, base: number, cos: Float64Array, rates: Float64Array) {
  const period = 4 * n
  for (let h = 1; h < 2 * n; h += 2) {
    let a0 = component(0, 0) / 2
    let a1 = component(n, 1) * (h % 4 === 1 ? 0.5 : -0.5)
    let a2 = component(0, 2) / 2
    for (let k = 1; k < n; k++) {
      const c = cos[(h * k) % period]!
      a0 += component(k, 0) * c
      a2 += component(k, 2) * c
      a1 += component(k, 1) * cos[(h * k + 3 * n) % period]!
    }
    const weight = ((h * base * 2) / n) ** 2 / 2
    rates[0]! += weight * a0 * a0
    rates[1]! += weight * a1 * a1
    rates[2]! += weight * a2 * a2
    rates[4]! += weight * a0 * a2
  }
}

/** Rates from a whole turn of N samples. */
function turnRates(component: Component, N: number, cos: Float64Array, rates: Float64Array) {
  const quarter = N >> 2
  const a = [0, 0, 0]
  const b = [0, 0, 0]
  for (let h = 1; 2 * h < N; h++) {
    for (const i of [0, 1, 2] as const) {
      let re = 0
      let im = 0
      for (let k = 0; k < N; k++) {
        const value = component(k, i)
        re += value * cos[(h * k) % N]!
        im += value * cos[(h * k + 3 * quarter) % N]!
      }
      a[i] = (2 * re) / N
      b[i] = (2 * im) / N
    }
    const product = (i: number, j: number) => (h ** 2 / 2) * (a[i]! * a[j]! + b[i]! * b[j]!)
    rates[0]! += product(0, 0)
    rates[1]! += product(1, 1)
    rates[2]! += product(2, 2)
    rates[3]! += product(0, 1)
    rates[4]! += product(0, 2)
    rates[5]! += product(1, 2)
  }
}

/** Levels to compute: those asked for if they are two at most, else four spread for a cubic. */
function levelNodes(levels: ArrayLike<number>): number[] {
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  for (let k = 0; k < levels.length; k++) {
    least = Math.min(least, levels[k]!)
    most = Math.max(most, levels[k]!)
  }
  const same = 1e-7
  if (most - least < same) return [(least + most) / 2]
  let two = true
  for (let k = 0; k < levels.length; k++) two &&= levels[k]! - least < same || most - levels[k]! < same
  if (two) return [least, most]
  // Chebyshev's nodes, stretched so that the outer ones stand at the ends
  return [1, 3, 5, 7].map(
    (k) => (least + most) / 2 - ((most - least) / 2) * (Math.cos((k * Math.PI) / 8) / Math.cos(Math.PI / 8)),
  )
}

/** Slopes per place, of the parabola through three neighbours; at the ends that of the end's own parabola. */
function uniformSlopes(table: Float64Array, places: number): Float64Array {
  return table.map((value, k) => {
    const place = Math.floor(k / 6) % places
    if (place === 0) return 2 * table[k + 6]! - 1.5 * value - 0.5 * table[k + 12]!
    if (place === places - 1) return 1.5 * value - 2 * table[k - 6]! + 0.5 * table[k - 12]!
    return (table[k + 6]! - table[k - 6]!) / 2
  })
}

/** Steps of the table along the magnets, in distances from their faces, and their least and greatest number. */
const stepPerDistance = 1
const nodeRange = { alternating: [5, 11], unlike: [5, 9] } as const

/**
 * Table of the rates over a region, from a few places. Where the poles are alike and alternate a quarter of a period
 * tells all; else the field is taken all the way round. The two ends of a drum's magnets are alike.
 */
export function movingField(machine: Machine, field: RotorField, region: FieldRegion): MovingField {
  const { rotor } = machine
  const drum = rotor.arrangement === 'drum'
  const { alternating, polePairs } = rotor
  const quarter = (orders(machine, region.distance) + 1) >> 1
  const count = alternating ? quarter + 1 : 4 * quarter * polePairs
  const step = Math.PI / (2 * quarter * polePairs)
  // every magnet of a drum stands across the middle, whatever its strength
  const mirrored = drum
  const least = mirrored ? 0 : region.alongLeast
  const most = mirrored ? Math.max(Math.abs(region.alongLeast), Math.abs(region.alongMost)) : region.alongMost
  const span = Math.max(most - least, 1e-9)
  const [fewest, greatest] = nodeRange[alternating ? 'alternating' : 'unlike']
  const wanted = Math.ceil(span / (stepPerDistance * Math.max(region.distance, 1e-4))) + 1
  const places = Math.min(Math.max(wanted, fewest), greatest)
  const pitch = span / (places - 1)
  const centres = levelNodes(region.levels)
  const depths = gaussLegendre(region.depth > 0 ? depthOrder : 1)
  const cos = Float64Array.from({ length: count }, (_, k) => Math.cos(k * step))
  const sin = Float64Array.from({ length: count }, (_, k) => Math.sin(k * step))
  const points = new Float64Array(3 * count * places * centres.length * depths.nodes.length)
  let at = 0
  for (const centre of centres)
    for (const node of depths.nodes)
      for (let place = 0; place < places; place++) {
        const level = centre + (node * region.depth) / 2
        const along = least + place * pitch
        const r = drum ? level : along
        const z = drum ? along : level
        for (let k = 0; k < count; k++) {
          points[at++] = r * cos[k]!
          points[at++] = r * sin[k]!
          points[at++] = z
        }
      }
  const B = fieldAt(field, points)
  const period = alternating ? 4 * quarter : count
  const wave = Float64Array.from({ length: period }, (_, k) => Math.cos((2 * Math.PI * k) / period))
  const radial = drum ? 0 : 2
  let start = 0
  const component: Component = (k, direction) => {
    const i = start + 3 * k
    if (direction === 1) return B[i + 1]! * cos[k]! - B[i]! * sin[k]!
    return direction === radial ? B[i]! * cos[k]! + B[i + 1]! * sin[k]! : B[i + 2]!
  }
  const own = new Float64Array(6)
  // place by place six numbers, then centre by centre
  const table = new Float64Array(6 * places * centres.length)
  centres.forEach((_, c) => {
    depths.nodes.forEach((__, d) => {
      for (let place = 0; place < places; place++, start += 3 * count) {
        own.fill(0)
        if (alternating) quarterRates(component, quarter, polePairs, wave, own)
        else turnRates(component, count, wave, own)
        for (let i = 0; i < 6; i++) table[6 * (c * places + place) + i]! += (depths.weights[d]! / 2) * own[i]!
      }
    })
  })
  const slopes = uniformSlopes(table, places)
  return (level, along, rates) => {
    const where = Math.min(Math.max(((mirrored ? Math.abs(along) : along) - least) / pitch, 0), places - 1)
    const cell = Math.min(Math.floor(where), places - 2)
    const t = where - cell
    const u = 1 - t
    const w0 = (1 + 2 * t) * u * u
    const w1 = t * t * (3 - 2 * t)
    const s0 = t * u * u
    const s1 = -t * t * u
    rates.fill(0)
    for (let c = 0; c < centres.length; c++) {
      let weight = 1
      for (let j = 0; j < centres.length; j++)
        if (j !== c) weight *= (level - centres[j]!) / (centres[c]! - centres[j]!)
      const row = 6 * c * places
      for (let i = 0, k = row + 6 * cell; i < 6; i++, k++)
        rates[i]! += weight * (w0 * table[k]! + w1 * table[k + 6]! + s0 * slopes[k]! + s1 * slopes[k + 6]!)
    }
    // a component along the shaft changes its sign from one end of a drum to the other, and so do its products
    if (mirrored && along < 0) {
      rates[4] = -rates[4]!
      rates[5] = -rates[5]!
    }
  }
}
