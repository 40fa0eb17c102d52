/** The guesses behind a machine, and the machine that it would be with any of them off by so much. */
import { consistencyFaults } from '../machine/consistency.ts'
import type { Design } from '../machine/design.ts'
import { pathText } from '../machine/fault.ts'
import type { Machine, MagnetMaterial } from '../machine/machine.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import type { Known } from '../units/quantity.ts'
import { thermalSpread } from './machine-heat.ts'
import { type Assumptions, usualAssumptions } from './unjudged-chain.ts'

/** A machine as it would be, and what the engine would assume of it. */
export interface Supposed {
  readonly machine: Machine
  readonly assumptions: Assumptions
}

/** What guesses change, before it is made a machine. */
interface Supposition {
  readonly document: Design
  /** Of every magnet's remanence, in its half-widths. */
  readonly magnets: number
  readonly assumptions: Assumptions
}

export interface Guess {
  /** Where it stands in the document; an assumption of the engine has a plain name. */
  readonly path: string
  /**
   * What is guessed about what: two machines whose guesses are alike here share one fact of the world, off by the same
   * in both. Undefined where the guess is about this machine alone.
   */
  readonly fact: string | undefined
  /** normal: a best value and a half-width at 90 %. rectangular: only a range was said, and all in it is alike. */
  readonly shape: 'normal' | 'rectangular'
  /** Best value and half-width at 90 %: in the document's unit, or a factor about one. */
  readonly value: number
  readonly halfWidth: number
  /** Between these shifts, in half-widths, it is drawn: as far as the document may say it. */
  readonly limits: () => readonly [number, number]
  readonly moved: (supposition: Supposition, shift: number) => Supposition
  /** The machine with this guess alone at an end of its half-width. */
  readonly at: (side: 1 | -1) => Supposed
}

/** A guess without a spread is taken to be off by this share: common practice, no source. */
const unspokenShare = 0.2

/**
 * Half-width at 90 % of the least drag of a blade's section, as a share: a carved or printed blade against the smooth
 * model of the wind tunnel. Common practice, no source.
 */
export const sectionDragSpread = 0.3

/** Normal spreads end here, in half-widths: beyond it one draw in two thousand. */
const farthest = 2

type Keys = readonly (string | number)[]

interface SpreadQuantity {
  readonly value: number
  readonly spread?: number | undefined
  readonly known?: Known | undefined
}

const isQuantity = (value: object): value is SpreadQuantity =>
  'value' in value && typeof value.value === 'number' && ('spread' in value || 'known' in value)

const widthOf = ({ value, spread, known }: SpreadQuantity): number =>
  spread ?? (known === 'guessed' ? unspokenShare * Math.abs(value) : 0)

/** Quantities of the document that may be off. */
function guessedKeys(value: unknown, keys: Keys = []): { keys: Keys; quantity: SpreadQuantity }[] {
  if (typeof value !== 'object' || value === null) return []
  if (isQuantity(value)) return widthOf(value) > 0 ? [{ keys, quantity: value }] : []
  return Object.entries(value).flatMap(([key, inner]) =>
    guessedKeys(inner, [...keys, Array.isArray(value) ? Number(key) : key]),
  )
}

/** The document with that quantity moved by `shift` of its half-widths. */
function shifted(value: unknown, keys: Keys, shift: number): unknown {
  const [key, ...rest] = keys
  if (key === undefined) {
    const quantity = value as SpreadQuantity
    return { ...quantity, value: quantity.value + shift * widthOf(quantity) }
  }
  if (Array.isArray(value)) return value.map((inner, k) => (k === key ? shifted(inner, rest, shift) : inner))
  const record = value as Record<string, unknown>
  return { ...record, [key]: shifted(record[key], rest, shift) }
}

/** The farthest shift towards `end` at which the document may still say it. */
function boundOf(design: Design, keys: Keys, end: number): number {
  const allowed = (shift: number) => parseDesign(shifted(design, keys, shift)).ok
  if (allowed(end)) return end
  let [inside, outside] = [0, end]
  for (let round = 0; round < 12; round++) {
    const middle = (inside + outside) / 2
    if (allowed(middle)) inside = middle
    else outside = middle
  }
  return inside
}

const movedMagnets = (machine: Machine, shift: number): Machine => {
  if (shift === 0) return machine
  const { rotor } = machine
  const moved = <Material extends MagnetMaterial>(material: Material): Material => ({
    ...material,
    remanence: material.remanence + shift * material.remanenceSpread,
  })
  return {
    ...machine,
    rotor: {
      ...rotor,
      magnet: moved(rotor.magnet),
      rings: rotor.rings.map((ring) =>
        ring.map((place) =>
          place.material === undefined ? place : { ...place, material: moved(place.material) },
        ),
      ),
    },
  }
}

