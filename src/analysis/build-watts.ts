/** What volts and ohms beside the drawing's are worth in the wind: a few chains from the volts on, and a surface through them. */
import { seriesPeak, seriesRms, seriesScaled } from '../numerics/fourier.ts'
import { smoothCubic } from '../numerics/interpolate.ts'
import { parabolaWeights } from '../numerics/parabola-weight.ts'
import { circulation } from './circulation.ts'
import type { Chain } from './compute.ts'
import { fastestTabled, generatorCurve } from './generator-curve.ts'
import { strengthBesideCopper } from './magnet-strength.ts'
import { type OpenCircuitVoltage, openLines } from './open-circuit-voltage.ts'
import { powerCurve } from './power-curve.ts'
import { type Steps, within } from './step.ts'
import { tellingWind } from './telling-wind.ts'
import { year } from './year.ts'

/** Of a build over the drawing, at 20 °C. */
export interface VoltsAndOhms {
  /** Phase by phase [1]. */
  readonly volts: readonly number[]
  /** Mean of the phases [1]. */
  readonly ohms: number
  /** Lost between unlike branches, or round a delta, beyond the drawing's at the telling speed [W]. */
  readonly extraLoss: number
}

export interface BuildWatts {
  /** Stored or used in the telling wind [W]. */
  readonly useful: number
  /** In the site's year [J]. */
  readonly energy: number
}

/** The drawing's volts with each phase scaled, and all ohms. */
export function scaledVoltage(
  machine: Chain['machine'],
  voltage: OpenCircuitVoltage,
  volts: readonly number[],
  ohms: number,
): OpenCircuitVoltage {
  const { base } = voltage
  const phases = voltage.phases.map((phase, k) => ({
    ...phase,
    emf: seriesScaled(phase.emf, volts[k]!),
    rms: phase.rms * volts[k]!,
    peak: phase.peak * volts[k]!,
    fundamental: phase.fundamental * volts[k]!,
    resistance: phase.resistance * ohms,
    branches: phase.branches.map(({ emf, resistance }) => ({
      emf: seriesScaled(emf, volts[k]!),
      resistance: resistance * ohms,
    })),
  }))
  const lines = openLines(machine, phases, voltage.inductance, base).map((emf) => ({
    emf,
    rms: seriesRms(emf),
    peak: seriesPeak(emf),
  }))
  return { ...voltage, phases, lines, greatestLinePeak: Math.max(...lines.map(({ peak }) => peak)) }
}

/** The machine in the wind with other volts, and with watts lost inside at `at` the telling speed. */
export function* wattsWith(
  chain: Chain,
  voltage: OpenCircuitVoltage,
  extra: { readonly loss: number; readonly speed: number } = { loss: 0, speed: 1 },
): Steps<BuildWatts> {
  const { machine, rotor, layout, wound, drag, heat, blades } = chain
  const fastest = fastestTabled(rotor, { radius: machine.blades.radius, stormWind: machine.site.stormWind })
  const own = circulation(machine, layout, wound, voltage, fastest)
  const circulating =
    extra.loss === 0
      ? own
      : {
          ...own,
          branches: (speed: number) => own.branches(speed) + extra.loss * (speed / extra.speed) ** 2,
        }
  const strength = strengthBesideCopper(machine, heat.magnetShare)
  const generator = yield* generatorCurve(machine, voltage, { drag: drag.at, circulating }, fastest, strength)
  const phaseArea = wound.conductorArea * layout.groups
  const curve = powerCurve({ machine, rotor, blades, generator, heat, phaseArea })
  const { wind } = tellingWind(chain).row
  return { useful: curve.rowAt(wind).watts.useful, energy: year(machine, curve).energy }
}

export interface WattsSurface {
  readonly at: (build: VoltsAndOhms) => BuildWatts
  /** Of the drawing. */
  readonly drawn: BuildWatts
}

/** Ratios beyond this are held: no surface of three points a side is to be trusted there. */
const mostChange = 0.5
/** Less than this moves nothing that could be told from the solution's own accuracy. */
const leastChange = 2e-3
/** Loss put in to see what it costs, as a share of the telling watts. */
const trialLoss = 0.02
/** Phases less apart than this count as alike: each then bears the same part. */
const alikePhases = 1e-3

