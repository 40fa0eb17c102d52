/** Writes the generated files, or with `--check` says which of them differ from their declarations. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { generatedFiles } from './generated-file.ts'

const checkOnly = process.argv.includes('--check')
let differing = 0

for (const [path, textNow] of Object.entries(generatedFiles)) {
  const wanted = textNow()
  const file = new URL(`../${path}`, import.meta.url)
  if (existsSync(file) && readFileSync(file, 'utf8') === wanted) continue
  if (checkOnly) {
    differing++
    console.error(`${path} differs from its declaration; npm run generate writes it anew`)
  } else {
    writeFileSync(file, wanted)
    console.log(`${path} written`)
  }
}

if (differing > 0) process.exitCode = 1
