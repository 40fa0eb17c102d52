/** Builds the page once for all checks in a browser; each file of checks then serves a copy of its own. */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { buildPage, builtPlace, root } from './browser.ts'

let folder: string | undefined

export async function setup(): Promise<void> {
  const checked = join(root, 'dist', 'checked')
  mkdirSync(checked, { recursive: true })
  folder = mkdtempSync(join(checked, 'built-'))
  await buildPage(folder)
  process.env[builtPlace] = folder
}

export function teardown(): void {
  if (folder !== undefined) rmSync(folder, { recursive: true, force: true })
}