const outputs = ['useful', 'energy'] as const

/** Volts that are tried, as shares of the reach: blades that stall make the watts bend in the volts more than once. */
const voltNodes = [-1, -0.5, 0, 0.5, 1]
/** The same where a whole turn of the shaft makes every chain dear. */
const sparseNodes = [-1, 0, 1]

/**
 * The surface over the range that the builds span: smooth through the volts, a parabola through three ohms, the two
 * added; straight for what the phases differ from their mean. Phases alike in the drawing bear alike, so that to the
 * first order only their mean counts; of unlike ones each is tried. Loss inside is straight as well. Yields the fraction
 * done.
 */
export function* wattsSurface(
  chain: Chain,
  range: { readonly volts: number; readonly ohms: number; readonly mayCirculate: boolean },
): Steps<WattsSurface> {
  const { machine, voltage } = chain
  const count = voltage.phases.length
  const reach = (change: number) => Math.min(mostChange, Math.max(change, leastChange))
  const [a, b] = [reach(range.volts), reach(range.ohms)]
  const { speed, watts } = tellingWind(chain).row
  const rms = voltage.phases.map((phase) => phase.rms)
  const unlike = Math.max(...rms) - Math.min(...rms) > alikePhases * Math.max(...rms)
  const circulates = range.mayCirculate && speed > 0 && watts.useful > 0
  const nodes = voltage.order === 1 ? voltNodes : sparseNodes
  const trials = nodes.length + 2 + (unlike ? count : 0) + (circulates ? 1 : 0)
  let done = 0
  const all = (volts: number) => Array.from({ length: count }, () => volts)
  const run = function* (volts: readonly number[], ohms: number, loss = 0): Steps<BuildWatts> {
    const scaled = scaledVoltage(machine, voltage, volts, ohms)
    const found = yield* within(wattsWith(chain, scaled, { loss, speed }), done / trials, 1 / trials)
    done++
    return found
  }
  const byVolts: BuildWatts[] = []
  for (const i of nodes) byVolts.push(yield* run(all(1 + i * a), 1))
  const drawn = byVolts[nodes.indexOf(0)]!
  const fewer = yield* run(all(1), 1 - b)
  const more = yield* run(all(1), 1 + b)
  const curveOf = (name: (typeof outputs)[number]) =>
    smoothCubic(
      nodes.map((i) => i * a),
      byVolts.map((one) => one[name]),
    )
  const curves = { useful: curveOf('useful'), energy: curveOf('energy') }
  const perPhase: BuildWatts[] = []
  if (unlike)
    for (let k = 0; k < count; k++) {
      const turned = yield* run(
        all(1).map((one, n) => (n === k ? one + a : one)),
        1,
      )
      perPhase.push({
        useful: (turned.useful - drawn.useful) / a,
        energy: (turned.energy - drawn.energy) / a,
      })
    }
  const loss = trialLoss * watts.useful
  const dragged = circulates ? yield* run(all(1), 1, loss) : drawn
  const perLoss = (name: (typeof outputs)[number]) => (circulates ? (dragged[name] - drawn[name]) / loss : 0)
  const lost = { useful: perLoss('useful'), energy: perLoss('energy') }
  const held = (ratio: number, reached: number) => Math.min(1 + reached, Math.max(1 - reached, ratio))
  return {
    drawn,
    at: ({ volts, ohms, extraLoss }) => {
      const mean = volts.reduce((sum, one) => sum + one, 0) / count
      const change = held(mean, a) - 1
      const weights = parabolaWeights(held(ohms, b) - 1, [-b, 0, b])
      const value = (name: (typeof outputs)[number]) => {
        const byOhms = weights[0] * fewer[name] + weights[1] * drawn[name] + weights[2] * more[name]
        let sum = curves[name](change) + byOhms - drawn[name] + lost[name] * extraLoss
        perPhase.forEach((slope, k) => {
          sum += slope[name] * (volts[k]! - mean)
        })
        return Math.max(0, sum)
      }
      return { useful: value('useful'), energy: value('energy') }
    },
  }
}
