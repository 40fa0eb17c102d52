/** A section at several Reynolds numbers: its polars brought to equal length, and read at any angle and Reynolds number. */
import { refuse } from '../../refusal/require.ts'
import { extendedPolarInto, type Polar, polarFunctions, type SectionCoefficients } from './polar.ts'

/** Refuses a list, by the `name` it goes by, that is empty or not rising in Reynolds number. @internal */
export const requireFamily = (polars: readonly Polar[], name = 'polars'): void => {
  if (polars.length === 0) refuse({ name, condition: 'at least 1 long', value: 0, code: 'wrong-length' })
  for (let j = 1; j < polars.length; j++)
    if (!(polars[j]!.reynolds > polars[j - 1]!.reynolds))
      refuse({
        name: `${name}[${j}].reynolds`,
        condition: `above ${name}[${j - 1}].reynolds`,
        value: polars[j]!.reynolds,
        code: 'not-increasing',
      })
}

const lastAngle = ({ angle }: Polar): number => angle[angle.length - 1]!

/** `short` carried on along `long`: from its last point on the lift keeps its distance and the drag its ratio to the other's. */
function carriedOn(short: Polar, long: Polar): Polar {
  const end = lastAngle(short)
  const n = short.angle.length
  const [lift, drag] = polarFunctions(long)
  const apart = short.lift[n - 1]! - lift(end)
  const least = Number.MIN_VALUE
  const ratio = short.drag[n - 1]! / Math.max(drag(end), least)
  const rest = [...long.angle].filter((α) => α > end + 1e-9)
  return {
    angle: Float64Array.from([...short.angle, ...rest]),
    lift: Float64Array.from([...short.lift, ...rest.map((α) => lift(α) + apart)]),
    drag: Float64Array.from([...short.drag, ...rest.map((α) => drag(α) * ratio)]),
    reynolds: short.reynolds,
  }
}

/**
 * Polars of one section, each carried to the largest angle measured at any of the Reynolds numbers.
 *
 *   C_L(α) = C_L,next(α) + ΔC_L,   C_D(α) = C_D,next(α) C_D / C_D,next   past the last measured angle
 *
 * Where a tunnel stopped early the neighbour in Reynolds number, the higher one first, lends its shape; otherwise the end of
 * the table would be taken for stall.
 *
 * Holds: gaps of a few degrees between the ends. Accuracy: measured points untouched; the lent part a guess that ends where the neighbour stalls.
 *
 * @param polars  of one section, at rising Reynolds numbers  [1]
 * @returns       as many polars, ending at one angle         [1]
 * @throws RangeError  no polar, Reynolds numbers not rising, a polar malformed
 * @source derived, shape of the neighbouring polar kept
 * @example completedPolars([{ angle: Float64Array.of(0, 0.1), lift: Float64Array.of(0, 0.4), drag: Float64Array.of(0.02, 0.02), reynolds: 1e5 }, { angle: Float64Array.of(0, 0.1, 0.2), lift: Float64Array.of(0, 0.6, 1), drag: Float64Array.of(0.01, 0.01, 0.03), reynolds: 4e5 }])[0].lift[2] // 0.8
 */
export function completedPolars(polars: readonly Polar[]): readonly Polar[] {
  requireFamily(polars)
  for (const polar of polars) polarFunctions(polar)
  const out = [...polars]
  const longest = Math.max(...polars.map(lastAngle))
  const short = (j: number) => lastAngle(out[j]!) < longest - 1e-9
  // from the highest Reynolds number down, each from its finished neighbour above; then upwards for those left
  for (let j = out.length - 2; j >= 0; j--)
    if (lastAngle(out[j]!) < lastAngle(out[j + 1]!)) out[j] = carriedOn(out[j]!, out[j + 1]!)
  for (let j = 1; j < out.length; j++) if (short(j)) out[j] = carriedOn(out[j]!, out[j - 1]!)
  for (let j = out.length - 2; j >= 0; j--) if (short(j)) out[j] = carriedOn(out[j]!, out[j + 1]!)
  return out
}

