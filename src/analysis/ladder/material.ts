/** Ladders of what bears heat: enamel, what the wire is cast in or wound on, and the wall that holds magnets. */
import { insulationClasses } from '../../data/insulation-class.ts'
import { plastics } from '../../data/plastic.ts'
import { resins } from '../../data/resin.ts'
import type { Design } from '../../machine/design.ts'
import { type Ladder, put } from './ladder.ts'

/** Classes that enamelled wire is sold in. Common practice, no source. */
const soldClasses = ['A', 'B', 'F', 'H', 'N'] as const

/** Enamel of ever higher classes. */
export function higherEnamel({ stator: { wire } }: Design): Ladder {
  const limit = (name: string) => insulationClasses.find((each) => each.name === name)?.limit_degC ?? 0
  return soldClasses
    .filter((name) => limit(name) > limit(wire.insulationClass))
    .map((name) => [put(['stator', 'wire', 'insulationClass'], wire.insulationClass, name)])
}

interface Softening {
  readonly name: string
  readonly softening_degC: number
}

const later = (rows: readonly Softening[], now: string): Softening[] => {
  const own = [...plastics, ...resins].find(({ name }) => name === now)
  // a wound band is no plastic: none of these could take its place
  if (own === undefined) return []
  return rows
    .filter(({ softening_degC }) => softening_degC > own.softening_degC)
    .sort((a, b) => a.softening_degC - b.softening_degC)
}

/** Of the same kind, resin or plastic, what softens later. */
export function hardierSupport({ stator: { support } }: Design): Ladder {
  const cast = resins.some(({ name }) => name === support)
  return later(cast ? resins : plastics, support).map(({ name }) => [
    put(['stator', 'support'], support, name),
  ])
}

/** The wall of a plastic that softens later. */
export const hardierWall = ({ rotor: { retention } }: Design): Ladder =>
  later(plastics, retention.material).map(({ name }) => [
    put(['rotor', 'retention', 'material'], retention.material, name),
  ])
