/** The meter of the bench in SI: the class it belongs to, and what its owner says otherwise. */
import { type MeterClass, meterClasses } from '../data/meter.ts'
import type { Design } from './design.ts'
import { row, si, siOr } from './si.ts'

export interface Meter {
  readonly name: string
  readonly response: MeterClass['response']
  readonly coupled: boolean
  readonly counts: number
  readonly alternating: MeterClass['alternating_V']
  readonly direct: MeterClass['direct_V']
  readonly amps: MeterClass['amps_A']
  /** Band of alternating readings [Hz]; lowest 0: from direct current on. */
  readonly lowest: number
  readonly highest: number
  /** [Ω]: its own, of both leads together, of its shunt. */
  readonly input: number
  readonly leads: number
  readonly shunt: number
  /** Step of its ohms range [Ω]; 0 where it has none. */
  readonly ohmsStep: number
  /** One figure averages over this [s]. */
  readonly window: number
}

type Bench = Design['bench']

/** A meter of that class; a bench tells what is known of one's own. */
export function meterOfClass(name: string, bench?: Pick<Bench, 'meterLowestFrequency_Hz' | 'meter'>): Meter {
  const each = row(meterClasses, name)
  const own = bench?.meter?.kind === name ? bench.meter : undefined
  const general = bench === undefined ? each.lowest_Hz : si(bench.meterLowestFrequency_Hz, 'Hz')
  return {
    name: each.name,
    response: each.response,
    coupled: each.coupled,
    counts: each.counts,
    alternating: each.alternating_V,
    direct: each.direct_V,
    amps: each.amps_A,
    lowest: siOr(own?.lowestFrequency_Hz, 'Hz') ?? (each.coupled ? general : 0),
    highest: each.highest_Hz,
    input: siOr(own?.inputResistance_ohm, 'ohm') ?? each.input_ohm,
    leads: siOr(own?.lead_mohm, 'mohm') ?? each.leads_mohm / 1000,
    shunt: each.shunt_mohm / 1000,
    ohmsStep: each.ohmsStep_ohm,
    window: each.window_s,
  }
}

/** The meter of a design; the cheapest where none is named. */
export const meterOf = (bench: Pick<Bench, 'meterLowestFrequency_Hz' | 'meter'>): Meter =>
  meterOfClass(bench.meter?.kind ?? meterClasses[0]!.name, bench)

export const meterNames: readonly string[] = meterClasses.map(({ name }) => name)
