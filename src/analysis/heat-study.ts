/** Heat of one design: every part in every wind, where the watts go, and how long until a limit when things go wrong. */

import { seriesRms } from '../numerics/fourier.ts'
import { root } from '../numerics/root.ts'
import { shellConductance } from '../physics/heat/conduction.ts'
import { brakedState, parkedSpeed } from './braked-rotor.ts'
import type { BusState } from './bus-current.ts'
import type { Chain } from './compute.ts'
import { copperNode } from './copper-node.ts'
import { type RangeLeft, rangesLeft } from './heat-net.ts'
import { type HeatTransient, heatTransient, type LimitReached, partLimits } from './heat-transient.ts'
import { type HeatWays, heatWays } from './heat-way.ts'
import { copperRatio } from './load-point.ts'
import type { HeatFlow } from './machine-heat.ts'
import type { WindRow } from './power-curve.ts'
import { fastestIn } from './shorted-heat.ts'
import type { Steps } from './step.ts'
import { shortTable } from './storm-winding.ts'
import { heldWind, workingFlow } from './warm-up.ts'

export interface HeatCase {
  readonly key: 'strong wind' | 'gust' | 'short' | 'heat run'
  /** [m/s] and what else it is about: amps of a heat run. */
  readonly wind: number
  readonly current: number | undefined
  readonly run: HeatTransient
}

/** One turn closed on itself: a spot of its own, the winding round it as its sink. */
export interface ShortedTurn {
  /** [rad/s], [A], [W] */
  readonly speed: number
  readonly current: number
  readonly power: number
  /** Of its copper that keeps all its heat, in the first moment [K/s]. */
  readonly rate: number
  /** Over the winding round it, once settled [K], and the temperature then [K]. */
  readonly rise: number
  readonly temperature: number
  readonly limits: readonly LimitReached[]
}

export interface HeatStudy {
  readonly name: string
  readonly rows: readonly WindRow[]
  readonly hottest: WindRow
  /** Share of the hottest row's heat that leaves by each face [W], largest first. */
  readonly ways: HeatWays['ways']
  /** Born in that row. */
  readonly born: HeatWays['born']
  /** Each limit with the warmest that its part gets in steady wind [K]. */
  readonly limits: readonly (LimitReached & { readonly warmest: number })[]
  readonly cases: readonly HeatCase[]
  readonly shortedTurn: ShortedTurn | undefined
  readonly rangesLeft: readonly RangeLeft[]
  /** Half-width at 90 % of every warmth, as a share; 0 where a heat run gave it. */
  readonly spread: number
  /** Resin between the wires; else air. */
  readonly cast: boolean
}

/** A gust over the wind in which the limiter acts, and before it has acted: common practice, no source. */
export const gustFactor = 1.4

/** As long as a page has patience for [s]. */
const longest = 12 * 3600

export interface HeatStudyOptions {
  /** Of a heat run: every phase, rms [A]; else the greatest of the power curve. */
  readonly current?: number
}

