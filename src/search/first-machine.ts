/** A first whole machine from what a maker has: every kind that can be built, its free sizes searched on the real chain. */
import { bundleTurns } from '../analysis/bundle-fit.ts'
import { type Chain, chainOf } from '../analysis/compute.ts'
import { conductorLayout } from '../analysis/conductor-layout.ts'
import { type Steps, within } from '../analysis/step.ts'
import { spareShare, woundMachine } from '../analysis/winding.ts'
import type { Design } from '../machine/design.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import type { Stock } from '../machine/stock.ts'
import { Refusal } from '../refusal/require.ts'
import { nominal } from '../units/quantity.ts'
import {
  type BundleSize,
  type Fittings,
  greatestPart,
  type Sketch,
  type SketchKind,
  sketchDocument,
} from './first-sketch.ts'

export interface FirstMachine {
  readonly kind: SketchKind
  readonly design: Design
  readonly chain: Chain
  readonly sketch: Sketch
  /** Biggest printed part [mm], and whether the printer's bed holds it in one piece. */
  readonly greatestPart_mm: number
  readonly fitsPrinter: boolean
  /** Codes of what blocks its class. */
  readonly blocking: readonly string[]
}

export interface FirstMachines {
  /** The best first: none that blocks before one that does, then by the energy of a year. */
  readonly machines: readonly FirstMachine[]
  /** Kinds that cannot be drawn from the stock, and why. */
  readonly without: readonly { readonly kind: SketchKind; readonly reason: string }[]
  /** Whole chains that were computed. */
  readonly trials: number
}

const kinds: readonly SketchKind[] = ['drum, coils', 'drum, serpentine', 'disc, coils', 'two discs, coils']

/** Warnings that say it cannot be put together count like blocking ones. */
const notBuildable = new Set(['gap-stack', 'wire-fit'])

/** What no size of a machine settles: volts without load are told and stand for every kind alike. */
const notSized = new Set(['shock-band'])

const depths_mm = [2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15]
const diameters_m = Array.from({ length: 24 }, (_, k) => Math.round(30 * 1.12 ** k) / 100)
const strandCounts = [1, 2, 3, 4, 5, 6, 8, 10, 13, 16, 20]
const fills = [0.25, 0.35, 0.5, 0.7, 0.85, 1]
const limiters_m_per_s = [7, 8, 9, 10, 11, 12]

/** What is sold, in rising order. */
const cables_mm2 = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35]
const fuses_A = [1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 150]
const diodes = [
  { name: 'diode 3 A', amps: 3 },
  { name: 'bridge 15 A', amps: 15 },
  { name: 'bridge 25 A', amps: 25 },
  { name: 'bridge 35 A', amps: 35 },
]

const atLeast = (list: readonly number[], wanted: number): number =>
  list.find((each) => each >= wanted) ?? list[list.length - 1]!

/** A band on a drum, a wall on a disc. */
const usualFittings = (kind: SketchKind): Fittings => ({
  wall_mm: kind.startsWith('drum') ? 0.6 : 4,
  cable_mm2: 2.5,
  diode: 'bridge 25 A',
  reverse_V: 600,
  switch_V: 440,
  fuse_A: 20,
  dump_W: 100,
})

interface Tried {
  readonly sketch: Sketch
  readonly design: Design
  readonly chain: Chain
  readonly blocking: readonly string[]
  readonly worth: number
}

/** Worse than any that is not blocked, and the worse the more blocks it; of two too hot the cooler is better. */
function blockedWorth(codes: readonly string[], { rows, year }: Chain): number {
  const heat = codes.includes('stator-heat')
    ? -Math.max(...rows.map(({ copperTemperature }) => copperTemperature))
    : year.energy / (year.energy + 1e6)
  return -1e6 * codes.length + heat
}

function judged(sketch: Sketch, design: Design, chain: Chain): Tried {
  const codes = chain.concerns
    .filter(({ code, severity }) => severity === 'blocking' || notBuildable.has(code))
    .map(({ code }) => code)
  const sized = codes.filter((code) => !notSized.has(code))
  const worth = sized.length > 0 ? blockedWorth(sized, chain) : chain.year.energy
  return { sketch, design, chain, blocking: codes, worth }
}

/** Turns that fill their share of the bundle and that the reels have wire for. */
function turnsOf(stock: Stock, sketch: Sketch, fittings: Fittings, unit: Design, bundle: BundleSize): number {
  const { hand } = bundleTurns(resolveDesign(unit).stator.wire, {
    width: bundle.width_mm / 1000,
    thickness: bundle.depth_mm / 1000,
  })
  const turns = Math.floor(hand * sketch.filled)
  if (turns < 1 || stock.wire.reelMass_g === undefined) return turns
  const drawn = parseDesign(sketchDocument(stock, sketch, fittings, turns)!.document)
  if (!drawn.ok) return turns
  const machine = resolveDesign(drawn.design)
  const { fit, wireLength } = woundMachine(machine, conductorLayout(machine))
  const short = Math.max(0, fit.reelShort ?? 0)
  return Math.floor(turns * (1 - short / (wireLength * (1 + spareShare))))
}

