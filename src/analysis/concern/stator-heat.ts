/** Concern: the winding gets hotter than its weakest material bears, in high wind or shorted in a storm. */
import { conductors } from '../../data/conductor.ts'
import type { Machine } from '../../machine/machine.ts'
import { adiabaticHeatingRate } from '../../physics/heat/adiabatic-heating.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { type BrakedState, brake, unloadedSpeed } from '../braked-rotor.ts'
import { limiterWind } from '../power-curve.ts'
import type { ShortPlace } from '../short-circuit.ts'
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

/** Above this no winding is left to be computed [K]. */
const burnt = 1300

interface Shorted {
  readonly wind: number
  readonly temperature: number
  /** In the first moment: current density [A/m²] and warming [K/s]. */
  readonly density: number
  readonly rate: number
  readonly state: BrakedState
}

/** The winding shorted at one place in a wind, the rotor at the speed it has there without load, or more under it. */
function shortedAt(chain: ChainView, wind: number, place: ShortPlace): Shorted | undefined {
  const { machine, cooling } = chain
  const { ambient } = machine.site
  const from = chain.rows.reduce(
    (most, row) => (row.wind <= wind + 1e-9 ? Math.max(most, row.speed) : most),
    unloadedSpeed(chain, wind),
  )
  if (!(from > 0)) return undefined
  const shortOf = (copperTemperature: number) => brake(chain, { place, copperTemperature, fastest: from })
  const density = shortOf(ambient).at(from).phaseCurrent / (chain.wound.conductorArea * chain.layout.groups)
  const rate = adiabaticHeatingRate({
    resistivity: machine.stator.wire.resistivity,
    currentDensity: density,
    heatCapacity: conductors.find(({ name }) => name === 'copper')!.heatCapacity_J_per_kgK,
    density: machine.stator.wire.density,
  })
  let temperature = ambient
  let state: BrakedState = { speed: from, holds: false }
  for (let step = 0; step < 4; step++) {
    const short = shortOf(temperature)
    state = short.stop(wind, from)
    temperature = Math.min(ambient + cooling.resistance(state.speed) * short.at(state.speed).loss, burnt)
  }
  return { wind, temperature, density, rate, state }
}

/** The hotter of a short at the leads, where more current flows, and at the far end, where it brakes less. */
function hotterShort(chain: ChainView, wind: number): Shorted | undefined {
  const places: readonly ShortPlace[] =
    chain.machine.cable.place === 'before bridge' ? ['leads', 'far end'] : ['leads']
  return places
    .flatMap((place) => shortedAt(chain, wind, place) ?? [])
    .reduce<Shorted | undefined>(
      (hot, each) => (hot === undefined || each.temperature > hot.temperature ? each : hot),
      undefined,
    )
}

const shortText = ({ wind, temperature, state, density, rate }: Shorted): string =>
  `; shorted in ${formatSi(wind, 'm_per_s')} with the load lost: ${temperature >= burnt ? 'above ' : ''}${formatSi(temperature, 'degC', 3)}${state.holds ? '' : ' and the brake does not stop it'}, at first ${formatSi(density, 'A_per_mm2')} and ${formatNumber(rate, 2)} K/s`

export const statorHeat: ConcernRule = {
  code: 'stator-heat',
  title: 'The winding overheats in high wind, or when shorted in a storm',
  basis: `Steady copper temperature in every wind up to the storm, and shorted where a shorting switch is the brake: from the speed without load, in the limiter’s wind and in the storm, the hotter of a short at the machine’s leads (more current) and at the far end of line wires before the bridge (less brake). Against the weakest of enamel and support less ${heatMargin} K (common practice, no source). Enamel classes after IEC 60085, verify the edition in force. Blocks the outdoor class, a warning in the others; a warning everywhere when only the ± 50 % of an estimated thermal resistance reaches the limit, or when it is too hot only shorted in a storm above the wind of a mechanical limiter, which must have stuck then.`,
  judge: (chain) => {
    const { machine, cooling } = chain
    const { ambient, stormWind } = machine.site
    const hottest = rowOfMost(chain.rows, ({ copperTemperature }) => copperTemperature)
    if (hottest === undefined) return undefined
    const limits = limitsOf(machine)
    const switched = machine.protection.electrical === 'shorting switch'
    const limited =
      machine.protection.mechanical === 'none' ? stormWind : Math.min(stormWind, limiterWind(machine))
    const short = switched ? hotterShort(chain, limited) : undefined
    const storm = switched && limited < stormWind ? hotterShort(chain, stormWind) : undefined
    const inWork = Math.max(hottest.copperTemperature, short?.temperature ?? ambient)
    const certain = hottest.overheated || heatVerdict(inWork, limits).excess > 0
    const worst = Math.max(inWork, storm?.temperature ?? ambient)
    const nominal = heatVerdict(worst, limits)
    const stormOnly = !certain && nominal.excess > 0
    const upper = heatVerdict(ambient + (worst - ambient) * (1 + cooling.spread), limits)
    if (!certain && !stormOnly && !(upper.excess > 0)) return undefined
    const { weakest } = nominal
    const byShort = worst > hottest.copperTemperature
    const limitText = `${weakest.name} bears ${formatSi(weakest.temperature, 'degC', 3)}`
    return {
      code: 'stator-heat',
      severity: certain ? severityFor(chain, ['outdoor']) : 'warning',
      path: 'stator',
      what: hottest.overheated
        ? 'The winding finds no steady temperature before it burns.'
        : certain
          ? `The winding gets hotter than ${weakest.name} bears with ${heatMargin} K in hand.`
          : stormOnly
            ? `Should the mechanical limiter stick, the winding shorted in a storm gets hotter than ${weakest.name} bears.`
            : `The winding may get hotter than ${weakest.name} bears, as far as the cooling is known.`,
      why: 'Copper loss grows with the square of the current and the hot copper resists more, while the surface that gives the heat away stays as it is.',
      figures: `Hottest at ${formatSi(hottest.wind, 'm_per_s')}: ${hottest.overheated ? 'above ' : ''}${formatSi(hottest.copperTemperature, 'degC', 3)} with ${formatSi(hottest.watts.winding, 'W')} in the copper${short === undefined ? '' : shortText(short)}${storm === undefined ? '' : shortText(storm)}; ${limitText}. ${
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
