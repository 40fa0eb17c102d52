/** What meters show of a machine turned by hand with its own load connected. */
import type { Meter } from '../machine/meter.ts'
import { fourierSeries } from '../numerics/fourier.ts'
import { couplingCorner, meterResponse, throughMeterInput } from '../physics/electrics/meter.ts'
import { displayBound, displayStep } from '../physics/electrics/meter-display.ts'
import { requirePositive } from '../refusal/require.ts'
import type { Chain } from './compute.ts'
import { loadPoint } from './load-point.ts'

export interface LoadedFigure {
  readonly words: string
  readonly unit: 'V' | 'A'
  /** As the display rounds it, and how far it may be off. */
  readonly shown: number
  readonly bound: number
  /** Of the waveform: rms for alternating, mean for direct. */
  readonly true: number
}

export interface LoadedReading {
  readonly figures: readonly LoadedFigure[]
  /** Mean of volts times amps at the load [W], and the product of what the two direct meters show [W]. */
  readonly power: number
  readonly shownPower: number
  /** Amps with the meter's shunt in the way, over amps without: 1 for a clamp. */
  readonly burden: number
}

const samplesPerPeriod = 180
/** [K] */
const cold = 293.15

/** The machine with an ammeter in the direct circuit. */
function withShunt(machine: Chain['machine'], shunt: number): Chain['machine'] {
  const { load } = machine
  return load.kind === 'battery' || load.kind === 'resistor'
    ? { ...machine, load: { ...load, resistance: load.resistance + shunt } }
    : machine
}

export function loadedReading(
  { machine, voltage }: Pick<Chain, 'machine' | 'voltage'>,
  { speed, meter }: { readonly speed: number; readonly meter: Meter },
): LoadedReading {
  requirePositive('speed', speed, 'rad/s')
  const request = { speed, copperTemperature: cold, samples: samplesPerPeriod * voltage.order }
  const free = loadPoint(machine, voltage, request)
  const shunted = withShunt(machine, meter.shunt)
  const added = shunted === machine ? 0 : meter.shunt
  const point = added > 0 ? loadPoint(shunted, voltage, request) : free
  const waves = free.waveforms!
  const frequency = (voltage.base * speed) / (2 * Math.PI)
  const figure = (
    words: string,
    unit: 'V' | 'A',
    value: number,
    truth: number,
    sheet: Meter['direct'],
  ): LoadedFigure => {
    const step = displayStep({ value, counts: meter.counts, finest: sheet.finest })
    return {
      words,
      unit,
      shown: Math.round(value / step) * step,
      bound: displayBound({ value, share: sheet.share, digits: sheet.digits, step }),
      true: truth,
    }
  }
  const alternating = (
    words: string,
    unit: 'V' | 'A',
    samples: Float64Array,
    sheet: Meter['direct'],
  ): LoadedFigure => {
    const series = fourierSeries(samples, Math.floor((samples.length - 1) / 4))
    const behind = throughMeterInput({
      series,
      frequency,
      // half of what the sheet allows at the end of the band is lost there
      corner:
        meter.coupled && meter.lowest > 0
          ? couplingCorner({ lowest: meter.lowest, loss: sheet.share / 2 })
          : undefined,
    })
    return figure(
      words,
      unit,
      meterResponse({ response: meter.response, series: behind }),
      meterResponse({ response: 'true rms', series }),
      sheet,
    )
  }
  // the load's own volts: a shunt's drop is not a part of them
  const volts = figure(
    'volts of the load, direct',
    'V',
    point.loadVoltage - point.dcCurrent * added,
    free.loadVoltage,
    meter.direct,
  )
  const amps = figure('amps into the load, direct', 'A', point.dcCurrent, free.dcCurrent, meter.amps)
  return {
    figures: [
      alternating(
        'volts between the first two terminals, alternating',
        'V',
        waves.lineVoltages[0]!,
        meter.alternating,
      ),
      alternating('amps of the first phase, alternating', 'A', waves.phaseCurrent[0]!, meter.amps),
      volts,
      amps,
    ],
    power: free.power.load + free.power.batteryResistance,
    shownPower: volts.shown * amps.shown,
    burden: free.dcCurrent > 0 ? point.dcCurrent / free.dcCurrent : 1,
  }
}
