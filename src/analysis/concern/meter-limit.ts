/** Concern: the meter does not read alternating volts of so low a frequency. */
import { meterOf } from '../../machine/meter.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import type { ChainView, Concern, ConcernRule } from './concern.ts'

/** Electrical frequency [Hz]: f = p n/60. */
export const electricalFrequency = (at: { readonly polePairs: number; readonly rpm: number }): number =>
  (at.polePairs * at.rpm) / 60

export const belowMeter = (frequency: number, lowest: number): boolean => frequency < lowest

/** Resistance below which two leads and their contacts spoil a reading [Ω]: common practice, no source. */
export const fourWireBelow = 2

/** Resistances that two leads and their contacts have spoilt, by number from 1. */
const twoWireReadings = ({ machine }: Pick<ChainView, 'machine'>): number[] =>
  machine.design.bench.resistances.flatMap(({ method, resistance_ohm }, k) =>
    method === 'two wires' && nominal(resistance_ohm) < fourWireBelow ? [k + 1] : [],
  )

function twoWireConcern(chain: Pick<ChainView, 'machine'>): Concern | undefined {
  const spoilt = twoWireReadings(chain)
  if (spoilt.length === 0) return undefined
  const { bench } = chain.machine.design
  const { leads } = meterOf(bench)
  const read = nominal(bench.resistances[spoilt[0]! - 1]!.resistance_ohm)
  return {
    code: 'meter-limit',
    severity: 'warning',
    path: `bench.resistances[${spoilt[0]! - 1}].method`,
    what: 'A small resistance was read with two wires.',
    why: 'The meter’s own leads and two contacts lie in series with the winding; below a few ohms they are a good part of what it shows.',
    figures: `Reading ${spoilt.join(', ')} of ${bench.resistances.length} under ${fourWireBelow} Ω; of ${formatSi(read, 'ohm')} the leads take about ${formatSi(leads, 'mohm')}, ${formatSi(leads / read, 'percent', 2)}.`,
    remedies: [
      'Send a known current through the phase, an amp or less, and read millivolts at the winding’s own ends.',
      'Or hold the probes together, note what they show, and take it off; that leaves the contacts.',
    ],
  }
}

export const meterLimit: ConcernRule = {
  code: 'meter-limit',
  title: 'The meter is out of its range',
  basis:
    'Pole pairs times speed against the lowest frequency of the meter (45 Hz unless said: common practice, no source), for readings of alternating volts: a warning. Without readings a note, where current begins below that frequency. A resistance under 2 Ω read by two wires (common practice, no source): a warning.',
  measure: ({ machine, generator }) => {
    const { bench } = machine.design
    const { lowest } = meterOf(bench)
    const p = machine.rotor.polePairs
    const speeds = bench.readings
      .filter(({ kind, place }) => (kind === 'rms' || kind === 'unsaid') && place !== 'after bridge')
      .map(({ speed_rpm }) => nominal(speed_rpm))
    const rpm = bench.readings.length > 0 ? Math.min(...speeds) : (generator.cutIn * 60) / (2 * Math.PI)
    return Number.isFinite(rpm)
      ? {
          name: 'frequency read',
          value: electricalFrequency({ polePairs: p, rpm }),
          limit: lowest,
          unit: 'Hz',
          sound: 'above',
        }
      : undefined
  },
  answeredBy: 'The same volts read by the meter and by an oscilloscope, at the lowest speed read.',
  judge: (chain) => {
    const { machine, generator, voltage } = chain
    const { bench } = machine.design
    const { lowest } = meterOf(bench)
    const p = machine.rotor.polePairs
    const slow = bench.readings.flatMap((reading, k) => {
      const alternating = reading.kind === 'rms' || reading.kind === 'unsaid'
      const rpm = nominal(reading.speed_rpm)
      const frequency = electricalFrequency({ polePairs: p, rpm })
      return alternating && reading.place !== 'after bridge' && belowMeter(frequency, lowest)
        ? [{ k, rpm, frequency }]
        : []
    })
    const first = slow[0]
    const cutIn = (generator.cutIn * 60) / (2 * Math.PI)
    const early =
      bench.readings.length === 0 &&
      Number.isFinite(cutIn) &&
      belowMeter(electricalFrequency({ polePairs: p, rpm: cutIn }), lowest)
    const spoilt = twoWireConcern(chain)
    if (first === undefined && (!early || spoilt !== undefined)) return spoilt
    const rpm = first?.rpm ?? cutIn
    const least = voltage.phases.reduce((low, { resistance }) => Math.min(low, resistance), Number.MAX_VALUE)
    return {
      code: 'meter-limit',
      severity: first === undefined ? 'note' : 'warning',
      path:
        first === undefined
          ? `bench.${bench.meter?.lowestFrequency_Hz === undefined ? 'meterLowestFrequency_Hz' : 'meter.lowestFrequency_Hz'}`
          : `bench.readings[${first.k}]`,
      what:
        first === undefined
          ? 'At the speed where current begins, your meter does not yet read alternating volts rightly.'
          : 'The meter was below the frequency at which it still reads rightly.',
      why: 'Meters for alternating volts are made for the mains; below their range the figure may be steady and wrong. One that only averages is wrong on any wave that is not a sine.',
      figures: `${machine.rotor.poleCount} poles at ${formatNumber(rpm)} rpm make ${formatSi(electricalFrequency({ polePairs: p, rpm }), 'Hz')}; the meter begins at ${formatSi(lowest, 'Hz')}, which is ${formatNumber((60 * lowest) / p)} rpm.${
        least < fourWireBelow
          ? ` A phase has ${formatSi(least, 'ohm')}: two leads alone do not measure that.`
          : ''
      }${spoilt === undefined ? '' : ` ${spoilt.figures}`}`,
      remedies: [
        `Read at ${formatNumber((60 * lowest) / p, 2)} rpm or more: open-circuit volts go in proportion to speed.`,
        'Or read direct volts behind the bridge with a small capacitor, and add the two diodes.',
        'Or use an oscilloscope.',
        ...(least < fourWireBelow
          ? ['For resistance send a known current through the phase and read millivolts at its ends.']
          : []),
      ],
    }
  },
}
