/** The flat steel plate behind magnets, of finite width and thickness, that saturates. */
import { gaussLegendreOn } from '../../numerics/quadrature.ts'
import {
  refuse,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../../refusal/require.ts'
import type { BhCurve } from './bh-curve.ts'
import {
  type FoldedAir,
  foldedAir,
  gapWaves,
  planeWaves,
  type RadialGrid,
  radialGrid,
  ringValue,
  waveDensity,
  waveOperator,
} from './yoke-plate-air.ts'
import { type Sheet, sheetPotential } from './yoke-plate-sheet.ts'
import {
  coveredArea,
  type MagnetFootprint,
  type PlaneSource,
  planeSource,
  sectorPoints,
} from './yoke-plate-source.ts'
import { type PlateState, plateState } from './yoke-plate-state.ts'

export interface YokePlate {
  /** [m]. */
  readonly thickness: number
  /** Rims; the inner one from 0 on [m]. */
  readonly innerRadius: number
  readonly outerRadius: number
}

export interface YokeArrangement {
  readonly polePairs: number
  readonly steel: BhCurve
  /** Its field side is z = 0, the air gap above; a pole's middle lies at angle 0. */
  readonly plate: YokePlate
  /** `mirrored`: an equal disc with attracting magnets; a plate: plain steel; `none`: open air. */
  readonly opposite: 'none' | 'mirrored' | YokePlate
  /** z of the opposite plate's field side; unused with `none` [m]. */
  readonly planeDistance: number
  /** B at points x0 y0 z0 x1 … were the plates unbounded ideal iron, as Bx By Bz of each in turn [T]. */
  readonly fluxDensity: (points: Float64Array) => Float64Array
  /** Where magnets stand on the plate. */
  readonly magnets: MagnetFootprint
  /** The ring in which the field is wanted [m]. */
  readonly winding: { readonly height: number; readonly innerRadius: number; readonly outerRadius: number }
}

export interface FieldHarmonic {
  /** Odd, in pole pairs [1]. */
  readonly order: number
  /** Axial flux density of this order in the winding, mean over its area: with ideal plates, with these [T]. */
  readonly ideal: number
  readonly actual: number
  /** actual/ideal; 1 where `ideal` is under a thousandth of the largest order [1]. */
  readonly gain: number
}

export interface YokeState {
  readonly plate: PlateState
  /** The plain steel plate opposite. */
  readonly opposite: PlateState | undefined
  /** Orders 1, 3, 5 … */
  readonly harmonics: readonly FieldHarmonic[]
  /** Share of the fundamental that is left [1]. */
  readonly gain: number
}

/** Plate thickness over pole pitch at the mean radius up to which the thin sheet was held against finite elements. */
export const yokeThicknessRange = [0.04, 0.17] as const

const μ0 = 4e-7 * Math.PI
/** Odd orders that make up the potential. */
const orderCount = 5
/** Angles between a pole's middle and its end at which the ideal field is asked for. */
const angleCount = 8
/** Rings where magnets stand: a tenth of a pole pitch apart, yet not more than so many. */
const ringsPerPolePitch = 10
const mostRings = 12
/** Plates end for the grid where a potential that decays like r^±p has fallen to e^−5, the air e^−3 farther on. */
const plateDecay = 5
const airDecay = 3

/** One plate on its plane: the rings it takes up, the air folded into them. */
interface Plane {
  readonly sheet: Sheet
  readonly first: number
  readonly air: readonly FoldedAir[]
  readonly source: PlaneSource
  potential: Float64Array | undefined
  whole: readonly Float64Array[]
}

function planeOf(
  { steel, polePairs }: YokeArrangement,
  thickness: number,
  grid: RadialGrid,
  edges: readonly [number, number],
  stiffness: readonly Float64Array[],
  source: PlaneSource,
): Plane {
  const n = grid.radius.length
  const within = (r: number) => r > edges[0] * (1 - 1e-9) && r < edges[1] * (1 + 1e-9)
  const first = grid.radius.findIndex(within)
  let last = first
  while (last + 1 < n && within(grid.radius[last + 1]!)) last++
  const air = stiffness.map((G) => foldedAir(G, n, first, last))
  return {
    sheet: {
      radius: grid.radius.slice(first, last + 1),
      step: grid.step.slice(first, last),
      thickness,
      steel,
      orders: stiffness.map((_, o) => (2 * o + 1) * polePairs),
      stiffness: air.map((a) => a.stiffness),
    },
    first,
    air,
    source,
    potential: undefined,
    whole: stiffness.map(() => new Float64Array(n)),
  }
}

/** Finds the plane's potential, with flux that the other plate drives in. */
function settle(plane: Plane, extra?: readonly Float64Array[]): void {
  const { sheet, air } = plane
  const source =
    extra === undefined
      ? plane.source.orders
      : plane.source.orders.map((list, o) => list.map((value, i) => value + extra[o]![i]!))
  const folded = source.map((list, o) => air[o]!.foldedSource(list))
  const φ = sheetPotential(sheet, folded, plane.potential)
  plane.potential = φ
  plane.whole = source.map((list, o) =>
    air[o]!.unfolded(
      sheet.radius.map((_, j) => φ[j * source.length + o]!),
      list,
    ),
  )
}

const times = (G: Float64Array, x: Float64Array): Float64Array =>
  x.map((_, i) => {
    let sum = 0
    for (let j = 0; j < x.length; j++) sum += G[i * x.length + j]! * x[j]!
    return sum
  })

/** Each plate in turn takes the flux that the other one's potential drives across, until both stand still. */
function settleBoth(lower: Plane, upper: Plane, across: readonly Float64Array[]): void {
  for (let sweep = 0; sweep < 20; sweep++) {
    const before = lower.potential
    settle(
      lower,
      across.map((G, o) => times(G, upper.whole[o]!)),
    )
    settle(
      upper,
      across.map((G, o) => times(G, lower.whole[o]!)),
    )
    const after = lower.potential!
    let size = 0
    let change = 0
    for (let i = 0; i < after.length; i++) {
      size = Math.max(size, Math.abs(after[i]!))
      change = Math.max(change, Math.abs(after[i]! - (before?.[i] ?? 0)))
    }
    if (change <= 1e-3 * size) return
  }
  refuse({
    name: 'potentials of the two plates',
    condition: 'still after 20 turns',
    value: lower.potential?.[0],
    unit: 'A',
    code: 'no-convergence',
  })
}

function requireRing(
  name: string,
  ring: { readonly innerRadius: number; readonly outerRadius: number },
): void {
  requireNotNegative(`${name}.innerRadius`, ring.innerRadius, 'm')
  requirePositive(`${name}.outerRadius`, ring.outerRadius, 'm')
  if (!(ring.outerRadius > ring.innerRadius))
    refuse({
      name: `${name}.outerRadius`,
      condition: `above innerRadius ${ring.innerRadius} m`,
      value: ring.outerRadius,
      unit: 'm',
      code: 'conflict',
    })
}

function requireArrangement(arrangement: YokeArrangement): void {
  const { polePairs, plate, opposite, planeDistance, magnets, winding } = arrangement
  if (!Number.isInteger(polePairs) || polePairs < 1)
    refuse({
      name: 'polePairs',
      condition: 'a whole number, 1 or more',
      value: polePairs,
      code: 'below-minimum',
    })
  requirePositive('plate.thickness', plate.thickness, 'm')
  requireRing('plate', plate)
  if (typeof opposite !== 'string') {
    requirePositive('opposite.thickness', opposite.thickness, 'm')
    requireRing('opposite', opposite)
  }
  requirePositive('magnets.innerRadius', magnets.innerRadius, 'm')
  requireRing('magnets', magnets)
  requireFinite('magnets.polarization', magnets.polarization, 'T')
  requirePositive('magnets.thickness', magnets.thickness, 'm')
  requireBetween('magnets.recoilPermeability', magnets.recoilPermeability, [1, 10])
  requireRing('winding', winding)
  requireNotNegative('winding.height', winding.height, 'm')
  if (opposite === 'none') return
  requirePositive('planeDistance', planeDistance, 'm')
  requireBetween('winding.height', winding.height, [0, planeDistance], 'm')
  requireBetween('magnets.thickness', magnets.thickness, [0, planeDistance], 'm')
}

/**
 * Flux in a finite, saturable flat plate behind magnets, and what it takes from the field in the gap.
 *
 *   −∇·(t B(|∇φ|) ∇φ/|∇φ|) + (G_gap + G_back) φ = −B_ideal(z = 0),  G_back = μ0 k,  G_gap = μ0 k coth(kD/2)
 *
 * The plate is a sheet with one magnetic potential φ through its thickness t. What the ideal plate would take in is
 * carried along the sheet; φ itself drives flux off, by wave number k, into the half space behind and across the gap:
 * coth(kD/2) towards an equal disc, coth(kD) and −1/sinh(kD) between two plates of their own potentials, 1 into the
 * open. k² are the eigenvalues of −Δ on the plane for each order of pole pairs. Beyond the rims t = 0: there the
 * equation says that the flux passes through the plane. The field in the winding changes by what φ drives there.
 *
 * Holds: every pole alike and alternating, plates thin against the pole pitch (`yokeThicknessRange`), magnets as
 * permeable as air for φ but for their own recoil. Accuracy: against non-linear finite elements of twelve-pole discs,
 * plates of 2 … 8 mm, as wide as the magnets nearly or twice as wide: gain 0.5 %, section 1.5 %, largest flux density
 * up to 9 % low, flux out of the back 20 %, the air's largest flux density there up to 40 % low, potential 16 % low.
 *
 * @param arrangement  polePairs [1], steel, plate, opposite, planeDistance [m], fluxDensity [T], magnets, winding [m]
 * @returns            plate and opposite (B [T], A, Wb), harmonics [T], gain [1]
 * @throws RangeError   sizes not above zero or not in order; winding outside the gap; potential not found
 * @source derived, from Ampère's law and div B = 0 for a thin sheet between two regions of air
 * @example yokePlate({ polePairs: 6, steel: bhCurve({ fluxDensity: [0, 1, 1.5, 2], fieldStrength: [0, 300, 900, 20000] }), plate: { thickness: 0.003, innerRadius: 0.06, outerRadius: 0.12 }, opposite: 'none', planeDistance: 0, fluxDensity: (at) => at.map((_, i) => (i % 3 === 2 ? 0.5 * Math.exp(-(((Math.hypot(at[i - 1], at[i - 2]) - 0.09) / 0.02) ** 2) - at[i] / 0.015) * Math.cos(6 * Math.atan2(at[i - 1], at[i - 2])) : 0)), magnets: { innerRadius: 0.07, outerRadius: 0.11, thickness: 0.01, polarization: 0, recoilPermeability: 1.05, angles: () => [0, 0] }, winding: { height: 0.01, innerRadius: 0.07, outerRadius: 0.11 } }).gain // 0.998
 */
export function yokePlate(arrangement: YokeArrangement): YokeState {
  requireArrangement(arrangement)
  const { polePairs, plate, opposite, planeDistance: D, magnets, winding, fluxDensity } = arrangement
  const reach = plateDecay / polePairs
  const least = magnets.innerRadius * Math.exp(-reach)
  const most = magnets.outerRadius * Math.exp(reach)
  // A rim where no field is left may as well lie nearer
  const rims = ({ innerRadius, outerRadius }: YokePlate): readonly [number, number] => [
    Math.min(Math.max(innerRadius, least), most * Math.exp(-0.1 * reach)),
    Math.max(Math.min(outerRadius, most), least * Math.exp(0.1 * reach)),
  ]
  const own = rims(plate)
  const other = typeof opposite === 'string' ? undefined : rims(opposite)
  const span = Math.log(magnets.outerRadius / magnets.innerRadius)
  const grid = radialGrid(
    [magnets.innerRadius, magnets.outerRadius],
    [...own, ...(other ?? [])],
    Math.max(Math.PI / (ringsPerPolePitch * polePairs), span / mostRings),
    airDecay / polePairs,
  )
  const waves = Array.from({ length: orderCount }, (_, o) => planeWaves(grid, (2 * o + 1) * polePairs))
  const gap = gapWaves(opposite === 'none' ? 'open' : opposite === 'mirrored' ? 'middle' : 'plane', D)
  const off = (k: number) => gap.own(k) + μ0 * k
  const stiffness = waves.map((w) => waveOperator(w, off))
  const common = { grid, polePairs, orderCount, angleCount, fluxDensity }
  const lower = planeOf(
    arrangement,
    plate.thickness,
    grid,
    own,
    stiffness,
    planeSource({ ...common, height: 0, side: 1, magnets }),
  )
  let upper: Plane | undefined
  let across: readonly Float64Array[] = []
  if (other !== undefined && typeof opposite !== 'string') {
    upper = planeOf(
      arrangement,
      opposite.thickness,
      grid,
      other,
      stiffness,
      planeSource({ ...common, height: D, side: -1, magnets: undefined }),
    )
    across = waves.map((w) => waveOperator(w, gap.across))
    settleBoth(lower, upper, across)
  } else settle(lower)

  const stateOf = (plane: Plane, facing: Plane | undefined, { innerRadius, outerRadius }: YokePlate) =>
    plateState(
      {
        width: outerRadius - innerRadius,
        sheet: plane.sheet,
        first: plane.first,
        source: plane.source,
        potential: plane.potential!,
        whole: plane.whole,
        driven: waves.map((w, o) => {
          const driven = waveDensity(w, grid, plane.whole[o]!, off)
          if (facing === undefined) return driven
          const from = waveDensity(w, grid, facing.whole[o]!, gap.across)
          return driven.map((value, i) => value + from[i]!)
        }),
      },
      grid,
      waves,
    )

  const wholePotential = (o: number, z: number): Float64Array => {
    const below = waveDensity(waves[o]!, grid, lower.whole[o]!, (k) => gap.potential(k, z))
    if (upper === undefined) return below
    const above = waveDensity(waves[o]!, grid, upper.whole[o]!, (k) => gap.potential(k, D - z))
    return below.map((value, i) => value + above[i]!)
  }
  // On the recoil line J = Br + (μrec − 1) μ0 H: the drop over the magnet moves its J
  let recoil = 1
  if (magnets.polarization !== 0) {
    const covered = coveredArea(grid, magnets, polePairs, orderCount)
    let drop = 0
    for (let o = 0; o < orderCount; o++) {
      const top = wholePotential(o, magnets.thickness)
      for (let i = 0; i < top.length; i++) drop += covered.orders[o]![i]! * (lower.whole[o]![i]! - top[i]!)
    }
    const mean = drop / covered.area.reduce((sum, value) => sum + value, 0)
    recoil += ((magnets.recoilPermeability - 1) * μ0 * (mean / magnets.thickness)) / magnets.polarization
  }
  const { nodes, weights } = gaussLegendreOn(4, winding.innerRadius, winding.outerRadius)
  const z = winding.height
  const B = fluxDensity(sectorPoints(nodes, polePairs, angleCount, z))
  const area = nodes.reduce((sum, r, i) => sum + r * weights[i]!, 0)
  const raw = waves.map((w, o) => {
    const order = 2 * o + 1
    const below = waveDensity(w, grid, lower.whole[o]!, (k) => gap.axial(k, z))
    const above = upper && waveDensity(w, grid, upper.whole[o]!, (k) => gap.axial(k, D - z))
    let ideal = 0
    let change = 0
    nodes.forEach((r, i) => {
      let sum = 0
      for (let q = 0; q < angleCount; q++)
        sum += B[3 * (i * angleCount + q) + 2]! * Math.cos((order * Math.PI * (q + 0.5)) / (2 * angleCount))
      const share = (r * weights[i]!) / area
      ideal += (share * 2 * sum) / angleCount
      change += share * (ringValue(grid, below, r) - (above ? ringValue(grid, above, r) : 0))
    })
    return { order, ideal, actual: recoil * (ideal + change) }
  })
  const largest = Math.max(...raw.map(({ ideal }) => Math.abs(ideal)))
  const harmonics = raw.map((h) => ({
    ...h,
    gain: Math.abs(h.ideal) > 1e-3 * largest ? h.actual / h.ideal : 1,
  }))
  return {
    plate: stateOf(lower, upper, plate),
    opposite: upper && stateOf(upper, lower, opposite as YokePlate),
    harmonics,
    gain: harmonics[0]!.gain,
  }
}
