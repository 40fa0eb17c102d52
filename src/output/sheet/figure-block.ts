/** The figures of the sheet: what the whole machine does, each with its unit and how far guesses let it be off. */
import type { Chain } from '../../analysis/compute.ts'
import type { Spreads } from '../../analysis/spread.ts'
import { tellingWind } from '../../analysis/telling-wind.ts'
import { formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import { escaped } from '../chart/picture.ts'
import { intervalText } from '../interval-words.ts'
import { said } from '../telling.ts'
import { linesIn } from './letter-width.ts'
import { machineWidth } from './machine-block.ts'
import {
  type Block,
  heading,
  headingHeight_mm,
  type Pair,
  pairList,
  pairListHeight,
  saidPair,
} from './sheet-markup.ts'
import { columnGap_mm, lineHeight_mm, room_mm } from './sheet-unit.ts'

export function figurePairs(chain: Chain, spreads: Spreads): Pair[] {
  const { year, runaway, machine, generator, startWind, cutInWind, rows } = chain
  const { row } = tellingWind(chain)
  const { power_W, atWind_m_per_s } = machine.design.purpose
  const wind = (speed: number) => formatSi(speed, 'm_per_s', 2)
  const hottest = Math.max(...rows.map(({ copperTemperature }) => copperTemperature))
  const { wire, support } = machine.stator
  const limit =
    wire.highestTemperature <= support.softening
      ? `${formatSi(wire.highestTemperature, 'degC')}, enamel class ${wire.insulationClass}`
      : `${formatSi(support.softening, 'degC')}, ${support.name}`
  const overheated = rows.some((each) => each.overheated)
  return [
    [`A year, mean wind ${wind(year.meanWind)}`, intervalText(year.energy, 'kWh', spreads.energy)],
    [`Stored or used at ${wind(row.wind)}`, intervalText(row.watts.useful, 'W', spreads.usefulPower)],
    ...(power_W === undefined || atWind_m_per_s === undefined
      ? []
      : [
          [
            'Wanted',
            `${formatSi(nominal(power_W), 'W')} at ${formatSi(nominal(atWind_m_per_s), 'm_per_s', 2)}`,
          ] as Pair,
        ]),
    ['Starts to turn at', intervalText(startWind, 'm_per_s', spreads.startWind)],
    ['Current begins at', intervalText(cutInWind, 'm_per_s', spreads.cutInWind)],
    ['… at a speed of', intervalText(generator.cutIn, 'rpm', spreads.cutInSpeed)],
    [`Load lost in ${wind(runaway.wind)}`, intervalText(runaway.speed, 'rpm', spreads.runawaySpeed)],
    ['… behind the bridge', intervalText(runaway.directVoltage, 'V', spreads.runawayVoltage)],
    ['… between lines', `${formatSi(runaway.lineVoltage, 'V')} rms`],
    [`Copper at ${wind(row.wind)}`, intervalText(row.copperTemperature, 'degC', spreads.copperTemperature)],
    [
      'Hottest copper',
      overheated ? 'finds no steady warmth: it burns' : intervalText(hottest, 'degC', spreads.hottestCopper),
    ],
    ['First limit of heat', limit],
  ]
}

/** Width of the block [mm]. */
const width_mm = room_mm.width - machineWidth - columnGap_mm

const note = '±, or from … to: nine of ten draws of all guesses together lie between the ends.'

export function figureBlock(chain: Chain, spreads: Spreads): Block {
  const pairs = figurePairs(chain, spreads).map(saidPair)
  const below = said(note)
  return {
    markup: `${heading('What it does')}${pairList(pairs)}<p>${escaped(below)}</p>`,
    height: headingHeight_mm + pairListHeight(pairs, width_mm) + lineHeight_mm * linesIn(below, width_mm),
  }
}
