/** Where the heat of a machine goes and how warm that makes its parts, asked by speed, wind and watts. */

import type { Machine } from '../machine/machine.ts'
import type { ConductorLayout } from './conductor-layout.ts'
import { copperNode } from './copper-node.ts'
import { heatBody } from './heat-body.ts'
import { type AirMotion, typicalStep } from './heat-film.ts'
import { type HeatBody, type SolvedNet, solvedNet } from './heat-net.ts'
import type { WindingPack } from './heat-pack.ts'
import type { WoundMachine } from './winding.ts'

/** Half-width at 90 % of an estimated warmth, as a share: no measured home-cast stator was found. */
export const thermalSpread = 0.5

/** Heat born in a machine that turns [W]. What bearings make goes to the air. */
export interface HeatFlow extends AirMotion {
  /** In the copper, eddy currents of its strands included. */
  readonly copper: number
  /** In metal near the magnets. */
  readonly metal: number
}

/** What judges and pages ask for [K]. */
export interface PartTemperatures {
  /** Hottest spot of the copper; its mean, which the ohms tell, is a little cooler. */
  readonly hotSpot: number
  /** The warmest of the discs. */
  readonly magnets: number
  /** Resin or plastic where it touches the wire. */
  readonly support: number
  /** Warmest air before the winding; of an open face the site's own. */
  readonly gapAir: number
}

export interface MachineHeat {
  readonly body: HeatBody
  readonly pack: WindingPack
  readonly net: SolvedNet
  /** Half-width at 90 % of all warmth over the air, as a share; 0 where a heat run gave the number. */
  readonly spread: number
  /** The magnets' warmth over the copper's, both above the air, at a working speed. */
  readonly magnetShare: number
  /** Heat by node of the net [W]. */
  readonly sources: (flow: Pick<HeatFlow, 'copper' | 'metal'>) => Float64Array
  /** Temperatures of the parts whose nodes are so much warmer than the air [K]. */
  readonly read: (rises: Float64Array, copperHeat: number) => PartTemperatures
}

/**
 * Hottest spot of a slab above the air, heated evenly, from its mean and its two faces [K]: the parabola through them.
 * While heat is still on its way to the faces it is flatter than in rest; `full` is what rest would bend it by, q d²/2k.
 */
export function hotSpotRise(
  { mean, near, far }: { readonly mean: number; readonly near: number; readonly far: number },
  full: number,
): number {
  const bend = Math.min(Math.max(6 * (mean - (near + far) / 2), 0), full)
  const step = Math.abs(far - near)
  const peak = step < bend ? (near + far) / 2 + (bend / 4) * (1 + (step / bend) ** 2) : Math.max(near, far)
  return Math.max(mean, peak)
}

/**
 * Temperatures of a machine on the way: the copper's hottest spot lags, for a slab takes its shape in its own time, and
 * in the first seconds of a short all of it is alike. Begins as at rest.
 */
export function spotFollower(heat: MachineHeat, start: Float64Array, copperHeat: number) {
  const { read, pack, body } = heat
  const excessOf = (now: PartTemperatures, rises: Float64Array) =>
    now.hotSpot - body.ambient - rises[copperNode]!
  let excess = excessOf(read(start, copperHeat), start)
  return (rises: Float64Array, watts: number, duration: number): PartTemperatures => {
    const now = read(rises, watts)
    excess += (excessOf(now, rises) - excess) * -Math.expm1(-duration / pack.shapeTime)
    return { ...now, hotSpot: body.ambient + rises[copperNode]! + excess }
  }
}

/** Share in steps that leave the tables of a generator alone when a cover changes by a hair. */
const shareStep = 0.01

export interface HeatRequest {
  readonly layout: ConductorLayout
  readonly wound: Pick<WoundMachine, 'copperMass' | 'wireLength'>
  /** At which the share of the magnets is taken. */
  readonly working: AirMotion
  /** On every thermal resistance that was estimated. */
  readonly factor?: number
}

