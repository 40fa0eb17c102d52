/** The flux density that a wire round the shaft cuts as the rotor turns, as series over the rotor's angle. */
import type { Machine } from '../machine/machine.ts'
import { magnetFluxDensity } from '../physics/magnetics/magnet.ts'
import { fieldError, type RotorField } from './air-gap-field.ts'

export interface CutFieldOptions {
  /** Periods of the series in one turn of the rotor. */
  readonly base: number
  /** Highest order kept. */
  readonly orders: number
  /** Where rings lie close on one level, the field is read between nodes no farther apart than this [m]. */
  readonly spacing: number
}

/** Lists per ring: radial cos, radial sin, axial cos, axial sin by order 0…orders, one after the other [T]. */
export interface CutField {
  readonly orders: number
  readonly values: Float64Array
}

/** Nodes on one level: enough for a cubic, and no more than a picture or a sum can tell. */
const fewestNodes = 8
const mostNodes = 96

/** Levels closer than this are one [m]. */
const sameLevel = 1e-9

interface Group {
  /** Places along the level, and the rings they belong to. */
  readonly along: number[]
  readonly rings: number[]
  readonly level: number
}

const near = 1e-12
const isFlat = (z: number): boolean => Math.abs(z) < near

/** Magnets that the plane z = 0 cuts in halves give B_r alike and B_z reversed on its two sides. */
const mirrored = ({ sources }: RotorField): boolean =>
  sources.every((magnet) => {
    if (!isFlat(magnet.centre[2])) return false
    const [x, y, z] = magnet.frame
    if ('size' in magnet) return [x, y, z].every((row) => isFlat(row[2] * (1 - row[2] ** 2)))
    if ('outline' in magnet) return isFlat(1 - Math.abs(z[2])) && isFlat(magnet.direction[2])
    return isFlat(z[2])
  })

/** Rings by their level: the radius on a drum, the height on a disc. */
function groupsOf(rings: Float64Array, drum: boolean, folded: boolean): Group[] {
  const groups = new Map<number, Group>()
  for (let k = 0; 2 * k < rings.length; k++) {
    const r = rings[2 * k]!
    const z = rings[2 * k + 1]!
    const level = drum ? r : z
    const key = Math.round(level / sameLevel)
    const group = groups.get(key) ?? { along: [], rings: [], level }
    groups.set(key, group)
    group.along.push(drum ? (folded ? Math.abs(z) : z) : r)
    group.rings.push(k)
  }
  return [...groups.values()]
}

/** Even nodes over the group's places; the places themselves where they are as few. */
function nodesOf({ along }: Group, spacing: number): { nodes: number[]; even: boolean } {
  let low = along[0]!
  let high = low
  for (const y of along) {
    low = Math.min(low, y)
    high = Math.max(high, y)
  }
  const count = Math.min(mostNodes, Math.max(fewestNodes, Math.ceil((high - low) / spacing) + 1))
  if (along.length <= count || high === low) return { nodes: along, even: false }
  return {
    nodes: Array.from({ length: count }, (_, k) => low + ((high - low) * k) / (count - 1)),
    even: true,
  }
}

/** Lagrange's cubic through four even nodes: `first` node, and the weights of the four. */
function cubicAt(position: number, count: number): { first: number; weights: readonly number[] } {
  const first = Math.min(Math.max(Math.floor(position) - 1, 0), count - 4)
  const t = position - first
  return {
    first,
    weights: [
      -((t - 1) * (t - 2) * (t - 3)) / 6,
      (t * (t - 2) * (t - 3)) / 2,
      -(t * (t - 1) * (t - 3)) / 2,
      (t * (t - 1) * (t - 2)) / 6,
    ],
  }
}

