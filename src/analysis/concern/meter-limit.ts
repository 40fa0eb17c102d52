/** Concern: the meter does not read alternating volts of so low a frequency. */
import { meterOf } from '../../machine/meter.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import type { ConcernRule } from './concern.ts'

/** Electrical frequency [Hz]: f = p n/60. */
export const electricalFrequency = (at: { readonly polePairs: number; readonly rpm: number }): number =>
  (at.polePairs * at.rpm) / 60

export const belowMeter = (frequency: number, lowest: number): boolean => frequency < lowest

/** Resistance below which two leads and their contacts spoil a reading [Ω]: common practice, no source. */
export const fourWireBelow = 2

export const meterLimit: ConcernRule = {
  code: 'meter-limit',
  title: 'The meter is out of its range of frequency',
  basis:
    'Pole pairs times speed against the lowest frequency of the meter (45 Hz unless said: common practice, no source), for readings of alternating volts: a warning. Without readings a note, where current begins below that frequency.',
  judge: ({ machine, generator, voltage }) => {
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
    if (first === undefined && !early) return undefined
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
      }`,
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
