/** The EMF of many orders and what a mode answers to it, read from a grid over the period. */
import { gaussLegendre } from '../../numerics/quadrature.ts'
import { type ConductionMode, INSTANT_SHARE } from './conduction-mode.ts'
import { harmonicSums } from './harmonic-sum.ts'
import type { RectifierCircuit } from './rectifier-circuit.ts'
import type { Arc, Waves } from './wave.ts'

/** Points of the grid in a period of the highest order. */
const PER_ORDER = 16
/** Points about an angle through which the polynomial goes; this many of them before the angle’s own interval. */
const TAPS = 10
const BEFORE = TAPS / 2 - 1
/** A response is carried from point to point in blocks, each of which begins with the sum of its harmonics. */
const BLOCK = 32
/** Time constants per point up to which it is carried; stiffer ones are summed at every point. */
const MOST_DECAY = 4
/** Closer to a point than this share of the grid an angle is the point. */
const ON_POINT = 1e-9

const sharesAtTaps = Float64Array.from({ length: TAPS }, (_, m) => {
  let product = 1
  for (let q = 0; q < TAPS; q++) if (q !== m) product /= m - q
  return product
})

/** Weights of the points −BEFORE … TAPS − 1 − BEFORE in the value at u, 0…1: Lagrange’s polynomials. */
function tapWeights(u: number, out: Float64Array): void {
  for (let m = 0; m < TAPS; m++) {
    let product = sharesAtTaps[m]!
    for (let q = 0; q < TAPS; q++) if (q !== m) product *= u + BEFORE - q
    out[m] = product
  }
}

/** Nodes of an integral over one interval of the grid, with the taps’ weights there. */
const interval = (() => {
  const { nodes, weights } = gaussLegendre(10)
  return Array.from(nodes, (x, q) => {
    const taps = new Float64Array(TAPS)
    tapWeights((1 + x) / 2, taps)
    return { u: (1 + x) / 2, weight: weights[q]! / 2, taps }
  })
})()

/** How a coordinate goes on by one interval: p ← kept p + Σ taps f; f is what drives it, without its mean. */
interface Carry {
  readonly kept: number
  readonly taps: Float64Array
}

/** ν p′ + (1 − ν) p = f over an interval h: p e^(−λh) + ∫ e^(−λ(h−s)) f/ν ds, λ = (1 − ν)/ν. */
function carryOf(ν: number, h: number): Carry | undefined {
  const λ = (1 - ν) / ν
  if (ν < INSTANT_SHARE || λ * h > MOST_DECAY) return undefined
  const taps = new Float64Array(TAPS)
  for (const { u, weight, taps: at } of interval) {
    const share = (weight * h * Math.exp(-λ * h * (1 - u))) / ν
    for (let m = 0; m < TAPS; m++) taps[m] = taps[m]! + share * at[m]!
  }
  return { kept: Math.exp(-λ * h), taps }
}

/** A mode’s responses, point by point, as far as their blocks are worked out. */
interface Responses {
  readonly values: Float64Array
  readonly known: Uint8Array
  readonly carries: readonly (Carry | undefined)[]
}

/**
 * Waves read from a grid of 16 points to a period of the highest order, by polynomials through ten points: to 1e-10 of
 * the largest amplitude.
 *
 * @internal a step of mode-response: writes the EMF into `emf`, a mode’s response into `p`
 */
export function tabledWaves(circuit: RectifierCircuit, emf: Float64Array, p: Float64Array): Waves {
  const { phases: n, orders } = circuit
  const H = orders + 1
  const G = BLOCK * Math.ceil((PER_ORDER * orders) / BLOCK)
  const h = (2 * Math.PI) / G
  const { trig, turnTo } = gridHarmonics(G, H)
  const emfs = emfGrid(circuit, G)

  const known = new Map<ConductionMode, Responses>()
  const sums = new Float64Array(circuit.unknowns)
  const responsesOf = (mode: ConductionMode): Responses => {
    let found = known.get(mode)
    if (found === undefined) {
      found = {
        values: new Float64Array(G * mode.free),
        known: new Uint8Array(G / BLOCK),
        carries: Array.from(mode.ν, (ν) => carryOf(ν, h)),
      }
      known.set(mode, found)
    }
    return found
  }
  const driving = new Float64Array(BLOCK + TAPS)
  const fill = (mode: ConductionMode, { values, known: done, carries }: Responses, block: number) => {
    done[block] = 1
    const f = mode.free
    const first = block * BLOCK
    const stiff = carries.includes(undefined)
    for (let i = first; i < (stiff ? first + BLOCK : first + 1); i++) {
      turnTo(i)
      harmonicSums(sums, f, [mode.cos, mode.sin], trig)
      for (let j = 0; j < f; j++) values[i * f + j] = sums[j]!
    }
    if (stiff) return
    for (let j = 0; j < f; j++) {
      const { kept, taps } = carries[j]!
      for (let q = 0; q < BLOCK + TAPS; q++) {
        const at = n * ((first + q - BEFORE + G) % G)
        let sum = 0
        for (let k = 0; k < n; k++) sum += mode.WP[j * n + k]! * (emfs[at + k]! - circuit.emfCos[k * H]!)
        driving[q] = sum
      }
      let value = values[first * f + j]!
      for (let q = 1; q < BLOCK; q++) {
        let sum = kept * value
        for (let m = 0; m < TAPS; m++) sum += taps[m]! * driving[q - 1 + m]!
        value = sum
        values[(first + q) * f + j] = value
      }
    }
  }

  const weights = new Float64Array(TAPS)
  let angle = Number.NaN
  /** First of the points that count, and whether it alone does. */
  let first = 0
  let single = false
  const turn = (θ: number) => {
    if (θ === angle) return
    angle = θ
    const x = θ / h
    const nearest = Math.round(x)
    single = Math.abs(x - nearest) < ON_POINT
    const low = Math.floor(x)
    first = (((single ? nearest : low - BEFORE) % G) + G) % G
    if (!single) tapWeights(x - low, weights)
  }
  const read = (table: Float64Array, width: number, out: Float64Array) => {
    if (single) {
      for (let k = 0; k < width; k++) out[k] = table[first * width + k]!
      return
    }
    for (let k = 0; k < width; k++) out[k] = 0
    for (let m = 0; m < TAPS; m++) {
      const at = first + m < G ? first + m : first + m - G
      const w = weights[m]!
      for (let k = 0; k < width; k++) out[k] = out[k]! + w * table[at * width + k]!
    }
  }
  const emfNow = () => read(emfs, n, emf)
  const respond = (mode: ConductionMode) => {
    if (mode.free === 0) return
    const responses = responsesOf(mode)
    const begin = Math.floor(first / BLOCK)
    if (responses.known[begin] === 0) fill(mode, responses, begin)
    if (!single) {
      const end = Math.floor(((first + TAPS - 1) % G) / BLOCK)
      if (responses.known[end] === 0) fill(mode, responses, end)
    }
    read(responses.values, mode.free, p)
  }
  const toStep = (i: number, { span, steps }: Arc) => turn(span * (i / steps))
  return {
    turn,
    emfNow,
    respond,
    emfAtStep: (i, arc) => {
      toStep(i, arc)
      emfNow()
    },
    respondAtStep: (mode, i, arc) => {
      toStep(i, arc)
      respond(mode)
    },
  }
}

