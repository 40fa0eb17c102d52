/** What of a machine its readings by hand need, as plain data: waveforms over speed, resistances, what it would deliver. */
import { idleDiodes } from '../data/meter.ts'
import type { FourierSeries } from '../numerics/fourier.ts'
import type { Chain } from './compute.ts'

export interface TurnSource {
  readonly name: string
  readonly connection: string
  /** Both ends of every phase come out, or the phases meet in one point or ring. */
  readonly joined: 'star' | 'delta' | 'none'
  readonly polePairs: number
  /** Periods of the series in a turn, and order of the working harmonic in them. */
  readonly base: number
  readonly order: number
  /** EMF over speed [V·s/rad], and resistance at 20 °C [Ω]. */
  readonly phases: readonly { readonly emf: FourierSeries; readonly resistance: number }[]
  /** Between the terminals, over speed [V·s/rad]. */
  readonly lines: readonly FourierSeries[]
  /** Coils in series in a branch of a phase: what one the wrong way round is a part of. */
  readonly coilsInSeries: number
  /** [V], [A], [1] of the bridge's diodes at microamps. */
  readonly diode: { readonly drop: number; readonly knownCurrent: number; readonly ideality: number }
  /** Of the air [K]. */
  readonly temperature: number
  readonly loadKind: string
  /** Speed at which current begins into the load [rad/s]; infinite where never. */
  readonly cutIn: number
  /** Into the load with the copper at 20 °C, speed by speed from cut-in on [rad/s], [W], [A]. */
  readonly delivered: {
    readonly speed: Float64Array
    readonly power: Float64Array
    readonly current: Float64Array
  }
}

const deliveredPoints = 80
/** [K] */
const cold = 293.15

export function turnSource({
  machine,
  voltage,
  generator,
  layout,
}: Pick<Chain, 'machine' | 'voltage' | 'generator' | 'layout'>): TurnSource {
  const { stator, diode, rotor, site } = machine
  const { cutIn, speeds } = generator
  const last = speeds.at(-1) ?? 0
  const count = Number.isFinite(cutIn) && last > cutIn ? deliveredPoints : 0
  // closer together where it begins
  const speed = Float64Array.from(
    { length: count },
    (_, k) => cutIn + (last - cutIn) * (k / (count - 1)) ** 2,
  )
  const states = Array.from(speed, (each) => generator.at(each, cold))
  const many = voltage.phases.length > 1
  const known = idleDiodes.find(({ kind }) => kind === diode.kind) ?? idleDiodes[0]
  return {
    name: machine.name,
    connection: stator.connection,
    joined:
      many && stator.connection === 'star'
        ? 'star'
        : many && stator.connection === 'delta'
          ? 'delta'
          : 'none',
    polePairs: rotor.polePairs,
    base: voltage.base,
    order: voltage.order,
    phases: voltage.phases.map(({ emf, resistance }) => ({ emf, resistance })),
    lines: voltage.lines.map(({ emf }) => emf),
    coilsInSeries: layout.coils.filter(({ phase, group }) => phase === 0 && group === layout.coils[0]!.group)
      .length,
    diode: { drop: diode.threshold, knownCurrent: known.knownCurrent_A, ideality: known.ideality },
    temperature: site.ambient,
    loadKind: machine.load.kind,
    cutIn,
    delivered: {
      speed,
      power: Float64Array.from(states, ({ watts }) => watts.useful),
      current: Float64Array.from(states, ({ dcCurrent }) => dcCurrent),
    },
  }
}

/** What the load would get at a speed [W], [A]: nothing below cut-in, the last of the table beyond its end. */
export function deliveredAt(
  { cutIn, delivered }: TurnSource,
  speed: number,
): { power: number; current: number } {
  const { speed: nodes, power, current } = delivered
  if (!(speed > cutIn) || nodes.length === 0) return { power: 0, current: 0 }
  const after = nodes.findIndex((node) => node >= speed)
  if (after <= 0) {
    const end = after === 0 ? 0 : nodes.length - 1
    return { power: power[end]!, current: current[end]! }
  }
  const share = (speed - nodes[after - 1]!) / (nodes[after]! - nodes[after - 1]!)
  const mix = (list: Float64Array) => list[after - 1]! + share * (list[after]! - list[after - 1]!)
  return { power: mix(power), current: mix(current) }
}
