/** How the checks of the house are run: those of the engine side by side, then those of the page one by one. */
import { defineConfig } from 'vitest/config'

const page = 'test/page/**/*.test.ts'

export default defineConfig({
  test: {
    reporters: ['default', './test/accuracy-report.ts', './test/closing-line.ts'],
    projects: [
      {
        test: {
          name: 'engine',
          include: ['{src,cli,web,test}/**/*.test.ts'],
          exclude: [page, 'node_modules/**'],
          setupFiles: ['./test/seed.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          // engine modules keep nothing between checks: loading them once halves the time
          isolate: false,
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        test: {
          name: 'page',
          include: [page],
          globalSetup: ['./test/page/built-page.ts'],
          setupFiles: ['./test/seed.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          // frames are counted: nothing else may run meanwhile
          maxWorkers: 1,
          fileParallelism: false,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
})
