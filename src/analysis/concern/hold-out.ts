/** Concern: the readings that set the model are also the ones that judge it. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { nominal, spreadOf } from '../../units/quantity.ts'
import { toSi, unit } from '../../units/unit.ts'
import { computedVolts } from '../remanence-by-volts.ts'
import type { ChainView, ConcernRule } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** Share by which a prediction may miss a reading that states no spread: common practice, no source. */
export const predictionTolerance = 0.05

export interface Prediction {
  readonly read: number
  readonly computed: number
  /** Half-width at 90 % of the reading, its speed's included, as a share; 0 where not said. */
  readonly spread: number
}

/** Computed over read less one. */
export const predictionError = ({ read, computed }: Prediction): number => computed / read - 1

export const predictionFails = (prediction: Prediction): boolean =>
  Math.abs(predictionError(prediction)) > Math.max(prediction.spread, predictionTolerance)

function predictionsOf(chain: ChainView) {
  return chain.machine.design.bench.readings.flatMap((reading, k) => {
    const rpm = nominal(reading.speed_rpm)
    const read = nominal(reading.voltage_V)
    const computed = computedVolts(chain, reading, toSi(rpm, unit('rpm')))
    if (!reading.keptBack || computed === undefined || !(read > 0)) return []
    const spread = Math.hypot(spreadOf(reading.voltage_V) / read, spreadOf(reading.speed_rpm) / rpm)
    return [{ k, rpm, read, computed, spread }]
  })
}

const worstOf = (predictions: ReturnType<typeof predictionsOf>) =>
  predictions.reduce<(typeof predictions)[number] | undefined>(
    (worst, each) =>
      worst === undefined || Math.abs(predictionError(each)) > Math.abs(predictionError(worst))
        ? each
        : worst,
    undefined,
  )

export const holdOut: ConcernRule = {
  code: 'hold-out',
  title: 'The model is judged by the readings that set it',
  basis:
    'Where remanence or gap were set to fit the volts read, at least one reading must have been kept back and must be met within its stated spread or 5 % (common practice, no source). None kept back, or one that is missed: a warning. Both remanence and gap from volts alone: a warning as well, for only their joint effect shows. Readings kept back that are missed with nothing fitted: a note.',
  judge: (chain) => {
    const { bench } = chain.machine.design
    const fitted = bench.fitted !== 'nothing'
    const used = bench.readings.filter(({ keptBack }) => !keptBack)
    const predictions = predictionsOf(chain)
    const worst = worstOf(predictions)
    const missed = worst !== undefined && predictionFails(worst)
    const none = fitted && used.length > 0 && predictions.length === 0
    // volts know only the flux: two unknowns need another kind of reading
    const confounded =
      bench.fitted === 'remanence and air gap' && chain.machine.rotor.magnet.measured === undefined
    if (!none && !missed && !confounded) return undefined
    const speeds = used.map(({ speed_rpm }) => nominal(speed_rpm))
    const fastest = rowOfMost(chain.rows, ({ speed }) => speed)
    return {
      code: 'hold-out',
      severity: fitted ? 'warning' : 'note',
      path: missed ? `bench.readings[${worst.k}]` : none ? 'bench.readings' : 'bench.fitted',
      what: missed
        ? 'A reading that was kept back is not what the model predicts.'
        : none
          ? 'The readings that set the model are all there is to judge it by.'
          : 'Remanence and air gap were both set by the same volts.',
      why: missed
        ? 'A model that meets only what it was fitted to has learnt the errors of the bench, or is wrong elsewhere.'
        : none
          ? 'A model meets the readings that it was fitted to in any case; only one that it has not seen tells whether it predicts.'
          : 'Half a millimetre more of gap and somewhat weaker magnets show the same volts: the readings cannot tell which it is, and pull, inductance and heat depend on which.',
      figures: [
        fitted
          ? `Fitted: ${bench.fitted}, by ${used.length} reading${used.length === 1 ? '' : 's'}`
          : 'Nothing fitted',
        speeds.length > 0
          ? ` at ${formatNumber(Math.min(...speeds))} to ${formatNumber(Math.max(...speeds))} rpm`
          : '',
        fastest === undefined ? '' : `; it works up to ${formatSi(fastest.speed, 'rpm')}`,
        `; kept back: ${predictions.length}`,
        worst === undefined
          ? ''
          : `, the worst ${formatSi(worst.read, 'V')} read and ${formatSi(worst.computed, 'V')} computed at ${formatNumber(worst.rpm)} rpm, ${formatNumber(100 * predictionError(worst), 2)} % beside it`,
        '.',
      ].join(''),
      remedies: [
        ...(missed
          ? [
              'Ask for the cause before the model is turned to fit this one too: kind of volts, speed, gap, temperature.',
            ]
          : []),
        ...(confounded
          ? [
              'Measure the gap with a gauge, or read a loose magnet with a field sensor, and fit the other alone.',
            ]
          : []),
        'Read once more at another speed or with another gap, mark it as kept back, and write the prediction down first.',
        'Until then say fitted, not validated.',
      ],
    }
  },
  measure: (chain) => {
    const worst = worstOf(predictionsOf(chain))
    if (worst === undefined) return undefined
    return {
      name: 'prediction beside the reading kept back',
      value: Math.abs(predictionError(worst)),
      limit: Math.max(worst.spread, predictionTolerance),
      unit: 'percent',
      sound: 'below',
    }
  },
  answeredBy: 'A reading that had no part in the fit, beside the prediction that was written down before it.',
}
