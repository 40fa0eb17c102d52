/** Table of the match: every wind, the state a rising wind reaches in it, and what else is in balance there. */
import type { MatchMap, MatchState } from '../../analysis/match-map.ts'
import { pathKind } from '../../analysis/path-kind.ts'
import { formatNumber } from '../../units/format.ts'
import { fromSi, unit } from '../../units/unit.ts'
import type { ChartTable, TableCell } from './chart-table.ts'
import { windStateWords } from './power-curve.ts'

const perRpm = (2 * Math.PI) / 60

const rpm = (speed: number): number => fromSi(speed, unit('rpm'))

export function matchTable({ winds }: Pick<MatchMap, 'winds'>): ChartTable {
  return {
    caption: 'Where the machine runs',
    columns: [
      { head: 'wind', unit: 'm/s', exact: true },
      { head: 'state' },
      { head: 'speed', unit: 'rpm' },
      { head: 'tip-speed ratio' },
      { head: 'power coefficient' },
      { head: 'shaft', unit: 'W' },
      { head: 'copper', unit: '°C' },
      { head: 'blades’ change', unit: 'W per rpm' },
      { head: 'generator’s change', unit: 'W per rpm' },
      { head: 'starting torque over friction' },
      { head: 'also in balance', unit: 'rpm' },
    ],
    rows: winds.map((each) => {
      const state = each.states[each.rising]
      const of = (read: (state: MatchState) => number): TableCell =>
        state === undefined ? undefined : read(state)
      const others = each.states
        .filter((_, k) => k !== each.rising)
        .map(({ speed, stable }) => `${formatNumber(rpm(speed))}${stable ? '' : ', not steady'}`)
      return [
        each.wind,
        windStateWords[pathKind(each, each.rising)],
        of(({ speed }) => rpm(speed)),
        of(({ tipSpeedRatio }) => tipSpeedRatio),
        of(({ powerCoefficient }) => powerCoefficient),
        of(({ power }) => power),
        of(({ copperTemperature }) => fromSi(copperTemperature, unit('degC'))),
        of(({ bladeSlope }) => bladeSlope * perRpm),
        of(({ generatorSlope }) => generatorSlope * perRpm),
        Number.isFinite(each.startingMargin) ? each.startingMargin : 'no friction',
        others.length === 0 ? undefined : others.join('; '),
      ]
    }),
  }
}

/** What its columns say. */
export const matchTableNote =
  'The wind rises. Change: how many watts more blades and generator have with each turn a minute; the speed holds itself where the generator’s is the larger. Starting torque over friction: torque of the blades at rest over the friction that holds them.'
