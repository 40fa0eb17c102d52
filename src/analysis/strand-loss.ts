/** Eddy loss in the strands of the winding, along the real way of the wire and over its bundle. */
import { curveQuadrature } from '../geometry/curve.ts'
import type { Machine } from '../machine/machine.ts'
import { eddyLossOfRate } from '../physics/electrics/eddy-loss.ts'
import type { RotorField } from './air-gap-field.ts'
import type { ConductorLayout, ConductorShape } from './conductor-layout.ts'
import { movingField } from './moving-field.ts'

export interface StrandLoss {
  /** Watts at one radian per second; they go with the square of the speed [W·s²/rad²]. */
  readonly total: number
  /** Of it where the magnets reach along the wire's way, and past their ends. */
  readonly underMagnets: number
  readonly ends: number
}

/** Panels of the path, in distances from the magnets, and points in each: loss within a few tenths of a percent. */
const panelLength = 2
const panelOrder = 3

/** Six numbers a point: level of the bundle's middle, place along the magnets, direction (0, 1, 2), length. */
const stride = 6

/** All filaments' points, in the frame of the field's rates; the length is weighted by the filament's share. */
function pathPoints(shape: ConductorShape, drum: boolean, longestStep: number): Float64Array {
  const parts = shape.filaments.map(({ curve, weight, offset }) => {
    const { points, steps } = curveQuadrature(curve, { longestStep, order: panelOrder })
    const part = new Float64Array((points.length / 3) * stride)
    for (let k = 0, at = 0; k < points.length; k += 3, at += stride) {
      const [x, y, z] = [points[k]!, points[k + 1]!, points[k + 2]!]
      const [dx, dy, dz] = [steps[k]!, steps[k + 1]!, steps[k + 2]!]
      const r = Math.sqrt(x * x + y * y)
      const length = Math.sqrt(dx * dx + dy * dy + dz * dz)
      const per = length > 0 ? 1 / length : 0
      const radial = (r > 0 ? (x * dx + y * dy) / r : dx) * per
      part[at] = (drum ? r : z) - offset[1]
      part[at + 1] = drum ? z : r
      part[at + 2] = drum ? radial : dz * per
      part[at + 3] = (r > 0 ? (x * dy - y * dx) / r : dy) * per
      part[at + 4] = drum ? dz * per : radial
      part[at + 5] = length * weight
    }
    return part
  })
  const all = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    all.set(part, at)
    at += part.length
  }
  return all
}

/** Nearest of the Gauss points through the bundle, where its field is finest, as a share of half the depth. */
const nearestShare = 0.7746

/** Of the field that a turn meets, squared and summed along it, in the winding's surface and at right angles to it [T²·m]. */
interface RateSum {
  inSurface: number
  offSurface: number
}

/** At one radian per second, where the magnets reach along the wire's way and past their ends. */
interface TurnRates {
  readonly underMagnets: RateSum
  readonly ends: RateSum
}

/** By field, and by what of a shape its turns do not change. */
const kept = new WeakMap<RotorField, Map<string, TurnRates>>()

function turnRates(machine: Machine, field: RotorField, shape: ConductorShape): TurnRates {
  const place = JSON.stringify({ ...shape, turns: 1 })
  const ofField = kept.get(field) ?? new Map<string, TurnRates>()
  kept.set(field, ofField)
  const found = ofField.get(place) ?? summedRates(machine, field, shape)
  ofField.set(place, found)
  return found
}

function summedRates(machine: Machine, field: RotorField, shape: ConductorShape): TurnRates {
  const { magnet, arrangement, pitchRadius } = machine.rotor
  const drum = arrangement === 'drum'
  const depth = shape.bundle.thickness
  const distance = Math.max(shape.distance - (nearestShare * depth) / 2, 0.2 * shape.distance, 5e-4)
  const path = pathPoints(shape, drum, panelLength * distance)
  const levels = new Float64Array(path.length / stride)
  let alongLeast = Number.POSITIVE_INFINITY
  let alongMost = Number.NEGATIVE_INFINITY
  for (let k = 0; k < levels.length; k++) {
    levels[k] = path[k * stride]!
    alongLeast = Math.min(alongLeast, path[k * stride + 1]!)
    alongMost = Math.max(alongMost, path[k * stride + 1]!)
  }
  const moving = movingField(machine, field, { levels, alongLeast, alongMost, depth, distance })
  const middle = drum ? 0 : pitchRadius
  const rates = new Float64Array(6)
  const underMagnets = { inSurface: 0, offSurface: 0 }
  const ends = { inSurface: 0, offSurface: 0 }
  for (let at = 0; at < path.length; at += stride) {
    const along = path[at + 1]!
    moving(path[at]!, along, rates)
    const [r00, r11, r22, r01, r02, r12] = rates as unknown as [
      number,
      number,
      number,
      number,
      number,
      number,
    ]
    const t0 = path[at + 2]!
    const t1 = path[at + 3]!
    const t2 = path[at + 4]!
    // the field along the wire drives nothing across it
    const lengthwise =
      t0 * t0 * r00 + t1 * t1 * r11 + t2 * t2 * r22 + 2 * (t0 * t1 * r01 + t0 * t2 * r02 + t1 * t2 * r12)
    const across = Math.max(0, r00 + r11 + r22 - lengthwise)
    // a strip has one side in the winding's surface: w at right angles to the wire there
    const flat = Math.sqrt(t1 * t1 + t2 * t2)
    const w1 = flat > 1e-9 ? t2 / flat : 1
    const w2 = flat > 1e-9 ? -t1 / flat : 0
    const inSurface = Math.min(across, Math.max(0, w1 * w1 * r11 + w2 * w2 * r22 + 2 * w1 * w2 * r12))
    const part = Math.abs(along - middle) <= magnet.length / 2 ? underMagnets : ends
    part.inSurface += path[at + 5]! * inSurface
    part.offSurface += path[at + 5]! * (across - inSurface)
  }
  return { underMagnets, ends }
}

function shapeLoss(machine: Machine, field: RotorField, shape: ConductorShape): StrandLoss {
  const { section, resistivity, strands, shape: wireShape } = machine.stator.wire
  const edgewise = wireShape.kind === 'strip' && wireShape.edgewise
  const factor = section.area * shape.repeats * shape.turns * strands
  const loss = ({ inSurface, offSurface }: RateSum) =>
    factor *
    eddyLossOfRate({
      section,
      rateThickness: edgewise ? inSurface : offSurface,
      rateWidth: edgewise ? offSurface : inSurface,
      resistivity,
    })
  const rates = turnRates(machine, field, shape)
  const underMagnets = loss(rates.underMagnets)
  const ends = loss(rates.ends)
  return { total: underMagnets + ends, underMagnets, ends }
}

/**
 * Loss of all strands. The copper is taken at 20 °C, where it loses most, and thin against the skin depth: both on the
 * safe side. Strands in hand are insulated from each other here; what runs round between them is another matter.
 */
export function strandLoss(machine: Machine, field: RotorField, layout: ConductorLayout): StrandLoss {
  const perShape = layout.shapes.map((shape) => shapeLoss(machine, field, shape))
  const sum = (part: keyof StrandLoss) =>
    layout.coils.reduce((total, { shape }) => total + perShape[shape]![part], 0)
  return { total: sum('total'), underMagnets: sum('underMagnets'), ends: sum('ends') }
}