/** Yields the fraction done. */
export function* heatStudy(chain: Chain, { current }: HeatStudyOptions = {}): Steps<HeatStudy> {
  const { machine, heat, rows, blades, voltage } = chain
  const { ambient, stormWind } = machine.site
  const limits = partLimits(machine)
  const hottest = rows.reduce((hot, row) => (row.temperatures.hotSpot > hot.temperatures.hotSpot ? row : hot))
  const cold = new Float64Array(heat.body.nodes.length)
  const run = (start: Float64Array, flow: (T: number) => HeatFlow) =>
    heatTransient(heat, { start, flow, limits, duration: longest })
  const cases: HeatCase[] = []

  const turning = (wind: number, from: number) => workingFlow(chain, { wind, from })
  if (hottest.speed > 0) {
    const wind = Math.min(hottest.wind, heldWind(chain))
    cases.push({
      key: 'strong wind',
      wind,
      current: undefined,
      run: run(cold, turning(wind, hottest.speed)),
    })
    yield 0.2
    const gust = Math.min(gustFactor * heldWind(chain), Math.max(stormWind, heldWind(chain)))
    cases.push({
      key: 'gust',
      wind: gust,
      current: undefined,
      run: run(hottest.nodeRises, turning(gust, hottest.speed)),
    })
    yield 0.4
  }
  if (machine.protection.electrical === 'shorting switch' && hottest.speed > 0) {
    const wind = heldWind(chain)
    const from = fastestIn(chain, wind)
    const table = shortTable(machine, voltage, 'leads', from)
    const held: BusState = { dcCurrent: 0, torque: 0, windingLoss: 0, phaseCurrent: 0 }
    const flow = (T: number): HeatFlow => {
      const short = table(T)
      const { speed } = brakedState(
        (at) => blades.torque(wind, at),
        (at) => short(held, at).torque,
        { from, parked: parkedSpeed(chain, wind) },
      )
      return { speed, wind, copper: speed > 0 ? short(held, speed).windingLoss : 0, metal: 0 }
    }
    cases.push({ key: 'short', wind, current: undefined, run: run(hottest.nodeRises, flow) })
  }
  yield 0.6
  const amps = current ?? rows.reduce((most, { phaseCurrent }) => Math.max(most, phaseCurrent), 0)
  const ohms = voltage.phases.reduce((sum, { resistance }) => sum + resistance, 0)
  if (amps > 0)
    cases.push({
      key: 'heat run',
      wind: 0,
      current: amps,
      run: run(cold, (T) => ({
        speed: 0,
        wind: 0,
        copper: amps ** 2 * ohms * copperRatio(machine, T),
        metal: 0,
      })),
    })
  yield 0.9
  const { ways, born, state } = heatWays(chain, hottest)
  return {
    name: machine.name,
    rows,
    hottest,
    ways,
    born,
    limits: limits.map((limit) => {
      const warmest = rows.reduce(
        (most, { temperatures }) => Math.max(most, temperatures[limit.part]),
        ambient,
      )
      return { ...limit, at: undefined, warmest }
    }),
    cases,
    shortedTurn: shortedTurn(chain, hottest),
    rangesLeft: rangesLeft(heat.body, state, hottest.nodeRises),
    spread: heat.spread,
    cast: machine.stator.support.cast,
  }
}

/**
 * One turn of a coil shorted at a speed, the rest of the winding as warm as in that row. Its volts are those of a turn
 * as wound; its inductance that of the whole coil over the square of the turns, somewhat low for a turn alone, which
 * leaves it more current. Heat leaves it across its length into the winding round it, as from a wire in a shell as
 * wide as the bundle is thick. Its copper resists more as it warms, so its power falls: the rest is found, not stepped.
 */
function shortedTurn(
  { machine, voltage, wound, layout, heat }: Chain,
  row: WindRow,
): ShortedTurn | undefined {
  const coil = layout.coils[0]
  const shape = coil && layout.shapes[coil.shape]
  const emf = voltage.coils[0]?.emf
  if (!(row.speed > 0) || shape === undefined || emf === undefined) return undefined
  const { turns, turnLength, bundle } = shape
  const cold = wound.coilResistance[0]! / turns
  const reactance = (machine.rotor.polePairs * row.speed * wound.coilInductance[0]![0]!) / turns ** 2
  const volts = (seriesRms(emf) * row.speed) / turns
  const ohms = (T: number) => cold * copperRatio(machine, T)
  const amps = (T: number) => volts / Math.hypot(ohms(T), reactance)
  const power = (T: number) => amps(T) ** 2 * ohms(T)
  const outer = Math.min(bundle.width, bundle.thickness) / 2
  const { wire } = machine.stator
  const inner = Math.sqrt((wire.section.area * wire.strands) / Math.PI)
  const conductance = shellConductance({
    conductivity: heat.pack.conductivity,
    inner,
    outer: Math.max(outer, 1.2 * inner),
    length: turnLength,
  })
  const round = row.copperTemperature
  const surplus = (T: number) => power(T) - conductance * (T - round)
  const hottest = round + power(round) / conductance
  const temperature = surplus(hottest) >= 0 ? hottest : root(surplus, [round, hottest], 1e-3)
  const copperHeat = heat.body.nodes[copperNode]!.capacity / (turns * layout.coils.length)
  const first = power(round)
  return {
    speed: row.speed,
    current: amps(round),
    power: first,
    rate: first / copperHeat,
    rise: temperature - round,
    temperature,
    limits: partLimits(machine)
      .filter(({ part }) => part === 'hotSpot')
      .map((limit) => ({ ...limit, at: timeOf(limit.temperature - round) })),
  }
  /** Towards the rest by the balance of power, copper's heat and conduction, power at its mean. */
  function timeOf(rise: number): number | undefined {
    const full = temperature - round
    if (rise <= 0) return 0
    return rise < full ? (-copperHeat / conductance) * Math.log1p(-rise / full) : undefined
  }
}
