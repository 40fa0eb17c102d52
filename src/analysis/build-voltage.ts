/** The volts of a build: shifted and scaled copies of one magnet's linkage, summed coil by coil and joined to phases. */
import type { FourierSeries } from '../numerics/fourier.ts'
import type { BuildBasis, Parabola, Phasors, TurnBasis } from './build-basis.ts'
import type { BuildError, CoilError, MagnetError } from './build-error.ts'
import type { Chain } from './compute.ts'
import { workingShares } from './winding-defect.ts'

type Parts = Pick<Chain, 'machine' | 'field' | 'layout' | 'wound' | 'voltage'>

/** EMFs over the shaft's speed [V·s/rad]; all series have a whole turn of the shaft for their period. */
export interface BuildVoltage {
  /** Of each coil, as wound. */
  readonly coils: readonly FourierSeries[]
  /** Of each phase, and its resistance without leads and joints at 20 °C [Ω]. */
  readonly emf: readonly FourierSeries[]
  readonly resistance: readonly number[]
  /** Phase by phase its parallel branches. */
  readonly branches: readonly (readonly { readonly emf: FourierSeries; readonly resistance: number }[])[]
}

const zeros = (orders: number): Phasors => ({
  re: new Float64Array(orders + 1),
  im: new Float64Array(orders + 1),
})

/** Sums over the magnets of a ring, f e^(jhα) weighted with powers of their errors: an amplitude is re − j im. */
interface RingMoments {
  readonly one: Phasors
  readonly across: Phasors
  readonly across2: Phasors
  readonly away: Phasors
  readonly away2: Phasors
  readonly apart: Phasors
  readonly apart2: Phasors
}

function ringMoments(
  orders: number,
  places: readonly { readonly angle: number; readonly factor: number }[],
  errors: readonly Pick<MagnetError, 'across' | 'away' | 'apart'>[],
): RingMoments {
  const sum = (of: (error: (typeof errors)[number]) => number): Phasors => {
    const { re, im } = zeros(orders)
    for (let k = 0; k < places.length; k++) {
      const { angle, factor } = places[k]!
      // the factor turned on by the magnet's angle, order by order
      let c = factor * of(errors[k]!)
      let s = 0
      if (c === 0) continue
      const [c1, s1] = [Math.cos(angle), Math.sin(angle)]
      for (let h = 0; h <= orders; h++) {
        re[h]! += c
        im[h]! += s
        const next = c * c1 - s * s1
        s = s * c1 + c * s1
        c = next
      }
    }
    return { re, im }
  }
  return {
    one: sum(() => 1),
    across: sum(({ across }) => across),
    across2: sum(({ across }) => across ** 2),
    away: sum(({ away }) => away),
    away2: sum(({ away }) => away ** 2),
    apart: sum(({ apart }) => apart),
    apart2: sum(({ apart }) => apart ** 2),
  }
}

/** target += weight · basis · moment; a basis is re − j im, a moment re + j im, the target re − j im. */
function add(target: Phasors, basis: Phasors, moment: Phasors, weight: number): void {
  const { re, im } = target
  for (let h = 0; h < re.length; h++) {
    const [a, b] = [basis.re[h]!, basis.im[h]!]
    const [c, s] = [moment.re[h]!, moment.im[h]!]
    re[h]! += weight * (a * c + b * s)
    im[h]! += weight * (b * c - a * s)
  }
}

/** ψ of a turn that stands at angle 0, as a parabola of its own errors. */
interface TurnLinkage {
  readonly own: Phasors
  readonly across: Phasors
  readonly across2: Phasors
  readonly away: Phasors
  readonly away2: Phasors
}

function turnLinkage(
  rings: readonly TurnBasis[],
  moments: readonly RingMoments[],
  orders: number,
): TurnLinkage {
  const sum = {
    own: zeros(orders),
    across: zeros(orders),
    across2: zeros(orders),
    away: zeros(orders),
    away2: zeros(orders),
  }
  rings.forEach(({ own, across, away, apart }, r) => {
    const m = moments[r]!
    add(sum.own, own, m.one, 1)
    const curve = (part: Parabola | undefined, first: Phasors, second: Phasors) => {
      if (part === undefined) return
      add(sum.own, part.slope, first, 1)
      add(sum.own, part.bend, second, 1)
    }
    curve(across, m.across, m.across2)
    curve(away, m.away, m.away2)
    curve(apart, m.apart, m.apart2)
    // what counts is magnet less coil across, and magnet and coil together away: (x − c)², (y + c)²
    if (across !== undefined) {
      add(sum.across, across.slope, m.one, -1)
      add(sum.across, across.bend, m.across, -2)
      add(sum.across2, across.bend, m.one, 1)
    }
    if (away !== undefined) {
      add(sum.away, away.slope, m.one, 1)
      add(sum.away, away.bend, m.away, 2)
      add(sum.away2, away.bend, m.one, 1)
    }
  })
  return sum
}

