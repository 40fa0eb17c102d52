/** How the checks of the house are run. */
import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['{src,cli,web,test}/**/*.test.ts'],
    setupFiles: ['./test/seed.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    reporters: ['default', './test/accuracy-report.ts', './test/closing-line.ts'],
  },
})
