/** The volts that the turning magnets raise in every coil, phase and line, per unit of speed. */
import type { Machine } from '../machine/machine.ts'
import {
  type FourierSeries,
  harmonicAmplitude,
  harmonicPhase,
  seriesDelayed,
  seriesDerivative,
  seriesPeak,
  seriesRms,
  seriesScaled,
  seriesSum,
} from '../numerics/fourier.ts'
import { deltaCirculation } from '../physics/winding/circulation.ts'
import { connectPhases } from '../physics/winding/connection.ts'
import type { RotorField } from './air-gap-field.ts'
import type { Coil, ConductorLayout } from './conductor-layout.ts'
import { type Linkage, rotorLinkage } from './flux-linkage.ts'
import { tiltedLinkages } from './tilted-linkage.ts'
import type { LoopVoltage } from './turn-loop.ts'
import type { WoundMachine } from './winding.ts'
import { workingShares } from './winding-defect.ts'

export interface CoilVoltage {
  readonly coil: Coil
  /** EMF over the shaft's angular speed, as wound, of the turns in the circuit [V·s/rad]; its period is 1/base of a turn. */
  readonly emf: FourierSeries
  /** Peak of the fundamental [V·s/rad] and its electrical phase against the first coil, sense included [rad]. */
  readonly fundamental: number
  readonly phaseAngle: number
}

export interface PhaseVoltage {
  /** EMF over the shaft's angular speed [V·s/rad]. */
  readonly emf: FourierSeries
  readonly rms: number
  readonly peak: number
  readonly fundamental: number
  /** Electrical angle by which the fundamental lags the first phase's [rad]. */
  readonly lag: number
  /** At 20 °C, leads and joints included [Ω]. */
  readonly resistance: number
  /** Self-inductance of the phase [H]. */
  readonly inductance: number
  /** Least over the branches: 1 only when coils in series are in step, so that three give three times. */
  readonly inStep: number
  /** Parallel branches, one where there are none: EMF over speed [V·s/rad] and resistance at 20 °C [Ω]. */
  readonly branches: readonly { readonly emf: FourierSeries; readonly resistance: number }[]
  /** Greatest difference between parallel branches' fundamentals over their mean; 0 without branches. */
  readonly branchMismatch: number
}

export interface OpenCircuitVoltage {
  /** Periods of the series in one turn of the shaft. */
  readonly base: number
  /** Order of the working harmonic in the series: 1 where poles alternate, p where the period is a whole turn. */
  readonly order: number
  readonly linkages: readonly Linkage[]
  readonly coils: readonly CoilVoltage[]
  readonly phases: readonly PhaseVoltage[]
  /** Turns closed on themselves; none in a sound machine. */
  readonly loops: readonly LoopVoltage[]
  /** Phase × phase [H]. */
  readonly inductance: readonly (readonly number[])[]
  /** Between the lines (star, closed delta), else across the phases [V·s/rad]. */
  readonly lines: readonly { readonly emf: FourierSeries; readonly rms: number; readonly peak: number }[]
  /** Largest of the lines' peaks: what opens the first diode [V·s/rad]. */
  readonly greatestLinePeak: number
  /** Sum round the open corner of a delta, rms, over the phases' mean rms. */
  readonly openCorner: number
}

/** `angle` in −π…π. */
const principal = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle))

const ratio = (part: number, whole: number): number => (whole > 0 ? part / whole : 0)

/** Orders above the last that reaches this share of the strongest say nothing that a circuit could tell. */
const weakestShare = 5e-4

function withoutWeakEnd(series: FourierSeries): FourierSeries {
  const amplitudes = Array.from(series.cos, (_, h) => harmonicAmplitude(series, h))
  const least = weakestShare * Math.max(...amplitudes)
  let last = amplitudes.length - 1
  while (last > 1 && amplitudes[last]! < least) last--
  return { cos: series.cos.slice(0, last + 1), sin: series.sin.slice(0, last + 1) }
}

/** The branches of every phase, each a string of coils. */
const wiring = ({ coils, phaseCount, groups }: ConductorLayout) =>
  Array.from({ length: phaseCount }, (_, phase) => ({
    branches: Array.from({ length: groups }, (_, group) =>
      coils
        .filter((coil) => coil.phase === phase && coil.group === group)
        .map(({ number, sense }) => ({ coil: number - 1, sense })),
    ).filter((branch) => branch.length > 0),
  }))

/**
 * What can be measured between the lines, per unit of speed. A closed delta shows its phases less what the current
 * round the loop takes; it is taken at the speed where its phases alone would reach the load's volts, and hardly
 * depends on it.
 */
