/** Heat flowing through a net of nodes: steady temperatures and the way there. */
import { refuse, requireLength, requireNotNegative, requirePositive } from '../../refusal/require.ts'

export interface ThermalLink {
  readonly from: number
  readonly to: number
  /** ≥ 0 [W/K] */
  readonly conductance: number
}

export interface FixedNode {
  readonly node: number
  /** > 0 [K] */
  readonly temperature: number
}

/** What connects the nodes and warms them, at the temperatures of the moment. */
export interface ThermalState {
  readonly links: readonly ThermalLink[]
  /** Heat born in each node, either sign, one per node [W]. */
  readonly sources: ArrayLike<number>
}

export interface SteadyTemperatures {
  /** One per node [K]. */
  readonly temperatures: Float64Array
  /** Heat through each link, from → to, in the order of the links [W]. */
  readonly flows: Float64Array
  /** Heat that each fixed node takes in, in their order [W]. */
  readonly taken: Float64Array
  /** Largest unbalanced heat at a node over the largest heat in the net [1]. */
  readonly imbalance: number
  /** Rounds of the outer loop. */
  readonly rounds: number
  /** Temperatures passed the ceiling: no steady state below it; they are those of the last round. */
  readonly runaway: boolean
}

function requireNet(count: number, fixed: readonly FixedNode[], { links, sources }: ThermalState): void {
  requireLength('sources', sources, count)
  const isNode = (name: string, node: number) => {
    if (!Number.isInteger(node) || node < 0 || node >= count)
      refuse({ name, condition: `a node from 0 to ${count - 1}`, value: node, code: 'not-a-choice' })
  }
  for (let i = 0; i < count; i++) requireNotNegative(`|sources[${i}]|`, Math.abs(sources[i]!), 'W')
  fixed.forEach(({ node, temperature }, i) => {
    isNode(`fixed[${i}].node`, node)
    requirePositive(`fixed[${i}].temperature`, temperature, 'K')
  })
  links.forEach(({ from, to, conductance }, i) => {
    isNode(`links[${i}].from`, from)
    isNode(`links[${i}].to`, to)
    requireNotNegative(`links[${i}].conductance`, conductance, 'W/K')
  })
}

/** Refuses nodes that no path of conductances joins to a fixed temperature: theirs would be anything. */
function requireReach(count: number, fixed: readonly FixedNode[], links: readonly ThermalLink[]): void {
  const reached = new Array<boolean>(count).fill(false)
  for (const { node } of fixed) reached[node] = true
  for (let spread = true; spread; ) {
    spread = false
    for (const { from, to, conductance } of links)
      if (conductance > 0 && reached[from] !== reached[to]) {
        reached[from] = true
        reached[to] = true
        spread = true
      }
  }
  const lost = reached.indexOf(false)
  if (lost >= 0)
    refuse({
      name: 'links',
      condition: 'a path from every node to a fixed one; none from node',
      value: lost,
      code: 'conflict',
    })
}

/**
 * Rise of every node above `base` in the linear net; `storage` adds a conductance to the node's own past.
 * Nodes are taken out one by one and their conductances shared among the neighbours (star to mesh). Nothing is
 * ever subtracted, so a net may hold microwatts beside megawatts per kelvin without loss of digits.
 */
function solveNet(
  count: number,
  fixed: readonly FixedNode[],
  { links, sources }: ThermalState,
  base: number,
  storage?: { readonly conductance: ArrayLike<number>; readonly past: Float64Array },
): Float64Array {
  const held = new Map(fixed.map(({ node, temperature }) => [node, temperature - base]))
  const free: number[] = []
  for (let i = 0; i < count; i++) if (!held.has(i)) free.push(i)
  const place = new Map(free.map((node, row) => [node, row]))
  const n = free.length
  const between = new Float64Array(n * n)
  const toBase = new Float64Array(n)
  const heat = Float64Array.from(free, (node) => sources[node]!)
  const join = (own: number, other: number, G: number) => {
    const row = place.get(own)
    if (row === undefined || own === other) return
    const column = place.get(other)
    if (column !== undefined) between[row * n + column]! += G
    else {
      toBase[row]! += G
      heat[row]! += G * held.get(other)!
    }
  }
  for (const { from, to, conductance } of links) {
    join(from, to, conductance)
    join(to, from, conductance)
  }
  free.forEach((node, row) => {
    if (!storage) return
    toBase[row]! += storage.conductance[node]!
    heat[row]! += storage.conductance[node]! * (storage.past[node]! - base)
  })
  const whole = new Float64Array(n)
  for (let k = n - 1; k >= 0; k--) {
    let sum = toBase[k]!
    for (let j = 0; j < k; j++) sum += between[k * n + j]!
    if (!(sum > 0))
      refuse({
        name: `node ${free[k]!}`,
        condition: 'joined to a fixed temperature or to a heat capacity',
        value: sum,
        unit: 'W/K',
        code: 'conflict',
      })
    whole[k] = sum
    for (let i = 0; i < k; i++) {
      const share = between[k * n + i]! / sum
      if (share === 0) continue
      for (let j = 0; j < k; j++) if (j !== i) between[i * n + j]! += share * between[k * n + j]!
      toBase[i]! += share * toBase[k]!
      heat[i]! += share * heat[k]!
    }
  }
  const rise = new Float64Array(n)
  for (let k = 0; k < n; k++) {
    let sum = heat[k]!
    for (let j = 0; j < k; j++) sum += between[k * n + j]! * rise[j]!
    rise[k] = sum / whole[k]!
  }
  return Float64Array.from({ length: count }, (_, i) => held.get(i) ?? rise[place.get(i)!]!)
}

