/** Ladders of the magnets: stronger, harder to demagnetise, thicker; held, in order. */
import { magnetGrades } from '../../data/magnet-grade.ts'
import type { Design } from '../../machine/design.ts'
import { strongerGrades } from '../remedy/stronger-grade.ts'
import { type Ladder, put, scaleLadder } from './ladder.ts'

const gradePath = ['rotor', 'magnet', 'grade'] as const

/** What was read on loose magnets says nothing of another grade. */
const exchangeable = ({ rotor: { magnet } }: Design) =>
  (magnet.readings?.length ?? 0) > 0 ? undefined : magnetGrades.find(({ name }) => name === magnet.grade)

/** Grades of more remanence that bear as much heat. */
export function strongerGrade(design: Design): Ladder {
  const own = exchangeable(design)
  if (own === undefined) return []
  return strongerGrades(own).map(({ name }) => [put(gradePath, own.name, name)])
}

/** Grades of the same family with more coercivity: at each step the one of least remanence lost. */
export function harderGrade(design: Design): Ladder {
  const own = exchangeable(design)
  if (own === undefined) return []
  return magnetGrades
    .filter(
      ({ family, intrinsicCoercivity_kA_per_m }) =>
        family === own.family && intrinsicCoercivity_kA_per_m > own.intrinsicCoercivity_kA_per_m,
    )
    .sort(
      (a, b) =>
        a.intrinsicCoercivity_kA_per_m - b.intrinsicCoercivity_kA_per_m ||
        Math.abs(a.remanence_T - own.remanence_T) - Math.abs(b.remanence_T - own.remanence_T),
    )
    .filter(
      (each, k, all) =>
        k === 0 || each.intrinsicCoercivity_kA_per_m > all[k - 1]!.intrinsicCoercivity_kA_per_m,
    )
    .map(({ name }) => [put(gradePath, own.name, name)])
}

export const thickerMagnets = ({ rotor: { magnet } }: Design): Ladder =>
  scaleLadder(['rotor', 'magnet', 'thickness_mm'], magnet.thickness_mm, {
    factors: [1.1, 1.25, 1.5, 1.75, 2],
    step: 0.5,
  })

/** Every magnet that the document calls wrongly glued turned over. */
export function magnetsTurned({ rotor, defects }: Design): Ladder {
  const flipped = defects.some(({ kind }) => kind === 'flipped magnet')
  const changes = [
    ...(rotor.poleSequence === undefined
      ? []
      : [put(['rotor', 'poleSequence'], rotor.poleSequence, undefined)]),
    ...(flipped
      ? [
          put(
            ['defects'],
            defects,
            defects.filter(({ kind }) => kind !== 'flipped magnet'),
          ),
        ]
      : []),
  ]
  return changes.length === 0 ? [] : [changes]
}

/** A printed pocket round every magnet in place of glue alone. */
export const pockets = ({ rotor: { retention } }: Design): Ladder =>
  retention.kind === 'glue' ? [[put(['rotor', 'retention', 'kind'], retention.kind, 'pocket')]] : []
