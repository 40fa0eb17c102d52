/** What coaxial iron tubes add to the self and mutual inductance of wire paths between them. */
import { type ModifiedBessel, modifiedBessel } from '../../numerics/bessel.ts'
import { refuse, requireFinite, requirePositive } from '../../refusal/require.ts'
import { tubeReluctance, tubeWave } from './iron-cylinder-sheet.ts'
import { growth } from './iron-cylinder-source.ts'

/** A tube without end. */
export interface IronTube {
  /** Surface towards the winding [m]. */
  readonly radius: number
  /** Wall; as thick as the radius or more inside: a solid core [m]. */
  readonly thickness: number
  /** Relative to μ0; ideal iron when left out. */
  readonly permeability?: number
}

export interface TubedPaths {
  /** x0 y0 z0 x1 …, closed: the last point is the first [m]. */
  readonly pathA: Float64Array
  readonly pathB: Float64Array
  /** Iron inside the winding. */
  readonly inner?: IronTube
  /** Iron around it. */
  readonly outer?: IronTube
  /** Both paths are so many copies turned by 2π/repeats; 1 when left out. */
  readonly repeats?: number
  /** Angles by which path B is turned before; [0] when left out [rad]. */
  readonly angles?: ArrayLike<number>
}

const μ0 = 4e-7 * Math.PI

/** Attenuation there and back, in nepers, after which no further waves are taken. */
const attenuation = 7.5
/** Iron nearer to the wire than this share of the radius is taken as that near: bundles are thicker. */
const nearestShare = 2e-3

/** Pieces of a path that cut lines along θ: the others link no flux in the gauge A_θ = 0. */
interface Pieces {
  readonly count: number
  readonly θ: Float64Array
  readonly z: Float64Array
  readonly r: Float64Array
  readonly Δθ: Float64Array
  readonly Δz: Float64Array
  readonly Δr: Float64Array
  readonly least: number
  readonly greatest: number
  /** Radius about which the fields are expanded. */
  readonly middle: number
  readonly height: number
  /** Turns round the axis. */
  readonly round: number
}

function piecesOf(name: string, path: Float64Array, repeats: number): Pieces {
  if (path.length < 9 || path.length % 3 !== 0)
    refuse({ name, condition: 'x y z of at least three points', value: path.length, code: 'wrong-length' })
  const segments = path.length / 3 - 1
  if (!Number.isInteger(repeats) || repeats < 1 || segments % repeats !== 0)
    refuse({
      name: 'repeats',
      condition: `a whole number that divides the ${segments} segments of ${name}`,
      value: repeats,
      code: 'conflict',
    })
  const count = segments / repeats
  const columns = Array.from({ length: 6 }, () => new Float64Array(count))
  const [θ, z, r, Δθ, Δz, Δr] = columns as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  let [least, greatest, low, high, round] = [
    Number.POSITIVE_INFINITY,
    0,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    0,
  ]
  for (let i = 0; i < segments; i++) {
    const [x0, y0, z0, x1, y1, z1] = path.subarray(3 * i, 3 * i + 6) as unknown as number[]
    const r0 = Math.hypot(x0!, y0!)
    const r1 = Math.hypot(x1!, y1!)
    requireFinite(`${name} point ${i}`, r0 + r1 + z0! + z1!, 'm')
    requirePositive(`${name} point ${i}, distance from the axis`, Math.min(r0, r1), 'm')
    const turn = Math.atan2(x0! * y1! - y0! * x1!, x0! * x1! + y0! * y1!)
    round += turn / (2 * Math.PI)
    least = Math.min(least, r0, r1)
    greatest = Math.max(greatest, r0, r1)
    low = Math.min(low, z0!, z1!)
    high = Math.max(high, z0!, z1!)
    if (i >= count) continue
    const start = Math.atan2(y0!, x0!)
    θ[i] = start + turn / 2
    Δθ[i] = turn
    z[i] = (z0! + z1!) / 2
    Δz[i] = z1! - z0!
    r[i] = (r0 + r1) / 2
    // on one cylinder within rounding
    Δr[i] = Math.abs(r1 - r0) < 1e-12 * r1 ? 0 : r1 - r0
  }
  const apart = Math.hypot(...[0, 1, 2].map((axis) => path[axis]! - path[path.length - 3 + axis]!))
  if (apart > 1e-6 * (greatest + high - low))
    refuse({ name, condition: 'closed: its last point its first', value: apart, unit: 'm', code: 'conflict' })
  const middle = greatest - least < 1e-12 * greatest ? greatest : (least + greatest) / 2
  return { count, θ, z, r, Δθ, Δz, Δr, least, greatest, middle, height: high - low, round: Math.round(round) }
}

