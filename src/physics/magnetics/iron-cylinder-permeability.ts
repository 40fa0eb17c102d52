/** Permeability at which a drum's iron tubes work, from the curve of their steel. */
import { refuse, requireFinite } from '../../refusal/require.ts'
import { type TubedDrum, wallDensity, wallFlux } from './iron-cylinder-wall.ts'
import { orderCharge } from './iron-cylinder-wave.ts'

/** H [A/m] in the iron at a flux density [T], both above zero. */
export type Magnetisation = (fluxDensity: number) => number

/** Iron that is hardly there stands for none, whose sheet would have no equation. */
const leastPermeability = 1 + 1e-6
/** Where the search for the permeability at work begins, and where it ends: iron that takes no drop at all. */
const startPermeability = 1000
const mostPermeability = 1e5
const lnLeast = Math.log(leastPermeability)
const lnMost = Math.log(mostPermeability)
/** Last step of the search, as a share of the permeability, and its passes. */
const permeabilityTolerance = 3e-3
const mostPasses = 60

const μ0 = 4e-7 * Math.PI

/** Orders that shape the flux in the iron enough to count for its permeability, in p. */
const shapingOrders = [1, 3, 5] as const

/**
 * @internal One permeability per tube: the given one, or for a curve that of equal ∮ B H over the part of the tube
 * beside the magnets.
 */
export function workingPermeability(drum: TubedDrum, given: readonly (number | Magnetisation)[]): number[] {
  const { magnets, tubes, waves } = drum
  const { axialLength, polarization } = magnets
  const p = magnets.count / 2

  const μ = given.map((one) =>
    typeof one === 'number' ? Math.max(one, leastPermeability) : startPermeability,
  )
  const curved = given.flatMap((one, t) => (typeof one === 'function' ? [t] : []))
  if (curved.length === 0 || polarization === 0) return μ
  // what ends the tubes changes little here
  const endless = tubes.map((tube) => ({ ...tube, length: Number.POSITIVE_INFINITY }))
  const asked = (): number[] => {
    const answers = shapingOrders.map((n) => orderCharge(magnets, endless, waves(n * p), μ))
    return curved.map((t) => {
      const curve = given[t] as Magnetisation
      const fluxes = shapingOrders.map((n, j) => wallFlux(drum, n * p, t, answers[j]!))
      let [square, work] = [0, 0]
      const beside = Math.min(axialLength, tubes[t]!.length)
      for (const share of [0.1, 0.3, 0.45])
        for (let j = 0; j < 6; j++) {
          const angle = ((j + 0.5) * Math.PI) / (12 * p)
          const B = wallDensity(drum, fluxes, t, angle, share * beside)
          const H = curve(B)
          requireFinite('H of the curve', H, 'A/m')
          square += B * B
          work += B * Math.max(H, B / (μ0 * mostPermeability))
        }
      return work > 0 ? Math.log(Math.max(leastPermeability, square / (μ0 * work))) : lnMost
    })
  }
  // More permeable iron carries more flux and then asks for less: answers fall, faster the more it is saturated
  const before = curved.map(() => ({ ln: 0, answer: 0 }))
  const slope = curved.map(() => -1)
  let change = 0
  for (let pass = 0; pass < mostPasses; pass++) {
    const answers = asked()
    change = 0
    curved.forEach((t, c) => {
      const ln = Math.log(μ[t]!)
      const answer = answers[c]!
      const { ln: lnBefore, answer: answerBefore } = before[c]!
      if (pass > 0 && Math.abs(ln - lnBefore) > 1e-9)
        slope[c] = Math.min(0, Math.max(-40, (answer - answerBefore) / (ln - lnBefore)))
      before[c] = { ln, answer }
      const step = (answer - ln) / (1 - slope[c]!)
      change = Math.max(change, Math.abs(step))
      μ[t] = Math.exp(Math.min(lnMost, Math.max(lnLeast, ln + step)))
    })
    if (change < permeabilityTolerance) return μ
  }
  refuse({
    name: 'permeability of the iron',
    condition: `settled within ${permeabilityTolerance} in ${mostPasses} passes`,
    value: change,
    code: 'no-convergence',
  })
}
