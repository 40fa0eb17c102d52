/** The kinds of checks a test file holds, read from the titles in its syntax tree. */
import ts from 'typescript'
import { lineOf, nodesOf, treeOf } from './repository.ts'

/** The word each title begins with: digits of others, two routes, a law, or our own old number. */
export const kinds = ['source', 'agrees', 'law', 'pin'] as const
export type Kind = (typeof kinds)[number]

export interface CheckTitles {
  readonly kinds: ReadonlySet<Kind>
  /** Titles of groups and tests that name a source, without the word. */
  readonly sources: readonly string[]
  /** Checks whose kind is said neither by their own title nor by a group around them. */
  readonly faults: readonly string[]
}

const groupWords = new Set(['describe', 'suite'])
const testWords = new Set(['test', 'it', 'check'])

/** The word a call begins with: `test` for test(…), test.skipIf(…)(…) and test.each(…)(…). */
function headOf(node: ts.Expression): string | undefined {
  if (ts.isIdentifier(node)) return node.text
  if (ts.isPropertyAccessExpression(node) || ts.isCallExpression(node)) return headOf(node.expression)
  return undefined
}

function titleOf(call: ts.CallExpression): string | undefined {
  const first = call.arguments[0]
  if (first === undefined) return undefined
  if (ts.isStringLiteral(first) || ts.isNoSubstitutionTemplateLiteral(first)) return first.text
  if (ts.isTemplateExpression(first)) return first.head.text
  if (ts.isBinaryExpression(first) && ts.isStringLiteral(first.left)) return first.left.text
  return ts.isIdentifier(first) || ts.isPropertyAccessExpression(first) ? '' : undefined
}

const kindOf = (title: string): Kind | undefined => kinds.find((kind) => title.startsWith(`${kind}:`))

/** Functions of the file that pass their first parameter on as the title of a check: they are checks by another name. */
function wrappersOf(tree: ts.SourceFile): ReadonlyMap<string, ts.Node> {
  const wrappers = new Map<string, ts.Node>()
  for (const node of nodesOf(tree)) {
    const signature = ts.isVariableDeclaration(node) ? node.initializer : node
    if (!signature || !(ts.isArrowFunction(signature) || ts.isFunctionDeclaration(signature))) continue
    const first = signature.parameters[0]?.name
    const name = ts.isVariableDeclaration(node) ? node.name.getText() : signature.name?.getText()
    if (first === undefined || !ts.isIdentifier(first) || name === undefined) continue
    const passesOn = [...nodesOf(signature)].some(
      (inner) =>
        ts.isCallExpression(inner) &&
        testWords.has(headOf(inner.expression) ?? '') &&
        inner.arguments[0]?.getText().includes(first.text),
    )
    if (passesOn) wrappers.set(name, signature)
  }
  return wrappers
}

export function checkTitles(path: string, text: string): CheckTitles {
  const tree = treeOf(path, text)
  const wrappers = wrappersOf(tree)
  const bodies = new Set(wrappers.values())
  const isTest = (word: string) => testWords.has(word) || wrappers.has(word)
  const found = new Set<Kind>()
  const faults: string[] = []
  const sources: string[] = []
  const visit = (node: ts.Node, around: Kind | undefined): void => {
    // What a wrapper holds is judged where the wrapper is called.
    if (bodies.has(node)) return
    let here = around
    if (ts.isCallExpression(node)) {
      const head = headOf(node.expression)
      const title = head === undefined ? undefined : titleOf(node)
      // test.each(table) is a call too, but the title belongs to the call of what it returns.
      const inner = ts.isCallExpression(node.parent) && node.parent.expression === node
      if (title !== undefined && !inner && (groupWords.has(head!) || isTest(head!))) {
        const own = kindOf(title)
        here = own ?? around
        if (own === 'source') sources.push(title.slice('source:'.length).trim())
        if (here !== undefined && isTest(head!)) found.add(here)
        if (isTest(head!) && here === undefined)
          faults.push(`${path}:${lineOf(node)}: "${title}" says no kind of check`)
      }
    }
    ts.forEachChild(node, (child) => visit(child, here))
  }
  visit(tree, undefined)
  return { kinds: found, sources, faults }
}

/** Whether the kinds suffice for a physics function: digits of others, or two routes and a law. */
export const suffices = (found: ReadonlySet<Kind>): boolean =>
  found.has('source') || (found.has('agrees') && found.has('law'))
