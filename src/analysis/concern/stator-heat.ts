/** Concern: the winding gets hotter than its weakest material bears, in high wind or shorted in a storm. */
import { conductors } from '../../data/conductor.ts'
import type { Machine } from '../../machine/machine.ts'
import { adiabaticHeatingRate } from '../../physics/heat/adiabatic-heating.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { limiterWind } from '../power-curve.ts'
import { brakedState, shortCircuit } from '../short-circuit.ts'
import { fireCaution } from './caution.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'

/** How far below the weakest material's limit the copper should stay [K]: common practice, no source. */
export const heatMargin = 15

export interface HeatLimit {
  readonly name: string
  /** [K] */
  readonly temperature: number
}

export interface HeatVerdict {
  readonly weakest: HeatLimit
  /** Copper above the weakest limit less the margin [K]; below zero all is well. */
  readonly excess: number
}

export function heatVerdict(
  temperature: number,
  limits: readonly [HeatLimit, ...HeatLimit[]],
  margin: number = heatMargin,
): HeatVerdict {
  const weakest = limits.reduce((low, limit) => (limit.temperature < low.temperature ? limit : low))
  return { weakest, excess: temperature - (weakest.temperature - margin) }
}

const limitsOf = ({ stator: { wire, support } }: Machine): [HeatLimit, HeatLimit] => [
  { name: `the enamel of class ${wire.insulationClass}`, temperature: wire.highestTemperature },
  { name: `the ${support.name} round it`, temperature: support.softening },
]

/** Speed, copper temperature and first warming of the winding shorted in the hardest wind it may be shorted in. */
function shorted(chain: ChainView) {
  const { machine, cooling } = chain
  const { ambient, stormWind } = machine.site
  const wind =
    machine.protection.mechanical === 'none' ? stormWind : Math.min(stormWind, limiterWind(machine))
  const row = chain.rows.find((candidate) => candidate.wind >= wind - 1e-9)
  if (row === undefined || !(row.speed > 0)) return undefined
  const short = shortCircuit(machine, chain.voltage)
  const density = short(row.speed, ambient).phaseCurrent / (chain.wound.conductorArea * chain.layout.groups)
  const copper = conductors.find(({ name }) => name === 'copper')!
  const rate = adiabaticHeatingRate({
    resistivity: machine.stator.wire.resistivity,
    currentDensity: density,
    heatCapacity: copper.heatCapacity_J_per_kgK,
    density: machine.stator.wire.density,
  })
  let temperature = ambient
  let state = { speed: row.speed, holds: false }
  for (let step = 0; step < 3; step++) {
    state = brakedState(
      (speed) => chain.blades.torque(wind, speed),
      (speed) => short(speed, temperature).torque,
      row.speed,
    )
    const warm = ambient + cooling.resistance(state.speed) * short(state.speed, temperature).loss
    temperature = Math.min(warm, 1300)
  }
  return { wind, temperature, density, rate, state }
}

export const statorHeat: ConcernRule = {
  code: 'stator-heat',
  title: 'The winding overheats in high wind, or when shorted in a storm',
  basis: `Steady copper temperature in every wind up to the storm, and shorted in the limiter’s wind where a shorting switch is the brake, against the weakest of enamel and support less ${heatMargin} K (common practice, no source). Enamel classes after IEC 60085, verify the edition in force. Blocks the outdoor class, a warning in the others; a warning everywhere when only the ± 50 % of an estimated thermal resistance reaches the limit.`,
  judge: (chain) => {
    const { machine, cooling } = chain
    const { ambient } = machine.site
    const hottest = rowOfMost(chain.rows, ({ copperTemperature }) => copperTemperature)
    if (hottest === undefined) return undefined
    const limits = limitsOf(machine)
    const short = machine.protection.electrical === 'shorting switch' ? shorted(chain) : undefined
    const worst = Math.max(hottest.copperTemperature, short?.temperature ?? ambient)
    const nominal = heatVerdict(worst, limits)
    const upper = heatVerdict(ambient + (worst - ambient) * (1 + cooling.spread), limits)
    const certain = hottest.overheated || nominal.excess > 0
    if (!certain && !(upper.excess > 0)) return undefined
    const { weakest } = nominal
    const byShort = short !== undefined && short.temperature > hottest.copperTemperature
    const limitText = `${weakest.name} bears ${formatSi(weakest.temperature, 'degC', 3)}`
    return {
      code: 'stator-heat',
      severity: certain ? severityFor(chain, ['outdoor']) : 'warning',
      path: 'stator',
      what: hottest.overheated
        ? 'The winding finds no steady temperature before it burns.'
        : certain
          ? `The winding gets hotter than ${weakest.name} bears with ${heatMargin} K in hand.`
          : `The winding may get hotter than ${weakest.name} bears, as far as the cooling is known.`,
      why: 'Copper loss grows with the square of the current and the hot copper resists more, while the surface that gives the heat away stays as it is.',
      figures: `Hottest at ${formatSi(hottest.wind, 'm_per_s')}: ${hottest.overheated ? 'above ' : ''}${formatSi(hottest.copperTemperature, 'degC', 3)} with ${formatSi(hottest.watts.winding, 'W')} in the copper${
        short === undefined
          ? ''
          : `; shorted in ${formatSi(short.wind, 'm_per_s')}: ${short.temperature >= 1300 ? 'above ' : ''}${formatSi(short.temperature, 'degC', 3)}${short.state.holds ? '' : ' and the brake does not stop it'}, at first ${formatSi(short.density, 'A_per_mm2')} and ${formatNumber(short.rate, 2)} K/s`
      }; ${limitText}. ${
        cooling.spread > 0
          ? `The way of the heat is estimated, ± ${formatNumber(100 * cooling.spread, 2)} % of the rise.`
          : 'The way of the heat was measured.'
      }`,
      remedies: [
        byShort
          ? 'Slow the rotor mechanically before it is shorted, and short it only in winds that it bears.'
          : 'Let the mechanical limiter act in less wind, so that the current stops growing earlier.',
        'Put more copper into the same turns: thicker wire, more strands, a wider bundle.',
        'Open a path for the heat: bare resin faces in the wind, a filled resin, no plastic between copper and air.',
        ...(weakest.name.startsWith('the enamel')
          ? ['Use wire of a higher enamel class.']
          : ['Cast or wind it in something that softens later.']),
        `Cast a temperature sensor in beside the copper and do a heat run; enter the K/W it gives. ${fireCaution}`,
      ],
    }
  },
}
