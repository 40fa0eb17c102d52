/** Ladders of bought parts: diodes, switch, converter, capacitor, lamp, and metal near the magnets. */
import { conductors } from '../../data/conductor.ts'
import { diodeClasses } from '../../data/diode.ts'
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { inSteps, valueChange } from '../remedy/change.ts'
import { type Ladder, put, roundedUp, scaleLadder, valueLadder } from './ladder.ts'

/** Repetitive peak reverse volts that diodes are sold for: common practice, no source. */
const reverseRatings = [45, 60, 100, 150, 200, 400, 600, 800, 1000, 1200, 1600] as const

/** The same kind for more reverse volts; silicon only, for the others end near where they are. */
export function moreReverseVolts({ bridge }: Design, now: number | undefined): Ladder {
  const own = diodeClasses.find(({ name }) => name === bridge.diode)
  if (own === undefined || own.kind !== 'silicon') return []
  return valueLadder(
    ['bridge', 'reverseVoltage_V'],
    bridge.reverseVoltage_V,
    reverseRatings.filter((volts) => volts > (now ?? own.reverse_V)),
  )
}

/** Kinds for more amps, and for volts enough; what was given for the old part goes with it. */
export function otherDiodes(
  { bridge }: Design,
  wanted: { readonly volts: number; readonly amps: number },
): Ladder {
  return diodeClasses
    .filter(
      ({ name, rated_A, reverse_V }) =>
        name !== bridge.diode && rated_A >= wanted.amps && reverse_V >= wanted.volts,
    )
    .sort((a, b) => a.rated_A - b.rated_A)
    .map(({ name }) => [
      put(['bridge', 'diode'], bridge.diode, name),
      ...(['threshold_V', 'slope_mohm', 'reverseVoltage_V'] as const).flatMap((field) =>
        bridge[field] === undefined ? [] : [put(['bridge', field], bridge[field], undefined)],
      ),
    ])
}

/** A switch for direct current and enough volts. */
export const fittingSwitch = ({ wiring }: Design, needed: number): Ladder => [
  [
    ...(wiring.switchKind === 'for direct current'
      ? []
      : [put(['wiring', 'switchKind'], wiring.switchKind, 'for direct current')]),
    valueChange(['wiring', 'switchVoltage_V'], wiring.switchVoltage_V, roundedUp(needed)),
  ],
]

/** Electronics whose input bears the volts. */
export const converterForVolts = ({ converter }: Design, needed: number): Ladder =>
  converter === undefined
    ? []
    : valueLadder(['converter', 'greatestInput_V'], converter.greatestInput_V, [roundedUp(needed)])

export const lessStandby = ({ converter }: Design): Ladder =>
  converter === undefined
    ? []
    : scaleLadder(['converter', 'standby_W'], converter.standby_W, {
        factors: [0.5, 0.3, 0.2, 0.1, 0],
        step: 0.01,
      })

/** A plain bridge in place of the converter. */
export const withoutConverter = ({ converter }: Design): Ladder =>
  converter === undefined ? [] : [[put(['converter'], converter, undefined)]]

/** What hangs on the machine, for more volts on its label at the same watts. */
export function moreLabelVolts({ load }: Design): Ladder {
  if (load.kind !== 'lamp' && load.kind !== 'heater') return []
  const { ratedVoltage_V } = load
  return [1.1, 1.2, 1.35, 1.5, 1.75, 2, 2.5, 3, 4].map((factor) => [
    valueChange(['load', 'ratedVoltage_V'], ratedVoltage_V, inSteps(factor * nominal(ratedVoltage_V), 0.1)),
    // the ohms that were read belong to the old one
    ...(load.kind === 'heater' && load.coldResistance_ohm !== undefined
      ? [put(['load', 'coldResistance_ohm'], load.coldResistance_ohm, undefined)]
      : []),
  ])
}

export const capacitorFor = ({ load }: Design, needed: number): Ladder =>
  load.kind === 'capacitor'
    ? valueLadder(['load', 'ratedVoltage_V'], load.ratedVoltage_V, [roundedUp(needed)])
    : []

const partPath = (k: number, name: string) => ['stator', 'metalParts', k, name] as const

/** The part in metals that resist ever more, as the table has them. */
export function resistiveMetal({ stator: { metalParts } }: Design, k: number): Ladder {
  const part = metalParts[k]
  const own = conductors.find(({ name }) => name === part?.material)
  if (part === undefined || own === undefined) return []
  return conductors
    .filter(
      ({ resistivity_ohm_mm2_per_m, relativePermeability }) =>
        // what magnets pull at is no way out
        relativePermeability === 1 && resistivity_ohm_mm2_per_m > own.resistivity_ohm_mm2_per_m,
    )
    .sort((a, b) => a.resistivity_ohm_mm2_per_m - b.resistivity_ohm_mm2_per_m)
    .map(({ name }) => [put(partPath(k, 'material'), part.material, name)])
}

/** The part ever farther from the magnets. */
export function partFarther({ stator: { metalParts } }: Design, k: number): Ladder {
  const part = metalParts[k]
  if (part === undefined) return []
  return valueLadder(
    partPath(k, 'distance_mm'),
    part.distance_mm,
    [2, 4, 6, 10, 15, 20, 30, 45].map((more) => inSteps(nominal(part.distance_mm) + more, 0.5)),
  )
}

/** Plastic, wood or glass fibre in its place: no metal any more. */
export const partWithoutMetal = ({ stator: { metalParts } }: Design, k: number): Ladder =>
  metalParts[k] === undefined
    ? []
    : [
        [
          put(
            ['stator', 'metalParts'],
            metalParts,
            metalParts.filter((_, j) => j !== k),
          ),
        ],
      ]
