/** All that eats from the air between rotor and stator: as measured where it was measured, computed or guessed elsewhere. */

import { plastics } from '../../data/plastic.ts'
import { plasticSwellings, swellingSpread } from '../../data/plastic-swelling.ts'
import { resins } from '../../data/resin.ts'
import { mildSteel } from '../../data/steel.ts'
import type { Machine } from '../../machine/machine.ts'
import { type RunningClearance, runningClearance } from '../../physics/mechanics/gap-stack.ts'
import { thermalGrowth } from '../../physics/mechanics/thermal-expansion.ts'
import { nominal, type Quantity } from '../../units/quantity.ts'
import type { Chain } from '../compute.ts'
import { discBending } from './disc-bending.ts'
import { drawnGap } from './drawn-gap.ts'
import { type MechanicalHeat, mechanicalHeat } from './mechanical-heat.ts'

export type LossKnown = 'measured' | 'from the design' | 'computed' | 'guessed'

export interface ClearanceLoss {
  readonly name: string
  /** On average [m], and half of its band [m]. */
  readonly closing: number
  readonly halfWidth: number
  readonly known: LossKnown
  readonly how: string
  /** Field of the document that would tell it better; undefined where nothing would. */
  readonly enter?: string
}

export interface ClearanceSide {
  readonly side: 'inner' | 'outer'
  /** Air by the drawing; below zero where parts are in each other's way [m]. */
  readonly drawn: number
  readonly losses: readonly ClearanceLoss[]
  readonly clearance: RunningClearance
}

/** Where nobody has measured [m]: common practice, no source. */
const usual = { print: 0.3e-3, bearing: 0.1e-3, warp: 0.3e-3 } as const

/** Half-width of a computed growth by heat, as a share: moduli of growth of prints and resins, and the warmth itself. */
const growthSpread = 0.5

/** Seasons about the temperature at which it was built [K]: common practice, no source. */
const season = 25

const builtAt = 293.15

const growthOf = (name: string): number | undefined =>
  [...plastics, ...resins].find((row) => row.name === name)?.expansion_1_per_K

const swellingOf = (name: string): number =>
  (plasticSwellings.find((row) => row.name === name)?.growth_percent ?? 0) / 100

const measuredLoss = (
  name: string,
  quantity: Quantity | undefined,
  guess: number,
  enter: string,
): ClearanceLoss =>
  quantity === undefined
    ? { name, closing: 0, halfWidth: guess, known: 'guessed', how: 'common practice, no source', enter }
    : { name, closing: 0, halfWidth: nominal(quantity) / 1000, known: 'measured', how: 'entered' }

function bendingLoss({ machine, field }: ClearanceChain, shut: number): ClearanceLoss[] {
  const name = 'bending of a disc under the magnets’ pull'
  const entered = machine.design.bench.clearanceLosses.deflection_mm
  if (entered !== undefined)
    return [{ name, closing: nominal(entered) / 1000, halfWidth: 0, known: 'measured', how: 'entered' }]
  const bending = discBending(machine, field)
  if (bending === undefined) return []
  const [least, most] = [...bending.ends].map(({ rim }) => rim ?? shut).sort((a, b) => a - b) as [
    number,
    number,
  ]
  const closing = bending.disc.rim ?? shut
  return [
    {
      name,
      closing,
      halfWidth: Math.max(closing - least, most - closing),
      known: 'computed',
      how: bending.hubKnown
        ? `plate of ${bending.material} clamped at its hub`
        : `plate of ${bending.material}, its hub guessed: enter rotor.hubRadius_mm`,
      ...(bending.hubKnown ? {} : { enter: 'rotor.hubRadius_mm' }),
    },
  ]
}

