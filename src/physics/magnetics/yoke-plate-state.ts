/** What a solved plate carries, drops and lets out at its back. */
import { type PlaneWaves, type RadialGrid, waveDensity } from './yoke-plate-air.ts'
import { type Sheet, sheetFluxDensity } from './yoke-plate-sheet.ts'
import type { PlaneSource } from './yoke-plate-source.ts'

export interface PlateState {
  /** Mean over the section between two poles, along θ [T]. */
  readonly sectionFluxDensity: number
  /** Largest |B| in the plate [T]. */
  readonly peakFluxDensity: number
  /** |B| angle by angle, each ring by ring: fluxDensity[angle][ring] [rad], [m], [T]. */
  readonly map: {
    readonly angle: Float64Array
    readonly radius: Float64Array
    readonly fluxDensity: readonly Float64Array[]
  }
  /** Largest magnetic potential, of a pole's middle above the plane between poles [A]. */
  readonly magnetomotiveForce: number
  /** Flux of one pole that leaves through the back [Wb], and the largest |B| in the air there [T], both off the rims. */
  readonly backFlux: number
  readonly backFluxDensity: number
  /** The section's mean lies above the steel's knee. */
  readonly pastKnee: boolean
}

/** A plate on its plane with the potential found. */
export interface SolvedPlate {
  readonly sheet: Sheet
  /** Rim to rim, also where the rings end before a rim that no flux reaches [m]. */
  readonly width: number
  /** Index of the plate's first ring in the grid. */
  readonly first: number
  /** What ideal plates would send out of this one. */
  readonly source: PlaneSource
  /** Ring by ring, order by order [A]. */
  readonly potential: Float64Array
  /** By order, over the whole plane: the potential [A] and the flux it drives off both sides [T]. */
  readonly whole: readonly Float64Array[]
  readonly driven: readonly Float64Array[]
}

const μ0 = 4e-7 * Math.PI

/** Angles from a pole's middle to its end, steps of the map. */
const mapSteps = 12

/** @internal Reads a solved plate. */
export function plateState(plate: SolvedPlate, grid: RadialGrid, waves: readonly PlaneWaves[]): PlateState {
  const { sheet, width, first, source, potential, whole, driven } = plate
  const { step, radius, steel, orders, thickness } = sheet
  const rings = radius.length
  const half = Math.PI / (2 * orders[0]!)
  const sign = (o: number) => (o % 2 === 0 ? 1 : -1)

  // What the field side takes in and does not give back goes through the section: ∫cos mθ to the pole's end is ±1/m
  let flux = 0
  for (let j = 0; j < rings; j++) {
    const i = first + j
    flux -= source.halfPole[i]!
    orders.forEach((m, o) => {
      flux -= (driven[o]![i]! * grid.area[i]! * sign(o)) / m
    })
  }
  const sectionFluxDensity = Math.abs(flux) / (thickness * width)

  const angle = Float64Array.from({ length: mapSteps + 1 }, (_, q) => (half * q) / mapSteps)
  const fluxDensity = Array.from(angle, (θ) => {
    const B = sheetFluxDensity(sheet, potential, θ)
    return Float64Array.from(step, (_, j) => Math.hypot(B[2 * j]!, B[2 * j + 1]!))
  })
  let peakFluxDensity = 0
  for (const list of fluxDensity) for (const B of list) peakFluxDensity = Math.max(peakFluxDensity, B)

  // Just behind the plate −μ0 k φ of each wave; the field that turns round a rim is not what the steel lets through
  const rim = Math.min(thickness, width / 4)
  const behind = waves.map((w, o) => waveDensity(w, grid, whole[o]!, (k) => μ0 * k))
  let backFlux = 0
  let backFluxDensity = 0
  let magnetomotiveForce = 0
  for (let j = 0; j < rings; j++) {
    let φ = 0
    for (let o = 0; o < orders.length; o++) φ += potential[j * orders.length + o]!
    magnetomotiveForce = Math.max(magnetomotiveForce, Math.abs(φ))
    const i = first + j
    if (radius[j]! < radius[0]! + rim || radius[j]! > radius[rings - 1]! - rim) continue
    orders.forEach((m, o) => {
      backFlux += (2 * behind[o]![i]! * grid.area[i]! * sign(o)) / m
    })
  }
  // Along the back goes μ0 H of the steel, the same on both sides of its surface
  for (let j = 0; j + 1 < rings; j++) {
    if (radius[j]! < radius[0]! + rim || radius[j + 1]! > radius[rings - 1]! - rim) continue
    const i = first + j
    angle.forEach((θ, q) => {
      let across = 0
      orders.forEach((m, o) => {
        across += ((behind[o]![i]! + behind[o]![i + 1]!) / 2) * Math.cos(m * θ)
      })
      const along = μ0 * steel.fieldStrength(fluxDensity[q]![j]!)
      backFluxDensity = Math.max(backFluxDensity, Math.hypot(across, along))
    })
  }
  return {
    sectionFluxDensity,
    peakFluxDensity,
    map: {
      angle,
      radius: Float64Array.from(step, (_, j) => Math.sqrt(radius[j]! * radius[j + 1]!)),
      fluxDensity,
    },
    magnetomotiveForce,
    backFlux: Math.abs(backFlux),
    backFluxDensity,
    pastKnee: sectionFluxDensity > steel.knee,
  }
}
