/** Gauss's rule along one stretch of a bridge's currents, as fine as waves and decays there ask. */
import { gaussLegendre } from '../../numerics/quadrature.ts'
import { type ConductionMode, INSTANT_SHARE } from './conduction-mode.ts'

/** Shares by which the mean of a product’s shortest wave, and of a decaying current’s square, may be missed. */
const WAVE_ERROR = 1e-5
const DECAY_ERROR = 1e-7

/** A panel this many time constants long starts the stretch; every further one is so many times as long as all before it. */
const FIRST_PANEL = 6
const GROWTH = 3
/** Currents that settle in less than this angle start with so little that their decay tells nothing [rad]. */
const LEAST_PANEL = 0.02

const FEWEST = 3
const MOST = 32

/**
 * Arguments z up to which N points, from `FEWEST` on, integrate cos(z t) or exp(z t) over −1…1 to a share: the rule's
 * error is 2^(2N+1) (N!)⁴ z^(2N) / ((2N+1) [(2N)!]³).
 */
function reaches(share: number): Float64Array {
  const logFactorial = [0]
  for (let k = 1; k <= 2 * MOST; k++) logFactorial.push(logFactorial[k - 1]! + Math.log(k))
  return Float64Array.from({ length: MOST - FEWEST + 1 }, (_, k) => {
    const N = FEWEST + k
    const rest = 2 * N * Math.LN2 + 4 * logFactorial[N]! - Math.log(2 * N + 1) - 3 * logFactorial[2 * N]!
    return Math.exp((Math.log(share) - rest) / (2 * N))
  })
}
const waveReaches = reaches(WAVE_ERROR)
const decayReaches = reaches(DECAY_ERROR)

function pointsFor(wave: number, decay: number): number {
  let k = 0
  while (k < MOST - FEWEST && (waveReaches[k]! < wave || decayReaches[k]! < decay)) k++
  return FEWEST + k
}

/** Fastest decay of a mode's currents, those that follow the voltage at once aside [1/rad]. */
function fastestDecay({ ν }: ConductionMode): number {
  let fastest = 0
  for (const share of ν) if (share >= INSTANT_SHARE) fastest = Math.max(fastest, (1 - share) / share)
  return fastest
}

/**
 * Visits the nodes of a stretch with their weights, which sum to its length.
 *
 * @internal a step of bridge-rectifier: products of two quantities whose highest order is `orders`
 */
export function alongArc(
  { from, to, mode }: { readonly from: number; readonly to: number; readonly mode: ConductionMode },
  orders: number,
  visit: (θ: number, weight: number) => void,
): void {
  if (!(to > from)) return
  const decay = fastestDecay(mode)
  const longest = (2 * waveReaches[MOST - FEWEST]!) / (2 * Math.max(orders, 1))
  let begin = from
  let panel = decay > 0 ? Math.max(FIRST_PANEL / decay, LEAST_PANEL) : to - from
  for (;;) {
    panel = Math.min(panel, longest)
    // what is left of the arc is not worth a panel of its own
    const end = to - begin > 1.5 * panel ? begin + panel : to
    const half = (end - begin) / 2
    const { nodes, weights } = gaussLegendre(
      pointsFor(2 * orders * half, Math.min(2 * decay * half, FIRST_PANEL)),
    )
    for (let q = 0; q < nodes.length; q++) visit(begin + half * (1 + nodes[q]!), half * weights[q]!)
    if (end === to) return
    begin = end
    panel = GROWTH * (begin - from)
  }
}
