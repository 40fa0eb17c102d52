/** The room of the shaft: what turns, what rubs, and how fast it may go. */
import { ShaftMechanics } from '../view/mechanics-shaft.tsx'
import type { RoomSight, RoomView } from './room.ts'

const View = ({ row }: RoomView) => <ShaftMechanics speed={row.speed} />

export const shaftRoom: RoomSight = { View }
