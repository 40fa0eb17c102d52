/** Concern: a reading of volts does not say of which kind, or between which points. */
import { cutInPhaseVoltage } from '../../physics/electrics/dc-voltage.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import type { ChainView } from './concern.ts'
import { type ConcernRule, severityFor } from './concern.ts'

export interface NamedVolts {
  readonly name: string
  readonly volts: number
}

/** The kind whose computed volts lie nearest to a reading, by ratio; undefined where none is above zero. */
export function nearestKind(reading: number, kinds: readonly NamedVolts[]): NamedVolts | undefined {
  const distance = ({ volts }: NamedVolts) =>
    volts > 0 && reading > 0 ? Math.abs(Math.log(reading / volts)) : Number.POSITIVE_INFINITY
  return kinds
    .filter((kind) => Number.isFinite(distance(kind)))
    .reduce<NamedVolts | undefined>(
      (best, kind) => (best === undefined || distance(kind) < distance(best) ? kind : best),
      undefined,
    )
}

/** What each kind of reading would show at a speed [rad/s]; the first phase and the strongest line. */
export function voltsByKind(
  { voltage, machine }: Pick<ChainView, 'voltage' | 'machine'>,
  speed: number,
): NamedVolts[] {
  const phase = voltage.phases[0]!
  const line = voltage.lines.reduce((most, each) => (each.peak > most.peak ? each : most), voltage.lines[0]!)
  const star = machine.stator.connection === 'star' && voltage.phases.length > 1
  return [
    { name: 'phase rms', volts: phase.rms * speed },
    { name: 'phase peak', volts: phase.peak * speed },
    ...(star
      ? [
          { name: 'line to line rms', volts: line.rms * speed },
          { name: 'line to line peak', volts: line.peak * speed },
        ]
      : []),
    {
      name: 'direct after the bridge',
      volts: Math.max(0, line.peak * speed - 2 * machine.diode.threshold),
    },
  ]
}

export const voltsKind: ConcernRule = {
  code: 'volts-kind',
  title: 'A reading does not say which volts',
  basis:
    'Every reading must say its kind (rms, peak, rectified mean, direct) and its place (phase, line to line, after the bridge). Blocks the outdoor class, a warning in the others: a design must not be tuned to volts of unknown kind.',
  judge: (chain) => {
    const { readings } = chain.machine.design.bench
    const unsaid = readings.flatMap((reading, k) =>
      reading.kind === 'unsaid' || reading.place === 'unsaid' ? [{ reading, k }] : [],
    )
    const first = unsaid[0]
    if (first === undefined) return undefined
    const rpm = nominal(first.reading.speed_rpm)
    const volts = nominal(first.reading.voltage_V)
    const kinds = voltsByKind(chain, (2 * Math.PI * rpm) / 60)
    const near = nearestKind(volts, kinds)
    const { load, diode, stator } = chain.machine
    const onset =
      load.kind === 'battery'
        ? ` Current begins at ${formatSi(cutInPhaseVoltage({ connection: stator.connection, voltage: load.voltage + 2 * diode.threshold }), 'V')} rms per phase of a sine.`
        : ''
    return {
      code: 'volts-kind',
      severity: severityFor(chain, ['outdoor']),
      path: `bench.readings[${first.k}].${first.reading.kind === 'unsaid' ? 'kind' : 'place'}`,
      what: `${unsaid.length === 1 ? 'A reading does' : `${unsaid.length} readings do`} not say which volts were read.`,
      why: 'Peak is 1.41 times the rms of a sine, line 1.73 times the phase of a star, the mean behind a three-phase bridge 1.35 times the line’s rms: any of these factors may hide here.',
      figures: `Read ${formatSi(volts, 'V')} at ${formatNumber(rpm)} rpm. By computation: ${kinds.map((kind) => `${kind.name} ${formatSi(kind.volts, 'V')}`).join(', ')}${
        near === undefined ? '' : `; nearest is ${near.name}`
      }.${onset}`,
      remedies: [
        'Say kind and place: what the meter’s switch stood on, and between which two wires.',
        'If in doubt, read again: alternating volts between two lines with nothing connected.',
        'Do not pick the kind that fits best: that is to assume what you wish to prove.',
      ],
    }
  },
}
