/** Eddy drag of metal that stands still near the turning magnets: an estimate with its range. */
import type { Machine, MetalPart } from '../machine/machine.ts'
import { type FourierSeries, fourierSeries } from '../numerics/fourier.ts'
import { monotoneCubic } from '../numerics/interpolate.ts'
import { gaussLegendre } from '../numerics/quadrature.ts'
import { acrossBarEddyLoss, alongBarEddyLoss } from '../physics/electrics/eddy-bar.ts'
import { movingFieldPlateLoss, sheetEndShare } from '../physics/electrics/eddy-plate.ts'
import { cuboidDemagnetizingFactor } from '../physics/magnetics/demagnetizing-factor.ts'
import { fieldAt, levelAbove, type RotorField } from './air-gap-field.ts'

export interface MetalPartLoss {
  readonly part: MetalPart
  /** "plate of aluminium", for pages. */
  readonly name: string
  /** At a speed [W]. */
  readonly loss: (speed: number) => number
  /** Half-width at 90 %, as a share of it. */
  readonly spread: number
}

/**
 * How far the estimate may be off: iron near by, ends and holes of a plate, a field that is not uniform over a bolt.
 * Steel adds its saturation and its own poles. Judged from the limits of the formulas, no source.
 */
const spreads = { plate: 0.5, ring: 0.35, bolt: 0.5, magnetic: 0.7 } as const

/** Flux density that half saturates steel and no field near magnets drives it past [T]: common practice, no source. */
const steelMost = 1.6

const samples = 32
const lengthOrder = 3

type Direction = readonly [through: number, around: number, along: number]

/** Series of the field at a place over one period of the rotor: through the winding, around, along the magnets. */
function fieldSeries(machine: Machine, field: RotorField, level: number, along: number) {
  const { rotor } = machine
  const drum = rotor.arrangement === 'drum'
  const base = rotor.alternating ? rotor.polePairs : 1
  const N = rotor.alternating ? samples : samples * rotor.polePairs
  const r = Math.max(drum ? level : along, 1e-4)
  const z = drum ? along : level
  const points = new Float64Array(3 * N)
  for (let k = 0; k < N; k++) {
    const θ = (2 * Math.PI * k) / (N * base)
    points.set([r * Math.cos(θ), r * Math.sin(θ), z], 3 * k)
  }
  const B = fieldAt(field, points)
  const parts = [0, 1, 2].map(() => new Float64Array(N))
  for (let k = 0; k < N; k++) {
    const c = points[3 * k]! / r
    const s = points[3 * k + 1]! / r
    const radial = B[3 * k]! * c + B[3 * k + 1]! * s
    parts[0]![k] = drum ? radial : B[3 * k + 2]!
    parts[1]![k] = B[3 * k + 1]! * c - B[3 * k]! * s
    parts[2]![k] = drum ? B[3 * k + 2]! : radial
  }
  return { base, series: parts.map((part) => fourierSeries(part, (N >> 1) - 1)) }
}

const squareOf = ({ cos, sin }: FourierSeries, h: number): number => cos[h]! ** 2 + sin[h]! ** 2

/** Middle of the magnets in the direction of their length. */
const magnetMiddle = ({ rotor }: Machine): number => (rotor.arrangement === 'drum' ? 0 : rotor.pitchRadius)

/** Orders whose field is weaker than this share of the strongest cost nothing worth counting. */
const weakest = 1e-3

function plateLoss(
  machine: Machine,
  field: RotorField,
  part: Extract<MetalPart, { kind: 'plate' | 'ring' }>,
) {
  const { rotor } = machine
  const drum = rotor.arrangement === 'drum'
  const middleLevel = levelAbove(machine, part.distance + part.thickness / 2)
  const radius = drum ? Math.max(middleLevel, 1e-3) : rotor.pitchRadius
  const length = Math.min(part.length, rotor.magnet.length)
  const overhang = Math.max(0, (part.length - length) / 2)
  const { nodes, weights } = gaussLegendre(lengthOrder)
  let base = 1
  let squares = new Float64Array(0)
  nodes.forEach((node, i) => {
    const along = magnetMiddle(machine) + (node * length) / 2
    const { series, base: own } = fieldSeries(machine, field, middleLevel, along)
    base = own
    if (squares.length === 0) squares = new Float64Array(series[0]!.cos.length)
    for (let h = 1; h < squares.length; h++) squares[h]! += (weights[i]! / 2) * squareOf(series[0]!, h)
  })
  const most = Math.max(...squares)
  const area = length * radius * part.covers
  const kept = Array.from(squares, (square, h) => ({ square, k: (h * base) / radius })).filter(
    ({ square }, h) => h > 0 && square > weakest ** 2 * most,
  )
  return (speed: number) =>
    kept.reduce((sum, { square, k }) => {
      // the field was taken in the plate's middle; the formula asks for it on the near face
      const onFace = Math.sqrt(square) * Math.exp(Math.min((k * part.thickness) / 2, 20))
      const perArea = movingFieldPlateLoss({
        ...part,
        speed: speed * radius,
        fluxDensity: onFace,
        waveNumber: k,
      })
      return sum + area * perArea * sheetEndShare({ waveNumber: k, length, overhang })
    }, 0)
}

