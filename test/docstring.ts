/** The form of the comment block that every exported function of physics carries. */
import ts from 'typescript'
import { commentsBefore } from './exported-name.ts'
import { treeOf } from './repository.ts'

export interface DocumentedFunction {
  readonly path: string
  readonly name: string
  readonly parameters: readonly string[]
  /** Lines of the block without the stars, or nothing when there is no block. */
  readonly lines: readonly string[]
  /** A step that only files of its own room call, marked `@internal`: it says what it is, and no more. */
  readonly internal: boolean
}

export interface Example {
  readonly expression: string
  readonly printed: string
}

const withoutStars = (block: string): string[] =>
  block
    .replace(/^\/\*\*/, '')
    .replace(/\*\/$/, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\* ?/, '').trimEnd())

const functionOf = (node: ts.Node | undefined): ts.SignatureDeclaration | undefined =>
  node !== undefined && (ts.isArrowFunction(node) || ts.isFunctionExpression(node)) ? node : undefined

/** Every exported function of a file, whether declared or assigned to a constant. */
export function exportedFunctions(path: string, text: string): DocumentedFunction[] {
  const found: DocumentedFunction[] = []
  const add = (statement: ts.Statement, name: string, signature: ts.SignatureDeclaration) => {
    const block = commentsBefore(statement).at(-1) ?? ''
    // The block that opens the file belongs to the file, not to the function below it.
    const opensFile = block !== '' && text.startsWith(block)
    found.push({
      path,
      name,
      parameters: signature.parameters.map((parameter) =>
        ts.isIdentifier(parameter.name) ? parameter.name.text : '',
      ),
      lines: block.startsWith('/**') && !opensFile ? withoutStars(block) : [],
      internal: block.startsWith('/**') && !opensFile && block.includes('@internal'),
    })
  }
  for (const statement of treeOf(path, text).statements) {
    const exported =
      ts.canHaveModifiers(statement) &&
      (ts.getModifiers(statement) ?? []).some((one) => one.kind === ts.SyntaxKind.ExportKeyword)
    if (!exported) continue
    if (ts.isFunctionDeclaration(statement)) {
      // Overloads: the implementation alone need not be documented twice.
      if (found.at(-1)?.name !== statement.name?.text) add(statement, statement.name?.text ?? '', statement)
    } else if (ts.isVariableStatement(statement))
      for (const declaration of statement.declarationList.declarations) {
        const signature = functionOf(declaration.initializer)
        if (signature) add(statement, declaration.name.getText(), signature)
      }
  }
  return found
}

/** The tags of a block: each with its own line and those below it, up to the next tag. */
function tagsOf(lines: readonly string[]): { tag: string; text: string }[] {
  const tags: { tag: string; text: string }[] = []
  for (const line of lines) {
    const match = /^@(\w+)\s*(.*)$/.exec(line)
    if (match) tags.push({ tag: match[1]!, text: match[2]! })
    else if (tags.length > 0 && line.trim() !== '') tags.at(-1)!.text += ` ${line.trim()}`
  }
  return tags
}

/** Coherent SI symbols, and words for what is not a quantity. Anything else inside the engine is a fault. */
const symbols = new Set(
  [
    '1 m s kg A K rad Hz N Pa J W V Ω T Wb H F C S mol sr',
    'Ohm VA var',
    'word function boolean text',
  ].flatMap((group) => group.split(' ')),
)

/** The first symbol in `unit` that is not coherent SI, or nothing. */
export function unknownUnit(unit: string): string | undefined {
  const parts = unit
    .replace(/[\^]?\(?[-−⁻]?\d+(\/\d+)?\)?(?=$|[\s·.*/,;)])/g, (power, ...rest) => {
      const offset = rest.at(-2) as number
      return offset === 0 || /[\s·.*/,;(]/.test(unit[offset - 1]!) ? power : ''
    })
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹⁻½]/g, '')
    .split(/[\s·.*/,;()]+/)
    .filter((part) => part !== '')
  return parts.find((part) => !symbols.has(part.replace(/^√/, '')))
}

const unitsIn = (text: string): string[] => [...text.matchAll(/\[([^\]]+)\]/g)].map((match) => match[1]!)

function unitFaults(what: string, text: string): string[] {
  const units = unitsIn(text)
  if (units.length === 0) return [`${what} has no [unit]`]
  const unknown = unknownUnit(units.at(-1)!)
  return unknown === undefined ? [] : [`${what}: [${units.at(-1)}] is not coherent SI (${unknown})`]
}

/** The examples of a block: expression and printed number. */
export function examplesOf(lines: readonly string[]): (Example | string)[] {
  return tagsOf(lines)
    .filter(({ tag }) => tag === 'example')
    .map(({ text }) => {
      const match = /^(.*\S)\s*\/\/\s*([-−+]?\d[\d.]*(?:e[-+]?\d+)?)\.?(?:\s.*)?$/i.exec(text)
      return match ? { expression: match[1]!, printed: match[2]!.replace('−', '-') } : text
    })
}

/** What the block lacks, one sentence each. */
export function docstringFaults(one: DocumentedFunction, keys: ReadonlySet<string>): string[] {
  const { lines } = one
  if (lines.length === 0) return ['has no comment block']
  if (one.internal)
    return /\p{L}{3}.*[.:]/u.test(lines.join(' ').replace('@internal', ''))
      ? []
      : ['is internal, but does not say what it is']
  const firstTag = lines.findIndex((line) => line.startsWith('@'))
  const prose = firstTag < 0 ? lines : lines.slice(0, firstTag)
  const tags = tagsOf(lines)
  const texts = (wanted: string) => tags.filter(({ tag }) => tag === wanted).map(({ text }) => text)
  const faults: string[] = []
  if (!prose.some((line) => /^\s{2,}\S/.test(line) && /[=≈∮Σ≤]/.test(line)))
    faults.push('has no formula on an indented line')
  if (!prose.some((line) => line.includes('Holds:'))) faults.push('does not say "Holds:"')
  if (!prose.some((line) => line.includes('Accuracy:'))) faults.push('does not say "Accuracy:"')
  const params = texts('param')
  for (const text of params) faults.push(...unitFaults(`@param ${text.split(/\s/)[0]}`, text))
  for (const parameter of one.parameters)
    if (!params.some((text) => parameter === '' || new RegExp(`^\\[?${parameter}\\b`).test(text)))
      faults.push(`has no @param for ${parameter || 'its parameter'}`)
  const returns = texts('returns')
  if (returns.length !== 1) faults.push('has not exactly one @returns')
  for (const text of returns) faults.push(...unitFaults('@returns', text))
  if (!texts('throws').some((text) => text !== '')) faults.push('has no @throws')
  const sources = texts('source')
  if (sources.length === 0) faults.push('has no @source')
  for (const text of sources) {
    const [key = '', ...where] = text.split(',')
    if (where.join(',').trim() === '') faults.push(`@source ${text}: does not say where`)
    if (key.trim() !== 'derived' && !keys.has(key.trim()))
      faults.push(`@source ${key.trim()}: not in the bibliography`)
  }
  const examples = examplesOf(lines)
  if (examples.length === 0) faults.push('has no @example')
  for (const example of examples)
    if (typeof example === 'string') faults.push(`@example ${example}: not "call // number"`)
  return faults
}

/** The value of an example with `names` in scope. */
export function exampleValue(expression: string, names: Readonly<Record<string, unknown>>): unknown {
  const known = Object.keys(names)
  return new Function(...known, `'use strict'; return (${expression})`)(...known.map((name) => names[name]))
}