/** ψ of the turn in its place, with the coil's errors: e^(−jhβ) times the mean of its runs. */
function placedTurn(
  linkage: TurnLinkage,
  angle: number,
  { across, away, swing, runs }: Pick<CoilError, 'across' | 'away' | 'swing' | 'runs'>,
): Phasors {
  // a wave's distance swings: its mean is kept, its mean square is not
  const square = away ** 2 + swing ** 2 / 2
  const { own } = linkage
  const orders = own.re.length - 1
  const lags = zeros(orders)
  const turn = (lag: number, weight: number) => {
    const [c1, s1] = [Math.cos(lag), Math.sin(lag)]
    let [c, s] = [weight, 0]
    for (let h = 0; h <= orders; h++) {
      lags.re[h]! += c
      lags.im[h]! += s
      const next = c * c1 - s * s1
      s = s * c1 + c * s1
      c = next
    }
  }
  if (runs.length === 0) turn(angle, 1)
  else for (const run of runs) turn(angle + run, 1 / runs.length)
  const terms = [
    [across, linkage.across],
    [across ** 2, linkage.across2],
    [away, linkage.away],
    [square, linkage.away2],
  ] as const
  const here = { re: own.re.slice(), im: own.im.slice() }
  for (const [weight, { re, im }] of terms)
    if (weight !== 0)
      for (let h = 0; h <= orders; h++) {
        here.re[h]! += weight * re[h]!
        here.im[h]! += weight * im[h]!
      }
  for (let h = 0; h <= orders; h++) {
    const [a, b] = [here.re[h]!, here.im[h]!]
    const [c, s] = [lags.re[h]!, lags.im[h]!]
    here.re[h] = a * c - b * s
    here.im[h] = b * c + a * s
  }
  return here
}

const sound: CoilError = {
  around: 0,
  across: 0,
  away: 0,
  swing: 0,
  runs: new Float64Array(0),
  depth: 0,
  turnLength: 0,
  turns: 0,
}

const straight = { across: 0, away: 0, apart: 0 }

/** A series over `base` periods a turn, seen over the whole turn. */
export function overTurn({ cos, sin }: FourierSeries, base: number, orders: number): FourierSeries {
  const whole = { cos: new Float64Array(orders + 1), sin: new Float64Array(orders + 1) }
  for (let h = 0; h < cos.length && h * base <= orders; h++) {
    whole.cos[h * base] = cos[h]!
    whole.sin[h * base] = sin[h]!
  }
  return whole
}

/** The branches of every phase, each a string of coils. */
const wiringOf = ({ coils, phaseCount, groups }: Parts['layout']) =>
  Array.from({ length: phaseCount }, (_, phase) =>
    Array.from({ length: groups }, (__, group) =>
      coils.flatMap((one, coil) =>
        one.phase === phase && one.group === group ? [{ coil, sense: one.sense }] : [],
      ),
    ).filter((branch) => branch.length > 0),
  )

function weightedSum(
  orders: number,
  parts: readonly { readonly emf: FourierSeries; readonly weight: number }[],
): FourierSeries {
  const sum = { cos: new Float64Array(orders + 1), sin: new Float64Array(orders + 1) }
  for (const { emf, weight } of parts)
    for (let h = 0; h <= orders; h++) {
      sum.cos[h]! += weight * emf.cos[h]!
      sum.sin[h]! += weight * emf.sin[h]!
    }
  return sum
}

/** As `connectPhases` joins them, without what only a drawing is asked for. */
function joined(
  wiring: ReturnType<typeof wiringOf>,
  orders: number,
  coils: readonly FourierSeries[],
  resistance: readonly number[],
): Pick<BuildVoltage, 'emf' | 'resistance' | 'branches'> {
  const branches = wiring.map((strings) =>
    strings.map((string) => ({
      emf: weightedSum(
        orders,
        string.map(({ coil, sense }) => ({ emf: coils[coil]!, weight: sense })),
      ),
      resistance: string.reduce((sum, { coil }) => sum + resistance[coil]!, 0),
    })),
  )
  const whole = branches.map((own) => 1 / own.reduce((sum, branch) => sum + 1 / branch.resistance, 0))
  return {
    branches,
    resistance: whole,
    emf: branches.map((own, k) =>
      own.length === 1
        ? own[0]!.emf
        : weightedSum(
            orders,
            own.map((branch) => ({ emf: branch.emf, weight: whole[k]! / branch.resistance })),
          ),
    ),
  }
}