/**
 * Steady temperatures of a net of nodes, with conductances and sources that may depend on temperature.
 *
 *   Σ G_ij (T_j − T_i) + P_i = 0 at every free node
 *
 * Holds: any net whose free nodes all reach a fixed one. Conductances that follow temperature (convection,
 * radiation) and sources that do (copper loss) come from `state`, called once a round with the temperatures of
 * the last; the rounds end when no temperature moves by more than `tolerance`.
 * A loop whose gain is 1 or more (copper that outruns its cooling) climbs to the ceiling and is called runaway.
 * Accuracy: `imbalance` says it, below 1e-9.
 *
 * @param net.count      number of nodes, at least 1                                    [1]
 * @param net.fixed      nodes held at a temperature, at least one                      [K]
 * @param net.state      links and sources at given temperatures (count)                [W/K]
 * @param net.start      first guess (count); mean of the fixed nodes if left out       [K]
 * @param net.tolerance  1e-9 if left out                                               [K]
 * @param net.ceiling    5000 if left out; above it the answer is runaway: true         [K]
 * @returns              temperatures [K], flows [W], imbalance                         [1]
 * @throws RangeError    node numbers, signs, lengths; a node without a path to a fixed one; 500 rounds without rest
 * @source bergman2011, section 3.1.2, the thermal circuit, from memory, not opened
 * @example steadyTemperatures({ count: 2, fixed: [{ node: 0, temperature: 300 }], state: () => ({ links: [{ from: 1, to: 0, conductance: 2 }], sources: [0, 100] }) }).temperatures[1] // 350
 */
export function steadyTemperatures(net: {
  readonly count: number
  readonly fixed: readonly FixedNode[]
  readonly state: (temperatures: Float64Array) => ThermalState
  readonly start?: ArrayLike<number> | undefined
  readonly tolerance?: number | undefined
  readonly ceiling?: number | undefined
}): SteadyTemperatures {
  const { count, fixed, tolerance = 1e-9, ceiling = 5000 } = net
  if (!Number.isInteger(count) || count < 1)
    refuse({ name: 'count', condition: 'a whole number, at least 1', value: count, code: 'below-minimum' })
  if (fixed.length < 1)
    refuse({ name: 'fixed', condition: 'at least 1 long', value: fixed.length, code: 'wrong-length' })
  requirePositive('tolerance', tolerance, 'K')
  requirePositive('ceiling', ceiling, 'K')
  const mean = fixed.reduce((sum, { temperature }) => sum + temperature / fixed.length, 0)
  if (net.start) requireLength('start', net.start, count)
  let rise = Float64Array.from({ length: count }, (_, i) => (net.start ? net.start[i]! : mean) - mean)
  const absolute = (above: Float64Array) => above.map((T) => Math.max(1, mean + T))
  let pull = new Float64Array(count)
  let share = 1
  let moved = 0
  for (let round = 1; round <= 500; round++) {
    const state = net.state(absolute(rise))
    requireNet(count, fixed, state)
    requireReach(count, fixed, state.links)
    const next = solveNet(count, fixed, state, mean)
    const last = pull
    pull = next.map((T, i) => T - rise[i]!)
    moved = 0
    let hottest = 0
    for (let i = 0; i < count; i++) {
      moved = Math.max(moved, Math.abs(pull[i]!))
      hottest = Math.max(hottest, mean + next[i]!)
    }
    if (hottest > ceiling) return balance(fixed, state, next, mean, { rounds: round, runaway: true })
    if (moved <= Math.max(tolerance, 4 * Number.EPSILON * hottest))
      return balance(fixed, state, next, mean, { rounds: round, runaway: false })
    if (round > 1) share = nextShare(share, pull, last, round)
    rise = rise.map((T, i) => T + share * pull[i]!)
  }
  refuse({
    name: 'temperatures',
    condition: `at rest within ${tolerance} K after 500 rounds`,
    value: moved,
    unit: 'K',
    code: 'no-convergence',
  })
}