export function machineHeat(
  machine: Machine,
  { layout, wound, working, factor = 1 }: HeatRequest,
): MachineHeat {
  const { thermalResistance } = machine.stator
  const { body, pack } = heatBody(machine, layout, wound)
  const { nodes, ambient } = body
  const net = solvedNet(
    body,
    thermalResistance === undefined
      ? { factor }
      : { factor: 1, measured: { node: copperNode, resistance: thermalResistance } },
  )
  const place = (key: string) => nodes.findIndex((node) => node.key === key)
  const [metal, near, far, support] = ['metal', 'nearPack', 'farPack', 'support'].map(place)
  const places = (keys: readonly string[]) => keys.map(place).filter((at) => at >= 0)
  const magnets = places(['magnets', 'farMagnets'])
  const airs = places(['nearAir', 'farAir'])
  const most = (rises: Float64Array, of: readonly number[]) =>
    of.reduce((high, at) => Math.max(high, rises[at]!), 0)
  const sources: MachineHeat['sources'] = (flow) => {
    const heat = new Float64Array(nodes.length)
    heat[copperNode] = flow.copper
    if (metal! >= 0) heat[metal!] = flow.metal
    return heat
  }
  const read: MachineHeat['read'] = (rises, copperHeat) => {
    const faces = { mean: rises[copperNode]!, near: rises[near!]!, far: rises[far!]! }
    const full = (copperHeat * pack.depth) / (2 * pack.conductivity * pack.area)
    // what leaves by the edges bends the warmth across the bundle too, a parabola half as high again as its mean
    const leaving = support! >= 0 ? pack.sideConductance * (faces.mean - rises[support!]!) : 0
    const edgeDrop = Math.min(Math.max(leaving, 0), copperHeat) / pack.edgeConductance
    return {
      hotSpot: ambient + hotSpotRise(faces, full) + edgeDrop / 2,
      magnets: ambient + most(rises, magnets),
      support: ambient + Math.max(faces.near, faces.far, support! >= 0 ? rises[support!]! : 0),
      gapAir: ambient + most(rises, airs),
    }
  }
  // the copper alone, about as warm as copper gets
  const rises = typicalRises(net, nodes.length, working)
  const share = most(rises, magnets) / rises[copperNode]!
  return {
    body,
    pack,
    net,
    spread: thermalResistance === undefined ? thermalSpread : 0,
    magnetShare: Math.round(share / shareStep) * shareStep,
    sources,
    read,
  }
}

/** Rounds in which the warmth of a film hardly moves its coefficient any more. */
const typicalRounds = 3

/** All nodes where heat born in the copper alone makes it a typical step warmer than the air [K]. */
export function typicalRises(net: SolvedNet, count: number, motion: AirMotion): Float64Array {
  const sources = new Float64Array(count)
  const rises = new Float64Array(count).fill(typicalStep / 2)
  sources[copperNode] = 1
  for (let k = 0; k < typicalRounds; k++) {
    net.round({ ...motion, sources }, rises)
    const scale = typicalStep / rises[copperNode]!
    sources[copperNode] = sources[copperNode]! * scale
    for (let i = 0; i < count; i++) rises[i]! *= scale
  }
  return rises
}

/** Speed by so large a share, copper by so many kelvin: less leaves the resistance of the last look standing. */
const sameSpeed = 0.003
const sameCopper = 0.5

/**
 * Follows the copper of one wind towards its rest: `rises` are those of the machine's past and are carried on.
 * Returns the copper's warmth over the air at given watts [K]; the net itself is solved only when it would say
 * something new.
 */
export function heatFollower({ net, sources }: MachineHeat, rises: Float64Array) {
  let at: { readonly speed: number; readonly copper: number; readonly resistance: number } | undefined
  return (flow: HeatFlow): number => {
    const told = at === undefined ? undefined : at.resistance * flow.copper
    if (
      at !== undefined &&
      Math.abs(flow.speed - at.speed) < sameSpeed * at.speed &&
      Math.abs(told! - at.copper) < sameCopper
    )
      return told!
    net.round({ speed: flow.speed, wind: flow.wind, sources: sources(flow) }, rises)
    const copper = rises[copperNode]!
    at = { speed: flow.speed, copper, resistance: flow.copper > 0 ? copper / flow.copper : 0 }
    return copper
  }
}
