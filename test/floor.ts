/** The rule of the stairs: which file of the house may import which. */
import { posix } from 'node:path'
import ts from 'typescript'
import { isCheck } from './repository.ts'

/** Rooms that are one floor each, lowest first; a room of `physics` is one folder below it. */
const floors: readonly (readonly string[])[] = [
  ['src/units', 'src/refusal', 'src/numerics'],
  ['src/geometry', 'src/data', 'src/physics'],
  ['src/machine'],
  ['src/analysis', 'src/measurement'],
  ['src/search'],
  ['src/output'],
  ['src/index.ts'],
  ['cli', 'web'],
]

/** The only imports on one level: the tools of floor 0 refuse in the words of the refusal room. */
const sideways = new Set(['src/numerics src/refusal', 'src/units src/refusal'])

/** Where a package from outside may be named. Whatever is not listed may be named in checks only. */
const homeOfPackage: Readonly<Record<string, readonly string[]>> = {
  zod: ['src/machine'],
  three: ['web'],
  idb: ['web'],
  i18next: ['web'],
  preact: ['web'],
  '@preact/signals': ['web'],
  commander: ['cli'],
  ...Object.fromEntries(['first', 'concern', 'rest'].map((part) => [`german:${part}`, ['web']])),
  vite: ['cli'],
}

export interface Place {
  readonly floor: number
  readonly room: string
}

/** Floor and room of a path from the root, or nothing when it lives outside the house. */
export function placeOf(path: string): Place | undefined {
  for (const [floor, rooms] of floors.entries())
    for (const room of rooms) {
      if (path !== room && !path.startsWith(`${room}/`)) continue
      if (room !== 'src/physics') return { floor, room }
      const [, , physicsRoom = '', ...rest] = path.split('/')
      return rest.length === 0 ? { floor, room } : { floor, room: `${room}/${physicsRoom}` }
    }
  return undefined
}

/** Everything a text imports or re-exports, dynamic imports included. */
export const importsOf = (text: string): string[] =>
  ts.preProcessFile(text, true, true).importedFiles.map((file) => file.fileName)

const packageOf = (specifier: string): string =>
  specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/')

function faultOfPackage(place: Place, specifier: string): string | undefined {
  if (specifier.startsWith('node:')) return place.room === 'cli' ? undefined : 'only cli may use the runtime'
  const homes = homeOfPackage[packageOf(specifier)]
  if (homes === undefined) return 'a package no room of the house may name'
  return homes.includes(place.room) ? undefined : `only ${homes.join(', ')} may name it`
}

function faultOfPath(path: string, place: Place, target: string): string | undefined {
  const other = placeOf(target)
  if (isCheck(path)) {
    if (other === undefined) return /^(test|examples)\//.test(target) ? undefined : 'outside the house'
    if (other.room === place.room || other.floor < place.floor) return undefined
    return other.floor === 1 && place.floor === 1 ? undefined : 'a check may not look up the stairs'
  }
  if (isCheck(target)) return 'a check is not a part of the engine'
  if (other === undefined) {
    const known = /^(examples\/.+\.json|package\.json|design\.schema\.json)$/.test(target)
    return known && (place.room === 'cli' || place.room === 'web') ? undefined : 'outside the house'
  }
  if (other.room === place.room || other.floor < place.floor) return undefined
  if (other.floor > place.floor) return 'up the stairs'
  return sideways.has(`${place.room} ${other.room}`) ? undefined : 'sideways'
}

/** One sentence for each import of the file that breaks the rule. */
export function floorFaults(path: string, text: string): string[] {
  const place = placeOf(path)
  if (place === undefined) return [`${path}: in no room of the house`]
  if (place.room === 'src/physics') return [`${path}: physics lives in rooms, one folder each`]
  const faults: string[] = []
  for (const raw of importsOf(text)) {
    const specifier = raw.split('?')[0]!
    const relative = specifier.startsWith('.')
    const fault = relative
      ? faultOfPath(path, place, posix.join(posix.dirname(path), specifier))
      : isCheck(path)
        ? undefined
        : faultOfPackage(place, specifier)
    if (fault !== undefined) faults.push(`${path}: imports ${raw}: ${fault}`)
  }
  return faults
}
