/** The page of achieved accuracies: what each check against printed digits allowed and reached. */
import type { Achieved } from './check.ts'

export interface AccuracyRow {
  /** Test file, from the root. */
  readonly file: string
  /** Title of the group, which begins with the kind of check and the key of the source. */
  readonly group: string
  readonly what: string
  readonly achieved: Achieved
}

/**
 * How much of the allowance was used, in steps so coarse that the page is the same on every machine. `Math.sin` and
 * its like differ in the last bit between engines; a check that allows only some hundred of those bits gets one word.
 */
export function bucketOf({ printed, allowed, difference }: Achieved): string {
  if (!(difference <= allowed)) return 'not met'
  if (allowed <= 1000 * Number.EPSILON * Math.abs(Number(printed))) return 'rounding'
  if (difference < 0.01 * allowed) return '< 1 %'
  if (difference < 0.1 * allowed) return '< 10 %'
  return difference < 0.5 * allowed ? '< 50 %' : '≤ 100 %'
}

const cell = (text: string): string => text.replace(/\|/g, '\\|').replace(/\s+/g, ' ').trim()

/** 5.000005e-7 → 5e-7: the sliver over the half digit is no part of the allowance. */
const short = (value: number): string => String(Number(value.toPrecision(2)))

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** The whole page, groups in the order of their files, rows in the order of their checks. */
export function accuracyPage(rows: readonly AccuracyRow[]): string {
  const groups = new Map<string, AccuracyRow[]>()
  for (const row of [...rows].sort((a, b) => byText(a.file, b.file))) {
    const key = `${row.file}\n${row.group}`
    groups.set(key, [...(groups.get(key) ?? []), row])
  }
  const tables = [...groups.values()].map((group) => {
    const { file, group: title } = group[0]!
    return [
      `## ${cell(title)}`,
      '',
      `In \`${file}\`.`,
      '',
      '| what | printed | allowed ± | used of the allowance |',
      '| --- | --- | --- | --- |',
      ...group.map(
        ({ what, achieved }) =>
          `| ${cell(what)} | ${achieved.printed} | ${short(achieved.allowed)} | ${bucketOf(achieved)} |`,
      ),
      '',
    ].join('\n')
  })
  return [
    '# Achieved accuracy',
    '',
    'Written by the test run; do not edit. `GUSTLOOM_UPDATE=1 npx vitest run` writes it anew, and a full run fails',
    'when it differs.',
    '',
    'Each row is one check against digits that somebody else printed. Unless the test says why not, the allowance is',
    'half a unit of the last printed digit. The last column says how much of it the computed number used; “rounding”',
    'means that the allowance itself is no more than rounding.',
    '',
    `Checks: ${rows.length}. Groups: ${groups.size}.`,
    '',
    ...tables,
  ].join('\n')
}