/** A sketch as a chain, its turns filling their share of the bundle; a sentence where it makes no machine. */
function* tried(
  stock: Stock,
  sketch: Sketch,
  fittings: Fittings,
  previous: Chain | undefined,
): Steps<Tried | string> {
  try {
    const unit = sketchDocument(stock, sketch, fittings, 1)
    if (unit === undefined) return 'the magnets leave no room for three phases'
    const drawn = parseDesign(unit.document)
    if (!drawn.ok) return drawn.faults.map(({ path, condition }) => `${path} must be ${condition}`).join('; ')
    const turns = turnsOf(stock, sketch, fittings, drawn.design, unit.bundle)
    if (turns < 1) return 'the wire is too thick for the bundle, or the reels are too short'
    const parsed = parseDesign(sketchDocument(stock, sketch, fittings, turns)!.document)
    if (!parsed.ok)
      return parsed.faults.map(({ path, condition }) => `${path} must be ${condition}`).join('; ')
    const chain = yield* chainOf(resolveDesign(parsed.design), { previous })
    return judged(sketch, parsed.design, chain)
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return error.message
  }
}

/** Neighbours of a sketch in one of its free sizes. */
function movesOf(sketch: Sketch, outdoor: boolean): Sketch[] {
  const moves: Sketch[] = []
  const along = (
    list: readonly number[],
    key: 'depth_mm' | 'strands' | 'filled' | 'diameter_m' | 'limiter_m_per_s',
  ) => {
    const at = list.indexOf(sketch[key])
    for (const next of [at + 1, at - 1])
      if (list[next] !== undefined) moves.push({ ...sketch, [key]: list[next] })
  }
  along(diameters_m, 'diameter_m')
  along(strandCounts, 'strands')
  along(depths_mm, 'depth_mm')
  along(fills, 'filled')
  if (outdoor) along(limiters_m_per_s, 'limiter_m_per_s')
  moves.push({ ...sketch, connection: sketch.connection === 'star' ? 'delta' : 'star' })
  return moves
}

/** Cable, fuse, diodes, dump and pocket walls for what flows in a chain. */
function fitted({ machine, rows, runaway }: Chain, before: Fittings): Fittings {
  const amps = Math.max(...rows.map(({ dcCurrent }) => dcCurrent), 0.1)
  const watts = Math.max(...rows.map(({ watts: { useful } }) => useful), 1)
  const volts =
    machine.load.kind === 'battery'
      ? machine.load.voltage
      : Math.max(...rows.map(({ loadVoltage }) => loadVoltage), 1)
  const resistivity =
    (machine.cable.conductorResistance * machine.cable.area) / Math.max(machine.cable.length, 1e-9)
  const dropArea = (2 * machine.cable.length * resistivity * amps) / (0.04 * volts)
  // twice the pull, and a tenth in hand; a band bears with its thickness, a wall with the square of it
  const band = machine.rotor.retention.kind === 'band'
  const share = runaway.magnetHold > 0 ? (2.2 * runaway.magnetForce) / runaway.magnetHold : 4
  const wall = before.wall_mm * (band ? share : Math.sqrt(share))
  // twice the greatest line peak without load, as sold
  const reverse_V = 2 * runaway.directVoltage
  return {
    reverse_V: reverse_V > 600 ? 1000 : 600,
    switch_V: runaway.directVoltage > 440 ? 1000 : 440,
    wall_mm: band
      ? Math.min(3, Math.max(0.4, Math.ceil(10 * wall) / 10))
      : Math.min(20, Math.max(2, Math.ceil(2 * wall) / 2)),
    cable_mm2: atLeast(cables_mm2, Math.max(dropArea * 1e6, amps / 8)),
    diode: (diodes.find((each) => each.amps >= 2 * amps) ?? diodes[diodes.length - 1]!).name,
    fuse_A: atLeast(fuses_A, 1.4 * amps),
    dump_W: Math.max(5, Math.ceil(1.3 * watts)),
  }
}

/** Where the search of a kind begins. */
const startOf = (kind: SketchKind, stock: Stock): Sketch => ({
  kind,
  depth_mm: kind === 'drum, serpentine' ? 3 : 8,
  strands: 1,
  filled: 1,
  connection: 'star',
  diameter_m: stock.class === 'demonstration' ? diameters_m[2]! : diameters_m[9]!,
  limiter_m_per_s: 9,
})

/** Current should begin at this share of the mean wind: common practice, no source. */
const cutInShare = 0.75

/** Wires in hand with which the blades reach the load's volts in a fair wind: as many fewer turns fill the bundle. */
function suitedStrands({ chain, sketch }: Tried, stock: Stock): number {
  const { best } = chain.rotor
  const wanted = (best.tipSpeedRatio * cutInShare * nominal(stock.meanWind_m_per_s)) / (sketch.diameter_m / 2)
  const share = wanted / chain.generator.cutIn
  return Number.isFinite(share) ? atLeast(strandCounts, Math.round(sketch.strands * share)) : sketch.strands
}

