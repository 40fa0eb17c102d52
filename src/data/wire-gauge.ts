/** Wire sizes by their names: what a gauge measures, the sizes next to one, the gauge next to a diameter. */
import { awgDiameter_mm, enamelledWires, intermediateMetricSizes, swgSizes } from './wire.ts'

/** A size as the document names it: a bare diameter in mm, or a gauge. */
export type WireSize = number | string

export type GaugeFamily = 'AWG' | 'SWG'

const gaugePattern = /^(AWG|SWG)\s?(\d{1,2})$/i

/** Bare diameter in mm of "AWG 20" or "SWG 21", undefined where there is no such gauge. */
export function gauge(name: string): number | undefined {
  const found = gaugePattern.exec(name.trim())
  if (!found) return undefined
  const number = Number(found[2])
  if (found[1]!.toUpperCase() === 'SWG') return swgSizes.find((size) => size.gauge === number)?.diameter_mm
  return number <= 44 ? awgDiameter_mm(number) : undefined
}

/** Bare diameter of a size [mm]; undefined for a word that is no gauge. */
export const bareDiameter_mm = (size: WireSize): number | undefined =>
  typeof size === 'number' ? size : gauge(size)

const metricSizes_mm: readonly number[] = [
  ...enamelledWires.map((wire) => wire.conductorDiameter_mm),
  ...intermediateMetricSizes.conductorDiameter_mm,
].sort((a, b) => a - b)

/** Sizes on either side of this one in the family that it is named in, the nearest first. */
export function neighbourSizes(
  size: WireSize,
  count: number,
): { readonly thinner: readonly WireSize[]; readonly thicker: readonly WireSize[] } {
  if (typeof size === 'number') {
    const same = 1e-9
    return {
      thinner: metricSizes_mm
        .filter((other) => other < size - same)
        .slice(-count)
        .reverse(),
      thicker: metricSizes_mm.filter((other) => other > size + same).slice(0, count),
    }
  }
  const [, kind, number] = gaugePattern.exec(size.trim())!
  const beside = (step: 1 | -1) =>
    Array.from(
      { length: count },
      (_, k) => `${kind!.toUpperCase()} ${Number(number) + step * (k + 1)}`,
    ).filter((name) => gauge(name) !== undefined)
  return { thinner: beside(1), thicker: beside(-1) }
}

export interface NamedGauge {
  readonly name: string
  readonly diameter_mm: number
}

const gauges = (family: GaugeFamily): NamedGauge[] =>
  Array.from({ length: 46 }, (_, number) => `${family} ${number}`).flatMap((name) => {
    const diameter_mm = gauge(name)
    return diameter_mm === undefined ? [] : [{ name, diameter_mm }]
  })

const families: Readonly<Record<GaugeFamily, readonly NamedGauge[]>> = {
  AWG: gauges('AWG'),
  SWG: gauges('SWG'),
}

/** The gauge whose diameter is the smallest ratio away; the diameter must be above zero. */
export const nearestGauge = (diameter_mm: number, family: GaugeFamily): NamedGauge =>
  families[family].reduce((best, each) =>
    Math.abs(Math.log(each.diameter_mm / diameter_mm)) < Math.abs(Math.log(best.diameter_mm / diameter_mm))
      ? each
      : best,
  )
