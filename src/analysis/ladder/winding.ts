/** Ladders of the winding: room for its wire, coils and phases turned, counts and places that go together. */
import type { Design } from '../../machine/design.ts'
import type { GoodCount } from '../../physics/winding/star-of-slots.ts'
import { nominal, type Quantity } from '../../units/quantity.ts'
import { type Change, inSteps, valueChange } from '../remedy/change.ts'
import { type Ladder, put } from './ladder.ts'

const path = (...keys: readonly (string | number)[]) => ['stator', 'winding', ...keys]

/** A wider bundle at the same depth: legs of coils, or the runs of a wave. */
export function widerBundle({ stator: { winding } }: Design): Ladder {
  const [name, width] =
    winding.kind === 'coils'
      ? (['legWidth_mm', winding.legWidth_mm] as const)
      : (['bundleWidth_mm', winding.bundleWidth_mm] as const)
  return [1.1, 1.2, 1.35, 1.5, 1.75, 2].map((factor) => [
    valueChange(path(name), width, inSteps(factor * nominal(width), 0.1)),
  ])
}

/** Narrower legs, which clear each other. */
export function narrowerLegs({ stator: { winding } }: Design): Ladder {
  if (winding.kind !== 'coils') return []
  return [0.95, 0.9, 0.85, 0.8, 0.7, 0.6, 0.5].map((factor) => [
    valueChange(
      path('legWidth_mm'),
      winding.legWidth_mm,
      inSteps(factor * nominal(winding.legWidth_mm), 0.1),
    ),
  ])
}

/** The ends of the named coils swapped, defects put in on purpose included. */
export function coilsTurned({ stator: { winding }, defects }: Design, coils: readonly number[]): Ladder {
  if (winding.kind !== 'coils' || coils.length === 0) return []
  const byDefect = (coil: number) =>
    defects.some((each) => each.kind === 'reversed coil' && each.coil === coil)
  const wired = coils.filter((coil) => !byDefect(coil))
  const { reversedCoils } = winding
  const changes: Change[] = []
  if (wired.length > 0)
    changes.push(
      put(path('reversedCoils'), reversedCoils, [
        ...reversedCoils.filter((coil) => !wired.includes(coil)),
        ...wired.filter((coil) => !reversedCoils.includes(coil)),
      ]),
    )
  if (coils.some(byDefect))
    changes.push(
      put(
        ['defects'],
        defects,
        defects.filter((each) => !(each.kind === 'reversed coil' && coils.includes(each.coil))),
      ),
    )
  return [changes]
}

/** The ends of one phase of coils swapped. */
export function phaseTurned({ stator: { winding }, defects }: Design, phase: number): Ladder {
  if (winding.kind !== 'coils') return []
  if (defects.some((each) => each.kind === 'reversed phase' && each.phase === phase))
    return [
      [
        put(
          ['defects'],
          defects,
          defects.filter((each) => !(each.kind === 'reversed phase' && each.phase === phase)),
        ),
      ],
    ]
  const { reversedPhases } = winding
  const next = reversedPhases.includes(phase)
    ? reversedPhases.filter((each) => each !== phase)
    : [...reversedPhases, phase]
  return [[put(path('reversedPhases'), reversedPhases, next)]]
}

/** A coil or phase number that the new counts do not have names nothing any more. */
const listsEmptied = ({ stator: { winding } }: Design): Change[] =>
  winding.kind !== 'coils'
    ? []
    : [
        ...(winding.reversedCoils.length > 0 ? [put(path('reversedCoils'), winding.reversedCoils, [])] : []),
        ...(winding.parallelGroups > 1 ? [put(path('parallelGroups'), winding.parallelGroups, 1)] : []),
      ]

/** Other counts of coils on the same rotor, the nearest first, so wide that they fill the circle as before. */
export function otherCoilCounts(design: Design, good: readonly GoodCount[]): Ladder {
  const { winding } = design.stator
  if (winding.kind !== 'coils') return []
  const { coilCount, hole, legWidth_mm } = winding
  return good
    .filter(({ coils }) => coils !== coilCount && coils <= 180)
    .map(({ coils }) => {
      const ratio = coilCount / coils
      const widths = (
        ['holeWidth_mm', 'holeInnerWidth_mm', 'holeOuterWidth_mm', 'holeDiameter_mm'] as const
      ).flatMap((name) => {
        const width = (hole as unknown as Readonly<Record<string, Quantity | undefined>>)[name]
        return width === undefined
          ? []
          : [valueChange(path('hole', name), width, inSteps(ratio * nominal(width), 0.1))]
      })
      return [
        put(path('coilCount'), coilCount, coils),
        ...widths,
        valueChange(path('legWidth_mm'), legWidth_mm, inSteps(ratio * nominal(legWidth_mm), 0.1)),
        ...listsEmptied(design),
      ]
    })
}

/** All coils in one phase. */
export function onePhase({ stator: { winding, connection } }: Design): Ladder {
  if (winding.kind !== 'coils' || winding.phaseCount === 1) return []
  return [
    [
      put(path('phaseCount'), winding.phaseCount, 1),
      put(['stator', 'connection'], connection, 'single'),
      ...(winding.reversedPhases.length > 0 ? [put(path('reversedPhases'), winding.reversedPhases, [])] : []),
    ],
  ]
}

/** The phases of a wave at the places that serve, or the middle one reversed where that alone serves. */
export function phasesPlaced({ rotor, stator: { winding } }: Design, middleReversed: boolean): Ladder {
  if (winding.kind !== 'serpentine' || winding.phases.length < 2) return []
  if (middleReversed) {
    const { sense } = winding.phases[1]!
    return [[put(path('phases', 1, 'sense'), sense, sense === 'forward' ? 'reversed' : 'forward')]]
  }
  const { phases } = winding
  const step = (phases.length === 3 ? 120 : 90) / (rotor.poleCount / 2)
  const start = nominal(phases[0]!.offset_deg)
  return [
    phases.flatMap(({ offset_deg, sense }, k) => [
      ...(k === 0
        ? []
        : [valueChange(path('phases', k, 'offset_deg'), offset_deg, inSteps(start + k * step, 0.001))]),
      ...(sense === 'forward' ? [] : [put(path('phases', k, 'sense'), sense, 'forward')]),
    ]),
  ]
}

/** The layers of a wave's phases ever nearer to each other and to the magnets, down to bundle on bundle. */
export function phasesCloser({ stator: { winding } }: Design): Ladder {
  if (winding.kind !== 'serpentine' || winding.phases.length < 2) return []
  const places = winding.phases.map(({ distance_mm }) => nominal(distance_mm))
  const nearest = Math.min(...places)
  return [0.9, 0.8, 0.7, 0.6, 0.5, 0.4]
    .map((share) =>
      winding.phases.flatMap(({ distance_mm }, k) =>
        places[k] === nearest
          ? []
          : [
              valueChange(
                path('phases', k, 'distance_mm'),
                distance_mm,
                inSteps(nearest + share * (places[k]! - nearest), 0.05),
              ),
            ],
      ),
    )
    .filter((changes) => changes.length > 0)
}
