/** Sets up and runs the main job: prints the worked example, builds the page and serves it on this computer. */
import { fileURLToPath } from 'node:url'
import { build, preview } from 'vite'
import { computeVerb } from './compute.ts'

const root = fileURLToPath(new URL('..', import.meta.url))
const example = 'examples/hen-house-drum.json'

process.stdout.write(`The worked example, ${example}:\n\n`)
await computeVerb(`${root}${example}`, { json: false })
// a concern about the example must not look like a failed start
process.exitCode = 0

const configFile = `${root}vite.config.ts`
process.stdout.write('\nBuilding the page …\n')
await build({ configFile, logLevel: 'warn' })
const server = await preview({ configFile, preview: { host: '127.0.0.1', strictPort: false } })
const [address] = server.resolvedUrls?.local ?? []
process.stdout.write(`The page is at ${address}  (Ctrl-C ends it)\n`)

const end = async () => {
  await server.close()
  process.exit(0)
}
process.on('SIGINT', end)
process.on('SIGTERM', end)
