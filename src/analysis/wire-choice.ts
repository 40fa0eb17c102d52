/** The same winding in the wire sizes next to its own: turns, ohms, volts, heat and watts of each. */

import { neighbourSizes } from '../data/wire-gauge.ts'
import type { Design } from '../machine/design.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { neighbourThicknesses_mm } from '../machine/wire-strip.ts'
import { Refusal } from '../refusal/require.ts'
import { nominal, type Quantity } from '../units/quantity.ts'
import { bundleTurns } from './bundle-fit.ts'
import { type Chain, chainOf } from './compute.ts'
import type { WindState } from './power-curve.ts'
import type { Change } from './remedy/change.ts'
import { type Steps, within } from './step.ts'
import { tellingWind } from './telling-wind.ts'
import type { ReelRest } from './winding.ts'

/** What a size comes to: all by the whole chain, nothing scaled. */
export interface WireOutcome {
  /** Largest of the phases at 20 °C [Ω]. */
  readonly resistance: number
  /** Of a phase on open circuit, rms over the shaft's speed, the mean of the phases [V·s/rad]. */
  readonly voltage: number
  readonly copperFill: number
  readonly wireLength: number
  readonly copperMass: number
  readonly reelRest: ReelRest | undefined
  /** In the wind that tells most of the machine: copper loss [W] and its temperature [K]. */
  readonly windingLoss: number
  readonly copperTemperature: number
  readonly overheated: boolean
  readonly state: WindState
  /** Into the battery or the resistor at each of `winds` [W]. */
  readonly useful: readonly number[]
  /** [m/s]; infinite where current never flows. */
  readonly cutInWind: number
}

export interface WireChoice {
  /** As it is bought: "1.5 mm", "AWG 20", "4 × 1.5 mm". */
  readonly name: string
  /** Steps from the design's own size, below zero for thinner wire. */
  readonly step: number
  /** The design as it is; else with as many turns as a patient hand lays into its bundle. */
  readonly asDrawn: boolean
  readonly turns: number
  readonly handTurns: number
  /** What makes it of the design: none where it is as drawn. */
  readonly changes: readonly Change[]
  /** Undefined where not one turn goes in, or the machine refuses to be computed. */
  readonly outcome: WireOutcome | undefined
}

export interface WireChoices {
  /** Wind of the copper's watts and temperature [m/s]. */
  readonly wind: number
  readonly winds: readonly number[]
  readonly keepTurns: boolean
  /** From thin to thick. */
  readonly choices: readonly WireChoice[]
}

/** Winds at which the useful watts are told [m/s]: every other one, from light to strong. */
const toldWinds = [4, 6, 8, 10] as const

interface Candidate {
  readonly name: string
  readonly step: number
  readonly wire: Design['stator']['wire']
}

/** The number of a quantity replaced, its spread left behind: a size off the shelf is what its label says. */
const mm = (value: number): string => `${Number(value.toPrecision(6))} mm`

function candidates({ stator: { wire } }: Design, count: number): Candidate[] {
  const { strip } = wire
  if (strip !== undefined) {
    const thickness = nominal(strip.thickness_mm)
    const name = (own: number) => `${Number(nominal(strip.width_mm).toPrecision(6))} × ${mm(own)}`
    const { thinner, thicker } = neighbourThicknesses_mm(thickness, count)
    const beside = (own: number, step: number): Candidate => ({
      name: name(own),
      step,
      // the edges follow the standard for the thickness
      wire: { ...wire, strip: { ...strip, thickness_mm: own, edgeRadius_mm: undefined } },
    })
    return [
      ...thinner.map((own, k) => beside(own, -1 - k)).reverse(),
      { name: name(thickness), step: 0, wire },
      ...thicker.filter((own) => own <= nominal(strip.width_mm)).map((own, k) => beside(own, 1 + k)),
    ]
  }
  const size = wire.size!
  const own = typeof size === 'string' ? size : nominal(size as Quantity)
  const name = (other: number | string) => (typeof other === 'number' ? mm(other) : other.toUpperCase())
  const { thinner, thicker } = neighbourSizes(own, count)
  const beside = (other: number | string, step: number): Candidate => ({
    name: name(other),
    step,
    wire: { ...wire, size: other },
  })
  return [
    ...thinner.map((other, k) => beside(other, -1 - k)).reverse(),
    { name: name(own), step: 0, wire },
    ...thicker.map((other, k) => beside(other, 1 + k)),
  ]
}

