/** The winding as wound: wire, resistance, inductance, price and fit of every phase. */
import { neighbourClearance } from '../geometry/coil-outline.ts'
import type { Machine } from '../machine/machine.ts'
import { conductorResistance } from '../physics/electrics/resistance.ts'
import { handWoundFraction, windowFill } from '../physics/winding/fill.ts'
import { coilInductances } from './coil-inductance.ts'
import { type ConductorLayout, coilOutline } from './conductor-layout.ts'

export interface PhaseWire {
  /** Wire of all turns, strands and leads [m]; strands counted. */
  readonly length: number
  /** Copper of it [kg]. */
  readonly mass: number
}

export interface WindingFit {
  /** Turns that a patient hand lays into the bundle's section, and the bound of perfect hexagonal packing. */
  readonly handTurns: number
  readonly hexagonalTurns: number
  /** Bare copper over the bundle's section. */
  readonly copperFill: number
  /** Room between neighbouring coils [m]; below zero they overlap. Undefined for a serpentine. */
  readonly neighbourRoom: number | undefined
  /** Wire that the reels lack [m]; undefined where no reel is named. */
  readonly reelShort: number | undefined
}

export interface WoundMachine {
  /** Of each coil at 20 °C, without leads and joints [Ω]. */
  readonly coilResistance: readonly number[]
  /** Of the leads and joints of each phase at 20 °C [Ω]. */
  readonly leadResistance: number
  /** Coil × coil [H]. */
  readonly coilInductance: readonly (readonly number[])[]
  readonly phases: readonly PhaseWire[]
  readonly copperMass: number
  readonly wireLength: number
  readonly price: number | undefined
  /** Conducting section of one turn, strands together [m²]. */
  readonly conductorArea: number
  readonly fit: WindingFit
}

/** Spare wire to allow on a reel: common practice, no source. */
export const spareShare = 0.05

export function woundMachine(machine: Machine, layout: ConductorLayout): WoundMachine {
  const { wire, winding, leadLength, jointResistance } = machine.stator
  const strandArea = (Math.PI * wire.diameter ** 2) / 4
  const area = strandArea * wire.strands
  const resistance = (length: number) => conductorResistance({ length, area, resistivity: wire.resistivity })
  const coilLength = layout.coils.map(
    ({ shape }) => layout.shapes[shape]!.turns * layout.shapes[shape]!.turnLength,
  )
  const phases = Array.from({ length: layout.phaseCount }, (_, phase): PhaseWire => {
    const wound = layout.coils.reduce(
      (sum, coil, k) => (coil.phase === phase ? sum + coilLength[k]! : sum),
      0,
    )
    const length = (wound + leadLength) * wire.strands
    return { length, mass: length * strandArea * wire.density }
  })
  const wireLength = phases.reduce((sum, { length }) => sum + length, 0)
  const copperMass = phases.reduce((sum, { mass }) => sum + mass, 0)
  const { turns, bundle } = layout.shapes[0]!
  const window = {
    width: bundle.width,
    thickness: bundle.thickness,
    wire: {
      bareDiameter: wire.diameter,
      outerDiameter: wire.enamelledDiameter,
      strands: wire.strands,
    },
  }
  return {
    coilResistance: coilLength.map(resistance),
    leadResistance: jointResistance + (leadLength > 0 ? resistance(leadLength) : 0),
    coilInductance: coilInductances(machine, layout),
    phases,
    copperMass,
    wireLength,
    price: wire.pricePerKilogram === undefined ? undefined : wire.pricePerKilogram * copperMass,
    conductorArea: area,
    fit: {
      handTurns: windowFill({ ...window, packing: 'hand-wound', fraction: handWoundFraction.greatest }).turns,
      hexagonalTurns: windowFill({ ...window, packing: 'hexagonal' }).turns,
      copperFill: (turns * area) / (bundle.width * bundle.thickness),
      neighbourRoom:
        winding.kind === 'coils'
          ? neighbourClearance(coilOutline(machine, winding), winding.legWidth, winding.coilCount)
          : undefined,
      reelShort: wire.reelLength === undefined ? undefined : wireLength * (1 + spareShare) - wire.reelLength,
    },
  }
}