/**
 * Flux of the fields ∇(f e^−i(mθ + kz)) through a path, f = I_m and K_m over their values at `middle`, for +k and −k:
 * re, im of I at +k, of I at −k, of K at +k, of K at −k. ∮ A dl with A_z = i r f′/m, A_r = −k r f/m; for m = 0 with
 * A_θ = −i f′/k instead.
 */
function pathFlux(pieces: Pieces, m: number, k: number, bessel: ModifiedBessel, into: Float64Array): void {
  into.fill(0)
  const { middle } = pieces
  for (let kind = 0; kind < 2; kind++) {
    const slope = kind === 0 ? bessel.slopeI : bessel.slopeK
    const c = growth(m, k * middle, slope)
    for (let i = 0; i < pieces.count; i++) {
      const [Δθ, Δz, Δr] = [pieces.Δθ[i]!, pieces.Δz[i]!, pieces.Δr[i]!]
      if (m > 0 && Δz === 0 && Δr === 0) continue
      const r = pieces.r[i]!
      const δ = Math.abs(r - middle) < 1e-12 * middle ? 0 : k * (r - middle)
      const f = δ === 0 ? 1 : Math.exp(δ * (c[0] + δ * (c[1] + δ * (c[2] + δ * c[3]))))
      const df = k * f * (δ === 0 ? slope : c[0] + δ * (2 * c[1] + δ * (3 * c[2] + δ * 4 * c[3])))
      for (let side = 0; side < 2; side++) {
        const q = side === 0 ? k : -k
        const half = (m * Δθ + q * Δz) / 2
        const mean = half === 0 ? 1 : Math.sin(half) / half
        const phase = m * pieces.θ[i]! + q * pieces.z[i]!
        const cos = mean * Math.cos(phase)
        const sin = mean * Math.sin(phase)
        // a along e^−iφ and i b along it
        const a = m > 0 ? (-q * r * f * Δr) / m : 0
        const b = m > 0 ? (r * df * Δz) / m : (-df * r * Δθ) / q
        const at = 4 * kind + 2 * side
        into[at]! += a * cos + b * sin
        into[at + 1]! += b * cos - a * sin
      }
    }
  }
}

/** A path that only touches a tube's surface refuses nothing; one that enters it does. */
function requireTube(name: string, tube: IronTube, clear: boolean, limit: number): void {
  requirePositive(`${name}.radius`, tube.radius, 'm')
  requirePositive(`${name}.thickness`, tube.thickness, 'm')
  const { permeability = Number.POSITIVE_INFINITY } = tube
  if (!(permeability >= 1))
    refuse({
      name: `${name}.permeability`,
      condition: 'at least 1',
      value: permeability,
      code: 'below-minimum',
    })
  if (!clear)
    refuse({
      name: `${name}.radius`,
      condition: `${name === 'inner' ? 'below' : 'above'} ${limit} m, clear of the paths`,
      value: tube.radius,
      unit: 'm',
      code: 'conflict',
    })
}

