/** Where concerns and faults arise: the room in which their noun of the document stands. */
import { isOpen } from '../../src/analysis/concern/concern.ts'
import type { ShownConcern } from '../shown-concern.ts'
import type { RoomKey } from './room.ts'

/** Nouns of the document by the room that holds their fields; what stands beside the nouns belongs to the whole. */
export const nounsOf: Readonly<Record<RoomKey, readonly string[]>> = {
  wind: ['site'],
  blades: ['blades', 'protection'],
  shaft: ['shaft'],
  magnets: ['rotor'],
  winding: ['stator'],
  bridge: ['bridge', 'converter'],
  cable: ['cable', 'wiring'],
  store: ['load', 'need'],
  whole: ['', 'purpose', 'answers'],
  begin: [],
  turn: ['bench'],
  storm: [],
  faults: ['defects'],
  compare: [],
  sure: ['tolerance'],
  sheet: [],
  shelf: ['sharing'],
  words: [],
}

const roomOfNoun = new Map(
  Object.entries(nounsOf).flatMap(([room, nouns]) => nouns.map((noun) => [noun, room as RoomKey] as const)),
)

export const roomOfPath = (path: string): RoomKey => roomOfNoun.get(path.split(/[.[]/, 1)[0] ?? '') ?? 'whole'

const grades: readonly ShownConcern['severity'][] = ['blocking', 'warning', 'note']

/** The gravest first; what is answered after what is open. */
export const byGravity = (concerns: readonly ShownConcern[]): ShownConcern[] =>
  [...concerns].sort(
    (a, b) =>
      Number(isOpen(b)) - Number(isOpen(a)) || grades.indexOf(a.severity) - grades.indexOf(b.severity),
  )

export const concernsIn = (concerns: readonly ShownConcern[], room: RoomKey): ShownConcern[] =>
  byGravity(concerns.filter(({ path }) => roomOfPath(path) === room))

/** What a badge tells: how many are open, and how grave the gravest of them is; notes raise no badge. */
export function badgeOf(
  concerns: readonly ShownConcern[],
): { readonly count: number; readonly gravest: 'blocking' | 'warning' } | undefined {
  const grave = concerns.filter((concern) => isOpen(concern) && concern.severity !== 'note')
  if (grave.length === 0) return undefined
  return {
    count: grave.length,
    gravest: grave.some(({ severity }) => severity === 'blocking') ? 'blocking' : 'warning',
  }
}
