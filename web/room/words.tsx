/** The bench where the words of the trade are explained. */
import { LaterView } from '../view/later-view.tsx'
import type { RoomSight } from './room.ts'

const load = async () => (await import('../hint/word-list.tsx')).WordList

export const wordsRoom: RoomSight = { Bench: () => <LaterView load={load} given={{}} /> }
