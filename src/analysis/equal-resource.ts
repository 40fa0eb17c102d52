/** Brings a design to a stated amount of copper, room, loss or money by what its maker would change. */
import { enamelledWires, intermediateMetricSizes } from '../data/wire.ts'
import { gauge } from '../data/wire-gauge.ts'
import type { Design } from '../machine/design.ts'
import type { Machine } from '../machine/machine.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { root } from '../numerics/root.ts'
import { Refusal, refuse, requirePositive } from '../refusal/require.ts'
import { nominal, type Quantity } from '../units/quantity.ts'
import { type RotorField, rotorField } from './air-gap-field.ts'
import { conductorLayout } from './conductor-layout.ts'
import { type ContestRule, contestRuleWords } from './contest-rule.ts'
import { cutInSpeed } from './load-point.ts'
import { openCircuitVoltage } from './open-circuit-voltage.ts'
import { type Steps, within } from './step.ts'
import { woundMachine } from './winding.ts'
import { comparedTemperature, motorConstants, type Wound, windingVolume } from './winding-figure.ts'

/** What all may use: copper [kg], room of the bundles [m³], copper's watts at the common torque [W], money. */
export interface Resource {
  readonly rule: Exclude<ContestRule, 'as-they-are'>
  readonly amount: number
  /** Torque on which the copper's watts are counted [N·m]; needed for equal loss. */
  readonly torque: number
}

export interface FitRequest {
  readonly resource: Resource
  /** Speed at which current is to begin [rad/s]: the turns follow it, in whole turns; left as they are without. */
  readonly cutIn?: number | undefined
}

export interface Fitted {
  /** The design with its new winding: a complete document. */
  readonly design: Design
  readonly machine: Machine
  /** New over old. */
  readonly widthRatio: number
  readonly turns: { readonly from: number; readonly to: number }
  /** Bare wire [m]; `sold` is the nearest metric size of the shops, undefined outside their range. */
  readonly wire: { readonly from: number; readonly to: number; readonly sold: number | undefined }
}

/** The same quantity, spread and all, with another value. */
const valued = (quantity: Quantity, value: number): Quantity =>
  typeof quantity === 'number' ? value : { ...quantity, value }

const widthName = { serpentine: 'bundleWidth_mm', coils: 'legWidth_mm' } as const

/** Bare metric sizes of the shops, thinnest first [m]. */
const soldSizes = [
  ...enamelledWires.map(({ conductorDiameter_mm }) => conductorDiameter_mm),
  ...intermediateMetricSizes.conductorDiameter_mm,
]
  .sort((a, b) => a - b)
  .map((size_mm) => size_mm / 1000)

/** The nearest by ratio; undefined for a wire outside the table. */
export function nearestSoldSize(diameter: number): number | undefined {
  requirePositive('diameter', diameter, 'm')
  if (diameter < soldSizes[0]! || diameter > soldSizes.at(-1)!) return undefined
  const off = (size: number) => Math.abs(Math.log(size / diameter))
  return soldSizes.reduce((best, size) => (off(size) < off(best) ? size : best))
}

/** The wire `ratio` times as thick: a gauge becomes a diameter, a strip keeps its form. */
function resized({ stator: { wire } }: Design, ratio: number): Design['stator']['wire'] {
  const { size, strip } = wire
  if (strip !== undefined)
    return {
      ...wire,
      strip: {
        ...strip,
        width_mm: valued(strip.width_mm, ratio * nominal(strip.width_mm)),
        thickness_mm: valued(strip.thickness_mm, ratio * nominal(strip.thickness_mm)),
        ...(strip.edgeRadius_mm === undefined
          ? {}
          : { edgeRadius_mm: valued(strip.edgeRadius_mm, ratio * nominal(strip.edgeRadius_mm)) }),
      },
    }
  const given = typeof size === 'string' ? gauge(size)! : size!
  return { ...wire, size: valued(given, ratio * nominal(given)) }
}

/**
 * The design with its bundle `widthRatio` times as wide, as deep as before and in its place, with other turns. The
 * wire gets the size that fills the section as before: d² N/(width) stays.
 */
