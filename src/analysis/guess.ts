/** The guesses behind a machine, each with the machine that it would be at either end of its spread. */
import type { Design } from '../machine/design.ts'
import { pathText } from '../machine/fault.ts'
import type { Machine, MagnetMaterial } from '../machine/machine.ts'
import { parseDesign } from '../machine/parse.ts'
import { resolveDesign } from '../machine/resolve.ts'
import type { Known } from '../units/quantity.ts'
import { type Assumptions, usualAssumptions } from './compute.ts'
import { thermalSpread } from './stator-cooling.ts'

/** A guess, turned to either end of its spread. */
export interface Guess {
  /** Where it stands in the document; an assumption of the engine has a plain name. */
  readonly path: string
  /**
   * What is guessed about what: two machines whose guesses are alike here share one fact of the world, off by the same
   * in both. Undefined where the guess is about this machine alone.
   */
  readonly fact: string | undefined
  readonly at: (side: 1 | -1) => { readonly machine: Machine; readonly assumptions: Assumptions }
}

/** A guess without a spread is taken to be off by this share: common practice, no source. */
const unspokenShare = 0.2

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

/** The document with that quantity moved by `share` of its spread. */
function shifted(value: unknown, keys: Keys, share: number): unknown {
  const [key, ...rest] = keys
  if (key === undefined) {
    const quantity = value as SpreadQuantity
    return { ...quantity, value: quantity.value + share * widthOf(quantity) }
  }
  if (Array.isArray(value)) return value.map((inner, k) => (k === key ? shifted(inner, rest, share) : inner))
  const record = value as Record<string, unknown>
  return { ...record, [key]: shifted(record[key], rest, share) }
}

/** Ends outside what a document may say are drawn back by halves until it may say them. */
function shiftedMachine(design: Design, keys: Keys, side: 1 | -1): Machine {
  for (let share = 1; share > 0.01; share /= 2) {
    const parsed = parseDesign(shifted(design, keys, side * share))
    if (parsed.ok) return resolveDesign(parsed.design)
  }
  return resolveDesign(design)
}

/**
 * Every guess of a machine: the document's quantities with a spread, the magnets' grade, and the engine's own estimate
 * of the way of the heat. Winding and its cooling are each machine's own, whatever they share in numbers.
 */
export function guessesOf(machine: Machine): Guess[] {
  const { design, rotor, stator } = machine
  const measured = rotor.magnet.measured !== undefined
  // what was read on loose magnets has gone into the spread of their remanence
  const fused = (keys: Keys) =>
    keys[0] === 'rotor' &&
    keys[1] === 'magnet' &&
    (keys[2] === 'readings' || (measured && keys[2] === 'polarization_T'))
  const guessed = guessedKeys(design).filter(({ keys }) => !fused(keys))
  const documented = guessed.map(({ keys, quantity }): Guess => {
    const path = pathText(keys)
    return {
      path,
      fact: keys[0] === 'stator' ? undefined : `${path} ${JSON.stringify(quantity)}`,
      at: (side) => ({ machine: shiftedMachine(design, keys, side), assumptions: usualAssumptions }),
    }
  })
  const moved = <Material extends MagnetMaterial>(material: Material, side: 1 | -1): Material => ({
    ...material,
    remanence: material.remanence + side * material.remanenceSpread,
  })
  const grade: Guess = {
    path: measured ? 'rotor.magnet.readings' : 'rotor.magnet.grade',
    fact: `rotor.magnet.grade ${design.rotor.magnet.grade}`,
    at: (side) => ({
      machine: {
        ...machine,
        rotor: {
          ...rotor,
          magnet: moved(rotor.magnet, side),
          rings: rotor.rings.map((ring) =>
            ring.map((place) =>
              place.material === undefined ? place : { ...place, material: moved(place.material, side) },
            ),
          ),
        },
      },
      assumptions: usualAssumptions,
    }),
  }
  const cooling: Guess = {
    path: 'estimated thermal resistance',
    fact: undefined,
    at: (side) => ({ machine, assumptions: { coolingFactor: 1 + side * thermalSpread } }),
  }
  return [
    ...documented,
    ...(rotor.magnet.remanenceSpread > 0 && (measured || design.rotor.magnet.grade !== undefined)
      ? [grade]
      : []),
    ...(stator.thermalResistance === undefined ? [cooling] : []),
  ]
}
