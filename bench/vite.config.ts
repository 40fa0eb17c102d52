/** The bench as users get the engine: built, since the runner for plain TypeScript slows inner functions down. */
import { defineConfig } from 'vite'

export default defineConfig({
  build: { ssr: 'bench/main.ts', outDir: '.bench', minify: false, emptyOutDir: true },
  logLevel: 'warn',
})