/** Growth of a body by heat and damp, half of it to either side, or all of it outward on a drum. */
function growthLosses(machine: Machine, heat: MechanicalHeat, side: ClearanceSide['side']): ClearanceLoss[] {
  const { rotor, stator } = machine
  const { winding, support } = stator
  const α = growthOf(support.name)
  const losses: ClearanceLoss[] = []
  const add = (name: string, closing: number, halfWidth: number, how: string) => {
    if (halfWidth > 1e-6 || Math.abs(closing) > 1e-6)
      losses.push({ name, closing, halfWidth, known: 'computed', how })
  }
  const warm = heat.winding - builtAt
  if (rotor.arrangement !== 'drum') {
    const layers = winding.kind === 'serpentine' ? (winding.layers - 1) * winding.layerPitch : 0
    const thickness = winding.bundleDepth + layers
    if (α !== undefined) {
      const growth = thermalGrowth({ length: thickness / 2, expansion: α, temperatureDifference: warm })
      add(
        'winding grown warm',
        growth,
        growthSpread * Math.abs(growth),
        `${support.name}, half to either side`,
      )
      const swell = (swellingOf(support.name) * thickness) / 2
      add(
        'winding swollen by damp',
        swell,
        swellingSpread.spread_1 * swell,
        `${support.name}, half to either side`,
      )
    }
    return losses
  }
  const outside = rotor.windingSide === 'outside'
  const radius = rotor.pitchRadius
  const growth = (expansion: number, temperatureDifference: number) =>
    thermalGrowth({ length: radius, expansion, temperatureDifference })
  // a drum's stator is a ring about it: warm it grows outward, which opens one side and closes the other
  if (α !== undefined) {
    const closing = Math.max(0, ((side === 'inner') === outside ? -1 : 1) * growth(α, warm))
    add(
      'stator grown warm',
      closing,
      growthSpread * closing,
      `ring of ${support.name}; opening is not counted on`,
    )
  }
  if (side === 'outer' || α === undefined) return losses
  const material = rotor.backIron?.steel ?? rotor.carrier?.material ?? rotor.retention.material
  const own = rotor.backIron === undefined ? growthOf(material) : mildSteel.expansion_1_per_K
  if (own === undefined) return losses
  const rings = `drum of ${material}, ring of ${support.name}`
  const away = season + Math.abs(machine.site.ambient - builtAt) + Math.abs(heat.rotor - machine.site.ambient)
  add('drum and stator growing unlike through the seasons', 0, Math.abs(growth(own - α, away)), rings)
  const swell = (outside ? 1 : -1) * (swellingOf(material) - swellingOf(support.name)) * radius
  const closing = Math.max(0, swell)
  add('drum swollen by damp more than the stator', closing, swellingSpread.spread_1 * closing, rings)
  return losses
}

export type ClearanceChain = Pick<Chain, 'machine' | 'field' | 'rows' | 'runaway'>

/** Between winding and magnets, and between winding and what lies beyond it. */
export function clearances(
  chain: ClearanceChain,
  heat: MechanicalHeat = mechanicalHeat(chain),
): ClearanceSide[] {
  const { machine } = chain
  const entered = machine.design.bench.clearanceLosses
  const gap = drawnGap(machine)
  const play = machine.shaft.bearings?.axialPlay
  const bearing: ClearanceLoss =
    entered.bearing_mm === undefined && play !== undefined && machine.rotor.arrangement !== 'drum'
      ? {
          name: 'play of the bearings',
          closing: 0,
          halfWidth: play,
          known: 'measured',
          how: 'shaft.bearings.axialPlay_mm',
        }
      : measuredLoss(
          'play of the bearings',
          entered.bearing_mm,
          usual.bearing,
          'bench.clearanceLosses.bearing_mm',
        )
  const stack = (side: ClearanceSide['side'], drawn: number): ClearanceSide => {
    const shut = Math.min(drawn, 0)
    const losses: ClearanceLoss[] = [
      measuredLoss(
        'print or casting tolerance',
        entered.print_mm,
        usual.print,
        'bench.clearanceLosses.print_mm',
      ),
      bearing,
      measuredLoss('warp and runout', entered.warp_mm, usual.warp, 'bench.clearanceLosses.warp_mm'),
      // the far side of a single disc is a plate that stands on its own
      ...(side === 'outer' && machine.rotor.arrangement !== 'two-discs'
        ? []
        : bendingLoss(chain, Math.max(drawn, 0))),
      ...growthLosses(machine, heat, side),
    ]
    return {
      side,
      drawn,
      losses,
      clearance: runningClearance({
        nominal: Math.max(drawn, 0),
        contributions: [{ closing: -shut }, ...losses],
      }),
    }
  }
  return [stack('inner', gap.inner), ...(gap.outer === undefined ? [] : [stack('outer', gap.outer)])]
}

/** The side with less air at the worst. */
export const tightestSide = (sides: readonly ClearanceSide[]): ClearanceSide =>
  sides.reduce((least, side) => (side.clearance.worst < least.clearance.worst ? side : least))
