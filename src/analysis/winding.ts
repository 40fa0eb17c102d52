/** The winding as wound: wire, resistance, inductance, price and fit of every phase. */
import type { Machine } from '../machine/machine.ts'
import { conductorResistance } from '../physics/electrics/resistance.ts'
import { bundleTurns } from './bundle-fit.ts'
import { coilInductances } from './coil-inductance.ts'
import { type ConductorLayout, neighbourRoom } from './conductor-layout.ts'
import { loopShares, strandFactors, type TurnLoop, turnLoops, workingShares } from './winding-defect.ts'

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
  /** Room between neighbouring coils, or between the waves of two phases [m]; below zero they overlap. */
  readonly neighbourRoom: number | undefined
  /** Wire that the reels lack [m]; undefined where no reel is named. */
  readonly reelShort: number | undefined
}

/** What is left on the reels after winding, without spare: below zero where they run out. */
export interface ReelRest {
  readonly length: number
  /** With its enamel [kg]. */
  readonly mass: number
  /** Of what was on them. */
  readonly share: number
}

export interface WoundMachine {
  /** Of each coil's working turns at 20 °C, without leads and joints [Ω]. */
  readonly coilResistance: readonly number[]
  /** Of the leads and joints of a phase at 20 °C, no strand broken [Ω]. */
  readonly leadResistance: number
  /** The same of each phase as it is. */
  readonly phaseLeadResistance: readonly number[]
  /** Turns closed on themselves; none in a sound machine. */
  readonly loops: readonly TurnLoop[]
  /** Coil × coil [H]. */
  readonly coilInductance: readonly (readonly number[])[]
  readonly phases: readonly PhaseWire[]
  readonly copperMass: number
  readonly wireLength: number
  readonly price: number | undefined
  /** Conducting section of one turn, strands together [m²]. */
  readonly conductorArea: number
  readonly fit: WindingFit
  /** Undefined where no reel is named. */
  readonly reelRest: ReelRest | undefined
}

/** Spare wire to allow on a reel: common practice, no source. */
export const spareShare = 0.05

export function woundMachine(machine: Machine, layout: ConductorLayout): WoundMachine {
  const { wire, leadLength, jointResistance } = machine.stator
  const strandArea = wire.section.area
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
  const fitting = bundleTurns(wire, bundle)
  const { reelLength } = wire
  const left = reelLength === undefined ? undefined : reelLength - wireLength
  const leads = leadLength > 0 ? resistance(leadLength) : 0
  const strandFactor = strandFactors(machine, layout.phaseCount)
  const loopShare = loopShares(machine, layout)
  const working = workingShares(loopShare)
  const whole = {
    resistance: coilLength.map((length, k) => resistance(length) * strandFactor[layout.coils[k]!.phase]!),
    inductance: coilInductances(machine, layout),
  }
  return {
    coilResistance: whole.resistance.map((R, k) => R * working[k]!),
    leadResistance: jointResistance + leads,
    phaseLeadResistance: strandFactor.map((factor) => jointResistance + leads * factor),
    loops: turnLoops(layout, whole, loopShare),
    coilInductance: whole.inductance.map((row, i) => row.map((L, k) => L * working[i]! * working[k]!)),
    phases,
    copperMass,
    wireLength,
    price: wire.pricePerKilogram === undefined ? undefined : wire.pricePerKilogram * copperMass,
    conductorArea: area,
    fit: {
      handTurns: fitting.hand,
      hexagonalTurns: fitting.best,
      copperFill: (turns * area) / (bundle.width * bundle.thickness),
      neighbourRoom: neighbourRoom(machine),
      reelShort: reelLength === undefined ? undefined : wireLength * (1 + spareShare) - reelLength,
    },
    reelRest:
      left === undefined || reelLength === undefined
        ? undefined
        : { length: left, mass: left * wire.massPerLength, share: left / reelLength },
  }
}