/** Working factors of all magnets once their strengths differ: each gains or loses with its fellows in the common circuit. */
function workingFactors(
  { machine: { rotor }, field }: Pick<Parts, 'machine' | 'field'>,
  { coupling }: BuildBasis,
  errors: BuildError['magnets'],
): number[][] {
  const count = rotor.poleCount
  const factors = field.poles.map(({ places }) => places.map(({ factor }) => factor))
  for (const [r, ring] of errors.entries())
    for (const [k, { strength }] of ring.entries()) {
      const { sense, strength: own } = rotor.rings[r]![k]!
      const change = (strength - 1) * own * sense
      if (change === 0) continue
      for (const [other, row] of factors.entries()) {
        const column = coupling[other === r ? 0 : 1]!
        for (let n = 0; n < count; n++) row[(k + n) % count]! += change * column[n]!
      }
    }
  return factors
}

/**
 * Assembles the volts of builds. The change against the drawing is assembled and added to the drawing's own volts, so
 * that a build without errors is the drawing itself.
 *
 * Holds: small errors against the distance of magnet and wire, where a parabola follows the field; a coil moves as a
 * whole and does not turn; steel keeps its nominal gains; inductances are the drawing's.
 */
export function buildAssembly(
  { machine, field, layout, wound, voltage }: Parts,
  basis: BuildBasis,
): (error: BuildError) => BuildVoltage {
  const { orders } = basis
  const { base } = voltage
  const working = workingShares(
    layout.coils.map((_, k) => wound.loops.find(({ coil }) => coil === k)?.share ?? 0),
  )
  const drawn = voltage.coils.map(({ emf }) => overTurn(emf, base, orders))
  const noError = field.poles.map(({ places }) => places.map(() => straight))
  const momentsOf = (
    places: readonly (readonly { angle: number; factor: number }[])[],
    errors: readonly (readonly (typeof straight)[])[],
  ) => places.map((ring, r) => ringMoments(orders, ring, errors[r]!))
  const soundMoments = momentsOf(
    field.poles.map(({ places }) => places),
    noError,
  )
  const soundTurns = basis.turns.map((rings) => turnLinkage(rings, soundMoments, orders))
  const soundCoils = layout.coils.map(({ shape, angle }) => placedTurn(soundTurns[shape]!, angle, sound))
  const wiring = wiringOf(layout)
  const turnsWith = ({ magnets }: BuildError): readonly TurnLinkage[] => {
    const factors = workingFactors({ machine, field }, basis, magnets)
    const places = field.poles.map((pole, r) =>
      pole.places.map(({ angle }, k) => ({
        angle: angle + magnets[r]![k]!.around,
        factor: factors[r]![k]!,
      })),
    )
    const moments = momentsOf(places, magnets)
    return basis.turns.map((rings) => turnLinkage(rings, moments, orders))
  }
  // builds that share their magnets come one after the other
  let last: { readonly magnets: BuildError['magnets']; readonly turns: readonly TurnLinkage[] } | undefined
  return (error) => {
    if (last?.magnets !== error.magnets) last = { magnets: error.magnets, turns: turnsWith(error) }
    const { turns } = last
    const coils = layout.coils.map(({ shape, angle }, k): FourierSeries => {
      const own = error.coils[k]!
      const { turns: count } = layout.shapes[shape]!
      const now = placedTurn(turns[shape]!, angle + own.around, own)
      const before = soundCoils[k]!
      // e = −dψ/dθ
      const gain = 1 + own.turns / count
      const perTurn = -count * working[k]!
      const { cos, sin } = drawn[k]!
      const emf = { cos: cos.slice(), sin: sin.slice() }
      for (let h = 0; h <= orders; h++) {
        emf.cos[h] = gain * (cos[h]! + perTurn * h * (now.im[h]! - before.im[h]!))
        emf.sin[h] = gain * (sin[h]! - perTurn * h * (now.re[h]! - before.re[h]!))
      }
      return emf
    })
    const perArea = (1 + error.wire) ** -2
    const coilResistance = wound.coilResistance.map((R, k) => {
      const { turns: extra, turnLength } = error.coils[k]!
      const { turns: count } = layout.shapes[layout.coils[k]!.shape]!
      return R * perArea * (1 + turnLength) * (1 + extra / count)
    })
    return { coils, ...joined(wiring, orders, coils, coilResistance) }
  }
}
