/** Whether it is worth it: the need beside what the wind brings, month by month, and what more tower or blade would do. */
import type { Design } from '../machine/design.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { Refusal } from '../refusal/require.ts'
import { nominal, type Quantity } from '../units/quantity.ts'
import { type Chain, chainOf } from './compute.ts'
import type { EnergyRange } from './month-energy.ts'
import { monthDays, yearDays } from './site-wind.ts'
import { type Steps, within } from './step.ts'
import { worthVerdict } from './worth-verdict.ts'
import { year } from './year.ts'

/** covered: even in a poor month; perhaps: in a good one; short: not even then. */
export type Cover = 'covered' | 'perhaps' | 'short'

export interface NeedCover extends EnergyRange {
  /** 1 for January; undefined for the whole year. */
  readonly month: number | undefined
  /** What is wanted, standing use included [J]. */
  readonly need: number
  readonly cover: Cover
  /** What a full battery refuses, where supply lasts and is more than the need [J]. */
  readonly refused: number
}

export interface WorthStep {
  readonly kind: 'higher tower' | 'larger rotor'
  /** The hub's new height or the rotor's new diameter [m]. */
  readonly size: number
  /** Useful energy of a year [J]. */
  readonly energy: number
}

export interface Worth {
  /** Of the year; months where they are known. */
  readonly year: NeedCover
  readonly months: readonly NeedCover[] | undefined
  /** Of the year's need, what controller and the like take by themselves [J]. */
  readonly standing: number
  /** Share of what is stored that comes out again. */
  readonly storageEfficiency: number
  /** Days that the battery lasts on the greatest day's need; undefined without a battery of known capacity. */
  readonly autonomy: number | undefined
  readonly wantedAutonomy: number
  readonly steps: readonly WorthStep[]
  /** Plain sentences, the answer first. */
  readonly verdict: readonly string[]
}

type Need = NonNullable<Design['need']>

const hour = 3600
const day = 86_400

/** Of what goes into a battery, this comes out again: common practice, no source. */
const storageEfficiencyOf = (chemistry: string): number => (chemistry === 'lead-acid' ? 0.8 : 0.93)
/** Share of the label's charge that a gentle use takes: common practice, no source. */
const gentleShareOf = (chemistry: string): number => (chemistry === 'lead-acid' ? 0.5 : 0.8)

/** Energy of one day in a month (from 1), standing use left out [J]. */
const dailyUse = ({ uses }: Need, month: number): number =>
  uses
    .filter(({ months }) => months === undefined || months.length === 0 || months.includes(month))
    .reduce((sum, use) => sum + use.count * nominal(use.power_W) * nominal(use.daily_h) * hour, 0)

const coverOf = (need: number, { low, high }: EnergyRange): Cover =>
  low >= need ? 'covered' : high >= need ? 'perhaps' : 'short'

/** The battery's energy that may be used [J]; undefined without a capacity. */
function usable({ machine }: Pick<Chain, 'machine'>, need: Need): number | undefined {
  const { load } = machine
  if (load.kind !== 'battery' || load.capacity === undefined) return undefined
  const share = need.batteryUse === 'full' ? 1 : gentleShareOf(load.chemistry)
  return share * load.capacity * load.voltage
}

const scaled = (quantity: Quantity, factor: number): Quantity =>
  typeof quantity === 'number' ? quantity * factor : { ...quantity, value: quantity.value * factor }

/** The design with blades so much larger, their shape kept; undefined where it may not be written down so. */
function largerRotor(design: Design, factor: number): Design | undefined {
  const { blades } = design
  const stations =
    blades.kind === 'stations'
      ? {
          stations: blades.stations.map((station) => ({
            ...station,
            radius_mm: scaled(station.radius_mm, factor),
            chord_mm: scaled(station.chord_mm, factor),
          })),
        }
      : {}
  const larger = { ...blades, diameter_m: scaled(blades.diameter_m, factor), ...stations }
  const parsed = parseDesign({ ...design, blades: larger })
  return parsed.ok ? parsed.design : undefined
}

/** Steps that are compared: half as high again and twice as high; a quarter and a half larger. */
const heightFactors = [1.5, 2] as const
const diameterFactors = [1.25, 1.5] as const

function* stepsUp(chain: Chain): Steps<WorthStep[]> {
  const { machine, rows, fallingRows, rowAt } = chain
  const { site, design } = machine
  const found: WorthStep[] = heightFactors.map((factor) => {
    const hubHeight = site.hubHeight * factor
    const higher = { ...machine, site: { ...site, hubHeight } }
    const { energy } = year(higher, { rising: rows, falling: fallingRows, rowAt })
    return { kind: 'higher tower', size: hubHeight, energy }
  })
  for (const [k, factor] of diameterFactors.entries()) {
    const larger = largerRotor(design, factor)
    if (larger === undefined) continue
    try {
      const computed = yield* within(
        chainOf(resolveDesign(larger), { previous: chain }),
        k / diameterFactors.length,
        1 / diameterFactors.length,
      )
      found.push({
        kind: 'larger rotor',
        size: 2 * computed.machine.blades.radius,
        energy: computed.year.energy,
      })
    } catch (error) {
      // a rotor that cannot be built is no step up
      if (!(error instanceof Refusal)) throw error
    }
  }
  return found
}

/** The need of a chain's design against its year; undefined where the design names no need. Yields the fraction done. */
export function* worthOf(chain: Chain): Steps<Worth | undefined> {
  const { machine } = chain
  const { need } = machine.design
  if (need === undefined) return undefined
  const { load } = machine
  const efficiency = load.kind === 'battery' ? storageEfficiencyOf(load.chemistry) : 1
  const standingPower = nominal(need.standing_W) + (machine.converter?.standby ?? 0)
  const needOf = (month: number) => (dailyUse(need, month) + standingPower * day) * monthDays[month - 1]!
  const out = (range: EnergyRange, wanted: number, month: number | undefined): NeedCover => {
    const delivered = {
      energy: range.energy * efficiency,
      low: range.low * efficiency,
      high: range.high * efficiency,
    }
    return {
      ...delivered,
      month,
      need: wanted,
      cover: coverOf(wanted, delivered),
      refused: load.kind === 'battery' ? Math.max(0, delivered.energy - wanted) / efficiency : 0,
    }
  }
  const wantedByMonth = monthDays.map((_, k) => needOf(k + 1))
  const wanted = wantedByMonth.reduce((sum, each) => sum + each, 0)
  const whole = out(chain.year.range, wanted, undefined)
  const months = chain.year.months?.map((range) => out(range, wantedByMonth[range.month - 1]!, range.month))
  const greatestDay = Math.max(...wantedByMonth.map((each, k) => each / monthDays[k]!))
  const stored = usable(chain, need)
  const steps = yield* stepsUp(chain)
  const bare = {
    // over the year as a whole a surplus in May says nothing of December: by months where they are known
    year: months ? { ...whole, refused: months.reduce((sum, { refused }) => sum + refused, 0) } : whole,
    months,
    standing: standingPower * day * yearDays,
    storageEfficiency: efficiency,
    autonomy: stored === undefined || greatestDay <= 0 ? undefined : stored / greatestDay,
    wantedAutonomy: nominal(need.storage_d),
    steps,
  }
  return { ...bare, verdict: worthVerdict(bare, machine) }
}
