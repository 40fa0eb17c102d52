/** What fuse, switch, diodes, cable and dump load must be made for, beside what the document says of them. */
import { diodeClasses } from '../data/diode.ts'
import { cableAmpacity, leastCableSize } from './cable-ampacity.ts'
import type { Chain } from './compute.ts'
import { fuseMargin } from './concern/battery-fuse.ts'
import { capacitorShare } from './concern/capacitor-voltage.ts'
import { reverseFactor } from './concern/diode-rating.ts'
import { dumpAlone } from './dump-alone.ts'
import { type Duty, workingDuty } from './electric-duty.ts'

/** A bound on one quantity, SI; `stated` is what the document says of the part. */
export interface Bound {
  readonly quantity: 'V' | 'A' | 'W' | 'ohm' | 'mm2'
  readonly side: 'at least' | 'at most'
  readonly value: number
  readonly stated: number | undefined
}

export interface Rating {
  readonly part: string
  /** What is asked besides numbers. */
  readonly kind: string
  /** What the document says to that: undefined where nothing. */
  readonly kindStated: string | undefined
  readonly kindFits: boolean | undefined
  readonly bounds: readonly Bound[]
}

export type RatingVerdict = 'fits' | 'does not fit' | 'not said'

const boundFits = ({ side, value, stated }: Bound): boolean | undefined =>
  stated === undefined ? undefined : side === 'at least' ? stated >= value : stated <= value

export function ratingVerdict({ kindFits, bounds }: Pick<Rating, 'kindFits' | 'bounds'>): RatingVerdict {
  const answers = [kindFits, ...bounds.map(boundFits)]
  if (answers.includes(false)) return 'does not fit'
  return answers.includes(undefined) ? 'not said' : 'fits'
}

const least = (quantity: Bound['quantity'], value: number, stated?: number): Bound => ({
  quantity,
  side: 'at least',
  value,
  stated,
})
const most = (quantity: Bound['quantity'], value: number, stated?: number): Bound => ({
  quantity,
  side: 'at most',
  value,
  stated,
})

type Rated = Pick<Chain, 'machine' | 'voltage' | 'rows' | 'blades' | 'generator' | 'runaway'>

function diodes({ machine, voltage, runaway }: Rated, duty: Duty): Rating {
  const kind = diodeClasses.find(({ name }) => name === machine.design.bridge.diode)
  const single = kind?.name.startsWith('diode') === true || kind?.kind === 'Schottky'
  const paths = single ? Math.max(2, voltage.phases.length) : 1
  return {
    part: single ? 'each diode' : kind?.kind === 'synchronous' ? 'synchronous bridge' : 'bridge',
    kind: 'repetitive reverse volts, mean amps',
    kindStated: kind?.name,
    kindFits: true,
    bounds: [
      least('V', reverseFactor * runaway.directVoltage, machine.diode.reverseVoltage),
      least('A', duty.directCurrent / paths, kind?.rated_A),
    ],
  }
}

function battery({ machine }: Rated, duty: Duty): Rating[] {
  const { wiring, cable } = machine
  const fuse = fuseMargin * duty.loadCurrent
  // the battery's own leads are not those of a cable before the bridge
  const own = cable.place === 'after bridge'
  const size = leastCableSize(fuse)
  const { fusePlace } = wiring
  return [
    {
      part: 'fuse',
      kind: 'for direct current, near the battery',
      kindStated: fusePlace === 'not said' ? undefined : fusePlace,
      kindFits: fusePlace === 'not said' ? undefined : fusePlace === 'near the battery',
      bounds: [
        least('A', fuse, wiring.fuse),
        ...(own ? [most('A', cableAmpacity(cable.area), wiring.fuse)] : []),
      ],
    },
    ...(size === undefined
      ? []
      : [
          {
            part: 'battery’s leads',
            kind: 'copper, so that the least fuse protects it',
            kindStated: own ? 'the cable' : undefined,
            kindFits: own ? true : undefined,
            bounds: [least('mm2', size * 1e-6, own ? cable.area : undefined)],
          },
        ]),
  ]
}

function dump(chain: Rated, duty: Duty): Rating {
  const stated = chain.machine.protection.dump
  const on = stated?.on ?? duty.loadVoltage
  const resistance = on ** 2 / duty.power
  const alone = dumpAlone(chain, stated?.resistance ?? resistance)
  return {
    part: 'dump load',
    kind: 'before the battery’s fuse, switch resting closed',
    kindStated: stated && `${stated.place}, ${stated.withoutPower} without power`,
    kindFits:
      stated && stated.place === 'behind the bridge' && stated.ownFuse && stated.withoutPower === 'on',
    bounds: [
      most('ohm', resistance, stated?.resistance),
      least('W', Math.max(on ** 2 / (stated?.resistance ?? resistance), alone.power), stated?.power),
    ],
  }
}

/** Every part of the electrical side that has a label, and what must stand on it. */
export function safetyRatings(chain: Rated): readonly Rating[] {
  const { machine, runaway } = chain
  const { wiring, load, converter, protection } = machine
  const duty = workingDuty(chain)
  const peak = runaway.directVoltage
  const insulation: Rating = {
    part: 'insulation of every wire',
    kind: 'peak volts at runaway',
    kindStated: undefined,
    kindFits: undefined,
    bounds: [least('V', peak)],
  }
  if (duty === undefined) return [insulation]
  const { switchKind } = wiring
  return [
    diodes(chain, duty),
    {
      part: 'switch of the load',
      kind: 'for direct current',
      kindStated: switchKind === 'not said' ? undefined : switchKind,
      kindFits: switchKind === 'not said' ? undefined : switchKind === 'for direct current',
      bounds: [
        least('V', Math.max(peak, duty.directVoltage), wiring.switchVoltage),
        least('A', duty.directCurrent),
      ],
    },
    ...(load.kind === 'battery' ? battery(chain, duty) : []),
    ...(protection.electrical === 'dump load' ? [dump(chain, duty)] : []),
    ...(load.kind === 'capacitor'
      ? [
          {
            part: 'capacitor',
            kind: 'direct volts',
            kindStated: undefined,
            kindFits: true,
            bounds: [least('V', Math.max(peak, duty.loadVoltage) / capacitorShare, load.ratedVoltage)],
          },
        ]
      : []),
    ...(converter === undefined
      ? []
      : [
          {
            part: 'converter’s input',
            kind: 'direct volts',
            kindStated: undefined,
            kindFits: true,
            bounds: [least('V', peak, converter.greatestInputVoltage)],
          },
        ]),
    insulation,
  ]
}