/** Cosines and sines of all orders at a point of the grid. */
function gridHarmonics(G: number, H: number) {
  const cosines = Float64Array.from({ length: G }, (_, i) => Math.cos((2 * Math.PI * i) / G))
  const sines = Float64Array.from({ length: G }, (_, i) => Math.sin((2 * Math.PI * i) / G))
  const trig = [new Float64Array(H), new Float64Array(H)] as const
  const turnTo = (i: number) => {
    for (let order = 0, at = 0; order < H; order++) {
      trig[0][order] = cosines[at]!
      trig[1][order] = sines[at]!
      at += i
      if (at >= G) at -= G
    }
  }
  return { trig, turnTo }
}

interface Spectrum {
  readonly phases: number
  readonly cos: Float64Array
  readonly sin: Float64Array
}

/** Steps of an amplitude over the largest: far below what the grid tells, far above rounding. */
const AMPLITUDE_STEPS = 2 ** 36

/** The spectrum over its largest amplitude, in steps: one machine’s is the same at every speed. */
function unitSpectrum({ phases, emfCos, emfSin }: RectifierCircuit): Spectrum & { readonly largest: number } {
  let largest = 0
  for (let i = 0; i < emfCos.length; i++)
    largest = Math.max(largest, Math.abs(emfCos[i]!), Math.abs(emfSin[i]!))
  const unit = (value: number) =>
    largest > 0 ? Math.round((AMPLITUDE_STEPS * value) / largest) / AMPLITUDE_STEPS : 0
  return { phases, largest, cos: emfCos.map(unit), sin: emfSin.map(unit) }
}

const alike = (a: Float64Array, b: Float64Array): boolean =>
  a.length === b.length && a.every((value, i) => value === b[i])

/** The grid last worked out, of a unit spectrum: a machine’s tables ask for it at one speed after the other. */
let last: { readonly of: Spectrum; readonly grid: Float64Array } | undefined

/** The EMF at all points, phase beside phase. */
function emfGrid(circuit: RectifierCircuit, G: number): Float64Array {
  const unit = unitSpectrum(circuit)
  if (last?.of.phases !== unit.phases || !alike(last.of.cos, unit.cos) || !alike(last.of.sin, unit.sin))
    last = { of: unit, grid: summedGrid(unit, G) }
  const { grid } = last
  const out = new Float64Array(grid.length)
  for (let i = 0; i < out.length; i++) out[i] = unit.largest * grid[i]!
  return out
}

/** Even and odd orders, cosines and sines summed apart tell four points at once: at ±θ and half a turn from them. */
function summedGrid({ phases: n, cos, sin }: Spectrum, G: number): Float64Array {
  const H = cos.length / n
  const {
    trig: [ch, sh],
    turnTo,
  } = gridHarmonics(G, H)
  const out = new Float64Array(n * G)
  for (let i = 0; i <= G / 4; i++) {
    turnTo(i)
    const opposite = G / 2 + i
    const mirrored = (G - i) % G
    const mirroredOpposite = G / 2 - i
    for (let k = 0; k < n; k++) {
      let [evenCos, oddCos, evenSin, oddSin] = [0, 0, 0, 0]
      for (let h = 0, at = k * H; h < H; h += 2, at += 2) {
        evenCos += cos[at]! * ch[h]!
        evenSin += sin[at]! * sh[h]!
        if (h + 1 < H) {
          oddCos += cos[at + 1]! * ch[h + 1]!
          oddSin += sin[at + 1]! * sh[h + 1]!
        }
      }
      out[n * i + k] = evenCos + oddCos + evenSin + oddSin
      out[n * mirrored + k] = evenCos + oddCos - evenSin - oddSin
      out[n * opposite + k] = evenCos - oddCos + evenSin - oddSin
      out[n * mirroredOpposite + k] = evenCos - oddCos - evenSin + oddSin
    }
  }
  return out
}
