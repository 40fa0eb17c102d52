/** The rules that hold for single files: length, name, first line, exports, links. */
import { posix } from 'node:path'
import ts from 'typescript'
import { exportedNames } from './exported-name.ts'
import { isCode, nodesOf, treeOf } from './repository.ts'

export const hardLimit = 400

/** Classes that the language or the runner asks for. */
const classAllowed = new Set(['src/refusal/require.ts', 'test/closing-line.ts', 'test/accuracy-report.ts'])

/** Files whose default export is the interface of a tool. */
const defaultAllowed = /(^|\/)(vite|vitest)\.config\.ts$|^test\/(closing-line|accuracy-report)\.ts$/

const vague = new Set([
  'util',
  'utils',
  'helper',
  'helpers',
  'common',
  'core',
  'lib',
  'misc',
  'shared',
  'stuff',
])

const rootWords = new Set(['README.md', 'CONTRIBUTING.md', 'CHANGELOG.md', 'LICENSE'])

export function nameFaults(path: string): string[] {
  if (rootWords.has(path)) return []
  const faults: string[] = []
  for (const part of path.split('/')) {
    const bare = part.replace(/^\./, '').split('.')
    if (!bare.every((word) => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(word)))
      faults.push(`${path}: ${part} is not in lower-case words joined by hyphens`)
    if (vague.has(bare[0]!)) faults.push(`${path}: ${part} says nothing of what lives there`)
  }
  return faults
}

/** Tables and records of data may be as long as their source. */
const isTable = (path: string) =>
  /\.published\.ts$/.test(path) || path.startsWith('src/data/') || !isCode(path)

const unfinished = new RegExp(`\\b(${['TO', 'FIX'].map((one, at) => one + ['DO', 'ME'][at]).join('|')})\\b`)
const machinePath = new RegExp(`(?<![\\w.])/(${['work', 'tmp', 'home', 'root'].join('|')})/`)

export function textFaults(path: string, text: string): string[] {
  const faults: string[] = []
  const lines = text.split('\n').length - 1
  if (lines > hardLimit && !isTable(path)) faults.push(`${path}: ${lines} lines, at most ${hardLimit}`)
  if (unfinished.test(text)) faults.push(`${path}: says that it is unfinished`)
  if (machinePath.test(text)) faults.push(`${path}: names a folder of one machine`)
  if (!isCode(path)) return faults
  if (!/^(#!.*\n)?\/\*\*\s*[^\s*][\s\S]*?[.:…)]\s*(@internal\s*)?\*\//.test(text))
    faults.push(`${path}: does not begin with a sentence that says what lives here`)
  for (const node of nodesOf(treeOf(path, text))) {
    if ((ts.isClassDeclaration(node) || ts.isClassExpression(node)) && !classAllowed.has(path))
      faults.push(`${path}: has a class`)
    if (ts.isIdentifier(node) && node.text.includes('\u00b5'))
      faults.push(`${path}: ${node.text} has the micro sign U+00B5 instead of the letter μ U+03BC`)
  }
  for (const { name, from } of exportedNames(path, text)) {
    if (name === '*') faults.push(`${path}: passes on everything from ${from}`)
    if (name === 'default' && !defaultAllowed.test(path)) faults.push(`${path}: has a default export`)
  }
  return faults
}

/** The anchor a heading gets: lower case, punctuation dropped, spaces to hyphens. */
const anchorOf = (heading: string): string =>
  heading
    .trim()
    .toLowerCase()
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/[^\p{L}\p{N}\p{M}\s_-]/gu, '')
    .replace(/\s/g, '-')

const withoutCode = (text: string): string =>
  text
    .replace(/<!--[\s\S]*?-->/g, '')
    .replace(/^(```|~~~)[\s\S]*?^\1/gm, '')
    .replace(/`[^`\n]*`/g, (span) => span.replace(/[[\]()]/g, ' '))

export function anchorsOf(text: string): Set<string> {
  const anchors = new Set<string>()
  for (const match of withoutCode(text).matchAll(/^#{1,6}\s+(.+?)\s*#*$/gm)) {
    const anchor = anchorOf(match[1]!)
    let unique = anchor
    for (let again = 1; anchors.has(unique); again++) unique = `${anchor}-${again}`
    anchors.add(unique)
  }
  for (const match of text.matchAll(/<a (?:id|name)="([^"]+)"/g)) anchors.add(match[1]!)
  return anchors
}

/** Links of a page that lead nowhere; `read` gives the text of a path, or nothing when it is not there. */
export function linkFaults(path: string, text: string, read: (path: string) => string | undefined): string[] {
  const faults: string[] = []
  const prose = withoutCode(text)
  const links = [
    ...[...prose.matchAll(/\]\(<?([^)\s>]+)>?(?:\s+"[^"]*")?\)/g)].map((match) => match[1]!),
    ...[...prose.matchAll(/^\[[^\]]+\]:\s+(\S+)/gm)].map((match) => match[1]!),
    ...[...prose.matchAll(/<(?:img|a)\s[^>]*(?:src|href)="([^"]+)"/g)].map((match) => match[1]!),
  ]
  for (const link of links) {
    if (/^(https?|mailto):/.test(link)) continue
    const [file = '', anchor] = link.split('#')
    const target = file === '' ? path : posix.normalize(posix.join(posix.dirname(path), decodeURI(file)))
    const there = target === path ? text : read(target)
    if (there === undefined) faults.push(`${path}: ${link} leads nowhere`)
    else if (anchor !== undefined && !anchorsOf(there).has(decodeURI(anchor)))
      faults.push(`${path}: ${link} has no such heading`)
  }
  return faults
}
