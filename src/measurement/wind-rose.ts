/** From where the wind blows: share and mean by sector, and sectors in which mast or houses seem to stand before it. */
import type { WindSeries } from './wind-series.ts'

export const sectorNames = [
  'N',
  'NNE',
  'NE',
  'ENE',
  'E',
  'ESE',
  'SE',
  'SSE',
  'S',
  'SSW',
  'SW',
  'WSW',
  'W',
  'WNW',
  'NW',
  'NNW',
] as const

export interface Sector {
  readonly name: (typeof sectorNames)[number]
  /** Of the readings with a direction and no calm. */
  readonly share: number
  /** [m/s]; 0 where it never blew from there. */
  readonly mean: number
}

export interface Rose {
  readonly sectors: readonly Sector[]
  readonly readings: number
  /** Sectors whose mean is far below both neighbours': mast, tower or house upwind of the anemometer, perhaps. */
  readonly shadowed: readonly Sector['name'][]
}

/** A sector counts as shadowed below this share of the mean of its neighbours: common practice, no source. */
const shadowRatio = 0.75
/** Sectors with less than this share of the time say nothing. */
const leastShare = 0.01

export function windRose({ wind, extra }: WindSeries): Rose | undefined {
  const { direction } = extra
  if (!direction) return undefined
  const n = sectorNames.length
  const count = new Float64Array(n)
  const sum = new Float64Array(n)
  let readings = 0
  for (let k = 0; k < wind.length; k++) {
    // a vane in a calm points anywhere
    if (direction.known[k] !== 1 || wind[k]! <= 0) continue
    const at = Math.round((direction.value[k]! / (2 * Math.PI)) * n) % n
    count[at]! += 1
    sum[at]! += wind[k]!
    readings++
  }
  if (readings === 0) return undefined
  const sectors = sectorNames.map((name, k): Sector => {
    return { name, share: count[k]! / readings, mean: count[k]! > 0 ? sum[k]! / count[k]! : 0 }
  })
  const shadowed = sectors.filter(({ share, mean }, k) => {
    const beside = [sectors[(k + n - 1) % n]!, sectors[(k + 1) % n]!]
    return (
      share >= leastShare &&
      beside.every((each) => each.share >= leastShare && mean < shadowRatio * each.mean)
    )
  })
  return { sectors, readings, shadowed: shadowed.map(({ name }) => name) }
}