interface Budget {
  left: number
}

/** The best of a kind within the budget of whole chains. */
function* bestOfKind(stock: Stock, kind: SketchKind, budget: Budget): Steps<Tried | string> {
  const whole = budget.left
  const outdoor = stock.class === 'outdoor'
  let fittings = usualFittings(kind)
  const run = (sketch: Sketch, previous: Chain | undefined) => {
    budget.left -= 1
    return within(tried(stock, sketch, fittings, previous), 1 - (budget.left + 1) / whole, 1 / whole)
  }
  let best: Tried | string = yield* run(startOf(kind, stock), undefined)
  for (const depth_mm of typeof best === 'string' ? depths_mm : [])
    if (typeof best === 'string') best = yield* run({ ...startOf(kind, stock), depth_mm }, undefined)
  if (typeof best === 'string') return best
  const suited = suitedStrands(best, stock)
  if (suited !== best.sketch.strands) {
    const next: Tried | string = yield* run({ ...best.sketch, strands: suited }, best.chain)
    if (typeof next !== 'string') best = next
  }
  const seen = new Set<string>()
  for (let round = 0; round < 12 && budget.left > 2; round++) {
    const before: Tried = best
    let now: Tried = before
    // sizes that follow from what flows go with the machine of the moment
    fittings = fitted(now.chain, fittings)
    const again: Tried | string = yield* run(now.sketch, now.chain)
    if (typeof again !== 'string') now = again
    for (const move of movesOf(now.sketch, outdoor)) {
      const name = JSON.stringify([move, fittings])
      if (budget.left < 2 || seen.has(name)) continue
      seen.add(name)
      let step: Sketch | undefined = move
      // goes on the same way as long as it helps
      while (step !== undefined && budget.left > 1) {
        const next: Tried | string = yield* run(step, now.chain)
        if (typeof next === 'string' || next.worth <= now.worth) break
        const from: Sketch = now.sketch
        now = next
        step = further(from, step)
      }
    }
    best = now
    if (now.sketch === before.sketch && round > 0 && now.worth <= before.worth * 1.0001) break
  }
  return best
}

/** One more step of the kind that led from one sketch to the next; undefined at the end of a list. */
function further(from: Sketch, to: Sketch): Sketch | undefined {
  const lists = {
    depth_mm: depths_mm,
    strands: strandCounts,
    filled: fills,
    diameter_m: diameters_m,
    limiter_m_per_s: limiters_m_per_s,
  } as const
  for (const [key, list] of Object.entries(lists) as [keyof typeof lists, readonly number[]][]) {
    if (from[key] === to[key]) continue
    const next = list[2 * list.indexOf(to[key]) - list.indexOf(from[key])]
    return next === undefined ? undefined : { ...to, [key]: next }
  }
  return undefined
}

const wantedKinds = ({ winding, steelPlates }: Stock): SketchKind[] =>
  kinds.filter(
    (kind) =>
      (winding === 'either' || kind.endsWith(winding)) && (steelPlates || kind !== 'two discs, coils'),
  )

export interface FirstMachineOptions {
  /** Whole chains for each kind; 60 if left out. */
  readonly trials?: number
}

/**
 * The first whole machines from a stock, one of each kind that can be built. Free sizes (depth and fill of the bundle,
 * wires in hand, connection, blades, limiter) are walked one by one from a usual start, each step on the whole chain, as
 * long as the energy of a year grows and nothing blocks the class; cable, fuse, diodes, dump and pocket walls follow from
 * what flows. A walk of this kind finds a good machine, not the best there is. Yields the fraction done.
 */
export function* firstMachines(
  stock: Stock,
  { trials = 60 }: FirstMachineOptions = {},
): Steps<FirstMachines> {
  const asked = wantedKinds(stock)
  const machines: FirstMachine[] = []
  const without: { kind: SketchKind; reason: string }[] = []
  let spent = 0
  for (const [k, kind] of asked.entries()) {
    const budget = { left: trials }
    const best = yield* within(bestOfKind(stock, kind, budget), k / asked.length, 1 / asked.length)
    spent += trials - budget.left
    if (typeof best === 'string') {
      without.push({ kind, reason: best })
      continue
    }
    const part = greatestPart(stock, best.sketch)
    machines.push({
      kind,
      design: best.design,
      chain: best.chain,
      sketch: best.sketch,
      greatestPart_mm: part,
      fitsPrinter: stock.printerBed_mm === undefined || part <= nominal(stock.printerBed_mm),
      blocking: best.blocking,
    })
  }
  machines.sort((a, b) => a.blocking.length - b.blocking.length || b.chain.year.energy - a.chain.year.energy)
  return { machines, without, trials: spent }
}
