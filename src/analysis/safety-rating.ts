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
  /** Field of the document that says it; undefined where none does. */
  readonly path: string | undefined
}

export interface Rating {
  readonly part: string
  /** What is asked besides numbers. */
  readonly kind: string
  /** What the document says to that: undefined where nothing. */
  readonly kindStated: string | undefined
  readonly kindFits: boolean | undefined
  readonly kindPath: string | undefined
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

/** The field that settles whether a part fits: the first that is not met, else the first that is not said. */
export function ratingPath({ kindFits, kindPath, bounds }: Rating): string | undefined {
  const answers = [
    { fits: kindFits, path: kindPath },
    ...bounds.map((bound) => ({ fits: boundFits(bound), path: bound.path })),
  ].filter(({ path }) => path !== undefined)
  return (answers.find(({ fits }) => fits === false) ?? answers.find(({ fits }) => fits === undefined))?.path
}

const bound =
  (side: Bound['side']) =>
  (quantity: Bound['quantity'], value: number, stated?: number, path?: string): Bound => ({
    quantity,
    side,
    value,
    stated,
    path,
  })
const least = bound('at least')
const most = bound('at most')

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
    kindPath: 'bridge.diode',
    bounds: [
      least(
        'V',
        reverseFactor * runaway.directVoltage,
        machine.diode.reverseVoltage,
        'bridge.reverseVoltage_V',
      ),
      least('A', duty.directCurrent / paths, kind?.rated_A, 'bridge.diode'),
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
      kindPath: 'wiring.fusePlace',
      bounds: [
        least('A', fuse, wiring.fuse, 'wiring.fuse_A'),
        ...(own ? [most('A', cableAmpacity(cable.area), wiring.fuse, 'wiring.fuse_A')] : []),
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
            kindPath: undefined,
            bounds: [
              least('mm2', size * 1e-6, own ? cable.area : undefined, own ? 'cable.area_mm2' : undefined),
            ],
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
    kindPath: !stated
      ? 'protection.dump'
      : stated.place !== 'behind the bridge'
        ? 'protection.dump.place'
        : stated.ownFuse
          ? 'protection.dump.withoutPower'
          : 'protection.dump.ownFuse',
    bounds: [
      most('ohm', resistance, stated?.resistance, 'protection.dump.resistance_ohm'),
      least(
        'W',
        Math.max(on ** 2 / (stated?.resistance ?? resistance), alone.power),
        stated?.power,
        'protection.dump.power_W',
      ),
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
    kindPath: undefined,
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
      kindPath: 'wiring.switchKind',
      bounds: [
        least('V', Math.max(peak, duty.directVoltage), wiring.switchVoltage, 'wiring.switchVoltage_V'),
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
            kindPath: undefined,
            bounds: [
              least(
                'V',
                Math.max(peak, duty.loadVoltage) / capacitorShare,
                load.ratedVoltage,
                'load.ratedVoltage_V',
              ),
            ],
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
            kindPath: undefined,
            bounds: [least('V', peak, converter.greatestInputVoltage, 'converter.greatestInput_V')],
          },
        ]),
    insulation,
  ]
}
