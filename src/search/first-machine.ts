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
import { type Judgement, judgementOf } from './first-judgement.ts'
import {
  type BundleSize,
  type Fittings,
  greatestPart,
  type Sketch,
  type SketchKind,
  sketchDocument,
} from './first-sketch.ts'

export interface FirstMachine extends Judgement {
  readonly kind: SketchKind
  readonly design: Design
  readonly chain: Chain
  readonly sketch: Sketch
  /** Biggest printed part [mm], and whether the printer's bed holds it in one piece. */
  readonly greatestPart_mm: number
  readonly fitsPrinter: boolean
}

export interface FirstMachines {
  /** The best first: none that blocks before one that does, then by the energy of a year, or by the wish. */
  readonly machines: readonly FirstMachine[]
  /** Kinds that cannot be drawn from the stock, and why. */
  readonly without: readonly { readonly kind: SketchKind; readonly reason: string }[]
  /** Whole chains that were computed. */
  readonly trials: number
}

const kinds: readonly SketchKind[] = ['drum, coils', 'drum, serpentine', 'disc, coils', 'two discs, coils']

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

interface Tried extends Judgement {
  readonly sketch: Sketch
  readonly fittings: Fittings
  readonly design: Design
  readonly chain: Chain
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
    return { sketch, fittings, design: parsed.design, chain, ...judgementOf(chain, stock, sketch.diameter_m) }
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
  readonly better: (tried: Tried) => void
}

/** The best of a kind within the budget of whole chains. */
function* bestOfKind(stock: Stock, kind: SketchKind, budget: Budget): Steps<Tried | string> {
  const whole = budget.left
  const outdoor = stock.class === 'outdoor'
  const once = (sketch: Sketch, fittings: Fittings, previous: Chain | undefined) => {
    budget.left -= 1
    return within(tried(stock, sketch, fittings, previous), 1 - (budget.left + 1) / whole, 1 / whole)
  }
  function* run(sketch: Sketch, fittings: Fittings, previous: Chain | undefined): Steps<Tried | string> {
    const bare: Tried | string = yield* once(sketch, fittings, previous)
    if (typeof bare === 'string' || budget.left < 2 || !bare.blocking.includes('magnet-retention'))
      return bare
    // a faster rotor is no worse a machine for wanting a thicker wall
    const { wall_mm } = fitted(bare.chain, fittings)
    if (wall_mm <= fittings.wall_mm) return bare
    const held: Tried | string = yield* once(sketch, { ...fittings, wall_mm }, bare.chain)
    return typeof held === 'string' || held.worth <= bare.worth ? bare : held
  }
  const usual = usualFittings(kind)
  let best: Tried | string = yield* run(startOf(kind, stock), usual, undefined)
  for (const depth_mm of typeof best === 'string' ? depths_mm : [])
    if (typeof best === 'string') best = yield* run({ ...startOf(kind, stock), depth_mm }, usual, undefined)
  if (typeof best === 'string') return best
  budget.better(best)
  const suited = suitedStrands(best, stock)
  if (suited !== best.sketch.strands) {
    const next: Tried | string = yield* run({ ...best.sketch, strands: suited }, best.fittings, best.chain)
    if (typeof next !== 'string' && (next.charges || !best.charges)) best = next
  }
  const seen = new Set<string>()
  for (let round = 0; round < 12 && budget.left > 2; round++) {
    const before: Tried = best
    let now: Tried = before
    // sizes that follow from what flows go with the machine of the moment
    const again: Tried | string = yield* run(now.sketch, fitted(now.chain, now.fittings), now.chain)
    if (typeof again !== 'string') now = again
    for (const move of movesOf(now.sketch, outdoor)) {
      const name = JSON.stringify([move, now.fittings])
      if (budget.left < 2 || seen.has(name)) continue
      seen.add(name)
      let step: Sketch | undefined = move
      // goes on the same way as long as it helps
      while (step !== undefined && budget.left > 1) {
        const next: Tried | string = yield* run(step, now.fittings, now.chain)
        if (typeof next === 'string' || next.worth <= now.worth) break
        const from: Sketch = now.sketch
        now = next
        budget.better(now)
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
  /** Whole chains for each kind; 80 if left out. */
  readonly trials?: number
  /** Hears of every machine that is better than those of its kind before it. */
  readonly better?: (machine: FirstMachine) => void
}

const never = 'none of the sizes tried charges in any wind of this place'

/**
 * The first whole machines from a stock, one of each kind that can be built. Free sizes (depth and fill of the bundle,
 * wires in hand, connection, blades, limiter) are walked one by one from a usual start, each step on the whole chain, as
 * long as the energy of a year grows and nothing blocks the class; where a power is wished for, until it is reached, and
 * then for the smallest blades that reach it. Cable, fuse, diodes, dump and pocket walls follow from what flows. A walk of
 * this kind finds a good machine, not the best there is. Yields the fraction done.
 */
export function* firstMachines(
  stock: Stock,
  { trials = 80, better = () => {} }: FirstMachineOptions = {},
): Steps<FirstMachines> {
  const asked = wantedKinds(stock)
  const machines: FirstMachine[] = []
  const without: { kind: SketchKind; reason: string }[] = []
  const machineOf = (tried: Tried): FirstMachine => {
    const part = greatestPart(stock, tried.sketch)
    return {
      ...tried,
      kind: tried.sketch.kind,
      greatestPart_mm: part,
      fitsPrinter: stock.printerBed_mm === undefined || part <= nominal(stock.printerBed_mm),
    }
  }
  let spent = 0
  for (const [k, kind] of asked.entries()) {
    const budget: Budget = { left: trials, better: (tried) => better(machineOf(tried)) }
    const best = yield* within(bestOfKind(stock, kind, budget), k / asked.length, 1 / asked.length)
    spent += trials - budget.left
    if (typeof best === 'string') without.push({ kind, reason: best })
    else if (!best.charges) without.push({ kind, reason: never })
    else machines.push(machineOf(best))
  }
  machines.sort((a, b) => a.blocking.length - b.blocking.length || b.worth - a.worth)
  return { machines, without, trials: spent }
}
