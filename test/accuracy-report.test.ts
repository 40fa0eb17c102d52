/** Checks the two reporters of the run on a run that is made up. */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type { TestModule, TestSpecification, Vitest } from 'vitest/node'
import AccuracyReport from './accuracy-report.ts'
import ClosingLine, { countsOf } from './closing-line.ts'

let root = ''
let exitCode: typeof process.exitCode
let said: string[] = []

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'accuracy-'))
  mkdirSync(join(root, 'docs'))
  exitCode = process.exitCode
  said = []
  for (const way of ['log', 'error'] as const)
    vi.spyOn(console, way).mockImplementation((line: string) => {
      said.push(line)
    })
  vi.stubEnv('GUSTLOOM_UPDATE', '')
})

afterEach(() => {
  vi.restoreAllMocks()
  vi.unstubAllEnvs()
  process.exitCode = exitCode
  rmSync(root, { recursive: true })
})

/** A module with one group of checks; `states` gives one test each. */
function madeUpModule(name: string, states: readonly string[], state = 'passed', difference = 0): TestModule {
  const module = { type: 'module', moduleId: join(root, name), state: () => state }
  const suite = { type: 'suite', name: 'source: book1999, table 1', parent: module }
  const tests = states.map((result, k) => ({
    name: `row ${k}`,
    parent: suite,
    module,
    result,
    meta: () => ({ achieved: { printed: '1.0', allowed: 0.05, difference } }),
  }))
  const allTests = (wanted?: string) =>
    tests.filter(({ result }) => wanted === undefined || result === wanted)
  return { ...module, children: { allTests } } as unknown as TestModule
}

async function run(
  modules: readonly TestModule[],
  {
    all = modules,
    pattern,
    reason = 'passed',
  }: { all?: readonly TestModule[]; pattern?: RegExp; reason?: string } = {},
) {
  const report = new AccuracyReport()
  report.onInit({
    config: { root },
    getGlobalTestNamePattern: () => pattern,
    globTestSpecifications: async () => all,
  } as unknown as Vitest)
  await report.onTestRunStart(modules as unknown as TestSpecification[])
  report.onTestRunEnd(modules, [], reason)
}

const page = () => join(root, 'docs', 'accuracy.md')

describe('law: the page of accuracies is written when asked, else compared', () => {
  test('written by a full run when asked; then a full run agrees with it', async () => {
    const modules = [madeUpModule('a.test.ts', ['passed'])]
    vi.stubEnv('GUSTLOOM_UPDATE', '1')
    await run(modules)
    expect(readFileSync(page(), 'utf8')).toContain('| row 0 | 1.0 | 0.05 | < 1 % |')
    vi.stubEnv('GUSTLOOM_UPDATE', '')
    said = []
    await run(modules)
    expect(said).toEqual([])
    expect(process.exitCode).toBe(exitCode)
  })
  test('a difference in a full run fails and names the command', async () => {
    vi.stubEnv('GUSTLOOM_UPDATE', '1')
    await run([madeUpModule('a.test.ts', ['passed'])])
    vi.stubEnv('GUSTLOOM_UPDATE', '')
    await run([madeUpModule('a.test.ts', ['passed'], 'passed', 0.03)])
    expect(process.exitCode).toBe(1)
    expect(said.at(-1)).toContain('GUSTLOOM_UPDATE=1 npx vitest run')
    expect(said).toContain('+ | row 0 | 1.0 | 0.05 | ≤ 100 % |')
  })
  test('a partial run does neither, even when asked', async () => {
    vi.stubEnv('GUSTLOOM_UPDATE', '1')
    const [a, b] = [madeUpModule('a.test.ts', ['passed']), madeUpModule('b.test.ts', ['passed'])]
    await run([a], { all: [a, b] })
    await run([a], { pattern: /row/ })
    expect(existsSync(page())).toBe(false)
    expect(said).toEqual([])
  })
  test('a failed run writes nothing', async () => {
    vi.stubEnv('GUSTLOOM_UPDATE', '1')
    await run([madeUpModule('a.test.ts', ['failed'], 'failed')], { reason: 'failed' })
    expect(existsSync(page())).toBe(false)
    expect(said.at(-1)).toContain('did not pass')
  })
})

describe('law: the closing line counts every failure', () => {
  test('passed, failed and skipped tests', () => {
    const modules = [
      madeUpModule('a', ['passed', 'passed', 'skipped']),
      madeUpModule('b', ['failed'], 'failed'),
    ]
    expect(countsOf(modules)).toEqual({ passed: 2, failed: 1, skipped: 1 })
  })
  test('a file that does not load and an error outside of tests count as failures', () => {
    expect(countsOf([madeUpModule('a', [], 'failed')], 1)).toEqual({ passed: 0, failed: 2, skipped: 0 })
  })
  test('the line itself', () => {
    new ClosingLine().onTestRunEnd([madeUpModule('a', ['passed'])])
    expect(said).toEqual(['tests: 1 passed, 0 failed, 0 skipped'])
  })
})
