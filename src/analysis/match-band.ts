/** What the generator takes when its battery is empty or full: two more curves, with few nodes. */
import { smoothCubic } from '../numerics/interpolate.ts'
import type { Chain } from './compute.ts'
import { cutInSpeed, loadPoint } from './load-point.ts'
import { strengthBesideCopper, weakenedVoltage } from './magnet-strength.ts'
import type { Steps } from './step.ts'

/** [rad/s] and [W]. */
export interface SpeedPower {
  readonly speed: Float64Array
  readonly power: Float64Array
}

interface BandRequest {
  /** At which the curves are wanted, rising [rad/s]. */
  readonly speeds: Float64Array
  /** [K] */
  readonly temperatureAt: (speed: number) => number
}

type BandChain = Pick<Chain, 'machine' | 'voltage' | 'generator' | 'drag' | 'circulating' | 'heat'>

const nodeCount = 8

/**
 * The curve at another battery voltage from the one at hand: with s the ratio of the barriers (battery and two diode
 * thresholds), P(ω, sU) = s² P(ω/s, U), exact for a winding without inductance. A ring of unlike magnets makes the
 * period a whole turn, too costly to be solved for a ribbon.
 */
function scaledCurve(
  { machine, generator, drag, circulating }: BandChain,
  voltage: number,
  { speeds, temperatureAt }: BandRequest,
): SpeedPower {
  const { load, diode } = machine
  const barrier = (battery: number) => battery + 2 * diode.threshold
  const s = load.kind === 'battery' ? barrier(voltage) / barrier(load.voltage) : 1
  const idle = (speed: number) => {
    const { friction, eddy, parts } = drag.at(speed)
    return friction + eddy + parts + circulating.branches(speed)
  }
  const power = speeds.map((speed) => {
    const like = speed / s
    if (like <= generator.cutIn) return generator.idlePower(speed)
    return s * s * Math.max(0, generator.shaftPower(like, temperatureAt(speed)) - idle(like)) + idle(speed)
  })
  return { speed: speeds, power }
}

function* bandCurve(
  chain: BandChain,
  voltage: number,
  { speeds, temperatureAt }: BandRequest,
): Steps<SpeedPower & { readonly voltage: number }> {
  const { load } = chain.machine
  if (chain.voltage.order !== 1) return { voltage, ...scaledCurve(chain, voltage, { speeds, temperatureAt }) }
  const machine = load.kind === 'battery' ? { ...chain.machine, load: { ...load, voltage } } : chain.machine
  const cutIn = cutInSpeed(machine, chain.voltage)
  const fastest = speeds[speeds.length - 1]!
  const { idlePower } = chain.generator
  if (!(cutIn < fastest)) return { voltage, speed: speeds, power: speeds.map(idlePower) }
  const nodes = Float64Array.from(
    { length: nodeCount },
    (_, k) => cutIn + (fastest - cutIn) * (k / (nodeCount - 1)) ** 2,
  )
  const shaft = new Float64Array(nodeCount)
  // as in the generator's tables: over the speed at which cold magnets would give the same volts
  const strength = strengthBesideCopper(machine, chain.heat.magnetShare)
  for (let k = 0; k < nodeCount; k++) {
    const copperTemperature = temperatureAt(nodes[k]!)
    const weak = strength(copperTemperature)
    shaft[k] = loadPoint(machine, weakenedVoltage(chain.voltage, weak), {
      speed: nodes[k]! / weak,
      copperTemperature,
    }).power.shaft
    yield (k + 1) / nodeCount
  }
  const electrical = smoothCubic(nodes, shaft)
  const power = speeds.map((speed) => {
    const asCold = strength(temperatureAt(speed)) * speed
    if (asCold <= cutIn) return idlePower(speed)
    const { friction, eddy, parts } = chain.drag.at(speed)
    return electrical(asCold) + friction + eddy + parts + chain.circulating.branches(speed)
  })
  return { voltage, speed: speeds, power }
}

/** Both ends of the battery's band; undefined without a battery. */
export function* bandCurves(
  chain: BandChain,
  request: BandRequest,
): Steps<
  | {
      readonly low: SpeedPower & { readonly voltage: number }
      readonly high: SpeedPower & { readonly voltage: number }
    }
  | undefined
> {
  const { load } = chain.machine
  if (load.kind !== 'battery') return undefined
  const [low, high] = load.band
  return { low: yield* bandCurve(chain, low, request), high: yield* bandCurve(chain, high, request) }
}
