/** Vitest reporter: closes the run with one plain line that counts the tests. */
import type { Reporter, TestModule } from 'vitest/node'

type State = 'passed' | 'failed' | 'skipped'

export interface Counts {
  readonly passed: number
  readonly failed: number
  readonly skipped: number
}

const count = (modules: readonly TestModule[], state: State): number =>
  modules.reduce((sum, module) => sum + [...module.children.allTests(state)].length, 0)

/** A file or group that fails without a failed test (it does not load, a hook throws) counts as one failure. */
const failedWithoutTest = (modules: readonly TestModule[]): number =>
  modules.filter((module) => module.state() === 'failed' && count([module], 'failed') === 0).length

export const countsOf = (modules: readonly TestModule[], unhandled = 0): Counts => ({
  passed: count(modules, 'passed'),
  failed: count(modules, 'failed') + failedWithoutTest(modules) + unhandled,
  skipped: count(modules, 'skipped'),
})

export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[] = []) {
    const { passed, failed, skipped } = countsOf(modules, unhandledErrors.length)
    console.log(`tests: ${passed} passed, ${failed} failed, ${skipped} skipped`)
  }
}
