/** Remedy: magnets of a stronger grade in the same size and heat class. */
import { magnetGrades } from '../../data/magnet-grade.ts'
import type { Design } from '../../machine/design.ts'
import { bestAttempt } from './search.ts'
import { strongerGrades } from './stronger-grade.ts'
import type { Attempt, RemedyRule } from './trial.ts'

function attempts({ rotor: { magnet } }: Design): Attempt[] {
  const { grade } = magnet
  const own = magnetGrades.find(({ name }) => name === grade)
  if (own === undefined) return []
  return strongerGrades(own).map(({ name }) => ({
    changes: [{ path: ['rotor', 'magnet', 'grade'], from: grade, to: name }],
  }))
}

export const magnetRemedy: RemedyRule = {
  kind: 'magnets',
  unfit: ({ design }) =>
    design.rotor.magnet.grade === undefined
      ? 'the magnets are not given by a grade'
      : (design.rotor.magnet.readings?.length ?? 0) > 0
        ? 'the magnets were measured: another grade would have to be measured too'
        : attempts(design).length === 0
          ? 'no stronger grade that bears as much heat is in the table'
          : undefined,
  search: (context) => bestAttempt(context, attempts(context.design)),
}
