/** The filaments that stand for a bundle: Gauss points over its cross-section, weights that sum to one. */
import { gaussLegendre } from '../numerics/quadrature.ts'
import { refuse, requireFinite } from '../refusal/require.ts'
import type { Curve } from './curve.ts'

/** Rectangle filled by the turns: `width` in the winding's surface across the run, `thickness` normal to it. */
export interface BundleSection {
  readonly width: number
  readonly thickness: number
}
export interface Filament {
  readonly curve: Curve
  readonly weight: number
  /** Place in the section: across the run and normal to the surface, from the bundle's reference line. */
  readonly offset: readonly [across: number, normal: number]
}

/** Gauss points across width and thickness of a coil's legs: linkage within 2e-5, see the tests beside this file. */
export const defaultBundleOrders: readonly [number, number] = [3, 3]
/** The same for the thinner bundle of a serpentine: within 5e-5. */
export const serpentineBundleOrders: readonly [number, number] = [3, 2]

/** `curveAt(across, normal)` at the Gauss points of the two ranges; a range without extent takes one point. */
export function bundleFilaments(
  curveAt: (across: number, normal: number) => Curve,
  ranges: { readonly across: readonly [number, number]; readonly normal: readonly [number, number] },
  orders: readonly [number, number] = defaultBundleOrders,
): Filament[] {
  for (const [name, [from, to]] of Object.entries(ranges)) {
    requireFinite(`${name} from`, from, 'm')
    requireFinite(`${name} to`, to, 'm')
    if (to < from)
      refuse({
        name: `${name} to`,
        condition: `at least ${from} m`,
        value: to,
        unit: 'm',
        code: 'not-increasing',
      })
  }
  const rule = ([from, to]: readonly [number, number], order: number) => {
    const { nodes, weights } = gaussLegendre(to === from ? 1 : order)
    return Array.from(nodes, (x, i) => ({
      at: (from + to) / 2 + (x * (to - from)) / 2,
      weight: weights[i] / 2,
    }))
  }
  const across = rule(ranges.across, orders[0])
  const normal = rule(ranges.normal, orders[1])
  return across.flatMap((u) =>
    normal.map((n) => ({
      curve: curveAt(u.at, n.at),
      weight: u.weight * n.weight,
      offset: [u.at, n.at] as const,
    })),
  )
}
