/** Tracks of the joints below a drawn winding: which line each of them runs along, so that none lies on another. */
import type { CoilEnd, WindingNet } from './winding-net.ts'

/** Least and greatest of all values. */
export const extremes = (lists: readonly ArrayLike<number>[]): [number, number] => {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const list of lists)
    for (let k = 0; k < list.length; k++) {
      low = Math.min(low, list[k]!)
      high = Math.max(high, list[k]!)
    }
  return [low, high]
}

export interface Track {
  readonly net: WindingNet
  readonly places: readonly number[]
  readonly from: number
  readonly to: number
  readonly track: number
}

/** Nets on tracks below the coils, phase by phase: a net takes the first track on which nothing is in its way. */
export function tracksOf(
  nets: readonly WindingNet[],
  place: (end: CoilEnd) => number,
  phaseCount: number,
): Track[] {
  const made: Track[] = []
  const kinds = [
    ...Array.from({ length: phaseCount }, (_, phase) => nets.filter((net) => net.phase === phase)),
    nets.filter((net) => net.phase === undefined),
  ]
  let first = 0
  for (const own of kinds) {
    let last = first - 1
    for (const net of own) {
      const places = net.ends.map(place)
      const [from, to] = extremes([places])
      if (places.length === 1) {
        // a lone end runs straight down to its lead
        made.push({ net, places, from, to, track: -1 })
        continue
      }
      let track = first
      while (made.some((other) => other.track === track && other.from < to + 5 && from < other.to + 5))
        track++
      made.push({ net, places, from, to, track })
      last = Math.max(last, track)
    }
    first = last + 1
  }
  return made
}
