/** A net of temperature nodes solved quickly: steady state and steps of time, all as kelvin above the air. */
import { solveDefinite } from '../numerics/cholesky.ts'
import { radiationCoefficient } from '../physics/heat/radiation.ts'
import { refuse } from '../refusal/require.ts'
import type { AirMotion, Film } from './heat-film.ts'

/** The air of the site: a link's far end that never warms. */
export const openAir = -1

export interface HeatNode {
  readonly key: string
  /** For people. */
  readonly name: string
  /** [J/K] */
  readonly capacity: number
}

export type HeatLink =
  | {
      readonly kind: 'solid'
      readonly from: number
      readonly to: number
      /** Below zero only where a slab's three ends need it [W/K]. */
      readonly conductance: number
    }
  | {
      readonly kind: 'film'
      readonly from: number
      readonly to: number
      /** [m²] */
      readonly area: number
      readonly film: Film
      /** Exchange factor of what shines across it; 0 for none. */
      readonly emissivity: number
      /** Solid in series with it [m²·K/W]. */
      readonly series: number
    }
  | {
      readonly kind: 'flow'
      readonly from: number
      readonly to: number
      /** [W/K] */
      readonly conductance: (motion: AirMotion) => number
    }

export interface HeatBody {
  readonly nodes: readonly HeatNode[]
  readonly links: readonly HeatLink[]
  readonly ambient: number
}

/** Heat born, by node [W], and what moves the air. */
export interface HeatState extends AirMotion {
  readonly sources: ArrayLike<number>
}

export interface SolvedNet {
  /** One round with the films of the temperatures handed in; `rises` is overwritten. */
  readonly round: (state: HeatState, rises: Float64Array) => void
  /** Rounds to rest, from `rises`, which is overwritten. Returns the rounds it took. */
  readonly settle: (state: HeatState, rises: Float64Array) => number
  /**
   * A step of time by backward Euler, films and sources as at its beginning; `rises` is overwritten. Returns the heat
   * given to the air meanwhile [J].
   */
  readonly advance: (state: HeatState, rises: Float64Array, duration: number) => number
  /** Heat through every link, from → to, with the films of these temperatures [W]. */
  readonly flows: (state: HeatState, rises: Float64Array) => Float64Array
}

/** What the whole net is scaled to: resistances times `factor`, or node `of` to air as measured [K/W]. */
export interface NetScale {
  readonly factor: number
  readonly measured?: { readonly node: number; readonly resistance: number } | undefined
}

/** Films no longer change worth telling below this [K]. */
const closeEnough = 1e-4
const mostRounds = 60

