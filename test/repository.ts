/** The files of this repository, as the checks of the house see them. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'

export const repositoryRoot = fileURLToPath(new URL('..', import.meta.url))

const notOurs = new Set(['node_modules', 'dist', 'artefacts', '.git', '.vite'])

function* walk(folder: string): Generator<string> {
  for (const entry of readdirSync(repositoryRoot + folder, { withFileTypes: true })) {
    if (notOurs.has(entry.name)) continue
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`
    if (entry.isDirectory()) yield* walk(path)
    else if (entry.isFile()) yield path
  }
}

/** Paths of all files under the named folders, from the root, with `/`; '' is the whole repository. */
export const filesUnder = (...folders: readonly string[]): string[] =>
  folders.flatMap((folder) => (existsSync(repositoryRoot + folder) ? [...walk(folder)] : [])).sort()

const texts = new Map<string, string>()

/** The text of a file, read once. */
export function textOf(path: string): string {
  const known = texts.get(path)
  if (known !== undefined) return known
  const text = readFileSync(repositoryRoot + path, 'utf8')
  texts.set(path, text)
  return text
}

export const exists = (path: string): boolean => existsSync(repositoryRoot + path)

export const isCode = (path: string): boolean => /\.tsx?$/.test(path)

/** A check, or the table a check reads: compiled by nobody who uses the engine. */
export const isCheck = (path: string): boolean => /\.(test|published)\.tsx?$/.test(path)

/** The syntax tree of a text; no types, so it is quick. */
export const treeOf = (path: string, text: string): ts.SourceFile =>
  ts.createSourceFile(
    path,
    text,
    ts.ScriptTarget.ES2022,
    true,
    path.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  )

/** Every node of a tree, parents before children. */
export function* nodesOf(node: ts.Node): Generator<ts.Node> {
  yield node
  const children: ts.Node[] = []
  ts.forEachChild(node, (child) => {
    children.push(child)
  })
  for (const child of children) yield* nodesOf(child)
}

export const lineOf = (node: ts.Node): number =>
  node.getSourceFile().getLineAndCharacterOfPosition(node.getStart()).line + 1

/** The keys of the bibliography. */
export const sourceKeys = (): Set<string> =>
  new Set((JSON.parse(textOf('src/data/sources.json')) as { id: string }[]).map((entry) => entry.id))