/**
 * How far to follow the pull of this round (Aitken's step for vectors, Irons & Tuck 1969): less than all of it in
 * a loop that swings, more in one that creeps. A pull that grows has no rest ahead: it is followed, not reversed.
 */
function nextShare(share: number, pull: Float64Array, last: Float64Array, round: number): number {
  let along = 0
  let square = 0
  for (let i = 0; i < pull.length; i++) {
    const change = pull[i]! - last[i]!
    along += last[i]! * change
    square += change * change
  }
  const wanted = square > 0 ? (-share * along) / square : 1
  if (!(wanted > 0)) return Math.min(2 * share, 20)
  return Math.min(Math.max(wanted, 0.02), round > 100 ? 1 : 200)
}

function balance(
  fixed: readonly FixedNode[],
  { links, sources }: ThermalState,
  rise: Float64Array,
  base: number,
  run: { readonly rounds: number; readonly runaway: boolean },
): SteadyTemperatures {
  const flows = Float64Array.from(
    links,
    ({ from, to, conductance }) => conductance * (rise[from]! - rise[to]!),
  )
  const gained = Float64Array.from(sources)
  let largest = 0
  for (const source of gained) largest = Math.max(largest, Math.abs(source))
  links.forEach(({ from, to }, i) => {
    gained[from]! -= flows[i]!
    gained[to]! += flows[i]!
    largest = Math.max(largest, Math.abs(flows[i]!))
  })
  const held = new Set(fixed.map(({ node }) => node))
  let worst = 0
  gained.forEach((heat, i) => {
    if (!held.has(i)) worst = Math.max(worst, Math.abs(heat))
  })
  return {
    temperatures: rise.map((T) => base + T),
    flows,
    taken: Float64Array.from(fixed, ({ node }) => gained[node]!),
    imbalance: largest > 0 ? worst / largest : 0,
    ...run,
  }
}

/**
 * Temperatures of the net after one step of time.
 *
 *   C_i (T_i − T_i,past) / Δt = Σ G_ij (T_j − T_i) + P_i
 *
 * Holds: any step; links and sources as handed in are taken for the whole step (hand in those of its start).
 * Never swings, whatever the step. Accuracy: first order in Δt; a step of a tenth of the shortest time that
 * matters keeps 5 % of the rise.
 *
 * @param step.past          temperatures before, > 0 (n)                           [K]
 * @param step.capacities    heat capacity of each node, ≥ 0 (n)                    [J/K]
 * @param step.duration      Δt, > 0                                                [s]
 * @param step.state         links and sources                                      [W/K]
 * @param step.fixed         nodes held at a temperature, may be none               [K]
 * @returns                  temperatures after (n)                                 [K]
 * @throws RangeError        node numbers, signs, lengths; a node without capacity and without links
 * @source derived, backward Euler on the balance of each node
 * @example temperaturesAfter({ past: [300, 400], capacities: [0, 100], duration: 50, fixed: [{ node: 0, temperature: 300 }], state: { links: [{ from: 1, to: 0, conductance: 2 }], sources: [0, 0] } })[1] // 350
 */
export function temperaturesAfter(step: {
  readonly past: ArrayLike<number>
  readonly capacities: ArrayLike<number>
  readonly duration: number
  readonly state: ThermalState
  readonly fixed?: readonly FixedNode[] | undefined
}): Float64Array {
  const { capacities, duration: Δt, state, fixed = [] } = step
  const past = Float64Array.from(step.past)
  requireLength('capacities', capacities, past.length)
  requirePositive('duration', Δt, 's')
  past.forEach((T, i) => {
    requirePositive(`past[${i}]`, T, 'K')
    requireNotNegative(`capacities[${i}]`, capacities[i]!, 'J/K')
  })
  requireNet(past.length, fixed, state)
  const base = fixed[0]?.temperature ?? past[0] ?? 0
  const conductance = Float64Array.from(capacities, (C) => C / Δt)
  return solveNet(past.length, fixed, state, base, { conductance, past }).map((rise) => base + rise)
}
