/** Concern: frost, or the short of a storm, takes strength from the magnets that does not come back. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { triable, whereTriable } from '../ladder/ladder.ts'
import { harderGrade, thickerMagnets } from '../ladder/magnet.ts'
import { steelBehind } from '../ladder/steel.ts'
import {
  type MagnetDemagnetization,
  type MagnetTemperatures,
  magnetDemagnetization,
} from '../magnet-demagnetization.ts'
import { type ChainView, type ConcernRule, severityFor } from './concern.ts'
import { rowOfMost } from './extreme-row.ts'
import { sunAllowance } from './plastic-softening.ts'

/** How far the coldest night of many years lies below the mean air of a site [K]: common practice, no source. */
export const frostAllowance = 35

/** What the magnets of a chain may meet. */
export function magnetTemperatures({
  machine,
  rows,
}: Pick<ChainView, 'machine' | 'rows'>): MagnetTemperatures {
  const { ambient } = machine.site
  const outdoor = machine.safetyClass === 'outdoor'
  const warmest = rowOfMost(rows, ({ temperatures }) => temperatures.magnets)
  return {
    coldest: ambient - (outdoor ? frostAllowance : 0),
    hottest: ambient + (outdoor ? sunAllowance : 0),
    hottestAtWork: warmest?.temperatures.magnets ?? ambient,
  }
}

const cases = ({ rest, short }: MagnetDemagnetization, shortIsMeant: boolean) =>
  [
    { name: 'in frost at rest', ofShort: false, grave: true, found: rest.cold },
    {
      name: 'when the winding is shorted in a storm, cold',
      ofShort: true,
      grave: shortIsMeant,
      found: short.cold,
    },
    {
      name: 'when the winding is shorted in a storm, warm from work',
      ofShort: true,
      grave: shortIsMeant,
      found: short.hot,
    },
    { name: 'in the heat at rest', ofShort: false, grave: false, found: rest.hot },
  ] as const

/** Part of the mean strength below which a loss is no matter of safety: common practice, no source. */
export const smallLoss = 0.01

/** The case to tell of, and whether its worst point passes the knee for sure or only within the grade's spread. */
export function demagnetizationVerdict(result: MagnetDemagnetization, shortIsMeant: boolean) {
  const list = cases(result, shortIsMeant)
  const ratio = ({ found }: (typeof list)[number]) => found.greatestRatio
  const worst = (of: readonly (typeof list)[number][]) =>
    of.find((each) => ratio(each) === Math.max(...of.map(ratio)))
  const past = list.filter(({ found }) => found.kneeRatio > 1)
  const grave = worst(past.filter((each) => each.grave && each.found.irreversibleLoss >= smallLoss))
  if (grave !== undefined) return { ...grave, kind: 'grave' as const }
  const lost = worst(past)
  if (lost !== undefined) return { ...lost, kind: 'past' as const }
  const open = worst(list.filter((each) => ratio(each) > 1))
  return open === undefined ? undefined : { ...open, kind: 'perhaps' as const }
}

/** Temperatures of linear coefficients beyond these say only that there is no danger [K]. */
const tellingRange = [173.15, 573.15] as const

function limitWords({ limit }: MagnetDemagnetization): string {
  const told = (T: number) =>
    T > tellingRange[0] && T < tellingRange[1] ? formatSi(T, 'degC', 3) : 'no temperature it meets'
  return limit.side === 'hot'
    ? `The knee is met from ${told(limit.rest)} at rest and from ${told(limit.short)} in the short`
    : `The knee is met below ${told(limit.rest)} at rest and below ${told(limit.short)} in the short`
}

