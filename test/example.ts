/** The example designs as tests use them: read once, computed once. */
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { type Chain, computeDesign } from '../src/analysis/compute.ts'
import type { Design } from '../src/machine/design.ts'
import { faultText } from '../src/machine/fault.ts'
import { parseDesign } from '../src/machine/parse.ts'

const folder = fileURLToPath(new URL('../examples/', import.meta.url))

/** Names of all examples, without ending. */
export const exampleNames = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.slice(0, -'.json'.length))
  .sort()

export const exampleText = (name: string): string => readFileSync(`${folder}${name}.json`, 'utf8')

/** A fresh copy of the raw document, free to be changed. */
// biome-ignore lint/suspicious/noExplicitAny: tests change documents at will, also to what no type allows
export const exampleDocument = (name: string): any => JSON.parse(exampleText(name))

export function designOf(document: unknown): Design {
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(parsed.faults.map(faultText).join('\n'))
  return parsed.design
}

const chains = new Map<string, Chain>()

export function exampleChain(name: string): Chain {
  const known = chains.get(name)
  if (known) return known
  const chain = computeDesign(designOf(exampleDocument(name)))
  chains.set(name, chain)
  return chain
}