export function openLines(
  { stator, load, diode }: Machine,
  phases: readonly PhaseVoltage[],
  inductance: readonly (readonly number[])[],
  base: number,
): readonly FourierSeries[] {
  const emf = phases.map((phase) => phase.emf)
  if (stator.connection === 'star' && phases.length > 1)
    return emf.map((series, k) => seriesSum([series, seriesScaled(emf[(k + 1) % emf.length]!, -1)]))
  const peak = Math.max(...phases.map((phase) => phase.peak))
  if (stator.connection !== 'delta' || phases.length !== 3 || !(peak > 0)) return emf
  const speed = ((load.kind === 'battery' ? load.voltage : 1) + 2 * diode.threshold) / peak
  return deltaCirculation({
    emf: emf.map((series) => seriesScaled(series, speed)),
    resistance: phases.map((phase) => phase.resistance),
    inductance,
    angularFrequency: base * speed,
  }).terminal.map((series) => seriesScaled(series, 1 / speed))
}

/** `known` linkages, by shape, are taken as they are. */
export function openCircuitVoltage(
  machine: Machine,
  field: RotorField,
  layout: ConductorLayout,
  wound: WoundMachine,
  known: readonly (Linkage | undefined)[] = [],
): OpenCircuitVoltage {
  const linkages = layout.shapes.map((shape, k) => known[k] ?? rotorLinkage(machine, field, shape))
  const { base } = linkages[0]!
  const order = machine.rotor.polePairs / base
  // e = −dψ/dt, and the series' angle runs base times as fast as the shaft
  const emfOf = (flux: FourierSeries, turns: number) =>
    withoutWeakEnd(seriesScaled(seriesDerivative(flux), -base * turns))
  const tilted = tiltedLinkages(machine, field, layout)
  const perShape = tilted ? [] : layout.shapes.map(({ turns }, k) => emfOf(linkages[k]!.flux, turns))
  const whole = layout.coils.map(({ shape, angle }, k) =>
    tilted
      ? emfOf(tilted[k]!.flux, layout.shapes[shape]!.turns)
      : seriesDelayed(perShape[shape]!, base * angle),
  )
  const working = workingShares(
    layout.coils.map((_, k) => wound.loops.find(({ coil }) => coil === k)?.share ?? 0),
  )
  const emf = wound.loops.length === 0 ? whole : whole.map((series, k) => seriesScaled(series, working[k]!))
  const joined = connectPhases(
    { emf, resistance: wound.coilResistance, inductance: wound.coilInductance },
    wiring(layout),
  )
  const phaseOfCoil = layout.coils.map(({ sense }, k) => harmonicPhase(seriesScaled(emf[k]!, sense), order))
  const phaseOfFirst = harmonicPhase(joined.emf[0]!, order)
  const phases = joined.emf.map((series, k): PhaseVoltage => {
    const branches = joined.branches[k]!
    const fundamental = harmonicAmplitude(series, order)
    return {
      emf: series,
      rms: seriesRms(series),
      peak: seriesPeak(series),
      fundamental,
      lag: principal(harmonicPhase(series, order) - phaseOfFirst),
      resistance: joined.resistance[k]! + wound.phaseLeadResistance[k]!,
      inductance: joined.inductance[k]![k]!,
      branches: branches.map(({ emf: own, resistance }) => ({ emf: own, resistance })),
      inStep: Math.min(...branches.map(({ inStepRatio }) => inStepRatio[order]!)),
      branchMismatch: Math.max(
        ...branches.map((branch) =>
          ratio(harmonicAmplitude(seriesSum([branch.emf, seriesScaled(series, -1)]), order), fundamental),
        ),
      ),
    }
  })
  const lineSeries = openLines(machine, phases, joined.inductance, base)
  const lines = lineSeries.map((series) => ({
    emf: series,
    rms: seriesRms(series),
    peak: seriesPeak(series),
  }))
  const mean = phases.reduce((sum, { rms }) => sum + rms, 0) / phases.length
  const parts = layout.coils.map(({ phase, group, sense }) => {
    // empty groups have no branch
    const before = new Set(
      layout.coils
        .filter((other) => other.phase === phase && other.group < group)
        .map((other) => other.group),
    )
    return sense * joined.branches[phase]![before.size]!.share
  })
  const loops = wound.loops.map(({ coil, share, resistance, inductance, mutual }): LoopVoltage => {
    const { number, phase } = layout.coils[coil]!
    return {
      coil: number,
      phase,
      share,
      emf: seriesScaled(whole[coil]!, share),
      resistance,
      inductance,
      coupling: phases.map((_, k) =>
        layout.coils.reduce((sum, own, c) => (own.phase === k ? sum + parts[c]! * mutual[c]! : sum), 0),
      ),
    }
  })
  return {
    base,
    order,
    linkages,
    coils: layout.coils.map((coil, k) => ({
      coil,
      emf: emf[k]!,
      fundamental: harmonicAmplitude(emf[k]!, order),
      phaseAngle: principal(phaseOfCoil[k]! - phaseOfCoil[0]!),
    })),
    phases,
    loops,
    inductance: joined.inductance,
    lines,
    greatestLinePeak: Math.max(...lines.map(({ peak }) => peak)),
    openCorner: ratio(seriesRms(seriesSum(joined.emf)), mean),
  }
}