/** A section for loops: `choose` a Reynolds number, then read any number of angles. @internal */
export interface SectionFamily {
  readonly choose: (reynolds: number) => void
  readonly at: (angle: number, out: SectionCoefficients) => void
  /** α_0 at the chosen Reynolds number. [rad] */
  readonly zeroLift: () => number
}

const degree = Math.PI / 180
/** The whole circle in steps of 1°, the part where sections bend in steps of 0.1°. */
const coarse = { from: -Math.PI, step: degree, count: 360 } as const
const fine = { from: -24 * degree, step: degree / 10, count: 640 } as const

type Zone = typeof coarse | typeof fine

function tabulated(section: (α: number, out: SectionCoefficients) => void, zone: Zone): Float64Array {
  const out = { lift: 0, drag: 0 }
  const table = new Float64Array(2 * (zone.count + 2))
  for (let k = 0; k <= zone.count + 1; k++) {
    section(zone.from + Math.min(k, zone.count) * zone.step, out)
    table[2 * k] = out.lift
    table[2 * k + 1] = out.drag
  }
  return table
}

/** Angle of no lift: the rise through zero nearest to 0°, else along 2π from the point nearest to it. @internal */
export function zeroLiftAngle(polar: Polar): number {
  const { angle, lift } = polar
  let rise = Number.POSITIVE_INFINITY
  for (let i = 1; i < angle.length; i++)
    if (lift[i - 1]! <= 0 && lift[i]! > 0) {
      const at = angle[i - 1]! + ((angle[i]! - angle[i - 1]!) * -lift[i - 1]!) / (lift[i]! - lift[i - 1]!)
      if (Math.abs(at) < Math.abs(rise)) rise = at
    }
  // a table of the whole circle rises through zero backwards too
  if (Math.abs(rise) < Math.PI / 4) return rise
  let nearest = 0
  for (let i = 1; i < angle.length; i++) if (Math.abs(angle[i]!) < Math.abs(angle[nearest]!)) nearest = i
  return angle[nearest]! - lift[nearest]! / (2 * Math.PI)
}

/** Straight lines in ln Re between the polars, held beyond both ends. @internal */
export function sectionFamily(
  polars: readonly Polar[],
  options: { readonly aspectRatio: number },
): SectionFamily {
  requireFamily(polars)
  const extended = polars.map((polar) => extendedPolarInto(polar, options))
  const zeros = polars.map(zeroLiftAngle)
  if (extended.length === 1) return { choose: () => undefined, at: extended[0]!, zeroLift: () => zeros[0]! }
  const wide = extended.map((section) => tabulated(section, coarse))
  const narrow = extended.map((section) => tabulated(section, fine))
  const logarithms = polars.map(({ reynolds }) => Math.log(reynolds))
  let j = 0
  let t = 0
  return {
    choose: (reynolds) => {
      const x = Math.log(Math.max(reynolds, 1e-300))
      j = 0
      while (j + 2 < logarithms.length && logarithms[j + 1]! <= x) j++
      t = Math.min(1, Math.max(0, (x - logarithms[j]!) / (logarithms[j + 1]! - logarithms[j]!)))
    },
    at: (angle, out) => {
      let α = angle
      if (α > Math.PI || α < -Math.PI) α -= 2 * Math.PI * Math.round(α / (2 * Math.PI))
      let u = (α - fine.from) / fine.step
      const inner = u >= 0 && u < fine.count
      if (!inner) u = (α - coarse.from) / coarse.step
      const k = Math.max(0, Math.floor(u))
      const s = u - k
      const [low, high] = inner ? [narrow[j]!, narrow[j + 1]!] : [wide[j]!, wide[j + 1]!]
      const i = 2 * k
      const a = low[i]! + s * (low[i + 2]! - low[i]!)
      const b = low[i + 1]! + s * (low[i + 3]! - low[i + 1]!)
      out.lift = a + t * (high[i]! + s * (high[i + 2]! - high[i]!) - a)
      out.drag = b + t * (high[i + 1]! + s * (high[i + 3]! - high[i + 1]!) - b)
    },
    zeroLift: () => zeros[j]! + t * (zeros[j + 1]! - zeros[j]!),
  }
}
