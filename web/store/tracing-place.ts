/** Where tracings are kept on this machine: a database of the browser for them alone. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { isRawObject, type RawObject } from './raw-document.ts'

/** A kept state of a design. */
export interface Tracing {
  readonly id: string
  /** A, B, C …; its own for as long as it is kept. */
  readonly letter: string
  readonly name: string
  readonly document: RawObject
  /** Place on the shelf of the design that it was kept of. */
  readonly design: string
  /** [ms since 1970] */
  readonly keptAt: number
  /** Which dash and colour it lies over the design with; undefined where it does not. */
  readonly look: number | undefined
}

interface Places extends DBSchema {
  tracings: { key: string; value: Tracing }
}

export type TracingPlace = IDBPDatabase<Places>

const form = 1

export const openTracingPlace = (name = 'gustloom-tracings'): Promise<TracingPlace> =>
  openDB<Places>(name, form, {
    upgrade(place) {
      place.createObjectStore('tracings', { keyPath: 'id' })
    },
  })

const isTracing = (value: unknown): value is Tracing =>
  isRawObject(value) &&
  typeof value['id'] === 'string' &&
  typeof value['letter'] === 'string' &&
  typeof value['name'] === 'string' &&
  isRawObject(value['document'])

/** The first kept first. */
export async function tracingsIn(place: TracingPlace): Promise<readonly Tracing[]> {
  const found = await place.getAll('tracings')
  return found.filter(isTracing).sort((a, b) => a.keptAt - b.keptAt)
}

export async function putTracing(place: TracingPlace, tracing: Tracing): Promise<void> {
  await place.put('tracings', tracing)
}

export async function dropTracing(place: TracingPlace, id: string): Promise<void> {
  await place.delete('tracings', id)
}
