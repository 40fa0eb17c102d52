/** The mechanics of a machine as a page of text, and as JSON in workshop units. */
import { crushCaution } from '../analysis/concern/assembly-pull.ts'
import { towerCaution, turningCaution } from '../analysis/concern/caution.ts'
import { type MechanicsRow, mechanicsGroups } from '../analysis/mechanics/mechanics-row.ts'
import type { MechanicsStudy } from '../analysis/mechanics/mechanics-study.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { mechanicsLimit, mechanicsMargin, mechanicsValue, pastLimit } from './mechanics-words.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96

/** How the value is known, and where its limit comes from, or what stands in a limit's place. */
function noteText({ known, from, limit }: MechanicsRow): string {
  if (from === '') return known
  return limit === undefined ? `${known}; ${from}` : `${known}; limit: ${from}`
}

/** Rows of one group: figures in columns, and beneath each how it is known. */
function groupLines(rows: readonly MechanicsRow[]): PageLine[] {
  const [head, ...table] = textTable(
    [
      { head: '', align: 'left' },
      { head: 'is', align: 'right' },
      { head: 'may be', align: 'right' },
      { head: 'times', align: 'right' },
    ],
    rows.map((row) => [nameText(row.name), mechanicsValue(row), mechanicsLimit(row), mechanicsMargin(row)]),
  )
  return [
    { text: `  ${head}`, tone: 'faint' },
    ...rows.flatMap((row, k): PageLine[] => [
      { text: `  ${table[k]}`, tone: pastLimit(row) ? 'warning' : 'plain' },
      ...wrapped(`      ${noteText(row)}`, columns, '      ').map(
        (text): PageLine => ({ text, tone: 'faint' }),
      ),
    ]),
  ]
}

/** Names in the first column are kept short enough for a terminal. */
const longestName = 58
const nameText = (name: string): string =>
  name.length <= longestName ? name : `${name.slice(0, longestName - 1)}…`

function pullLines({ pull, handDistance }: MechanicsStudy): PageLine[] {
  if (pull.length === 0) return []
  const [head, ...rows] = textTable(
    [
      { head: 'between the faces', align: 'right' },
      { head: 'pull', align: 'right' },
      { head: 'as a weight', align: 'right' },
      { head: 'work from far away', align: 'right' },
    ],
    pull.map(({ distance, pull: force, work }) => [
      formatSi(distance, 'mm'),
      formatSi(force, 'N'),
      `${formatNumber(force / 9.80665, 2)} kg`,
      `${formatNumber(work, 2)} J`,
    ]),
  )
  return [
    { text: '', tone: 'plain' },
    { text: 'Force against distance, for putting the discs together', tone: 'title' },
    { text: `  ${head}`, tone: 'faint' },
    ...rows.map((text): PageLine => ({ text: `  ${text}`, tone: 'plain' })),
    ...(handDistance === undefined
      ? []
      : wrapped(
          `  Hands hold it beyond ${formatSi(handDistance, 'mm', 2)}; nearer, jacking screws only.`,
          columns,
          '  ',
        ).map((text): PageLine => ({ text, tone: 'plain' }))),
    ...wrapped(`  ${crushCaution}`, columns, '  ').map((text): PageLine => ({ text, tone: 'warning' })),
  ]
}

export function mechanicsPage(study: MechanicsStudy): PageLine[] {
  const failing = study.rows.filter(pastLimit)
  return [
    { text: `${study.name} — mechanics`, tone: 'title' },
    ...wrapped(
      failing.length === 0
        ? '  Nothing that was asked is beyond its limit.'
        : `  Beyond its limit: ${failing.map(({ name }) => name).join('; ')}.`,
      columns,
      '  ',
    ).map((text): PageLine => ({ text, tone: failing.length === 0 ? 'good' : 'warning' })),
    ...wrapped(`  Temperatures: ${study.heat.how}.`, columns, '  ').map(
      (text): PageLine => ({ text, tone: 'faint' }),
    ),
    ...mechanicsGroups.flatMap((group): PageLine[] => {
      const rows = study.rows.filter((row) => row.group === group)
      return rows.length === 0
        ? []
        : [
            { text: '', tone: 'plain' },
            { text: `${group.charAt(0).toUpperCase()}${group.slice(1)}`, tone: 'title' },
            ...groupLines(rows),
          ]
    }),
    ...pullLines(study),
    { text: '', tone: 'plain' },
    ...[
      'Blades, hub, shaft and tower are signed for by competent engineers; what stands here about them is information.',
      turningCaution,
      towerCaution,
    ].flatMap((text) =>
      wrapped(`  ${text}`, columns, '  ').map((line): PageLine => ({ text: line, tone: 'warning' })),
    ),
  ]
}

/** The same for other programs. */
export const mechanicsResult = ({ name, rows, pull, handDistance, heat }: MechanicsStudy) => ({
  name,
  rows: rows.map(({ group, name: quantity, value, spread, unit: suffix, limit, margin, from, known }) => {
    const { divisor, factor, ucum } = unit(suffix)
    return {
      group,
      quantity,
      value: value === undefined ? null : fromSi(value, unit(suffix)),
      spread: (spread * divisor) / factor,
      limit: limit === undefined ? null : fromSi(limit.value, unit(suffix)),
      sound: limit?.sound ?? null,
      unit: ucum,
      margin: margin ?? null,
      limitFrom: from,
      known,
    }
  }),
  pull: pull.map(({ distance, pull: force, work }) => ({
    distance_mm: 1000 * distance,
    pull_N: force,
    work_J: work,
  })),
  handsHoldBeyond_mm: handDistance === undefined ? null : 1000 * handDistance,
  temperatures: heat.how,
})
