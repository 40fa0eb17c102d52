/** Ladders of the cable: thicker, or shorter. */
import { cableSizes } from '../../data/cable.ts'
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { type Ladder, scaleLadder, valueLadder } from './ladder.ts'

export const thickerCable = ({ cable }: Design): Ladder =>
  valueLadder(
    ['cable', 'area_mm2'],
    cable.area_mm2,
    cableSizes
      .map(({ crossSection_mm2 }) => crossSection_mm2)
      .filter((area) => area > nominal(cable.area_mm2) * 1.001),
  )

export const shorterCable = ({ cable }: Design): Ladder =>
  nominal(cable.length_m) > 0
    ? scaleLadder(['cable', 'length_m'], cable.length_m, {
        factors: [0.8, 0.65, 0.5, 0.4, 0.3, 0.2],
        step: 0.1,
      })
    : []