function boltLoss(machine: Machine, field: RotorField, part: Extract<MetalPart, { kind: 'bolt' }>) {
  const axis: Direction = part.axis === 'through' ? [1, 0, 0] : [0, 0, 1]
  const { diameter, length, relativePermeability: μr } = part
  const middle = magnetMiddle(machine) + part.offset
  const volume = (part.count * Math.PI * diameter ** 2 * length) / 4
  // a steel bolt's own poles leave of the field along it 1/(1 + N (μr − 1)) inside
  const N = cuboidDemagnetizingFactor([diameter, diameter, length])
  const inside = 1 / (1 + N * (μr - 1))
  const { nodes, weights } = gaussLegendre(lengthOrder)
  const places = Array.from(nodes, (node, i) => {
    const step = (node * length) / 2
    const level = levelAbove(machine, Math.max(part.distance + axis[0] * step, 0))
    const { base, series } = fieldSeries(machine, field, level, middle + axis[2] * step)
    const lengthwise = series[part.axis === 'through' ? 0 : 2]!
    const others = [series[1]!, series[part.axis === 'through' ? 2 : 0]!]
    const orders = Array.from(lengthwise.cos, (_, h) => ({
      h: h * base,
      along: Math.sqrt(squareOf(lengthwise, h)) * inside,
      across: Math.sqrt(others.reduce((sum, other) => sum + squareOf(other, h), 0)),
    })).slice(1)
    const strongest = Math.max(...orders.map(({ along, across }) => along + across))
    return {
      weight: weights[i]! / 2,
      // steel goes no further than its saturation: inside it is μr times the field along it, twice that across
      orders: orders
        .filter(({ along, across }) => along + across > weakest * strongest)
        .map(({ h, along, across }) => ({
          h,
          along: μr > 1 ? Math.min(along, steelMost / μr) : along,
          across: μr > 1 ? Math.min(across, steelMost / 2) : across,
        })),
    }
  })
  return (speed: number) =>
    places.reduce(
      (sum, { weight, orders }) =>
        sum +
        weight *
          volume *
          orders.reduce((perVolume, { h, along, across }) => {
            const bar = { ...part, angularFrequency: h * speed }
            return (
              perVolume +
              acrossBarEddyLoss({ ...bar, fluxDensity: across }) +
              alongBarEddyLoss({ ...bar, fluxDensity: along })
            )
          }, 0),
      0,
    )
}

/** Speeds of the table [rad/s]: below, the loss goes with the square of the speed; above, no rotor lives. */
const slowest = 0.1
const fastest = 3000
const tableNodes = 24

/** The loss over the square of the speed, which hardly bends on logarithmic scales, from a few speeds. */
function tabulated(loss: (speed: number) => number): (speed: number) => number {
  const x = Float64Array.from(
    { length: tableNodes },
    (_, k) => Math.log(slowest) + (Math.log(fastest / slowest) * k) / (tableNodes - 1),
  )
  const y = x.map((lnSpeed) => Math.log(Math.max(loss(Math.exp(lnSpeed)), 1e-300)) - 2 * lnSpeed)
  const at = monotoneCubic(x, y)
  return (speed) => (speed > 0 ? Math.exp(at(Math.log(speed))) * speed ** 2 : 0)
}

/** Every part by itself; a part does not see what another one's currents do to the field. */
export function metalPartLosses(machine: Machine, field: RotorField): readonly MetalPartLoss[] {
  return machine.stator.metalParts.map((part) => ({
    part,
    name: `${part.kind === 'bolt' && part.count > 1 ? `${part.count} bolts` : part.kind} of ${part.material}`,
    loss: tabulated(part.kind === 'bolt' ? boltLoss(machine, field, part) : plateLoss(machine, field, part)),
    spread: part.relativePermeability > 1 ? spreads.magnetic : spreads[part.kind],
  }))
}
