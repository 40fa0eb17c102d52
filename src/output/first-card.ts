/** A first machine as a card: the figures that a maker asks for first, what stands against it, and the design itself. */
import type { Chain } from '../analysis/compute.ts'
import { type Severity, severities } from '../analysis/concern/concern.ts'
import type { ResultSpread, SpreadStudy } from '../analysis/spread.ts'
import { tableWind } from '../analysis/spread-output.ts'
import type { Design } from '../machine/design.ts'
import type { Stock } from '../machine/stock.ts'
import type { FirstMachine } from '../search/first-machine.ts'
import type { SketchKind } from '../search/first-sketch.ts'
import { nominal } from '../units/quantity.ts'

/** A result in SI with the interval that the guesses leave it; undefined until that has been drawn. */
export interface FirstFigure {
  readonly value: number
  readonly spread: ResultSpread | undefined
}

export interface FirstCard {
  readonly kind: SketchKind
  readonly design: Design
  /** In a year [J]. */
  readonly energy: FirstFigure
  /** Wind in which current begins [m/s]. */
  readonly cutIn: FirstFigure
  /** Useful power [W] in `wind` [m/s], the same for all cards of a stock. */
  readonly watts: FirstFigure & { readonly wind: number }
  /** Power wished for in that wind [W]; undefined where none is. */
  readonly wish: number | undefined
  /** Of the winding [kg], its wire [m], and what of it the reels lack [m]: none where they were not weighed. */
  readonly copperMass: number
  readonly wireLength: number
  readonly wireShort: number
  /** Of the blades [m]. */
  readonly bladeDiameter: number
  readonly magnets: number
  readonly coils: number | undefined
  readonly turns: number
  readonly strands: number
  /** Biggest printed part [m]. */
  readonly greatestPart: number
  readonly fitsPrinter: boolean
  /** How many concerns of each severity there are. */
  readonly concerns: Readonly<Record<Severity, number>>
  /** What blocks its class, in the sentences of the rules. */
  readonly blocking: readonly string[]
}

/** Wind of the cards' watts: the wished one; else the strong wind of a place outdoors, and the wind itself before a fan. */
export function cardWind(stock: Stock, { machine }: Pick<Chain, 'machine'>): number {
  if (stock.wish !== undefined) return nominal(stock.wish.atWind_m_per_s)
  const mean = nominal(stock.meanWind_m_per_s)
  return tableWind(stock.class === 'outdoor' ? 2 * mean : mean, machine.site.stormWind)
}

/** The result of a spread study that is drawn in the same wind. */
const spreadIn = (study: SpreadStudy | undefined, wind: number): ResultSpread | undefined => {
  if (study === undefined) return undefined
  const { asked, results } = study
  const same = (other: number) => Math.abs(other - wind) < 1e-9
  if (same(asked.telling)) return results.usefulPower
  if (same(asked.strong)) return results.strongWindPower
  return same(asked.mean) ? results.meanWindPower : undefined
}

export function firstCard(machine: FirstMachine, stock: Stock, study?: SpreadStudy): FirstCard {
  const { chain, design, kind, sketch } = machine
  const { winding, wire } = chain.machine.stator
  const wind = cardWind(stock, chain)
  const { rotor } = design
  const blocking = chain.concerns.filter(({ severity }) => severity === 'blocking')
  return {
    kind,
    design,
    energy: { value: chain.year.energy, spread: study?.results.energy },
    cutIn: { value: chain.cutInWind, spread: study?.results.cutInWind },
    watts: { value: chain.rowAt(wind).watts.useful, wind, spread: spreadIn(study, wind) },
    wish: stock.wish === undefined ? undefined : nominal(stock.wish.power_W),
    copperMass: chain.wound.copperMass,
    wireLength: chain.wound.wireLength,
    wireShort: Math.max(0, chain.wound.fit.reelShort ?? 0),
    bladeDiameter: sketch.diameter_m,
    magnets: rotor.poleCount * (rotor.arrangement === 'two-discs' ? 2 : 1),
    coils: winding.kind === 'coils' ? winding.coilCount : undefined,
    turns: winding.turns,
    strands: wire.strands,
    greatestPart: machine.greatestPart_mm / 1000,
    fitsPrinter: machine.fitsPrinter,
    concerns: Object.fromEntries(
      severities.map((one) => [one, chain.concerns.filter(({ severity }) => severity === one).length]),
    ) as Record<Severity, number>,
    blocking: blocking.map(({ what }) => what),
  }
}

/** Why the first of some cards comes first. */
export type FirstReason =
  | { readonly kind: 'alone' }
  /** So many things fewer block its class than that of the next. */
  | { readonly kind: 'fewer blocked'; readonly fewer: number }
  | { readonly kind: 'wish met' }
  | { readonly kind: 'wish nearest'; readonly share: number }
  /** So many times the energy of the next. */
  | { readonly kind: 'energy'; readonly times: number }

export function firstReason([first, second]: readonly FirstMachine[]): FirstReason | undefined {
  if (first === undefined) return undefined
  if (second === undefined) return { kind: 'alone' }
  const fewer = second.blocking.length - first.blocking.length
  if (fewer > 0) return { kind: 'fewer blocked', fewer }
  if (first.wish !== undefined)
    return first.wish.watts >= first.wish.wanted
      ? { kind: 'wish met' }
      : { kind: 'wish nearest', share: first.wish.watts / first.wish.wanted }
  return { kind: 'energy', times: first.chain.year.energy / second.chain.year.energy }
}
