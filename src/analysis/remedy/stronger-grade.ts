/** Grades that a magnet could be bought in for more field. */
import { magnetGrades } from '../../data/magnet-grade.ts'

type Grade = (typeof magnetGrades)[number]

/** Of the same family, with more remanence and as much heat borne, rising; of equals the one that bears least more heat. */
export const strongerGrades = (own: Grade): readonly Grade[] =>
  magnetGrades
    .filter(
      ({ family, remanence_T, limit_degC }) =>
        family === own.family && remanence_T > own.remanence_T && limit_degC >= own.limit_degC,
    )
    .sort((a, b) => a.remanence_T - b.remanence_T || a.limit_degC - b.limit_degC)
    .filter((each, k, all) => k === 0 || each.remanence_T > all[k - 1]!.remanence_T)
