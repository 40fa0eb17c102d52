/** Heat of a design as a page of text, and as JSON in workshop units. */

import { fireCaution } from '../analysis/concern/caution.ts'
import { windShare } from '../analysis/heat-film.ts'
import type { HeatCase, HeatStudy } from '../analysis/heat-study.ts'
import type { HeatTransient } from '../analysis/heat-transient.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96
const shownSamples = 9
const shownWays = 6

const degrees = (T: number): string => formatNumber(fromSi(T, unit('degC')), 3)

/** Seconds as people say them. */
export function duration(seconds: number): string {
  if (seconds < 90) return `${formatNumber(seconds, 2)} s`
  if (seconds < 5400) return `${formatNumber(seconds / 60, 2)} min`
  return `${formatNumber(seconds / 3600, 2)} h`
}

const caseWords = ({ key, wind, current }: HeatCase): string => {
  switch (key) {
    case 'strong wind':
      return `From cold in ${formatSi(wind, 'm_per_s')}, steady`
    case 'gust':
      return `From there into a gust of ${formatSi(wind, 'm_per_s')} that does not end and no limiter acts in`
    case 'short':
      return `Warm from work, shorted at the leads in ${formatSi(wind, 'm_per_s')}, the load lost`
    case 'heat run':
      return `On the bench, at rest, ${formatSi(current!, 'A')} in every phase, from cold`
  }
}

const verdictOf = ({ first, settledAt, samples }: HeatTransient): string => {
  const last = samples[samples.length - 1]!
  const rest =
    settledAt === undefined
      ? `not at rest after ${duration(last.time)}`
      : `at rest after about ${duration(settledAt)}`
  const reached =
    first === undefined
      ? 'no limit is ever met'
      : `${first.name} is the first to pass its ${formatSi(first.temperature, 'degC', 3)}, after ${duration(first.at!)}`
  return `${reached}; ${rest}, hottest spot ${formatSi(last.hotSpot, 'degC', 3)}, magnets ${formatSi(last.magnets, 'degC', 3)}`
}

/** Samples at times that grow evenly in their logarithm: heat is quick first and slow then. */
function shown({ samples }: HeatTransient) {
  const last = samples[samples.length - 1]!.time
  const first = Math.min(1, last)
  const times = Array.from({ length: shownSamples }, (_, k) =>
    k === 0 ? 0 : first * (last / first) ** ((k - 1) / (shownSamples - 2)),
  )
  const picked = times.map((time) => samples.find((sample) => sample.time >= time - 1e-9) ?? samples.at(-1)!)
  return picked.filter((sample, k) => k === 0 || sample !== picked[k - 1])
}

function caseLines(each: HeatCase): string[] {
  return [
    ...wrapped(`  ${caseWords(each)}: ${verdictOf(each.run)}.`, columns, '    '),
    ...textTable(
      ['time', 'copper °C', 'hottest °C', 'support °C', 'gap air °C', 'magnets °C', 'copper W'].map(
        (head) => ({
          head,
          align: 'right' as const,
        }),
      ),
      shown(each.run).map((sample) => [
        duration(sample.time),
        degrees(sample.copper),
        degrees(sample.hotSpot),
        degrees(sample.support),
        degrees(sample.gapAir),
        degrees(sample.magnets),
        formatNumber(sample.watts, 3),
      ]),
    ).map((line) => `    ${line}`),
  ]
}

