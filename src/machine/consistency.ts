/** Faults of a document whose values are allowed one by one but cannot stand together. */
import { nominal, type Quantity } from '../units/quantity.ts'
import { bladePolarFaults } from './blade-polar-consistency.ts'
import { verticalBladeFaults } from './blade-vertical-consistency.ts'
import { atMost, fault, rising } from './consistency-fault.ts'
import { defectFaults } from './defect-consistency.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'
import { metalPartFaults } from './metal-part-consistency.ts'
import { protectionFaults } from './protection-consistency.ts'
import { rotorFaults } from './rotor-consistency.ts'
import { siteFaults } from './site-consistency.ts'
import { windingFaults } from './winding-consistency.ts'
import { wireFaults } from './wire-consistency.ts'

/** The longest slope of a table of power coefficients that a number can carry: λ steps at least this. */
const leastRatioStep = 1e-3
const leastStationStep_mm = 1e-3

/** Where the straight blade takes its chord and its twist from: the hub must lie inside the innermost of them. */
const straightestHub = 0.4
const greatestHub = 0.95

function bladeFaults({ blades }: Design): Fault[] {
  if (blades.kind === 'straight-blade' || blades.kind === 'drag-rotor') return verticalBladeFaults(blades)
  if (blades.kind === 'table') {
    const last = blades.points.length - 1
    const at = (k: number, name: string) => `blades.points[${k}].${name}`
    const zero = (k: number, name: string, value: Quantity, why: string) =>
      nominal(value) === 0 ? [] : [fault(at(k, name), `0, ${why}`, nominal(value))]
    const [first] = blades.points
    return [
      ...zero(0, 'tipSpeedRatio', first!.tipSpeedRatio, 'as the table begins at rest'),
      ...zero(0, 'powerCoefficient', first!.powerCoefficient, 'as a rotor at rest gives no power'),
      ...rising(
        blades.points.map((point) => nominal(point.tipSpeedRatio)),
        leastRatioStep,
        (k) => at(k, 'tipSpeedRatio'),
        '1',
      ),
      ...zero(
        last,
        'powerCoefficient',
        blades.points[last]!.powerCoefficient,
        'as the table ends at runaway, where the blades give no power',
      ),
    ]
  }
  const diameter = 1000 * nominal(blades.diameter_m)
  const straight = blades.kind === 'optimum' && blades.straightTaper
  const share = straight ? straightestHub : greatestHub
  const hub =
    blades.hubDiameter_mm === undefined
      ? []
      : atMost(
          'blades.hubDiameter_mm',
          nominal(blades.hubDiameter_mm),
          share * diameter,
          `${share} of the diameter${straight ? ' for blades of straight taper' : ''}, to leave room for blades`,
        )
  const polar = bladePolarFaults(blades)
  if (blades.kind === 'optimum') return [...hub, ...polar]
  const radii = blades.stations.map((station) => nominal(station.radius_mm))
  const path = (k: number) => `blades.stations[${k}].radius_mm`
  return [
    ...hub,
    ...polar,
    ...rising(radii, leastStationStep_mm, path, 'mm'),
    ...radii.flatMap((radius, k) => atMost(path(k), radius, diameter / 2, 'the radius of the blade tips')),
  ]
}

/** Every pair of values that cannot both be true; none for a machine that could be built. */
export const consistencyFaults = (design: Design): Fault[] => [
  ...siteFaults(design),
  ...bladeFaults(design),
  ...rotorFaults(design),
  ...windingFaults(design),
  ...wireFaults(design),
  ...metalPartFaults(design),
  ...protectionFaults(design),
  ...defectFaults(design),
]
