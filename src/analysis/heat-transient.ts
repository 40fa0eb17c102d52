/** A machine warming through its heat net: temperatures against time, and how long until each material's limit. */
import type { Machine } from '../machine/machine.ts'
import type { HeatLimit } from './concern/stator-heat.ts'
import { copperLimits } from './concern/stator-heat.ts'
import { copperNode } from './copper-node.ts'
import { type HeatFlow, type MachineHeat, type PartTemperatures, spotFollower } from './machine-heat.ts'

/** A limit and the part whose temperature is held against it. */
export interface PartLimit extends HeatLimit {
  readonly part: keyof PartTemperatures
}

/** What may fail first by heat: enamel, casting or former, magnets, and the wall that holds them. */
export function partLimits(machine: Machine): PartLimit[] {
  const { magnet, retention } = machine.rotor
  return [
    ...copperLimits(machine).map((limit): PartLimit => ({ ...limit, part: 'hotSpot' })),
    ...(magnet.highestTemperature === undefined
      ? []
      : [{ name: 'the magnets', temperature: magnet.highestTemperature, part: 'magnets' as const }]),
    {
      name: `the ${retention.kind === 'glue' ? 'print' : retention.kind} of ${retention.material} that holds the magnets`,
      temperature: retention.softening,
      part: 'magnets',
    },
  ]
}

export interface LimitReached extends PartLimit {
  /** When its part passes it [s]; undefined where it never does. */
  readonly at: number | undefined
}

export interface HeatSample extends PartTemperatures {
  /** [s] */
  readonly time: number
  /** Mean of the copper [K]. */
  readonly copper: number
  /** Born in the copper [W]. */
  readonly watts: number
}

export interface HeatTransient {
  readonly samples: readonly HeatSample[]
  readonly limits: readonly LimitReached[]
  /** The limit met first; undefined where none is. */
  readonly first: LimitReached | undefined
  /** When the copper came within a twentieth of its way to rest [s]; undefined where it did not come to rest. */
  readonly settledAt: number | undefined
  /** Heat born, given to the air, and kept in the machine [J]. */
  readonly energy: { readonly born: number; readonly given: number; readonly kept: number }
}

/** The copper moves so far in a step [K]; and the steps' bounds [s]. */
const stepRise = 0.5
const leastStep = 0.02
const mostStep = 60
/** Slower than this counts as at rest [K/s]. */
const atRest = 2e-4
const mostSteps = 4000
const settledShare = 0.95

/** Watts that would hold the slab's own step from mean to faces: what it gave off in the past that `start` tells of. */
function copperNodeHeat({ body, pack }: MachineHeat, start: Float64Array): number {
  const at = (key: string) => start[body.nodes.findIndex((node) => node.key === key)]!
  const slab = (pack.conductivity * pack.area) / pack.depth
  return Math.max(12 * slab * (start[copperNode]! - (at('nearPack') + at('farPack')) / 2), 0)
}

/**
 * From `start` (kelvin above the air by node) under what `flow` says for a copper temperature, until nothing moves or
 * `duration` is over [s].
 */
export function heatTransient(
  heat: MachineHeat,
  {
    start,
    flow,
    limits,
    duration,
  }: {
    readonly start: Float64Array
    readonly flow: (copperTemperature: number) => HeatFlow
    readonly limits: readonly PartLimit[]
    readonly duration: number
  },
): HeatTransient {
  const { net, body, sources } = heat
  const { ambient, nodes } = body
  const rises = Float64Array.from(start)
  const read = spotFollower(heat, rises, copperNodeHeat(heat, start))
  const samples: HeatSample[] = []
  const at: (number | undefined)[] = limits.map(() => undefined)
  const sample = (time: number, watts: number, duration: number) => {
    const now = { ...read(rises, watts, duration), time, copper: ambient + rises[copperNode]!, watts }
    const before = samples[samples.length - 1]
    limits.forEach(({ part, temperature }, k) => {
      if (at[k] !== undefined || !(now[part] > temperature)) return
      const from = before?.[part] ?? now[part]
      const share = now[part] > from ? (temperature - from) / (now[part] - from) : 1
      at[k] = before === undefined ? time : before.time + Math.max(share, 0) * (time - before.time)
    })
    samples.push(now)
  }
  let time = 0
  let born = 0
  let given = 0
  let h = leastStep
  sample(0, flow(ambient + rises[copperNode]!).copper, 0)
  let rest = false
  for (let step = 0; step < mostSteps && time < duration && !rest; step++) {
    const state = flow(ambient + rises[copperNode]!)
    const watts = sources(state)
    const before = rises.slice()
    h = Math.min(h, duration - time)
    given += net.advance({ speed: state.speed, wind: state.wind, sources: watts }, rises, h)
    born += h * watts.reduce((sum, each) => sum + each, 0)
    time += h
    let fastest = 0
    for (let i = 0; i < rises.length; i++) fastest = Math.max(fastest, Math.abs(rises[i]! - before[i]!) / h)
    sample(time, state.copper, h)
    rest = fastest < atRest
    h = Math.min(Math.max(stepRise / Math.max(fastest, 1e-9), leastStep), 1.5 * h, mostStep)
  }
  const kept = nodes.reduce((sum, { capacity }, i) => sum + capacity * (rises[i]! - start[i]!), 0)
  const [begin, end] = [samples[0]!.copper, samples[samples.length - 1]!.copper]
  const settled = samples.find(
    ({ copper }) => Math.abs(copper - begin) >= settledShare * Math.abs(end - begin),
  )
  const reached = limits.map((limit, k): LimitReached => ({ ...limit, at: at[k] }))
  return {
    samples,
    limits: reached,
    first: reached.reduce<LimitReached | undefined>(
      (soonest, each) =>
        each.at !== undefined && (soonest?.at === undefined || each.at < soonest.at) ? each : soonest,
      undefined,
    ),
    settledAt: rest ? settled?.time : undefined,
    energy: { born, given, kept },
  }
}
