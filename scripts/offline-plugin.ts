/** Adds to the built page the service worker that knows every file of it. */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Plugin, transformWithOxc } from 'vite'

const source = fileURLToPath(new URL('../web/offline/service-worker.ts', import.meta.url))

const worker = 'service-worker.js'

/** The page itself is asked for by the folder it lies in. */
const addressOf = (file: string): string => (file === 'index.html' ? './' : file)

export function offlinePlugin(): Plugin {
  let folder = ''
  return {
    name: 'offline',
    apply: 'build',
    enforce: 'post',
    configResolved({ publicDir }) {
      folder = publicDir
    },
    // the page learns its name from here: one that is only being worked on has none
    transformIndexHtml: () => [
      { tag: 'meta', attrs: { name: 'service-worker', content: `./${worker}` }, injectTo: 'head' },
    ],
    generateBundle: {
      // the page is written into the bundle late
      order: 'post',
      async handler(_, bundle) {
        const made = Object.values(bundle).map((file) => ({
          name: file.fileName,
          content: file.type === 'chunk' ? file.code : file.source,
        }))
        const copied = readdirSync(folder).map((name) => ({
          name,
          content: readFileSync(join(folder, name)),
        }))
        const files = [...made, ...copied]
          .filter(({ name }) => !name.endsWith('.map'))
          .sort((a, b) => (a.name < b.name ? -1 : 1))
        const sum = createHash('sha256')
        for (const { name, content } of files) sum.update(name).update('\0').update(content)
        const script = await transformWithOxc(readFileSync(source, 'utf8'), source, { lang: 'ts' })
        const built = {
          version: sum.digest('hex').slice(0, 16),
          files: files.map(({ name }) => addressOf(name)),
        }
        this.emitFile({
          type: 'asset',
          fileName: worker,
          source: `const built = ${JSON.stringify(built)}\n${script.code}`,
        })
      },
    },
  }
}
