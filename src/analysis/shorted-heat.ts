/** How hot the winding gets when it is shorted in a wind, the load lost: the speed it settles at and every node. */
import { conductors } from '../data/conductor.ts'
import { adiabaticHeatingRate } from '../physics/heat/adiabatic-heating.ts'
import { type BrakedState, brakedState, parkedSpeed, unloadedSpeed } from './braked-rotor.ts'
import type { BusState } from './bus-current.ts'
import type { Chain } from './compute.ts'
import { burntRise } from './heat-net.ts'
import type { PartTemperatures } from './machine-heat.ts'
import type { ShortPlace } from './short-circuit.ts'
import { shortTable } from './storm-winding.ts'

type ShortedChain = Pick<
  Chain,
  'machine' | 'voltage' | 'generator' | 'blades' | 'wound' | 'layout' | 'heat' | 'rows' | 'runaway'
>

export interface ShortedHeat {
  readonly wind: number
  /** Once it has settled. */
  readonly temperatures: PartTemperatures
  /** No steady temperature below what any winding survives. */
  readonly burnt: boolean
  /** In the first moment: current density [A/m²] and warming [K/s]. */
  readonly density: number
  readonly rate: number
  readonly state: BrakedState
}

/** Fastest that the rotor may turn in a wind: without load, or under it in any wind up to there [rad/s]. */
export const fastestIn = (chain: ShortedChain, wind: number): number =>
  chain.rows.reduce(
    (most, row) => (row.wind <= wind + 1e-9 ? Math.max(most, row.speed) : most),
    unloadedSpeed(chain, wind),
  )

const rounds = 6

/** Places where a shorting switch may sit: the leads carry more current, at the far end of line wires it brakes less. */
const places = ({ machine }: ShortedChain): readonly ShortPlace[] =>
  machine.cable.place === 'before bridge' ? ['leads', 'far end'] : ['leads']

/**
 * The hotter of the places in each wind; undefined where the rotor does not turn there. One table of the short serves
 * all winds. The magnets are taken cold: they drive most current then.
 */
export function shortedHeat(chain: ShortedChain, winds: readonly number[]): (ShortedHeat | undefined)[] {
  const fastest = Math.max(...winds.map((wind) => fastestIn(chain, wind)))
  if (!(fastest > 0)) return winds.map(() => undefined)
  const tables = places(chain).map((place) => shortTable(chain.machine, chain.voltage, place, fastest))
  return winds.map((wind) => {
    const found = tables.flatMap((table) => shortedAt(chain, wind, table) ?? [])
    return found.reduce<ShortedHeat | undefined>(
      (hot, each) => (hot === undefined || each.temperatures.hotSpot > hot.temperatures.hotSpot ? each : hot),
      undefined,
    )
  })
}

function shortedAt(
  chain: ShortedChain,
  wind: number,
  table: ReturnType<typeof shortTable>,
): ShortedHeat | undefined {
  const { machine, heat } = chain
  const { ambient } = machine.site
  const { wire } = machine.stator
  const from = fastestIn(chain, wind)
  if (!(from > 0)) return undefined
  const held: BusState = { dcCurrent: 0, torque: 0, windingLoss: 0, phaseCurrent: 0 }
  const first = table(ambient)(held, from)
  const density = first.phaseCurrent / (chain.wound.conductorArea * chain.layout.groups)
  const rate = adiabaticHeatingRate({
    resistivity: wire.resistivity,
    currentDensity: density,
    heatCapacity: conductors.find(({ name }) => name === 'copper')!.heatCapacity_J_per_kgK,
    density: wire.density,
  })
  const rises = new Float64Array(heat.body.nodes.length)
  let state: BrakedState = { speed: from, holds: false }
  let copper = 0
  for (let round = 0; round < rounds; round++) {
    const short = table(ambient + rises[0]!)
    state = brakedState(
      (speed) => chain.blades.torque(wind, speed),
      (speed) => short(held, speed).torque,
      { from, parked: parkedSpeed(chain, wind) },
    )
    copper = state.speed > 0 ? short(held, state.speed).windingLoss : 0
    heat.net.round({ speed: state.speed, wind, sources: heat.sources({ copper, metal: 0 }) }, rises)
  }
  return {
    wind,
    temperatures: heat.read(rises, copper),
    burnt: rises[0]! >= burntRise,
    density,
    rate,
    state,
  }
}