/**
 * The machine with each guess off by its shift, in half-widths and within the guess's own limits. Where the document may
 * say each but not all at once, they are drawn back by halves until it may, the first `held` of them excepted; `share` is
 * what is left of the shifts.
 */
export function supposedMachine(
  { design }: Machine,
  guesses: readonly Pick<Guess, 'moved'>[],
  shifts: ArrayLike<number>,
  held = 0,
): Supposed & { readonly share: number } {
  for (let share = 1; ; share = share > 0.01 ? share / 2 : 0) {
    let supposition: Supposition = { document: design, magnets: 0, assumptions: usualAssumptions }
    guesses.forEach(({ moved }, k) => {
      const shift = shifts[k]! * (k < held ? 1 : share)
      if (shift !== 0) supposition = moved(supposition, shift)
    })
    const { document, magnets, assumptions } = supposition
    if (document === design || consistencyFaults(document).length === 0)
      return { machine: movedMagnets(resolveDesign(document), magnets), assumptions, share }
    if (share === 0) return { machine: resolveDesign(design), assumptions: usualAssumptions, share }
  }
}

/** Whether the blades' curve is computed from the polars of their section. */
const hasSections = ({ blades }: Machine): boolean =>
  blades.kind === 'optimum' || blades.kind === 'stations' || blades.kind === 'straight-blade'

/**
 * Every guess of a machine: the document's quantities with a spread, the magnets' grade, the engine's own estimate of
 * the way of the heat, and the drag of the blades' sections. Winding and its cooling are each machine's own, whatever
 * they share in numbers.
 */
export function guessesOf(machine: Machine): Guess[] {
  const { design, rotor, stator } = machine
  const measured = rotor.magnet.measured !== undefined
  // what was read on loose magnets has gone into the spread of their remanence
  const fused = (keys: Keys) =>
    keys[0] === 'rotor' &&
    keys[1] === 'magnet' &&
    (keys[2] === 'readings' || (measured && keys[2] === 'polarization_T'))
  const guess = (bare: Omit<Guess, 'at'>): Guess => ({
    ...bare,
    at: (side) => {
      const [from, to] = bare.limits()
      return supposedMachine(machine, [bare], [Math.min(Math.max(side, from), to)])
    },
  })
  const documented = guessedKeys(design)
    .filter(({ keys }) => !fused(keys))
    .map(({ keys, quantity }): Guess => {
      const path = pathText(keys)
      const rectangular = quantity.spread === undefined
      const most = rectangular ? 1 : farthest
      let limits: readonly [number, number] | undefined
      return guess({
        path,
        fact: keys[0] === 'stator' ? undefined : `${path} ${JSON.stringify(quantity)}`,
        shape: rectangular ? 'rectangular' : 'normal',
        value: quantity.value,
        halfWidth: widthOf(quantity),
        limits: () => {
          limits ??= [boundOf(design, keys, -most), boundOf(design, keys, most)]
          return limits
        },
        moved: (supposition, shift) => ({
          ...supposition,
          document: shifted(supposition.document, keys, shift) as Design,
        }),
      })
    })
  const grade = guess({
    path: measured ? 'rotor.magnet.readings' : 'rotor.magnet.grade',
    fact: `rotor.magnet.grade ${design.rotor.magnet.grade}`,
    shape: 'normal',
    value: rotor.magnet.remanence,
    halfWidth: rotor.magnet.remanenceSpread,
    limits: () => [-farthest, farthest],
    moved: (supposition, shift) => ({ ...supposition, magnets: shift }),
  })
  const assumed = (
    path: string,
    fact: string | undefined,
    { halfWidth, least }: { readonly halfWidth: number; readonly least: number },
    change: (factor: number) => Partial<Assumptions>,
  ) =>
    guess({
      path,
      fact,
      shape: 'normal',
      value: 1,
      halfWidth,
      limits: () => [least, farthest],
      moved: (supposition, shift) => ({
        ...supposition,
        assumptions: { ...supposition.assumptions, ...change(1 + shift * halfWidth) },
      }),
    })
  const cooling = assumed(
    'estimated thermal resistance',
    undefined,
    // a way of the heat five times as good as estimated would be another machine
    { halfWidth: thermalSpread, least: -0.8 / thermalSpread },
    (coolingFactor) => ({ coolingFactor }),
  )
  const drag = assumed(
    'drag of the blade sections',
    `drag of the blade sections ${JSON.stringify(design.blades)}`,
    { halfWidth: sectionDragSpread, least: -farthest },
    (sectionDragFactor) => ({ sectionDragFactor }),
  )
  return [
    ...documented,
    ...(rotor.magnet.remanenceSpread > 0 && (measured || design.rotor.magnet.grade !== undefined)
      ? [grade]
      : []),
    ...(stator.thermalResistance === undefined ? [cooling] : []),
    ...(hasSections(machine) ? [drag] : []),
  ]
}
