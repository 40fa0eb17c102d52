/** Coefficients of a blade sampled evenly round the circle at several Reynolds numbers: quick to read at any angle. */
import { finiteSpanPolar } from './finite-span.ts'
import { extendedPolarInto, type Polar, type SectionCoefficients } from './polar.ts'
import { requireFamily } from './section-family.ts'

/** One Reynolds number; lift and drag at −π, −π + Δ, … π. */
interface Sheet {
  readonly logReynolds: number
  readonly lift: Float64Array
  readonly drag: Float64Array
  /** Angle above zero where the lift stops rising. [rad] */
  readonly stall: number
}

export interface SectionTable {
  readonly sheets: readonly Sheet[]
  /** Angle without lift, and lift slope there. [rad], [1/rad] */
  readonly zeroLift: number
  readonly slope: number
}

/** Intervals round the circle: half a degree each. */
const intervals = 720
const step = (2 * Math.PI) / intervals

/** Stall is looked for up to here: past it the lift of a flat plate rises once more. [rad] */
const latestStall = (24 * Math.PI) / 180

function stallOf(lift: Float64Array): number {
  const from = intervals / 2
  let k = from
  while (k - from < latestStall / step && lift[k + 1]! > lift[k]!) k++
  return (k - from) * step
}

/** Samples of a blade's lift and drag from the polars of its section. @internal */
export function sectionTable(polars: readonly Polar[], aspectRatio: number): SectionTable {
  requireFamily(polars, 'rotor.polars')
  const out: SectionCoefficients = { lift: 0, drag: 0 }
  const sheets = polars.map((polar): Sheet => {
    const at = extendedPolarInto(finiteSpanPolar(polar, { aspectRatio }), { aspectRatio })
    const lift = new Float64Array(intervals + 1)
    const drag = new Float64Array(intervals + 1)
    for (let k = 0; k <= intervals; k++) {
      at(-Math.PI + k * step, out)
      lift[k] = out.lift
      drag[k] = out.drag
    }
    return { logReynolds: Math.log(polar.reynolds), lift, drag, stall: stallOf(lift) }
  })
  const { lift } = sheets[sheets.length - 1]!
  const middle = intervals / 2
  const few = 8
  const slope = (lift[middle + few]! - lift[middle - few]!) / (2 * few * step)
  return {
    sheets,
    zeroLift: slope > 0 ? -lift[middle]! / slope : 0,
    slope,
  }
}

/** Stall angle at a Reynolds number. @internal */
export const stallAngle = ({ sheets }: SectionTable, logReynolds: number): number => {
  let i = 0
  while (i + 1 < sheets.length && sheets[i + 1]!.logReynolds <= logReynolds) i++
  const a = sheets[i]!
  const b = sheets[i + 1]
  if (b === undefined || logReynolds <= a.logReynolds) return a.stall
  return a.stall + ((b.stall - a.stall) * (logReynolds - a.logReynolds)) / (b.logReynolds - a.logReynolds)
}

/** Angles are wrapped; Reynolds numbers outside the sheets keep the nearest. @internal */
export const readSection = (
  { sheets }: SectionTable,
  logReynolds: number,
  angle: number,
  out: SectionCoefficients,
): void => {
  let α = angle
  if (α > Math.PI || α < -Math.PI) α -= 2 * Math.PI * Math.round(α / (2 * Math.PI))
  const place = (α + Math.PI) / step
  const k = Math.min(Math.floor(place), intervals - 1)
  const t = place - k
  let i = 0
  while (i + 1 < sheets.length && sheets[i + 1]!.logReynolds <= logReynolds) i++
  const a = sheets[i]!
  out.lift = a.lift[k]! + t * (a.lift[k + 1]! - a.lift[k]!)
  out.drag = a.drag[k]! + t * (a.drag[k + 1]! - a.drag[k]!)
  const b = sheets[i + 1]
  if (b === undefined || logReynolds <= a.logReynolds) return
  const s = (logReynolds - a.logReynolds) / (b.logReynolds - a.logReynolds)
  out.lift += s * (b.lift[k]! + t * (b.lift[k + 1]! - b.lift[k]!) - out.lift)
  out.drag += s * (b.drag[k]! + t * (b.drag[k + 1]! - b.drag[k]!) - out.drag)
}