export function solvedNet(
  { nodes, links, ambient }: HeatBody,
  { factor, measured }: NetScale = { factor: 1 },
): SolvedNet {
  const n = nodes.length
  const capacities = Float64Array.from(nodes, ({ capacity }) => capacity)
  // what a motion decides, kept as long as the motion stays; faces share their films
  const forced = new Float64Array(links.length)
  const firstWith = links.map((link) =>
    link.kind === 'film'
      ? links.findIndex((other) => other.kind === 'film' && other.film === link.film)
      : undefined,
  )
  let at: AirMotion = { speed: Number.NaN, wind: Number.NaN }
  const move = (motion: AirMotion) => {
    if (motion.speed === at.speed && motion.wind === at.wind) return
    at = { speed: motion.speed, wind: motion.wind }
    for (let l = 0; l < links.length; l++) {
      const link = links[l]!
      if (link.kind === 'solid') continue
      if (link.kind === 'flow') {
        forced[l] = link.conductance(at)
        continue
      }
      const first = firstWith[l]!
      if (first < l) {
        forced[l] = forced[first]!
        continue
      }
      let cubes = 0
      for (const { coefficient } of link.film.forced) cubes += coefficient(at) ** 3
      forced[l] = cubes
    }
  }
  const conductances = new Float64Array(links.length)
  const films = (rises: Float64Array) => {
    for (let l = 0; l < links.length; l++) {
      const link = links[l]!
      if (link.kind === 'solid') conductances[l] = link.conductance
      else if (link.kind === 'flow') conductances[l] = forced[l]!
      else {
        const { from, to, area, film, emissivity, series } = link
        const here = rises[from]!
        const there = to === openAir ? 0 : rises[to]!
        const free = film.free === undefined ? 0 : film.free.coefficient(here - there)
        let h = forced[l]! > 0 ? Math.cbrt(free ** 3 + forced[l]!) : free
        if (emissivity > 0)
          h += radiationCoefficient({
            surface: ambient + here,
            surroundings: ambient + there,
            emissivity,
          })
        conductances[l] = area / (series + 1 / h)
      }
    }
  }
  const matrix = new Float64Array(n * n)
  const right = new Float64Array(n)
  const assemble = () => {
    matrix.fill(0)
    for (let l = 0; l < links.length; l++) {
      const { from, to } = links[l]!
      const G = conductances[l]!
      matrix[from * n + from]! += G
      if (to === openAir) continue
      matrix[to * n + to]! += G
      // the lower triangle is enough
      matrix[Math.max(from, to) * n + Math.min(from, to)]! -= G
    }
  }
  /** Prepares films and matrix; returns the factor on all resistances of this state. */
  const prepare = (state: HeatState, rises: Float64Array): number => {
    move(state)
    films(rises)
    assemble()
    if (measured === undefined) return factor
    right.fill(0)
    right[measured.node] = 1
    solveDefinite(matrix, right)
    const own = right[measured.node]!
    assemble()
    return measured.resistance / own
  }
  const round = (state: HeatState, rises: Float64Array) => {
    const scale = prepare(state, rises)
    right.set(state.sources)
    solveDefinite(matrix, right)
    for (let i = 0; i < n; i++) rises[i] = Math.min(scale * right[i]!, burntRise)
  }
  return {
    round,
    settle: (state, rises) => {
      const before = new Float64Array(n)
      for (let k = 1; k <= mostRounds; k++) {
        before.set(rises)
        round(state, rises)
        let moved = 0
        for (let i = 0; i < n; i++) moved = Math.max(moved, Math.abs(rises[i]! - before[i]!))
        if (moved < closeEnough) return k
      }
      return refuse({
        name: 'temperatures',
        condition: `at rest after ${mostRounds} rounds`,
        value: rises[0]!,
        unit: 'K',
        code: 'no-convergence',
      })
    },
    advance: (state, rises, duration) => {
      const scale = prepare(state, rises)
      for (let i = 0; i < n * n; i++) matrix[i]! /= scale
      for (let i = 0; i < n; i++) {
        const storage = capacities[i]! / duration
        matrix[i * n + i]! += storage
        right[i] = state.sources[i]! + storage * rises[i]!
      }
      solveDefinite(matrix, right)
      for (let i = 0; i < n; i++) rises[i] = Math.min(right[i]!, burntRise)
      let given = 0
      for (let l = 0; l < links.length; l++) {
        const { from, to } = links[l]!
        if (to === openAir) given += (conductances[l]! / scale) * rises[from]!
      }
      return given * duration
    },
    flows: (state, rises) => {
      const scale = prepare(state, rises)
      return Float64Array.from(links, ({ from, to }, l) => {
        const there = to === openAir ? 0 : rises[to]!
        return (conductances[l]! / scale) * (rises[from]! - there)
      })
    },
  }
}

/** So much above the air no machine is left whose heat could be told [K]. */
export const burntRise = 1000

/** A correlation that is asked beyond its published range. */
export interface RangeLeft {
  readonly face: string
  readonly name: string
  readonly symbol: string
  readonly value: number
  readonly range: readonly [number, number]
}

/** Correlations that leave their range here and matter: what weighs under a tenth of its film says nothing. */
export function rangesLeft({ nodes, links }: HeatBody, motion: AirMotion, rises: Float64Array): RangeLeft[] {
  const left: RangeLeft[] = []
  for (const link of links) {
    if (link.kind !== 'film') continue
    const { free, forced } = link.film
    const ΔT = rises[link.from]! - (link.to === openAir ? 0 : rises[link.to]!)
    const parts = [
      ...(free === undefined
        ? []
        : [{ ...free, h: free.coefficient(ΔT), value: free.number(Math.max(Math.abs(ΔT), 1)) }]),
      ...forced.map((each) => ({ ...each, h: each.coefficient(motion), value: each.number(motion) })),
    ]
    const all = Math.cbrt(parts.reduce((sum, { h }) => sum + h ** 3, 0))
    for (const { name, symbol, value, range, h } of parts)
      if (h > 0 && h >= 0.1 * all && (value < range[0] || value > range[1]))
        left.push({ face: nodes[link.from]!.name, name, symbol, value, range })
  }
  return left
}
