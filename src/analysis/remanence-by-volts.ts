/** The remanence that volts read on the bench imply: a test coil, or the winding itself, as the measure of its magnets. */
import { type MeasuredPolarization, measuredPolarization } from '../machine/magnet-measurement.ts'
import type { LooseMagnet, VoltsReading } from '../machine/magnet-reading.ts'
import { nominal, spreadOf } from '../units/quantity.ts'
import { toSi, unit } from '../units/unit.ts'
import type { Chain } from './compute.ts'

export interface RemanenceByVolts {
  /** Places of the readings that count, from 0: those that say their kind and place and are not kept back. */
  readonly used: readonly number[]
  readonly measured: MeasuredPolarization
}

type Reading = Chain['machine']['design']['bench']['readings'][number]

/** Computed volts of the kind and place that a reading says [V]; undefined for what is not said or cannot be told. */
export function computedVolts(
  { voltage, machine }: Pick<Chain, 'voltage' | 'machine'>,
  { kind, place }: Reading,
  speed: number,
): number | undefined {
  if (kind !== 'rms' && kind !== 'peak') return undefined
  if (place === 'phase') return voltage.phases[0]![kind] * speed
  if (place !== 'line to line') return undefined
  const star = machine.stator.connection === 'star' && voltage.phases.length > 1
  return star ? voltage.lines[0]![kind] * speed : undefined
}

/**
 * Weighted least squares of the readings and of what was known of the magnets before. A reading's own spread and that of
 * its speed count, and the usual five per cent of coil and meter where they say nothing. The machine's gap is taken to be
 * as designed: half a millimetre more of it looks like weaker magnets.
 */
export function remanenceByVolts(chain: Chain): RemanenceByVolts | undefined {
  const { machine } = chain
  const { magnet } = machine.rotor
  const found = machine.design.bench.readings.flatMap((reading, index) => {
    if (reading.keptBack) return []
    const speed = toSi(nominal(reading.speed_rpm), unit('rpm'))
    const computed = computedVolts(chain, reading, speed)
    const voltage = nominal(reading.voltage_V)
    if (computed === undefined || !(computed > 0) || !(voltage > 0)) return []
    const spread = Math.hypot(
      spreadOf(reading.voltage_V) / voltage,
      spreadOf(reading.speed_rpm) / nominal(reading.speed_rpm),
    )
    const volts: VoltsReading = {
      kind: 'volts',
      voltage,
      computedVoltage: computed,
      computedRemanence: magnet.remanence,
      ...(spread > 0 ? { ratioSpread: spread } : {}),
    }
    return [{ index, volts }]
  })
  if (found.length === 0) return undefined
  const material = {
    recoilPermeability: magnet.recoilPermeability,
    temperatureCoefficient: magnet.temperatureCoefficient,
  }
  const loose: LooseMagnet = {
    ...material,
    shape: 'block',
    size: [magnet.length, magnet.width, magnet.thickness],
  }
  const measured = measuredPolarization({
    magnet: loose,
    ...(magnet.remanenceSpread > 0
      ? { prior: { value: magnet.remanence, spread: magnet.remanenceSpread } }
      : {}),
    readings: found.map(({ volts }) => volts),
  })
  return measured === undefined ? undefined : { used: found.map(({ index }) => index), measured }
}
