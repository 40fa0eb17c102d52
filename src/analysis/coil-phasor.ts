/** The working volts of every coil as phasors, added up coil by coil to those of its phase. */
import { harmonicAmplitude, harmonicPhase, seriesScaled } from '../numerics/fourier.ts'
import type { Chain } from './compute.ts'
import { legCuts } from './leg-cut.ts'

export interface CoilPhasor {
  /** From 1. */
  readonly number: number
  readonly sense: 1 | -1
  /** Parallel branch of the phase, from 0. */
  readonly branch: number
  /** Peak of its part of the phase's volts, over the speed [V·s/rad]: branches share as their conductances. */
  readonly size: number
  /** Ahead of the first phase's resultant, sense included, −π…π [rad]. */
  readonly lead: number
  /** It takes away from its phase: more than a quarter of a period off the resultant. */
  readonly against: boolean
  /** Electrical angle at which it stands, as if wound forward, 0…2π [rad]. */
  readonly axis: number
  /** Electrical angles of its sides on the middle line of the magnets, 0…2π [rad]; a wave has many. */
  readonly sides: readonly number[]
}

export interface PhasePhasor {
  /** Peak of the resultant over the speed [V·s/rad], and how far it is ahead of the first phase's; 0 where nothing is left [rad]. */
  readonly size: number
  readonly lead: number
  /** Resultant over the sum of its coils' sizes: 1 where all are in step. */
  readonly inStep: number
  readonly coils: readonly CoilPhasor[]
}

export interface CoilPhasors {
  readonly phases: readonly PhasePhasor[]
}

const turn = 2 * Math.PI

/** Of the coils' sum, a resultant below this share has no direction worth naming. */
const leastInStep = 1e-6

/** `angle` in −π…π. */
const principal = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle))

/** `angle` in 0…2π; what rounding leaves below a whole turn counts as 0. */
function positive(angle: number): number {
  const rest = ((angle % turn) + turn) % turn
  return turn - rest < 1e-9 ? 0 : rest
}

export function coilPhasors({
  machine,
  layout,
  voltage,
}: Pick<Chain, 'machine' | 'layout' | 'voltage'>): CoilPhasors {
  const { order } = voltage
  const p = machine.rotor.polePairs
  const cuts = legCuts(machine, layout)
  const reference = harmonicPhase(voltage.phases[0]!.emf, order)
  return {
    phases: voltage.phases.map(({ emf, branches }, phase): PhasePhasor => {
      const conductance = branches.reduce((sum, { resistance }) => sum + 1 / resistance, 0)
      const groups = [
        ...new Set(layout.coils.filter((coil) => coil.phase === phase).map(({ group }) => group)),
      ]
      const coils = layout.coils.flatMap((coil, k): Omit<CoilPhasor, 'against'>[] => {
        if (coil.phase !== phase) return []
        const branch = groups.indexOf(coil.group)
        const share = 1 / branches[branch]!.resistance / conductance
        const own = seriesScaled(voltage.coils[k]!.emf, coil.sense)
        return [
          {
            number: coil.number,
            sense: coil.sense,
            branch,
            size: share * harmonicAmplitude(own, order),
            lead: principal(reference - harmonicPhase(own, order)),
            axis: positive(p * coil.angle),
            sides: cuts.filter(({ coil: of }) => of === coil.number).map(({ angle }) => positive(p * angle)),
          },
        ]
      })
      const size = harmonicAmplitude(emf, order)
      const sum = coils.reduce((total, one) => total + one.size, 0)
      const inStep = sum > 0 && size > leastInStep * sum ? size / sum : 0
      const lead = inStep > 0 ? principal(reference - harmonicPhase(emf, order)) : 0
      return {
        size: inStep > 0 ? size : 0,
        lead,
        inStep,
        coils: coils.map((one) => ({ ...one, against: inStep > 0 && Math.cos(one.lead - lead) < 0 })),
      }
    }),
  }
}