export const magnetDemagnetizationRule: ConcernRule = {
  code: 'magnet-demagnetization',
  title: 'Frost or a storm’s short may weaken the magnets for good',
  basis: `Field along the magnetisation at the worst point of one magnet (a twentieth of the half edge from its sides, just under its pole faces), its own, its neighbours’ and their images’, against the knee of the grade (J down to 0.9 of the remanence), ${frostAllowance} K below the site’s air and ${sunAllowance} K above it outdoors; and with the currents of a winding that is shorted suddenly at its leads at the speed of the storm without load, copper as cold as the air, at the worst rotor angle and moment, the magnets as cold as frost or as warm as work makes them (by the heat net, as in magnet-heat). Allowances common practice, no source. Past the knee in frost, or in the short of a machine that has a shorting switch, with ${100 * smallLoss} % or more of the volts gone for good, blocks the outdoor class, else a warning. A warning: past it with less gone, in a short that is no brake but a fault, in the heat alone, or only with knee and coefficient at the low end of what the grade leaves open. Asked of named grades only.`,
  measure: (chain) => {
    const result = magnetDemagnetization(chain, magnetTemperatures(chain))
    if (result === undefined) return undefined
    const meant = chain.machine.protection.electrical === 'shorting switch'
    const worst = Math.max(...cases(result, meant).map(({ found }) => found.greatestRatio))
    return {
      name: 'field at the worst point over the knee’s',
      value: worst,
      limit: 1,
      unit: 'percent',
      sound: 'below',
    }
  },
  answeredBy:
    'Open-circuit volts at one speed before and after a hard winter, or before and after the winding was shorted at speed.',
  judge: (chain) => {
    const result = magnetDemagnetization(chain, magnetTemperatures(chain))
    if (result === undefined) return undefined
    const verdict = demagnetizationVerdict(result, chain.machine.protection.electrical === 'shorting switch')
    if (verdict === undefined) return undefined
    const { name, ofShort: inShort, kind, found } = verdict
    const { armature, limit } = result
    return {
      code: 'magnet-demagnetization',
      severity: kind === 'grave' ? severityFor(chain, ['outdoor']) : 'warning',
      path: 'rotor.magnet',
      what: `The magnets ${kind === 'perhaps' ? 'may ' : ''}lose strength for good ${name}.`,
      why: inShort
        ? 'The currents of a short push against the magnets. Taken suddenly they reach nearly twice their steady peak and meet the next pole before they die away; what is driven past the knee of its curve does not come back.'
        : limit.side === 'cold'
          ? 'The coercivity of ferrite falls in the cold while its own field grows; what is driven past the knee of its curve does not come back when it thaws.'
          : 'Thin magnets in an open circuit work deep in their own demagnetising field, and heat lowers what they withstand; what is driven past the knee of its curve does not come back on cooling.',
      figures: `At ${formatSi(found.temperature, 'degC', 3)} the worst point bears ${formatNumber(-found.worstField / 1000, 3)} kA/m, the knee of ${result.grade} lies at ${formatNumber(found.kneeField / 1000, 3)} kA/m (${formatNumber(100 * found.kneeRatio, 3)} % of it, ${formatNumber(100 * found.greatestRatio, 3)} % at the low end of the grade)${inShort ? `; currents add ${formatNumber(Math.abs(armature.worstField) / 1000, 3)} kA/m from a short that settles at ${formatSi(armature.steadyCurrent, 'A', 3)} peak at ${formatSi(armature.speed, 'rpm', 3)}` : ''}. Of the volts ${formatNumber(100 * found.irreversibleLoss, 2)} % would be gone for good. ${limitWords(result)}.`,
      remedies: [
        triable(
          limit.side === 'hot'
            ? 'Take the same size in a grade with higher coercivity (letters M, H, SH behind the number).'
            : 'Take a ferrite grade with higher coercivity, or neodymium, which the cold does not hurt.',
          harderGrade(chain.machine.design),
        ),
        triable(
          'Take thicker magnets: they ease the demagnetising field.',
          thickerMagnets(chain.machine.design),
        ),
        ...whereTriable('Put steel behind them.', steelBehind(chain.machine.design)),
        inShort
          ? 'Brake before the storm and let the mechanical limiter keep the speed down, or short through a resistor.'
          : 'Read the volts per speed before and after the first hard winter and hot summer: a lasting drop tells.',
      ],
    }
  },
}