function outcomeOf(chain: Chain, wind: number, winds: readonly number[]): WireOutcome {
  const { voltage, wound } = chain
  const row = chain.rowAt(wind)
  return {
    resistance: Math.max(...voltage.phases.map(({ resistance }) => resistance)),
    voltage: voltage.phases.reduce((sum, { rms }) => sum + rms, 0) / voltage.phases.length,
    copperFill: wound.fit.copperFill,
    wireLength: wound.wireLength,
    copperMass: wound.copperMass,
    reelRest: wound.reelRest,
    windingLoss: row.watts.winding,
    copperTemperature: row.copperTemperature,
    overheated: row.overheated,
    state: row.state,
    useful: winds.map((told) => chain.rowAt(told).watts.useful),
    cutInWind: chain.cutInWind,
  }
}

/** The wire and the turns as they would stand in the document; what a reel held belongs to the wire that goes. */
function changesTo(
  { stator: { wire, winding } }: Design,
  bought: Candidate['wire'],
  turns: number,
): readonly Change[] {
  const change = (path: Change['path'], from: unknown, to: unknown): Change[] =>
    from === to ? [] : [{ path, from, to }]
  const { strip } = wire
  return [
    ...change(['stator', 'wire', 'size'], wire.size, bought.size),
    ...(strip === undefined
      ? []
      : [
          ...change(
            ['stator', 'wire', 'strip', 'thickness_mm'],
            strip.thickness_mm,
            bought.strip?.thickness_mm,
          ),
          ...change(
            ['stator', 'wire', 'strip', 'edgeRadius_mm'],
            strip.edgeRadius_mm,
            bought.strip?.edgeRadius_mm,
          ),
        ]),
    ...change(['stator', 'wire', 'reelLength_m'], wire.reelLength_m, bought.reelLength_m),
    ...change(['stator', 'wire', 'reelMass_g'], wire.reelMass_g, bought.reelMass_g),
    ...change(['stator', 'winding', 'turns'], winding.turns, turns),
  ]
}

export interface WireChoiceOptions {
  /** Sizes on either side of the design's own. */
  readonly count?: number
  /** The design's own turns in every size, as far as they fit; else as many as a patient hand lays into the bundle. */
  readonly keepTurns?: boolean
}

/**
 * The sizes next to the design's own in the same bundle, and the design as it is. Yields the fraction done. A design
 * wound looser than a hand can gets its own size twice.
 */
export function* wireChoices(chain: Chain, options: WireChoiceOptions = {}): Steps<WireChoices> {
  const { count = 3, keepTurns = false } = options
  const { machine } = chain
  const { design } = machine
  const { wind } = tellingWind(chain).row
  const winds = toldWinds.filter((told) => told <= machine.site.stormWind)
  const { bundle } = chain.layout.shapes[0]!
  const list = candidates(design, count)
  const choices: WireChoice[] = []
  // reels are weighed in the wire that the design names; another size has none
  for (const [k, { name, step, wire }] of list.entries()) {
    const bought = step === 0 ? wire : { ...wire, reelLength_m: undefined, reelMass_g: undefined }
    const other = resolveDesign({ ...design, stator: { ...design.stator, wire: bought } })
    const layers = chain.layout.coils.filter(({ phase }) => phase === 0).length
    const perLayer = bundleTurns(other.stator.wire, bundle).hand
    const handTurns = design.stator.winding.kind === 'serpentine' ? perLayer * layers : perLayer
    if (step === 0) {
      const { turns } = design.stator.winding
      const outcome = outcomeOf(chain, wind, winds)
      choices.push({ name, step, asDrawn: true, turns, handTurns, changes: [], outcome })
      if (turns === handTurns || keepTurns) continue
    }
    let outcome: WireOutcome | undefined
    const turns = keepTurns ? design.stator.winding.turns : handTurns
    if (turns > 0 && turns <= handTurns) {
      const winding = { ...design.stator.winding, turns }
      const variant = { ...design, stator: { ...design.stator, wire: bought, winding } }
      try {
        const steps = chainOf(resolveDesign(variant), { previous: chain })
        outcome = outcomeOf(yield* within(steps, k / list.length, 1 / list.length), wind, winds)
      } catch (error) {
        if (!(error instanceof Refusal)) throw error
      }
    }
    const changes = changesTo(design, bought, turns)
    choices.push({ name, step, asDrawn: false, turns, handTurns, changes, outcome })
  }
  return { wind, winds, keepTurns, choices }
}
