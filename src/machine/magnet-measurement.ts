/** The polarization of magnets in hand from what a kitchen table tells, by weighted least squares. */
import { weightedLeastSquares } from '../numerics/weighted-least-squares.ts'
import { refuse, requireNotNegative, requirePositive } from '../refusal/require.ts'
import {
  half90,
  type LooseMagnet,
  type MagnetReading,
  type ReadingModel,
  readingModel,
  rejectionOf,
  spreadOr,
  usualReadingSpread,
  usualSensorDepth,
} from './magnet-reading.ts'

export interface Measurement {
  readonly magnet: LooseMagnet
  /** Remanence at 20 °C that the grade alone tells, and its spread [T]. */
  readonly prior?: { readonly value: number; readonly spread: number }
  readonly readings: readonly MagnetReading[]
  /** Of the sensor, alike for all its readings. */
  readonly sensor?: {
    readonly gainSpread?: number
    /** Sensing plate below the package's face [m]. */
    readonly depth?: number
    readonly depthSpread?: number
  }
}

export interface ReadReading {
  /** Place in the list of readings, from 0. */
  readonly index: number
  /** Reading that the answer would give, in the reading's own unit. */
  readonly predicted: number
  /** Reading less prediction, over the deviation that is expected of their difference. */
  readonly residual: number
  /** That is above three. Where enough else tells, the answer leaves such a reading out and its share is zero. */
  readonly disagrees: boolean
  /** How much of the answer is this reading's: shares and the prior's share sum to one. */
  readonly share: number
  /** Spread of the answer without this reading [T]; undefined where nothing else tells. */
  readonly spreadWithout: number | undefined
}

export interface MeasuredPolarization {
  /** Remanence at 20 °C and its spread [T]. */
  readonly polarization: number
  readonly spread: number
  readonly readings: readonly ReadReading[]
  readonly priorShare: number
  /** Of the grade, as of a reading; undefined without. A wrong label is left out of the answer like a wrong reading. */
  readonly prior: Pick<ReadReading, 'residual' | 'disagrees'> | undefined
  /** Of the sensor, as the readings among themselves find it: true over shown, less one, and further depth [m]. */
  readonly sensor: { readonly gain: number; readonly depth: number } | undefined
  readonly rejected: readonly { readonly index: number; readonly reason: string }[]
}

/** Standard deviations at which a reading counts as one that disagrees. */
const disagreement = 3

interface Fit {
  readonly unknowns: readonly [remanence: number, gain: number, depth: number]
  /** Of the unknowns, row by row. */
  readonly covariance: Float64Array
  readonly residuals: Float64Array
  readonly leverages: Float64Array
  /** Of the remanence by each observation. */
  readonly shares: Float64Array
}

interface Priors {
  readonly remanence: { readonly value: number; readonly deviation: number } | undefined
  readonly gainDeviation: number
  readonly depthDeviation: number
}

const mostSteps = 60

/** A first guess from the readings alone: pulls go with the square, the others in proportion. */
const guessed = (models: readonly ReadingModel[]): number =>
  models.reduce((sum, { shown, at }) => {
    const power = at(2, 0, 0) / at(1, 0, 0) > 3 ? 0.5 : 1
    return sum + (shown / at(1, 0, 0)) ** power / models.length
  }, 0)

/** Readings first, then the priors: gain, depth, remanence. */
function fitted(models: readonly ReadingModel[], priors: Priors): Fit {
  let [remanence, gain, depth] = [priors.remanence?.value ?? guessed(models), 0, 0]
  for (let step = 0; step < mostSteps; step++) {
    const A: number[] = []
    const y: number[] = []
    const σ: number[] = []
    for (const { shown, deviation, at, slopes } of models) {
      const row = slopes(remanence, gain, depth)
      A.push(...row)
      y.push(shown - at(remanence, gain, depth) + row[0] * remanence + row[1] * gain + row[2] * depth)
      σ.push(deviation)
    }
    A.push(0, 1, 0, 0, 0, 1)
    y.push(0, 0)
    σ.push(priors.gainDeviation, priors.depthDeviation)
    if (priors.remanence !== undefined) {
      A.push(1, 0, 0)
      y.push(priors.remanence.value)
      σ.push(priors.remanence.deviation)
    }
    const { estimate, covariance, residuals, leverages, gains } = weightedLeastSquares(A, y, σ)
    // a step may not turn the magnet round
    const next = Math.max(estimate[0]!, remanence / 4)
    const moved = Math.abs(next - remanence) / next + Math.abs(estimate[1]! - gain)
    ;[remanence, gain, depth] = [next, estimate[1]!, estimate[2]!]
    if (moved < 1e-10)
      return {
        unknowns: [remanence, gain, depth],
        covariance,
        residuals,
        leverages,
        shares: Float64Array.from(y, (_, i) => gains[i]! * A[3 * i]!),
      }
  }
  return refuse({
    name: 'readings',
    condition: 'such that a fit settles',
    value: models.length,
    code: 'no-convergence',
  })
}

const spreadOfFit = ({ covariance }: Fit): number => half90 * Math.sqrt(covariance[0]!)

