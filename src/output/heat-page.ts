/** Heat of a design as a page of text, and as JSON in workshop units. */

import { fireCaution } from '../analysis/concern/caution.ts'
import type { HeatCase, HeatStudy } from '../analysis/heat-study.ts'
import type { HeatTransient } from '../analysis/heat-transient.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { caseSentence, duration, heatNotes, turnSentence } from './heat-report.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96
const shownSamples = 9
const shownWays = 6

const degrees = (T: number): string => formatNumber(fromSi(T, unit('degC')), 3)

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
    ...wrapped(`  ${caseSentence(each)}`, columns, '    '),
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
  const { hottest, born } = study
  const turn = turnSentence(study)
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
    ...(turn === undefined ? [] : wrapped(`  ${turn}`, columns, '    ').map(plain)),
    plain(''),
    ...heatNotes(study).flatMap((text) => wrapped(`  ${text}`, columns, '  ').map(faint)),
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
