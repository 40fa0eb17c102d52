/** Will it burst, rub, bend or seize: every quantity beside its limit, and the table of force against distance. */
import type { Chain } from '../compute.ts'
import { handForce } from '../concern/assembly-pull.ts'
import { type Steps, within } from '../step.ts'
import { type ClearanceSide, clearances } from './clearance.ts'
import { distanceOfPull, type PullPoint, pullTable } from './disc-pull.ts'
import { balanceRows, bearingRows, informationRows, mountingRows, shaftRows } from './drive-row.ts'
import { type MechanicalHeat, mechanicalHeat } from './mechanical-heat.ts'
import { type MechanicsRow, mechanicsGroups } from './mechanics-row.ts'
import { discRows, gapRows, magnetRows, pullRows } from './rotor-row.ts'
import { sleevePull } from './sleeve-pull.ts'

export interface MechanicsStudy {
  readonly name: string
  readonly rows: readonly MechanicsRow[]
  /** Force against distance for putting the discs together; empty where nothing pulls. */
  readonly pull: readonly PullPoint[]
  /** Distance from which on hands hold the pull [m]; undefined where they always or never do. */
  readonly handDistance: number | undefined
  readonly clearances: readonly ClearanceSide[]
  readonly heat: MechanicalHeat
}

export interface PullStudy extends Pick<MechanicsStudy, 'pull' | 'handDistance'> {
  /** Those of the pull between the faces. */
  readonly rows: readonly MechanicsRow[]
}

/** The pull, which takes far longer than all the rest where discs face each other. Yields the fraction done. */
export function* pullStudy(chain: Chain): Steps<PullStudy> {
  const { machine } = chain
  const { ambient } = machine.site
  const pull = yield* within(pullTable(machine, ambient), 0, 0.95)
  return {
    rows: pullRows(chain, pull, sleevePull(machine, ambient)),
    pull,
    handDistance: distanceOfPull(pull, handForce),
  }
}

/** All rows but those of the pull, of the sides of the air. */
export const rowsBesidePull = (chain: Chain, sides: readonly ClearanceSide[]): readonly MechanicsRow[] => [
  ...magnetRows(chain),
  ...discRows(chain),
  ...gapRows(sides),
  ...bearingRows(chain),
  ...shaftRows(chain),
  ...mountingRows(chain),
  ...balanceRows(chain),
  ...informationRows(chain),
]

const place = ({ group }: MechanicsRow): number => mechanicsGroups.indexOf(group)

/** Yields the fraction done. Temperatures other than those of the power curve may be handed in. */
export function* mechanicsStudy(
  chain: Chain,
  heat: MechanicalHeat = mechanicalHeat(chain),
): Steps<MechanicsStudy> {
  const { rows, pull, handDistance } = yield* within(pullStudy(chain), 0, 0.95)
  const sides = clearances(chain, heat)
  return {
    name: chain.machine.name,
    rows: [...rowsBesidePull(chain, sides), ...rows].sort((a, b) => place(a) - place(b)),
    pull,
    handDistance,
    clearances: sides,
    heat,
  }
}
