/** How the page is built: from `web` to `dist/web`, with addresses that work in any folder. */
import { defineConfig, type Plugin } from 'vite'
import { firstChunk } from './scripts/first-chunk.ts'
import { germanPlugin } from './scripts/german-plugin.ts'
import { offlinePlugin } from './scripts/offline-plugin.ts'
import { schemaWriterPlugin } from './scripts/schema-writer-plugin.ts'

/** The development server puts styles into the page, which the policy of the built page forbids. */
const looserWhileServing = (): Plugin => ({
  name: 'looser-while-serving',
  apply: (_, { command, isPreview }) => command === 'serve' && !isPreview,
  transformIndexHtml: (html) => html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, ''),
})

export default defineConfig({
  root: 'web',
  base: './',
  plugins: [looserWhileServing(), germanPlugin(), offlinePlugin()],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: {
    format: 'es',
    plugins: () => [schemaWriterPlugin()],
    rolldownOptions: {
      output: { codeSplitting: { groups: [{ debugName: 'engine', name: firstChunk('engine') }] } },
    },
  },
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 900,
    modulePreload: { polyfill: false },
  },
})
