/** Temperatures of a machine in a storm, step by step through its whole heat net. */
import { copperNode } from './copper-node.ts'
import { type HeatFlow, spotFollower } from './machine-heat.ts'
import { magnetStrength } from './magnet-strength.ts'
import type { WindRow } from './power-curve.ts'
import type { StormChain } from './storm-chain.ts'

export interface Warmth {
  /** Hottest spot and mean of the copper, and warmest magnets [K]; the magnets' strength over that in cold air. */
  readonly hotSpot: number
  readonly copperTemperature: number
  readonly magnetTemperature: number
  readonly strength: number
}

export interface StormWarmth {
  readonly now: () => Warmth
  /** A step of time; metal parts add their own watts. */
  readonly advance: (flow: Omit<HeatFlow, 'metal'>, duration: number) => void
}

/** Every node as in a row of steady wind; with the copper said, all in proportion to it. */
export function stormWarmth(
  { machine, heat, drag }: Pick<StormChain, 'machine' | 'heat' | 'drag'>,
  row: Pick<WindRow, 'nodeRises' | 'watts'>,
  copperTemperature: number | undefined,
): StormWarmth {
  const { ambient } = machine.site
  const strength = magnetStrength(machine)
  const rises = Float64Array.from(row.nodeRises)
  const rowRise = rises[copperNode]!
  if (copperTemperature !== undefined) {
    const wanted = copperTemperature - ambient
    for (let i = 0; i < rises.length; i++) rises[i] = rowRise > 0 ? (rises[i]! * wanted) / rowRise : 0
    rises[copperNode] = wanted
  }
  // a copper that was said to be elsewhere has no past that the row could tell
  let copperHeat = copperTemperature === undefined ? row.watts.winding + row.watts.eddy : 0
  const hasMetal = machine.stator.metalParts.length > 0
  const read = spotFollower(heat, rises, copperHeat)
  const look = (duration: number): Warmth => {
    const { magnets, hotSpot } = read(rises, copperHeat, duration)
    return {
      hotSpot,
      copperTemperature: ambient + rises[copperNode]!,
      magnetTemperature: magnets,
      strength: strength(magnets),
    }
  }
  let now = look(0)
  return {
    now: () => now,
    advance: ({ speed, wind, copper }, duration) => {
      copperHeat = copper
      const metal = hasMetal ? drag.at(speed).parts : 0
      heat.net.advance({ speed, wind, sources: heat.sources({ copper, metal }) }, rises, duration)
      now = look(duration)
    },
  }
}