/**
 * Mutual inductance that coaxial iron tubes add to two closed wire paths between them.
 *
 *   M = −μ0/(4π²) Σ_m ∫ (R₁ s₁ I(kR₁) F̄_K + R₂ s₂ K(kR₂) F̄_I) dk
 *
 * F_I, F_K are the flux through a path of the fields ∇(I_m e^−i(mθ+kz)), ∇(K_m e^−i(mθ+kz)): a current is a double
 * layer of magnetic charge over any area it bounds. s are the charges on the tubes that hold their surfaces at
 * Φ + R s z = 0, see `ironCylinderField`. With B = A it is what is added to the self-inductance.
 *
 * Holds: tubes much longer than the winding, linear iron, filaments (bundles thin against their distance to the iron);
 * a path that runs round the axis without its mean turn (m = 0), whose flux along endless iron has no limit. Accuracy:
 * 2e-3 of the added inductance against images in two dimensions and Neumann's integral.
 *
 * @param paths.pathA    x0 y0 z0 x1 …, closed                               [m]
 * @param paths.pathB    the same of the second                              [m]
 * @param paths.inner    tube inside: radius, thickness [m], permeability    [1]
 * @param paths.outer    tube around: radius, thickness [m], permeability    [1]
 * @param paths.repeats  copies that make up each path, 1 if not given       [1]
 * @param paths.angles   turns of path B about the axis, [0] if not given    [rad]
 * @returns              M added, one for each angle                         [H]
 * @throws RangeError    path open, on the axis or of too few points; a tube that reaches a path; permeability below 1
 * @source derived, from the expansion of 1/|r − r′| in cylinder harmonics (jackson1999, section 3.11, from memory, not opened)
 * @example ironTubeInductance({ pathA: new Float64Array([0.05, -0.01, -0.02, 0.05, 0.01, -0.02, 0.05, 0.01, 0.02, 0.05, -0.01, 0.02, 0.05, -0.01, -0.02]), pathB: new Float64Array([0.05, -0.01, -0.02, 0.05, 0.01, -0.02, 0.05, 0.01, 0.02, 0.05, -0.01, 0.02, 0.05, -0.01, -0.02]), outer: { radius: 0.055, thickness: 0.003 } })[0] // 1.63447e-8
 */
export function ironTubeInductance(paths: TubedPaths): Float64Array {
  const { pathA, pathB, inner, outer, repeats = 1, angles = [0] } = paths
  const A = piecesOf('pathA', pathA, repeats)
  const B = pathB === pathA ? A : piecesOf('pathB', pathB, repeats)
  const least = Math.min(A.least, B.least)
  const greatest = Math.max(A.greatest, B.greatest)
  if (inner !== undefined) requireTube('inner', inner, inner.radius < least, least)
  if (outer !== undefined) requireTube('outer', outer, outer.radius > greatest, greatest)
  const sum = new Float64Array(angles.length)
  if (inner === undefined && outer === undefined) return sum
  const distance = Math.max(
    Math.min(
      inner === undefined ? Number.POSITIVE_INFINITY : least - inner.radius,
      outer === undefined ? Number.POSITIVE_INFINITY : outer.radius - greatest,
    ),
    nearestShare * greatest,
  )
  const radius = (least + greatest) / 2
  const steepest = attenuation / (2 * distance)
  const height = A.height + B.height
  const encircles = A.round !== 0 || B.round !== 0
  const [fluxA, fluxB] = [new Float64Array(8), new Float64Array(8)]
  for (let m = encircles ? repeats : 0; m <= Math.max(steepest * radius, repeats); m += repeats) {
    // repeated along the axis so far apart that the copies do not meet
    const period = height + 2 * radius * Math.min(Math.sqrt(10 ** (4 / (m + 0.5)) - 1), 6)
    const step = (2 * Math.PI) / period
    const top = Math.sqrt(Math.max(steepest ** 2 - (m / radius) ** 2, ((2 * Math.PI) / height) ** 2))
    let [re, im] = [0, 0]
    for (let k = step / 2; k < top; k += step) {
      const a = modifiedBessel(m, k * A.middle)
      const b = A.middle === B.middle ? a : modifiedBessel(m, k * B.middle)
      pathFlux(A, m, k, a, fluxA)
      if (B !== A) pathFlux(B, m, k, b, fluxB)
      const F = fluxA
      const G = B === A ? fluxA : fluxB
      const answer = tubeAnswer(m, k, inner, outer, a, b)
      for (let side = 0; side < 2; side++) {
        const [Ir, Ii] = [F[2 * side]!, F[2 * side + 1]!]
        const [Kr, Ki] = [F[4 + 2 * side]!, F[5 + 2 * side]!]
        // charge on the inner and outer tube, complex, times what it links in path B
        const pr = answer.innerK * Kr + answer.innerI * Ir
        const pi = answer.innerK * Ki + answer.innerI * Ii
        const qr = answer.outerK * Kr + answer.outerI * Ir
        const qi = answer.outerK * Ki + answer.outerI * Ii
        const [gIr, gIi] = [G[2 * side]!, G[2 * side + 1]!]
        const [gKr, gKi] = [G[4 + 2 * side]!, G[5 + 2 * side]!]
        re += pr * gKr + pi * gKi + qr * gIr + qi * gIi
        im += pi * gKr - pr * gKi + qi * gIr - qr * gIi
      }
    }
    // −m, with −k, is the conjugate of m; for m = 0 both signs of k are there already
    const weight = ((m === 0 ? 1 : 2) * step * repeats * repeats * μ0) / (4 * Math.PI * Math.PI)
    for (let i = 0; i < angles.length; i++)
      sum[i]! += weight * (re * Math.cos(m * angles[i]!) - im * Math.sin(m * angles[i]!))
  }
  return sum
}

