/** How the page is built: from `web` to `dist/web`, with addresses that work in any folder. */
import { defineConfig, type Plugin } from 'vite'

/** The development server puts styles into the page, which the policy of the built page forbids. */
const looserWhileServing = (): Plugin => ({
  name: 'looser-while-serving',
  apply: (_, { command, isPreview }) => command === 'serve' && !isPreview,
  transformIndexHtml: (html) => html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, ''),
})

export default defineConfig({
  root: 'web',
  base: './',
  plugins: [looserWhileServing()],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es' },
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 900,
    modulePreload: { polyfill: false },
  },
})
