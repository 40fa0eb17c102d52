/** Ladders of the printed disc that carries the magnets. */
import type { Design } from '../../machine/design.ts'
import { type Ladder, scaleLadder } from './ladder.ts'

export const thickerCarrier = ({ rotor: { carrier } }: Design): Ladder =>
  carrier === undefined
    ? []
    : scaleLadder(['rotor', 'carrier', 'thickness_mm'], carrier.thickness_mm, {
        factors: [1.25, 1.5, 2, 2.5, 3],
        step: 0.5,
      })