function rewound(design: Design, widthRatio: number, turns: number): Design {
  const { stator } = design
  const { winding } = stator
  if (widthRatio === 1 && turns === winding.turns) return design
  const wire = resized(design, Math.sqrt((widthRatio * winding.turns) / turns))
  if (winding.kind === 'serpentine') {
    const width = valued(winding.bundleWidth_mm, widthRatio * nominal(winding.bundleWidth_mm))
    return { ...design, stator: { ...stator, wire, winding: { ...winding, turns, bundleWidth_mm: width } } }
  }
  const width = valued(winding.legWidth_mm, widthRatio * nominal(winding.legWidth_mm))
  return { ...design, stator: { ...stator, wire, winding: { ...winding, turns, legWidth_mm: width } } }
}

interface Trial {
  readonly design: Design
  readonly wound: Omit<Wound, 'voltage'>
  readonly voltage: () => Wound['voltage']
}

function trialOf(design: Design, field: RotorField): Trial {
  const machine = resolveDesign(design)
  const layout = conductorLayout(machine)
  const wound = woundMachine(machine, layout)
  return {
    design,
    wound: { machine, layout, wound },
    voltage: () => openCircuitVoltage(machine, field, layout, wound),
  }
}

/** What is held equal, as a measure that rises with the copper: the loss at a torque T is (T/k_m)². */
function measure({ rule }: Resource, { wound, voltage, design }: Trial): number {
  if (rule === 'equal-copper-mass') return wound.wound.copperMass
  if (rule === 'equal-winding-volume') return windingVolume(wound)
  if (rule === 'equal-loss')
    return (
      motorConstants({ machine: wound.machine, voltage: voltage() }, comparedTemperature).motorConstant ** 2
    )
  const { price } = wound.wound
  if (price === undefined || !(price > 0))
    return refuse({
      name: 'stator.wire.price_per_kg',
      condition: `above zero in every design, to compare at equal cost; it is missing in “${design.name}”`,
      value: price ?? 0,
      code: 'missing-key',
    })
  return price
}

/** Amount of a resource that a wound design uses; equal loss is counted at the torque. */
export function resourceAmount(resource: Omit<Resource, 'amount'>, wound: Wound): number {
  const { machine } = wound
  const value = measure(
    { ...resource, amount: 0 },
    { design: machine.design, wound, voltage: () => wound.voltage },
  )
  return resource.rule === 'equal-loss' ? resource.torque ** 2 / value : value
}

const wanted = ({ rule, amount, torque }: Resource): number =>
  rule === 'equal-loss' ? torque ** 2 / amount : amount

const widthPath = (design: Design) => `stator.winding.${widthName[design.stator.winding.kind]}`

const remedy = 'make its bundle deeper, give it more room, or compare at another amount'

function unfit(
  design: Design,
  resource: Resource,
  fault: Omit<Parameters<typeof refuse>[0], 'value'> & { readonly value: unknown },
): never {
  return refuse({
    ...fault,
    condition: `${fault.condition}, or “${design.name}” does not come to ${contestRuleWords[resource.rule]}: ${remedy}`,
  })
}

/** Refuses a winding that no longer fits its place. */
function requireFit(start: Design, trial: Trial, resource: Resource, field: RotorField): void {
  const parsed = parseDesign(trial.design)
  if (!parsed.ok) {
    const { path, condition, received, code } = parsed.faults[0]!
    throw new Refusal(
      `${path} must be ${condition}, or “${start.name}” does not come to ${contestRuleWords[resource.rule]}: ${remedy}; received ${received}`,
      code,
    )
  }
  if (trial.design === start) return
  const { winding } = trial.design.stator
  const value = nominal(winding.kind === 'serpentine' ? winding.bundleWidth_mm : winding.legWidth_mm)
  const fault = {
    name: widthPath(start),
    value: Number(value.toPrecision(4)),
    unit: 'mm',
    code: 'conflict',
  } as const
  const { wound, machine, layout } = trial.wound
  const room = wound.fit.neighbourRoom
  // who overlaps from the start is told so by a concern; nobody may overlap more for the contest's sake
  const roomBefore = trialOf(start, field).wound.wound.fit.neighbourRoom ?? 0
  if (room !== undefined && room < Math.min(0, roomBefore) - 1e-9)
    unfit(start, resource, { ...fault, condition: 'so narrow that neighbours leave each other room' })
  if (
    winding.kind === 'serpentine' &&
    layout.shapes.some((s) => s.spreadAngle > (2 * Math.PI) / machine.rotor.poleCount)
  )
    unfit(start, resource, { ...fault, condition: 'at most a pole pitch, where a run meets the next' })
}

