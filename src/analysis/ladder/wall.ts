/** Ladders of the wall or band that holds the magnets. */
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { type Ladder, put, scaleLadder } from './ladder.ts'

const factors = [1.15, 1.3, 1.5, 1.75, 2, 2.5, 3] as const

/** Nothing where glue holds them, or where a force found by test stands in place of the wall. */
export const thickerWall = ({ rotor: { retention } }: Design): Ladder =>
  retention.kind === 'glue' || retention.hold_N !== undefined
    ? []
    : scaleLadder(['rotor', 'retention', 'wall_mm'], retention.wall_mm, { factors, step: 0.5 })

const bands_mm = [0.3, 0.5, 0.8, 1.2, 2] as const

/** A band of glass fibre in place of pocket walls of plastic, ever thicker. */
export const fibreBand = ({ rotor: { retention } }: Design): Ladder =>
  retention.kind !== 'pocket' || retention.hold_N !== undefined
    ? []
    : bands_mm.map((wall_mm) => [
        put(['rotor', 'retention', 'kind'], retention.kind, 'band'),
        put(['rotor', 'retention', 'material'], retention.material, 'glass fibre in epoxy'),
        put(['rotor', 'retention', 'wall_mm'], nominal(retention.wall_mm), wall_mm),
      ])
