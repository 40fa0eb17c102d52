/** What of the tracings laid over goes into each picture. */
import { type TracedCurve, tracingLabel, tracingLooks } from '../../src/output/chart/tracing.ts'
import type { TracedWave } from '../../src/output/chart/waveform.ts'
import type { DrawnTracing } from '../job/tracing.ts'
import { laidOver } from '../store/tracing.ts'

const kilowattHour = 3.6e6

const drawn = () =>
  laidOver.value.flatMap(({ tracing, look, answer }) =>
    answer.kind === 'drawn' ? [{ ...tracingLooks[look]!, label: tracingLabel(tracing.letter), answer }] : [],
  )

const curves = (of: (answer: DrawnTracing) => Pick<TracedCurve, 'x' | 'y'>): readonly TracedCurve[] =>
  drawn().map(({ answer, ...look }) => ({ ...look, ...of(answer) }))

/** Useful power by wind. */
export const tracedPower = () => curves(({ wind, useful }) => ({ x: wind, y: useful }))

/** Useful energy of a year by wind [kWh]. */
export const tracedEnergy = () =>
  curves(({ energy: { wind, parts } }) => ({
    x: wind,
    y: parts.useful.map((joule) => joule / kilowattHour),
  }))

/** The hottest spot of the winding by wind. */
export const tracedTemperature = () =>
  curves(({ temperature: { wind, lines } }) => ({ x: wind, y: lines[0]?.values ?? [] }))

/** The waves in that wind; one that was asked about another wind, or stands still in this one, is left out. */
export const tracedWaves = (wind: number): readonly TracedWave[] =>
  drawn().flatMap(({ answer: { wave, waveWind }, ...look }) =>
    Math.abs(waveWind - wind) > 1e-9 || wave.frequency === 0
      ? []
      : [
          {
            ...look,
            emf: wave.emf[0] ?? [],
            phaseCurrent: wave.phaseCurrent[0] ?? [],
            dcVoltage: wave.dcVoltage,
            dcCurrent: wave.dcCurrent,
            frequency: wave.frequency,
          },
        ],
  )
