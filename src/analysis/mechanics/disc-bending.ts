/** How far the discs that carry the magnets bend under their pull, which grows as they bend. */
import { creepShare } from '../../data/plastic-swelling.ts'
import { mildSteel } from '../../data/steel.ts'
import type { Machine } from '../../machine/machine.ts'
import { plateBending } from '../../physics/mechanics/plate-bending.ts'
import { pulledDeflection } from '../../physics/mechanics/pulled-plate.ts'
import type { RotorField } from '../air-gap-field.ts'
import { type DiscPull, discPull } from './disc-pull.ts'

/** One disc under one guess of its hub. */
export interface BentDisc {
  readonly hubRadius: number
  /** Without the growth of the pull, at the magnets' middle [m]. */
  readonly still: number
  /** At the magnets' middle and at the rim [m]; undefined where the discs snap together. */
  readonly deflection: number | undefined
  readonly rim: number | undefined
  /** What the growth of the pull makes of it. */
  readonly amplification: number | undefined
  /** 1 where they snap. */
  readonly closeness: number
  /** Greatest bending stress, the growth of the pull counted [Pa]. */
  readonly stress: number | undefined
}

export interface DiscBending {
  readonly pull: DiscPull
  readonly material: string
  readonly plastic: boolean
  readonly thickness: number
  /** Modulus that is counted on after years [Pa]. */
  readonly modulus: number
  /** Stress that the disc may bear [Pa]. */
  readonly strength: number | undefined
  readonly hubKnown: boolean
  /** With the hub as said, or as guessed, and with the smallest and the largest hub that is likely. */
  readonly disc: BentDisc
  readonly ends: readonly [BentDisc, BentDisc]
}

/** Hub radius over pitch radius where none is said: a guess and its range, no source. */
const hubShare = 0.35
const hubRange = [0.2, 0.55] as const

/** Of the disc itself. */
interface Plate {
  readonly material: string
  readonly plastic: boolean
  readonly thickness: number
  readonly modulus: number
  readonly poisson: number
  readonly strength: number | undefined
  readonly outer: number
  readonly least: number
}

/** The plate behind the magnets: steel, or the printed carrier; undefined where nothing is known of it. */
function plateOf({ rotor }: Machine): Plate | undefined {
  const { backIron, carrier, pitchRadius, magnet } = rotor
  const rim = pitchRadius + magnet.length / 2
  if (backIron !== undefined)
    return {
      material: backIron.steel,
      plastic: false,
      thickness: backIron.thickness,
      modulus: mildSteel.youngsModulus_GPa * 1e9,
      poisson: mildSteel.poisson,
      strength: mildSteel.yield_MPa * 1e6,
      outer: Math.max(backIron.outerRadius ?? rim, rim),
      least: backIron.innerRadius ?? 0,
    }
  if (carrier === undefined) return undefined
  return {
    material: carrier.material,
    plastic: true,
    thickness: carrier.thickness,
    modulus: carrier.modulus * creepShare.share_1,
    poisson: 0.35,
    strength: undefined,
    outer: rim,
    least: 0,
  }
}

function bent({ rotor }: Machine, plate: Plate, pull: DiscPull, hub: number): BentDisc {
  const { pitchRadius: R, magnet } = rotor
  const hubRadius = Math.max(hub, plate.least)
  // a hub that reaches under the magnets' ends leaves less of them to pull at the rest
  if (hubRadius >= 0.97 * plate.outer)
    return {
      hubRadius,
      still: 0,
      deflection: 0,
      rim: 0,
      amplification: 1,
      closeness: 0,
      stress: 0,
    }
  const [from, to] = [Math.max(hubRadius, R - magnet.length / 2), R + magnet.length / 2]
  const pressure = pull.pull / (Math.PI * (to ** 2 - (R - magnet.length / 2) ** 2))
  const state = plateBending({
    outer: plate.outer,
    inner: hubRadius,
    thickness: plate.thickness,
    modulus: plate.modulus,
    poisson: plate.poisson,
    outerEdge: 'free',
    innerEdge: 'clamped',
    bands: [{ from, to, pressure }],
  })
  const still = Math.abs(state.at(Math.max(R, hubRadius)).deflection)
  const yielding =
    still > 0
      ? pulledDeflection({
          pull: pull.pull,
          decay: pull.decay,
          stiffness: pull.pull / still,
          sides: rotor.arrangement === 'two-discs' ? 2 : 1,
        })
      : { deflection: 0, amplification: 1, closeness: 0 }
  const { amplification } = yielding
  return {
    hubRadius,
    still,
    deflection: yielding.deflection,
    rim: amplification === undefined ? undefined : amplification * state.greatestDeflection,
    amplification,
    closeness: yielding.closeness,
    stress: amplification === undefined ? undefined : amplification * state.greatestStress,
  }
}

/** By field, which any change of the rotor replaces. */
const kept = new WeakMap<RotorField, DiscBending | undefined>()

/** Undefined where nothing pulls at a disc, or nothing is known of what carries the magnets. */
export function discBending(machine: Machine, field: RotorField): DiscBending | undefined {
  if (kept.has(field)) return kept.get(field)
  const bending = bendingOf(machine, field)
  kept.set(field, bending)
  return bending
}

function bendingOf(machine: Machine, field: RotorField): DiscBending | undefined {
  const plate = plateOf(machine)
  const pull = discPull(machine, field)
  if (plate === undefined || pull === undefined) return undefined
  const { hubRadius, pitchRadius } = machine.rotor
  const disc = bent(machine, plate, pull, hubRadius ?? hubShare * pitchRadius)
  return {
    pull,
    material: plate.material,
    plastic: plate.plastic,
    thickness: plate.thickness,
    modulus: plate.modulus,
    strength: plate.strength,
    hubKnown: hubRadius !== undefined,
    disc,
    ends:
      hubRadius !== undefined
        ? [disc, disc]
        : [
            bent(machine, plate, pull, hubRange[0] * pitchRadius),
            bent(machine, plate, pull, hubRange[1] * pitchRadius),
          ],
  }
}
