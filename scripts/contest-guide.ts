/** Writes the computed part of the guide that sets the serpentine against coils. */
import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import {
  type ContestRule,
  type Design,
  fairContest,
  faultText,
  finished,
  parseDesignText,
} from '../src/index.ts'
import { contestReport } from '../src/output/contest-report.ts'

const root = new URL('../', import.meta.url)

export const contestGuide = 'docs/guide/serpentine-against-coils.md'

export const contestants = [
  'examples/contest/serpentine.json',
  'examples/contest/coils.json',
  'examples/contest/serpentine-in-one-layer.json',
  'examples/hen-house-drum.json',
] as const

const begin = '<!-- computed: from here -->'
const end = '<!-- computed: to here -->'

function designOf(path: string): Design {
  const parsed = parseDesignText(readFileSync(new URL(path, root), 'utf8'))
  if (!parsed.ok) throw new Error(`${path}: ${parsed.faults.map(faultText).join('; ')}`)
  return parsed.design
}

export const guideContest = (rule: ContestRule, count: number) =>
  finished(fairContest(contestants.slice(0, count).map(designOf), { rule }))

const cells = (values: readonly string[]) => `| ${values.join(' | ')} |`
const bullets = (texts: readonly string[]) => texts.map((text) => `- ${text}`)

function mainPart(contest: ReturnType<typeof guideContest>): string[] {
  const report = contestReport(contest)
  const { letters, names, changes, figures, winds } = report
  const whole = winds.filter(({ wind }) => Number.isInteger(wind) && wind >= 3 && wind <= 8)
  return [
    report.rule,
    '',
    ...letters.map((letter, k) => `- **${letter}** ${names[k]} (\`${contestants[k]}\`): ${changes[k]}`),
    '',
    cells(['', '', ...letters]),
    cells(['---', '---', ...letters.map(() => '---:')]),
    ...figures.map(({ name, unit, values }) => cells([name, unit, ...values])),
    ...whole.map(({ wind, watts }) =>
      cells([`into the battery at ${wind} m/s`, 'W', ...watts.map((value) => value.toFixed(1))]),
    ),
    '',
    ...bullets(report.verdict),
    '',
    'Conditions:',
    '',
    ...bullets(report.conditions),
  ]
}

/** The computed part as it should be now. */
export function computedPart(): string {
  const rules = ['equal-winding-volume', 'equal-loss', 'equal-cost', 'as-they-are'] as const
  return [
    begin,
    '',
    ...mainPart(guideContest('equal-copper-mass', contestants.length)),
    '',
    'The flat serpentine (A) against the coils (B) alone, under the other rules:',
    '',
    ...bullets(rules.map((rule) => contestReport(guideContest(rule, 2)).verdict[0]!)),
    '',
    end,
  ].join('\n')
}

/** The guide's text with another computed part. */
export function withComputedPart(text: string, part: string): string {
  const from = text.indexOf(begin)
  const to = text.indexOf(end)
  if (from < 0 || to < from) throw new Error(`${contestGuide} must have its two marks`)
  return text.slice(0, from) + part + text.slice(to + end.length)
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const file = new URL(contestGuide, root)
  writeFileSync(file, withComputedPart(readFileSync(file, 'utf8'), computedPart()))
}