/** Series of B_r and B_z round each ring (r, z); where poles alternate, half a period tells the other half. */
function seriesOfRings(
  field: RotorField,
  rings: ArrayLike<number>,
  { base, orders }: CutFieldOptions,
  alternating: boolean,
): Float64Array {
  const count = 2 * (orders + 1)
  const sampled = alternating ? count / 2 : count
  const c = Float64Array.from({ length: count }, (_, k) => Math.cos((2 * Math.PI * k) / count))
  const s = Float64Array.from({ length: count }, (_, k) => Math.sin((2 * Math.PI * k) / count))
  const ringCount = rings.length / 2
  const azimuth = Array.from({ length: sampled }, (_, k) => (2 * Math.PI * k) / (count * base))
  const cosines = azimuth.map(Math.cos)
  const sines = azimuth.map(Math.sin)
  const points = new Float64Array(3 * ringCount * sampled)
  for (let ring = 0, at = 0; ring < ringCount; ring++)
    for (let k = 0; k < sampled; k++, at += 3) {
      points[at] = rings[2 * ring]! * cosines[k]!
      points[at + 1] = rings[2 * ring]! * sines[k]!
      points[at + 2] = rings[2 * ring + 1]!
    }
  const B = magnetFluxDensity(field.sources, points, { relativeError: fieldError })
  const width = orders + 1
  const values = new Float64Array(4 * width * ringCount)
  const first = alternating ? 1 : 0
  const step = alternating ? 2 : 1
  for (let ring = 0; ring < ringCount; ring++) {
    const place = 4 * width * ring
    for (let k = 0; k < sampled; k++) {
      const at = 3 * (sampled * ring + k)
      const radial = B[at]! * cosines[k]! + B[at + 1]! * sines[k]!
      const axial = B[at + 2]!
      for (let h = first; h <= orders; h += step) {
        const turn = (h * k) % count
        const factor = (h === 0 ? 1 : 2) / sampled
        values[place + h]! += factor * radial * c[turn]!
        values[place + width + h]! += factor * radial * s[turn]!
        values[place + 2 * width + h]! += factor * axial * c[turn]!
        values[place + 3 * width + h]! += factor * axial * s[turn]!
      }
    }
  }
  return values
}

/**
 * Series over `base` times the azimuth in the rotor's frame, for rings given as r0 z0 r1 z1 …. B_φ is left out: it is
 * along the motion, which cuts nothing of it. Of magnets and flat images alone: other steel changes the orders afterwards.
 */
export function cutField(
  { rotor }: Machine,
  field: RotorField,
  rings: Float64Array,
  options: CutFieldOptions,
): CutField {
  const { orders, spacing } = options
  const drum = rotor.arrangement === 'drum'
  const folded = drum && mirrored(field)
  const groups = groupsOf(rings, drum, folded).map((group) => ({ ...group, ...nodesOf(group, spacing) }))
  const places = groups.flatMap(({ nodes, level }) => nodes.flatMap((y) => (drum ? [level, y] : [y, level])))
  const alternating = rotor.alternating && options.base === rotor.polePairs
  const computed = seriesOfRings(field, places, options, alternating)
  const width = 4 * (orders + 1)
  const values = new Float64Array((width * rings.length) / 2)
  let start = 0
  for (const { nodes, even, along, rings: members } of groups) {
    const count = nodes.length
    members.forEach((ring, member) => {
      const place = width * ring
      if (!even) values.set(computed.subarray(width * (start + member), width * (start + member + 1)), place)
      else {
        const position = ((along[member]! - nodes[0]!) * (count - 1)) / (nodes[count - 1]! - nodes[0]!)
        const { first, weights } = cubicAt(position, count)
        weights.forEach((weight, k) => {
          const from = width * (start + first + k)
          for (let i = 0; i < width; i++) values[place + i]! += weight * computed[from + i]!
        })
      }
      if (folded && rings[2 * ring + 1]! < 0)
        for (let i = width / 2; i < width; i++) values[place + i] = -values[place + i]!
    })
    start += count
  }
  return { orders, values }
}