const mostDoublings = 20
const closeEnough = 1e-9

/** Width ratio at which the measure meets its target, with those turns. Yields the fraction done. */
function* widthRatioFor(
  design: Design,
  {
    turns,
    field,
    resource,
  }: { readonly turns: number; readonly field: RotorField; readonly resource: Resource },
): Steps<number> {
  const target = wanted(resource)
  const off = (log: number): number => {
    const value = measure(resource, trialOf(rewound(design, Math.exp(log), turns), field))
    return Math.log(value / target)
  }
  const start = off(0)
  if (Math.abs(start) < closeEnough) return 1
  yield 0.1
  let from = 0
  let to = -start
  for (let k = 0; ; k++) {
    let there: number
    try {
      there = off(to)
    } catch (error) {
      if (!(error instanceof Refusal) || error.code === 'missing-key') throw error
      there = Number.NaN
    }
    if (there > 0 !== start > 0 && Number.isFinite(there)) break
    if (!Number.isFinite(there) || k >= mostDoublings)
      unfit(design, resource, {
        name: widthPath(design),
        condition: 'wider than there is room for',
        value: Number((Math.exp(to) * bundleWidth_mm(design)).toPrecision(4)),
        unit: 'mm',
        code: 'conflict',
      })
    if (Math.abs(there) < closeEnough) return Math.exp(to)
    from = to
    to += Math.min(Math.max(-1.3 * there, -0.4), 0.4)
    yield 0.1 + (0.3 * k) / mostDoublings
  }
  yield 0.4
  return Math.exp(root(off, from < to ? [from, to] : [to, from], 1e-9))
}

const bundleWidth_mm = ({ stator: { winding } }: Design): number =>
  nominal(winding.kind === 'serpentine' ? winding.bundleWidth_mm : winding.legWidth_mm)

const mostRounds = 4

/** The turns that let current begin at the wanted speed, nearest whole number; both loads must be batteries for it. */
function turnsFor(trial: Trial, cutIn: number | undefined): number {
  const { machine } = trial.wound
  const { turns } = trial.design.stator.winding
  if (cutIn === undefined || machine.load.kind !== 'battery') return turns
  const now = cutInSpeed(machine, trial.voltage())
  if (!Number.isFinite(now / cutIn)) return turns
  return Math.min(Math.max(Math.round((turns * now) / cutIn), 1), 20_000)
}

/**
 * The design brought to the resource. The maker winds a wider bundle round the same hole or along the same wave, as
 * deep as before and as far from the magnets, packed as before, in wire of whatever size that takes. Turns change
 * only to let current begin at the wanted speed; the wire follows them, so that k_m stays. Yields the fraction done.
 */
export function* fittedDesign(design: Design, { resource, cutIn }: FitRequest): Steps<Fitted> {
  requirePositive('amount', resource.amount)
  if (resource.rule === 'equal-loss') requirePositive('torque', resource.torque, 'N·m')
  const before = resolveDesign(design)
  const field = rotorField(before, before.site.ambient)
  let turns = design.stator.winding.turns
  let widthRatio = 1
  for (let round = 0; round < mostRounds; round++) {
    widthRatio = yield* within(
      widthRatioFor(design, { turns, field, resource }),
      round / mostRounds,
      1 / mostRounds,
    )
    const next = turnsFor(trialOf(rewound(design, widthRatio, turns), field), cutIn)
    if (next === turns) break
    if (round < mostRounds - 1) turns = next
  }
  const trial = trialOf(rewound(design, widthRatio, turns), field)
  requireFit(design, trial, resource, field)
  const { machine } = trial.wound
  const diameter = machine.stator.wire.diameter
  return {
    design: trial.design,
    machine,
    widthRatio,
    turns: { from: design.stator.winding.turns, to: turns },
    wire: { from: before.stator.wire.diameter, to: diameter, sold: nearestSoldSize(diameter) },
  }
}

/** A design that competes as it is. */
export function unchangedDesign(design: Design): Fitted {
  const machine = resolveDesign(design)
  const { diameter } = machine.stator.wire
  const { turns } = design.stator.winding
  return {
    design,
    machine,
    widthRatio: 1,
    turns: { from: turns, to: turns },
    wire: { from: diameter, to: diameter, sold: nearestSoldSize(diameter) },
  }
}
