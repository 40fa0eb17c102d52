/** What the glossary tells of one word. */
import type { RoomKey } from '../store/room.ts'

export interface TermEntry {
  /** Where the word is met most. */
  readonly room: RoomKey
  readonly name: () => string
  readonly says: () => string
  /** Of the standard that defines the term; without one it is common practice, no source. */
  readonly clause?: string
}
