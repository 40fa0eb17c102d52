/** Faults of the maker's own polar that its fields have together. */
import { nominal } from '../units/quantity.ts'
import { type BladePolars, ownSection } from './blade-polar.ts'
import { fault, rising } from './consistency-fault.ts'
import type { Fault } from './fault.ts'

/** Angles that every polar must hold, so that a blade finds its working point in it [°]. */
const neededAngles = { from: 0, to: 4 } as const

/** Angles and Reynolds numbers closer than this are one. */
const leastAngleStep_deg = 1e-3
const leastReynoldsStep = 1

export function bladePolarFaults(blades: {
  readonly section: string
  readonly polar?: BladePolars | undefined
}): Fault[] {
  const { section, polar } = blades
  if (section !== ownSection)
    return polar === undefined
      ? []
      : [
          fault(
            'blades.section',
            `“${ownSection}” where blades.polar is given; or leave blades.polar out`,
            section,
          ),
        ]
  if (polar === undefined)
    return [
      fault('blades.polar', `given, as blades.section is “${ownSection}”`, 'nothing', {
        code: 'missing-key',
      }),
    ]
  const reynolds = polar.map((one) => nominal(one.reynolds))
  return [
    ...rising(reynolds, leastReynoldsStep, (k) => `blades.polar[${k}].reynolds`, '1'),
    ...polar.flatMap(({ rows }, p) => {
      const path = (k: number) => `blades.polar[${p}].rows[${k}].angle_deg`
      const angles = rows.map((row) => nominal(row.angle_deg))
      const last = angles.length - 1
      const why = 'so that the blade’s working point lies inside'
      return [
        ...rising(angles, leastAngleStep_deg, path, 'deg'),
        ...(angles[0]! <= neededAngles.from
          ? []
          : [fault(path(0), `at most ${neededAngles.from}°, ${why}`, angles[0]!, { suffix: 'deg' })]),
        ...(angles[last]! >= neededAngles.to
          ? []
          : [fault(path(last), `at least ${neededAngles.to}°, ${why}`, angles[last]!, { suffix: 'deg' })]),
        ...(rows.some((row) => nominal(row.lift) > 0)
          ? []
          : [fault(`blades.polar[${p}].rows`, 'some lift above zero', 'no lift')]),
      ]
    }),
  ]
}