/** Residual over the deviation expected of it: an observation's own pull on the answer makes it smaller. */
const studentized = ({ residuals, leverages }: Fit, i: number): number =>
  residuals[i]! / Math.sqrt(Math.max(1e-12, 1 - leverages[i]!))

/** Residual of what the fit did not hear, over the deviation of reading and prediction together. */
function outside({ unknowns, covariance }: Fit, { shown, deviation, at, slopes }: ReadingModel): number {
  const row = slopes(...unknowns)
  let variance = deviation ** 2
  for (let k = 0; k < 3; k++)
    for (let l = 0; l < 3; l++) variance += row[k]! * covariance[3 * k + l]! * row[l]!
  return (shown - at(...unknowns)) / Math.sqrt(variance)
}

/** The grade as one more thing that is read. */
const gradeModel = ({ value, deviation }: NonNullable<Priors['remanence']>): ReadingModel => ({
  index: -1,
  shown: value,
  deviation,
  at: (remanence) => remanence,
  slopes: () => [1, 0, 0],
})

interface Heard {
  readonly models: readonly ReadingModel[]
  readonly priors: Priors
  readonly fit: Fit
}

/**
 * The fit of what agrees: the observation that lies farthest out is left out, one after the other, as long as two
 * others stay to contradict it. Two that contradict each other alone both stay.
 */
function agreeing(models: readonly ReadingModel[], priors: Priors): Heard {
  const fit = fitted(models, priors)
  const count = models.length + (priors.remanence === undefined ? 0 : 1)
  if (count < 3) return { models, priors, fit }
  const ofGrade = priors.remanence === undefined ? 0 : Math.abs(studentized(fit, models.length + 2))
  const ofReadings = models.map((_, i) => Math.abs(studentized(fit, i)))
  const most = Math.max(ofGrade, ...ofReadings)
  if (most <= disagreement) return { models, priors, fit }
  if (most === ofGrade) return agreeing(models, { ...priors, remanence: undefined })
  const worst = ofReadings.indexOf(most)
  return agreeing(
    models.filter((_, i) => i !== worst),
    priors,
  )
}

/**
 * Remanence at 20 °C by weighted least squares over all readings, with the grade's own range as a prior and two
 * unknowns that the readings of one sensor share: its gain and its depth below the package's face. Undefined where
 * neither a reading nor a prior is left.
 */
export function measuredPolarization({
  magnet,
  prior,
  readings,
  sensor = {},
}: Measurement): MeasuredPolarization | undefined {
  const depth = sensor.depth ?? usualSensorDepth.value
  requireNotNegative('sensor.depth', depth, 'm')
  const rejected: { index: number; reason: string }[] = []
  const models: ReadingModel[] = []
  readings.forEach((reading, index) => {
    const reason = rejectionOf(reading)
    if (reason !== undefined) rejected.push({ index, reason })
    else models.push(readingModel(magnet, reading, index, depth))
  })
  if (prior !== undefined) {
    requirePositive('prior.value', prior.value, 'T')
    requirePositive('prior.spread', prior.spread, 'T')
  }
  const priors: Priors = {
    remanence: prior === undefined ? undefined : { value: prior.value, deviation: prior.spread / half90 },
    gainDeviation: spreadOr('sensor.gainSpread', sensor.gainSpread, usualReadingSpread.sensorGain) / half90,
    depthDeviation: spreadOr('sensor.depthSpread', sensor.depthSpread, usualSensorDepth.spread) / half90,
  }
  if (models.length === 0 && prior === undefined) return undefined
  const heard = agreeing(models, priors)
  const { fit } = heard
  const read = (model: ReadingModel): ReadReading => {
    const place = heard.models.indexOf(model)
    const residual = place < 0 ? outside(fit, model) : studentized(fit, place)
    const others = heard.models.filter((other) => other !== model)
    const alone = others.length === 0 && heard.priors.remanence === undefined
    return {
      index: model.index,
      predicted: model.at(...fit.unknowns),
      residual,
      disagrees: place < 0 || Math.abs(residual) > disagreement,
      share: place < 0 ? 0 : fit.shares[place]!,
      spreadWithout: alone
        ? undefined
        : place < 0
          ? spreadOfFit(fit)
          : spreadOfFit(fitted(others, heard.priors)),
    }
  }
  const gradeHeard = heard.priors.remanence !== undefined
  const gradeResidual =
    priors.remanence === undefined || models.length === 0
      ? undefined
      : gradeHeard
        ? studentized(fit, heard.models.length + 2)
        : outside(fit, gradeModel(priors.remanence))
  return {
    polarization: fit.unknowns[0],
    spread: spreadOfFit(fit),
    readings: models.map(read),
    priorShare: gradeHeard ? fit.shares[heard.models.length + 2]! : 0,
    prior:
      gradeResidual === undefined
        ? undefined
        : { residual: gradeResidual, disagrees: !gradeHeard || Math.abs(gradeResidual) > disagreement },
    sensor: models.some(({ index }) => readings[index]!.kind === 'hall')
      ? { gain: fit.unknowns[1], depth: fit.unknowns[2] }
      : undefined,
    rejected,
  }
}
