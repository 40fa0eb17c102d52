/** What a room of the page is: its words, the nouns whose fields stand in it, and what is shown there. */
import type { ComponentType } from 'preact'
import type { WindRow } from '../../src/index.ts'
import type { Snapshot } from '../snapshot.ts'

export interface RoomView {
  readonly result: Snapshot
  /** Row of the wind looked at. */
  readonly index: number
  readonly row: WindRow
}

/** What is shown in a room, fetched when it is entered. */
export interface RoomSight {
  /** The thing itself and what the computation says of it; needs a result. */
  readonly View?: ComponentType<RoomView>
  /** What needs no result, and the whole width. */
  readonly Bench?: ComponentType
}

export interface Room {
  readonly title: () => string
  /** What is decided here, in one sentence. */
  readonly lead: () => string
  readonly load: () => Promise<RoomSight>
}