export function heatPage(study: HeatStudy): PageLine[] {
  const plain = (text: string): PageLine => ({ text, tone: 'plain' })
  const title = (text: string): PageLine => ({ text, tone: 'title' })
  const faint = (text: string): PageLine => ({ text, tone: 'faint' })
  const table = (lines: readonly string[]) =>
    lines.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`)))
  const { hottest, born, shortedTurn: turn } = study
  const total = study.ways.reduce((sum, { power }) => sum + Math.max(power, 0), 0)
  const rows = study.rows.filter(
    ({ state, wind }) => state !== 'at rest' && (wind % 1 === 0 || wind === hottest.wind),
  )
  const moving = rows.filter(({ state }, k) => state !== 'held' || rows[k - 1]?.state !== 'held')
  return [
    title(`${study.name} — heat`),
    plain(''),
    title('Wind by wind, steady'),
    ...table(
      textTable(
        [
          'wind m/s',
          'rpm',
          'copper W',
          'copper °C',
          'hottest °C',
          'support °C',
          'gap air °C',
          'magnets °C',
        ].map((head) => ({ head, align: 'right' as const })),
        moving.map(({ wind, speed, watts, copperTemperature, temperatures, overheated }) => [
          formatNumber(wind, 3),
          formatNumber(fromSi(speed, unit('rpm')), 3),
          formatNumber(watts.winding + watts.eddy, 3),
          `${overheated ? 'above ' : ''}${degrees(copperTemperature)}`,
          overheated ? 'burns' : degrees(temperatures.hotSpot),
          overheated ? '—' : degrees(temperatures.support),
          degrees(temperatures.gapAir),
          degrees(temperatures.magnets),
        ]),
      ),
    ),
    plain(''),
    title(`Where the heat goes at ${formatSi(hottest.wind, 'm_per_s')}`),
    plain(
      `  born: ${formatSi(born.copper, 'W')} in the copper${born.metal > 0 ? `, ${formatSi(born.metal, 'W')} in metal near the magnets` : ''}; ${formatSi(born.bearings, 'W')} in bearings, which warm the air alone`,
    ),
    ...table(
      textTable(
        [
          { head: 'leaves from', align: 'left' },
          { head: 'by', align: 'left' },
          { head: 'W', align: 'right' },
          { head: '%', align: 'right' },
        ],
        study.ways
          .slice(0, shownWays)
          .map(({ from, by, power }) => [
            from,
            by,
            formatNumber(power, 3),
            total > 0 ? formatNumber((100 * power) / total, 2) : '—',
          ]),
      ),
    ),
    plain(''),
    title('Limits in steady wind'),
    ...table(
      textTable(
        [
          { head: 'material', align: 'left' },
          { head: 'bears °C', align: 'right' },
          { head: 'gets °C', align: 'right' },
          { head: 'in hand K', align: 'right' },
        ],
        study.limits.map(({ name, temperature, warmest }) => [
          name,
          degrees(temperature),
          degrees(warmest),
          formatNumber(temperature - warmest, 3).replace('-', '−'),
        ]),
      ),
    ),
    plain(''),
    title('How long it lasts'),
    ...study.cases.flatMap((each) => [...caseLines(each).map(plain), plain('')]),
    ...(turn === undefined
      ? []
      : wrapped(
          `  One turn of a coil closed on itself at ${formatSi(turn.speed, 'rpm', 3)}: ${formatSi(turn.current, 'A')} and ${formatSi(turn.power, 'W')} in it, ${formatNumber(turn.rate, 2)} K/s at first; it settles ${formatNumber(turn.rise, 2)} K above the winding round it, at ${formatSi(turn.temperature, 'degC', 3)}. ${turn.limits
            .map(({ name, at }) => `${name}: ${at === undefined ? 'never' : `after ${duration(at)}`}`)
            .join('; ')}.`,
          columns,
          '    ',
        ).map(plain)),
    plain(''),
    ...[
      ...(study.spread > 0
        ? [
            `Every warmth over the air is an estimate, ± ${formatNumber(100 * study.spread, 2)} %: no measured home-built stator was found to hold it against. A heat run settles it: amps, watts in the copper and the temperature once it no longer rises; enter the K/W. Run on the bench at rest it errs to the safe side, for no wind and no turning disc cools it there.`,
          ]
        : ['The way from copper to air was measured; how it is shared among the parts is estimated.']),
      `Guesses it rests on: ${formatNumber(100 * windShare, 2)} % of the wind passes the machine; 1 mm of cover on each face of the winding; ${study.cast ? 'resin without voids between the wires' : 'still air between dry wires'}; painted or printed surfaces; air drawn through the gaps of discs as by a free disc, known to a factor of two.`,
      ...study.rangesLeft.map(
        ({ face, name, symbol, value, range }) =>
          `Outside its range: ${name} at ${face}, ${symbol} ${formatNumber(value, 2)} (published for ${formatNumber(range[0], 2)} to ${formatNumber(range[1], 2)}).`,
      ),
    ].flatMap((text) => wrapped(`  ${text}`, columns, '  ').map(faint)),
    ...wrapped(`  ${fireCaution}`, columns, '  ').map((text): PageLine => ({ text, tone: 'warning' })),
  ]
}

const inDegrees = (T: number) => fromSi(T, unit('degC'))

const limitJson = ({ name, temperature, at }: HeatTransient['limits'][number]) => ({
  name,
  limit_degC: inDegrees(temperature),
  reached_s: at ?? null,
})

/** The same for other programs. */
export const heatResult = (study: HeatStudy) => ({
  name: study.name,
  spread: study.spread,
  rows: study.rows.map(({ wind, state, speed, watts, copperTemperature, temperatures, overheated }) => ({
    wind_m_per_s: wind,
    state,
    speed_rpm: fromSi(speed, unit('rpm')),
    copper_W: watts.winding + watts.eddy,
    metal_W: watts.parts,
    copper_degC: inDegrees(copperTemperature),
    hotSpot_degC: inDegrees(temperatures.hotSpot),
    support_degC: inDegrees(temperatures.support),
    gapAir_degC: inDegrees(temperatures.gapAir),
    magnets_degC: inDegrees(temperatures.magnets),
    overheated,
  })),
  ways: study.ways.map(({ from, by, power }) => ({ from, by, power_W: power })),
  limits: study.limits.map((limit) => ({ ...limitJson(limit), warmest_degC: inDegrees(limit.warmest) })),
  cases: study.cases.map(({ key, wind, current, run }) => ({
    key,
    wind_m_per_s: wind,
    current_A: current ?? null,
    limits: run.limits.map(limitJson),
    first: run.first?.name ?? null,
    settled_s: run.settledAt ?? null,
    energy_J: run.energy,
    samples: shown(run).map((sample) => ({
      time_s: sample.time,
      copper_degC: inDegrees(sample.copper),
      hotSpot_degC: inDegrees(sample.hotSpot),
      magnets_degC: inDegrees(sample.magnets),
      copper_W: sample.watts,
    })),
  })),
  shortedTurn:
    study.shortedTurn === undefined
      ? null
      : {
          speed_rpm: fromSi(study.shortedTurn.speed, unit('rpm')),
          current_A: study.shortedTurn.current,
          power_W: study.shortedTurn.power,
          rate_K_per_s: study.shortedTurn.rate,
          settles_degC: inDegrees(study.shortedTurn.temperature),
          limits: study.shortedTurn.limits.map(limitJson),
        },
  rangesLeft: study.rangesLeft.map(({ face, name, symbol, value, range }) => ({
    face,
    name,
    symbol,
    value,
    range,
  })),
})