/** −R s I(kR₁) over F_K and F_I of path A, times K of path B where they link it, and the like for the outer tube. */
function tubeAnswer(
  m: number,
  k: number,
  inner: IronTube | undefined,
  outer: IronTube | undefined,
  a: { readonly lnI: number; readonly lnK: number },
  b: { readonly lnI: number; readonly lnK: number },
) {
  const ideal = (tube: IronTube) =>
    (tube.permeability ?? Number.POSITIVE_INFINITY) === Number.POSITIVE_INFINITY
  const one = inner && tubeWave(m, k, inner.radius, ideal(inner) ? 0 : inner.radius - inner.thickness)
  const two = outer && tubeWave(m, k, outer.radius, ideal(outer) ? 0 : outer.radius + outer.thickness)
  const kernel = (wave: typeof one, tube: IronTube | undefined, side: 'inner' | 'outer') => {
    if (wave === undefined || tube === undefined) return 0
    const { permeability = Number.POSITIVE_INFINITY } = tube
    const { reluctance } = tubeReluctance(wave, k, Math.max(permeability, 1 + 1e-6), side)
    // over I K, which is the kernel of ideal iron
    return 1 + reluctance * Math.exp(-wave.near.lnI - wave.near.lnK)
  }
  const g1 = kernel(one, inner, 'inner')
  const g2 = kernel(two, outer, 'outer')
  // all over I(kR₁) K(kR₁) or I(kR₂) K(kR₂); c² is I(kR₁) K(kR₂) twice over both
  const c2 = one && two ? Math.exp(one.near.lnI - one.near.lnK + two.near.lnK - two.near.lnI) : 0
  const determinant = one && two ? g1 * g2 - c2 : one ? g1 : g2
  const e1 = one ? one.near.lnI - one.near.lnK : 0
  const e2 = two ? two.near.lnK - two.near.lnI : 0
  return {
    innerK: one ? (Math.exp(e1 + a.lnK + b.lnK) * (two ? g2 : 1)) / determinant : 0,
    innerI: one && two ? -Math.exp(e1 + e2 + a.lnI + b.lnK) / determinant : 0,
    outerI: two ? (Math.exp(e2 + a.lnI + b.lnI) * (one ? g1 : 1)) / determinant : 0,
    outerK: one && two ? -Math.exp(e1 + e2 + a.lnK + b.lnI) / determinant : 0,
  }
}
