/** Ladders of the battery: its capacity, its chemistry, the volts of the whole system, its fuse. */
import { batteryChemistries } from '../../data/battery.ts'
import type { Design } from '../../machine/design.ts'
import { nominal } from '../../units/quantity.ts'
import { inSteps, valueChange } from '../remedy/change.ts'
import { turnsChanges } from '../remedy/turns-change.ts'
import { type Ladder, put } from './ladder.ts'

/** More of the same battery in parallel: capacity up, resistance down with it. */
export function moreBattery({ load }: Design): Ladder {
  if (load.kind !== 'battery') return []
  const { capacity_Ah, resistance_mohm } = load
  return [1.5, 2, 3, 4, 6, 8, 10, 15, 20].map((factor) => [
    ...(capacity_Ah === undefined
      ? []
      : [valueChange(['load', 'capacity_Ah'], capacity_Ah, inSteps(factor * nominal(capacity_Ah), 0.1))]),
    valueChange(
      ['load', 'resistance_mohm'],
      resistance_mohm,
      Number((nominal(resistance_mohm) / factor).toPrecision(3)),
    ),
  ])
}

/** Chemistries that bear a temperature [°C] while charging; cells and electronics were those of the old one. */
export function chemistryFor({ load }: Design, coldest_degC: number): Ladder {
  if (load.kind !== 'battery') return []
  return batteryChemistries
    .filter(({ name, chargeLeast_degC }) => name !== load.chemistry && chargeLeast_degC <= coldest_degC)
    .map(({ name }) => [
      put(['load', 'chemistry'], load.chemistry, name),
      ...(load.cells === undefined ? [] : [put(['load', 'cells'], load.cells, undefined)]),
      ...(load.disconnect === undefined ? [] : [put(['load', 'disconnect'], load.disconnect, undefined)]),
    ])
}

/** The whole system at another multiple of its volts, the winding's turns with it; undefined where parts would not follow. */
function systemVolts(design: Design, factor: number): Ladder[number] | undefined {
  const { load, converter, protection, stator } = design
  // what is switched at volts of its own would have to be bought anew
  if (load.kind !== 'battery' || load.disconnect !== undefined || converter !== undefined) return undefined
  if (protection.dump !== undefined) return undefined
  const { voltage_V, cells, resistance_mohm, capacity_Ah } = load
  const turns = Math.max(1, Math.round(factor * stator.winding.turns))
  return [
    valueChange(['load', 'voltage_V'], voltage_V, inSteps(factor * nominal(voltage_V), 0.01)),
    ...(cells === undefined ? [] : [put(['load', 'cells'], cells, Math.round(factor * cells))]),
    valueChange(['load', 'resistance_mohm'], resistance_mohm, factor ** 2 * nominal(resistance_mohm)),
    ...(capacity_Ah === undefined
      ? []
      : [valueChange(['load', 'capacity_Ah'], capacity_Ah, nominal(capacity_Ah) / factor)]),
    ...turnsChanges(design, turns),
  ]
}

/** The same battery's cells at twice and four times the volts, turns and wire to suit. */
export const higherSystemVolts = (design: Design): Ladder =>
  [2, 4].flatMap((factor) => {
    const step = systemVolts(design, factor)
    return step === undefined ? [] : [step]
  })

/** Fewer cells on the same winding: current begins earlier. */
export function lowerBatteryVolts({ load, converter, protection }: Design): Ladder {
  if (load.kind !== 'battery' || load.disconnect !== undefined || converter !== undefined) return []
  if (protection.dump !== undefined || nominal(load.voltage_V) < 20) return []
  const { voltage_V, cells } = load
  return [
    [
      valueChange(['load', 'voltage_V'], voltage_V, inSteps(nominal(voltage_V) / 2, 0.01)),
      ...(cells === undefined ? [] : [put(['load', 'cells'], cells, Math.round(cells / 2))]),
    ],
  ]
}

/** Ratings that fuses are sold with [A]: common practice, no source. */
const fuseRatings = [
  1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 80, 100, 125, 150, 175, 200, 250, 300, 400,
] as const

/** Ratings above the least that are tried: thicker cable lets more current come. */
const ratingsTried = 4

/** The least fuses sold that pass a current, near the battery; on thicker cable where this one does not bear it. */
export function fittingFuse(
  { wiring, cable }: Design,
  least: number,
  cableFor: (amps: number) => number | undefined,
): Ladder {
  const ratings = fuseRatings.filter((amps) => amps >= least).slice(0, ratingsTried)
  return ratings.map((rating) => {
    const area = cableFor(rating)
    return [
      ...(wiring.fuse_A !== undefined && nominal(wiring.fuse_A) === rating
        ? []
        : [valueChange(['wiring', 'fuse_A'], wiring.fuse_A, rating)]),
      ...(wiring.fusePlace === 'near the battery'
        ? []
        : [put(['wiring', 'fusePlace'], wiring.fusePlace, 'near the battery')]),
      ...(area === undefined || area <= nominal(cable.area_mm2)
        ? []
        : [valueChange(['cable', 'area_mm2'], cable.area_mm2, area)]),
    ]
  })
}

/** Bounds of what switches a load at a battery's volts: full at rest, and the end of charge or where it takes itself off [V]. */
export function switchingBand(load: {
  readonly chemistry: string
  readonly cells: number
  readonly band: readonly [number, number]
  readonly disconnect: { readonly above: number } | undefined
}): readonly [number, number] | undefined {
  const cell = batteryChemistries.find(({ name }) => name === load.chemistry)
  if (cell === undefined) return undefined
  const low = load.cells * cell.restFull_V_per_cell
  const top = load.band[1]
  const high = load.disconnect === undefined ? top : Math.min(top, load.disconnect.above)
  return high > low ? [low, high] : undefined
}
