/** Vitest reporter: writes or compares the page of achieved accuracies at the end of a full run. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import type { Reporter, TestCase, TestModule, TestSpecification, TestSuite, Vitest } from 'vitest/node'
import { type AccuracyRow, accuracyPage } from './accuracy-page.ts'
import type { Achieved } from './check.ts'

const command = 'GUSTLOOM_UPDATE=1 npx vitest run'

/** Titles from the outermost group to the test. */
function titlesOf(test: TestCase): string[] {
  const titles = [test.name]
  for (let up: TestSuite | TestModule = test.parent; up.type === 'suite'; up = up.parent)
    titles.unshift(up.name)
  return titles
}

function rowOf(test: TestCase, root: string): AccuracyRow[] {
  const { achieved } = test.meta() as { achieved?: Achieved }
  if (achieved === undefined) return []
  const titles = titlesOf(test)
  const grouped = titles.length > 1
  return [
    {
      file: relative(root, test.module.moduleId).split(sep).join('/'),
      group: grouped ? titles[0]! : 'Checks without a group',
      what: titles.slice(grouped ? 1 : 0).join(', '),
      achieved,
    },
  ]
}

export default class AccuracyReport implements Reporter {
  private vitest: Vitest | undefined
  private fullRun = false

  onInit(vitest: Vitest) {
    this.vitest = vitest
  }

  /** Full: every test file there is, no filter on titles, no share of the files. */
  async onTestRunStart(specifications: readonly TestSpecification[]) {
    const { vitest } = this
    if (vitest === undefined) return
    const filtered = vitest.getGlobalTestNamePattern() !== undefined || vitest.config.shard !== undefined
    const chosen = new Set(specifications.map(({ moduleId }) => moduleId))
    const all = await vitest.globTestSpecifications()
    this.fullRun = !filtered && all.every(({ moduleId }) => chosen.has(moduleId))
  }

  // Not async: the runner calls all reporters at once, and the closing line has to come last.
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[], reason: string) {
    if (this.vitest === undefined || !this.fullRun) return
    if (reason !== 'passed' || unhandledErrors.length > 0) {
      console.log('accuracy: not looked at, because the run did not pass')
      return
    }
    const { root } = this.vitest.config
    const page = join(root, 'docs', 'accuracy.md')
    const now = accuracyPage(
      modules.flatMap((module) => [...module.children.allTests()].flatMap((test) => rowOf(test, root))),
    )
    const before = existsSync(page) ? readFileSync(page, 'utf8') : ''
    if (before === now) return
    if (process.env.GUSTLOOM_UPDATE === '1') {
      writeFileSync(page, now)
      console.log('accuracy: docs/accuracy.md written')
      return
    }
    const old = new Set(before.split('\n'))
    const fresh = now.split('\n').filter((line) => !old.has(line))
    const kept = new Set(now.split('\n'))
    const gone = before.split('\n').filter((line) => !kept.has(line))
    for (const line of gone.slice(0, 10)) console.error(`- ${line}`)
    for (const line of fresh.slice(0, 10)) console.error(`+ ${line}`)
    console.error(`accuracy: docs/accuracy.md differs from this run; ${command} writes it anew`)
    process.exitCode = 1
  }
}
