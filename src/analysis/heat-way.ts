/** Where a machine's heat is born in one wind, and by which faces it leaves. */
import type { Chain } from './compute.ts'
import { type HeatState, openAir } from './heat-net.ts'
import type { WindRow } from './power-curve.ts'
import { heldWind } from './warm-up.ts'

export interface HeatWays {
  /** [m/s] */
  readonly wind: number
  /** In the copper, in metal near the magnets, and in the bearings, which warm the air alone [W]. */
  readonly born: { readonly copper: number; readonly metal: number; readonly bearings: number }
  /** To the air of the site [W], largest first. */
  readonly ways: readonly { readonly from: string; readonly by: string; readonly power: number }[]
  readonly state: HeatState
}

/** Where a limiter holds the rotor, its temperatures are those of the wind in which it begins to. */
export function heatWays({ machine, heat }: Pick<Chain, 'machine' | 'heat'>, row: WindRow): HeatWays {
  const { speed, watts, nodeRises } = row
  const wind = row.state === 'held' ? Math.min(row.wind, heldWind({ machine })) : row.wind
  const copper = watts.winding + watts.eddy
  const state: HeatState = { speed, wind, sources: heat.sources({ copper, metal: watts.parts }) }
  const flows = heat.net.flows(state, nodeRises)
  const ways = heat.body.links.flatMap(({ from, to, kind }, l) =>
    to === openAir
      ? [
          {
            from: heat.body.nodes[from]!.name,
            by: kind === 'flow' ? 'air drawn through' : 'film and radiation',
            power: flows[l]!,
          },
        ]
      : [],
  )
  return {
    wind,
    born: { copper, metal: watts.parts, bearings: watts.friction },
    ways: ways.sort((a, b) => b.power - a.power),
    state,
  }
}
