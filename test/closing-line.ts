/** Vitest reporter: closes the run with one plain line that counts the tests. */
import type { Reporter, TestModule } from 'vitest/node'

const count = (modules: readonly TestModule[], state: 'passed' | 'failed' | 'skipped') =>
  modules.reduce((sum, module) => sum + [...module.children.allTests(state)].length, 0)

export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]) {
    const [passed, failed, skipped] = (['passed', 'failed', 'skipped'] as const).map((state) =>
      count(modules, state),
    )
    console.log(`tests: ${passed} passed, ${failed} failed, ${skipped} skipped`)
  }
}
