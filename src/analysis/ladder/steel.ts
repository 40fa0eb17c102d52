/** Ladders of the rotor's steel: thicker, or put behind the magnets. */
import type { Design } from '../../machine/design.ts'
import type { SteelState } from '../iron-response.ts'
import { type Ladder, put, scaleLadder } from './ladder.ts'

const factors = [1.15, 1.3, 1.5, 1.75, 2, 2.5, 3, 4, 5] as const

export function thickerSteel({ rotor }: Design, place: SteelState['place']): Ladder {
  if (place === 'behind')
    return rotor.backIron?.kind === 'steel'
      ? scaleLadder(['rotor', 'backIron', 'thickness_mm'], rotor.backIron.thickness_mm, {
          factors,
          step: 0.5,
        })
      : []
  if (place === 'opposite')
    return rotor.arrangement === 'disc' && rotor.opposite?.kind === 'steel'
      ? scaleLadder(['rotor', 'opposite', 'thickness_mm'], rotor.opposite.thickness_mm, {
          factors,
          step: 0.5,
        })
      : []
  return rotor.arrangement === 'drum' && rotor.sleeve !== undefined
    ? scaleLadder(['rotor', 'sleeve', 'thickness_mm'], rotor.sleeve.thickness_mm, { factors, step: 0.5 })
    : []
}

/** Steel behind magnets that have none. */
export const steelBehind = ({ rotor }: Design): Ladder =>
  rotor.backIron?.kind === 'none' ? [[put(['rotor', 'backIron', 'kind'], 'none', 'steel')]] : []
