/** Will it burst, rub, bend or seize: every quantity beside its limit, and the table of force against distance. */
import type { Chain } from '../compute.ts'
import { handForce } from '../concern/assembly-pull.ts'
import { type Steps, within } from '../step.ts'
import { type ClearanceSide, clearances } from './clearance.ts'
import { distanceOfPull, type PullPoint, pullTable } from './disc-pull.ts'
import { balanceRows, bearingRows, informationRows, mountingRows, shaftRows } from './drive-row.ts'
import { type MechanicalHeat, mechanicalHeat } from './mechanical-heat.ts'
import type { MechanicsRow } from './mechanics-row.ts'
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

/** Yields the fraction done. Temperatures other than those of the power curve may be handed in. */
export function* mechanicsStudy(
  chain: Chain,
  heat: MechanicalHeat = mechanicalHeat(chain),
): Steps<MechanicsStudy> {
  const { machine } = chain
  const pull = yield* within(pullTable(machine, machine.site.ambient), 0, 0.9)
  const sleeve = sleevePull(machine, machine.site.ambient)
  yield 0.95
  const sides = clearances(chain, heat)
  return {
    name: machine.name,
    rows: [
      ...magnetRows(chain),
      ...pullRows(chain, pull, sleeve),
      ...discRows(chain),
      ...gapRows(sides),
      ...bearingRows(chain),
      ...shaftRows(chain),
      ...mountingRows(chain),
      ...balanceRows(chain),
      ...informationRows(chain),
    ],
    pull,
    handDistance: distanceOfPull(pull, handForce),
    clearances: sides,
    heat,
  }
}
