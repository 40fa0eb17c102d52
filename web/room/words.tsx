/** The bench where the words of the trade are explained. */
import { WalkOffer } from '../hint/walk-start.tsx'
import { LaterView } from '../view/later-view.tsx'
import type { RoomSight } from './room.ts'

const load = async () => (await import('../hint/word-list.tsx')).WordList

function Bench() {
  return (
    <>
      <WalkOffer />
      <LaterView load={load} given={{}} />
    </>
  )
}

export const wordsRoom: RoomSight = { Bench }
