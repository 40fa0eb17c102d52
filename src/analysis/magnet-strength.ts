/** Magnets that weaken as they warm: the volts of a machine against those it has with its magnets as cold as the air. */
import type { Machine } from '../machine/machine.ts'
import { type FourierSeries, seriesScaled } from '../numerics/fourier.ts'
import { referenceTemperature } from './air-gap-field.ts'
import type { OpenCircuitVoltage } from './open-circuit-voltage.ts'

/** Volts over those of magnets as cold as the air, by the magnets' temperature [K]: remanence is linear in it. */
export function magnetStrength({
  rotor,
  site,
}: Pick<Machine, 'rotor' | 'site'>): (magnets: number) => number {
  const α = rotor.magnet.temperatureCoefficient
  const remanence = (T: number) => 1 + α * (T - referenceTemperature)
  const cold = remanence(site.ambient)
  return (magnets) => Math.max(remanence(magnets) / cold, 0)
}

/** The same by the copper's temperature, of a machine whose magnets take `share` of its rise over the air. */
export function strengthBesideCopper(
  machine: Pick<Machine, 'rotor' | 'site'>,
  share: number,
): (copperTemperature: number) => number {
  const strength = magnetStrength(machine)
  const { ambient } = machine.site
  return (T) => strength(ambient + share * (T - ambient))
}

/** Every EMF times a factor; resistance, inductance and what is counted from shapes stay. */
export function weakenedVoltage(voltage: OpenCircuitVoltage, factor: number): OpenCircuitVoltage {
  if (factor === 1) return voltage
  const weaker = <Whole extends { readonly emf: FourierSeries }>(whole: Whole): Whole => ({
    ...whole,
    emf: seriesScaled(whole.emf, factor),
  })
  return {
    ...voltage,
    coils: voltage.coils.map((coil) => ({ ...weaker(coil), fundamental: factor * coil.fundamental })),
    phases: voltage.phases.map((phase) => ({
      ...weaker(phase),
      rms: factor * phase.rms,
      peak: factor * phase.peak,
      fundamental: factor * phase.fundamental,
      branches: phase.branches.map(weaker),
    })),
    loops: voltage.loops.map(weaker),
    lines: voltage.lines.map((line) => ({
      ...weaker(line),
      rms: factor * line.rms,
      peak: factor * line.peak,
    })),
    greatestLinePeak: factor * voltage.greatestLinePeak,
  }
}

/** The volts beside copper of that temperature, the magnets as warm as it makes them. */
export const warmVoltage = (
  {
    machine,
    voltage,
    heat,
  }: {
    readonly machine: Pick<Machine, 'rotor' | 'site'>
    readonly voltage: OpenCircuitVoltage
    readonly heat: { readonly magnetShare: number }
  },
  copperTemperature: number,
): OpenCircuitVoltage =>
  weakenedVoltage(voltage, strengthBesideCopper(machine, heat.magnetShare)(copperTemperature))
