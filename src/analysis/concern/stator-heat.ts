/** Concern: the winding gets hotter than its weakest material bears, in high wind or shorted in a storm. */
import type { Machine } from '../../machine/machine.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { keptAnswer } from '../kept-answer.ts'
import { both, triable } from '../ladder/ladder.ts'
import { limiter } from '../ladder/limiter.ts'
import { hardierSupport, higherEnamel } from '../ladder/material.ts'
import { widerBundle } from '../ladder/winding.ts'
import { thickerWire } from '../ladder/wire.ts'
import { limiterWind, type WindRow } from '../power-curve.ts'
import { type ShortedHeat, shortedHeat } from '../shorted-heat.ts'
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

/** What the hottest copper touches, and how much of it that bears. */
export const copperLimits = ({ stator: { wire, support } }: Machine): [HeatLimit, HeatLimit] => [
  { name: `the enamel of class ${wire.insulationClass}`, temperature: wire.highestTemperature },
  { name: `the ${support.name} round it`, temperature: support.softening },
]

interface HeatCases {
  /** The hottest row of steady wind. */
  readonly hottest: WindRow
  /** Shorted on purpose in the limiter's wind, and in a storm that only a stuck limiter lets through. */
  readonly short: ShortedHeat | undefined
  readonly storm: ShortedHeat | undefined
}

const heatCases = keptAnswer((chain: ChainView): HeatCases | undefined => {
  const { machine } = chain
  const { stormWind } = machine.site
  const hottest = rowOfMost(chain.rows, ({ temperatures }) => temperatures.hotSpot)
  if (hottest === undefined) return undefined
  if (machine.protection.electrical !== 'shorting switch')
    return { hottest, short: undefined, storm: undefined }
  const limited =
    machine.protection.mechanical === 'none' ? stormWind : Math.min(stormWind, limiterWind(machine))
  const [short, storm] = shortedHeat(chain, limited < stormWind ? [limited, stormWind] : [limited])
  return { hottest, short, storm }
})

const spotOf = (shorted: ShortedHeat | undefined, ambient: number): number =>
  shorted?.temperatures.hotSpot ?? ambient

const shortText = ({ wind, temperatures, burnt, state, density, rate }: ShortedHeat): string =>
  `; shorted in ${formatSi(wind, 'm_per_s')} with the load lost: ${burnt ? 'above ' : ''}${formatSi(temperatures.hotSpot, 'degC', 3)}${state.holds ? '' : ' and the brake does not stop it'}, at first ${formatSi(density, 'A_per_mm2')} and ${formatNumber(rate, 2)} K/s`

export const statorHeat: ConcernRule = {
  code: 'stator-heat',
  title: 'The winding overheats in high wind, or when shorted in a storm',
  basis: `Hottest spot of the copper in every wind up to the storm, and shorted where a shorting switch is the brake: from the speed without load, in the limiter’s wind and in the storm, the hotter of a short at the machine’s leads (more current) and at the far end of line wires before the bridge (less brake). The heat goes through wire, covers, casting, the air of the gaps and the rotor, by a net of nodes; half of the wind is taken to pass the machine (a guess). Against the weakest of enamel and support less ${heatMargin} K (common practice, no source). Enamel classes after IEC 60085, verify the edition in force. Blocks the outdoor class, a warning in the others; a warning everywhere when only the ± 50 % of an estimated warmth reaches the limit, or when it is too hot only shorted in a storm above the wind of a mechanical limiter, which must have stuck then.`,
  measure: (chain) => {
    const cases = heatCases(chain)
    if (cases === undefined) return undefined
    const { ambient } = chain.machine.site
    const { hottest, short, storm } = cases
    const worst = Math.max(hottest.temperatures.hotSpot, spotOf(short, ambient), spotOf(storm, ambient))
    return {
      name: 'hottest spot of the copper, with what its estimate leaves open',
      value: ambient + (worst - ambient) * (1 + chain.heat.spread),
      limit: heatVerdict(worst, copperLimits(chain.machine)).weakest.temperature - heatMargin,
      unit: 'degC',
      sound: 'below',
    }
  },
  answeredBy:
    'A heat run: a sensor cast in beside the copper, watts in the copper and the temperature once it no longer rises; enter the K/W.',
  judge: (chain) => {
    const cases = heatCases(chain)
    if (cases === undefined) return undefined
    const { machine, heat } = chain
    const { design } = machine
    const { ambient } = machine.site
    const { hottest, short, storm } = cases
    const inRow = hottest.temperatures.hotSpot
    const limits = copperLimits(machine)
    const inWork = Math.max(inRow, spotOf(short, ambient))
    const certain = hottest.overheated || heatVerdict(inWork, limits).excess > 0
    const worst = Math.max(inWork, spotOf(storm, ambient))
    const nominal = heatVerdict(worst, limits)
    const stormOnly = !certain && nominal.excess > 0
    const upper = heatVerdict(ambient + (worst - ambient) * (1 + heat.spread), limits)
    if (!certain && !stormOnly && !(upper.excess > 0)) return undefined
    const { weakest } = nominal
    const byShort = worst > inRow
    const limitText = `${weakest.name} bears ${formatSi(weakest.temperature, 'degC', 3)}`
    const ofEnamel = weakest.name.startsWith('the enamel')
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
      figures: `Hottest at ${formatSi(hottest.wind, 'm_per_s')}: ${hottest.overheated ? 'above ' : ''}${formatSi(inRow, 'degC', 3)} at the hottest spot with ${formatSi(hottest.watts.winding, 'W')} in the copper${short === undefined ? '' : shortText(short)}${storm === undefined ? '' : shortText(storm)}; ${limitText}. ${
        heat.spread > 0
          ? `The way of the heat is estimated, ± ${formatNumber(100 * heat.spread, 2)} % of the rise.`
          : 'The way of the heat was measured.'
      }`,
      remedies: [
        byShort
          ? 'Slow the rotor mechanically before it is shorted, and short it only in winds that it bears.'
          : triable(
              'Let the mechanical limiter act in less wind, so that the current stops growing earlier.',
              limiter(design),
            ),
        triable(
          'Put more copper into the same turns: thicker wire in a bundle that has room for it.',
          both(thickerWire(design), widerBundle(design)),
        ),
        'Open a path for the heat: bare resin faces in the wind, a filled resin, no plastic between copper and air.',
        ...(ofEnamel
          ? [triable('Use wire of a higher enamel class.', higherEnamel(design))]
          : [triable('Cast or wind it in something that softens later.', hardierSupport(design))]),
        `Cast a temperature sensor in beside the copper and do a heat run; enter the K/W it gives. ${fireCaution}`,
      ],
    }
  },
}
