/** The sentences that can reach a reader: those of the engine as templates, and those of the page that lack German. */
import { readFileSync } from 'node:fs'
import ts from 'typescript'
import { designFields } from '../src/machine/design-fields.ts'
import { units } from '../src/units/unit.ts'
import { filesUnder, isCheck, isCode, textOf } from '../test/repository.ts'
import { plainWords } from '../web/station/label.ts'
import { stations } from '../web/station/plan.ts'

/** Properties whose words are names for the machine, not for a reader. */
const nameProperties = new Set([
  ...['code', 'path', 'unit', 'sound', 'kind', 'severity', 'className', 'anchor', 'dash', 'symbol', 'key'],
  ...['source', 'where', 'citation', 'role', 'id', 'origin', 'form', 'known', 'shape', 'state'],
])

/** Calls whose words are names for the machine. */
const nameCalls = new Set([
  ...[
    'formatSi',
    'formatSpread',
    'unit',
    'fromSi',
    'toSi',
    'unitOfName',
    'includes',
    'has',
    'get',
    'quantity',
  ],
  ...[
    'severityFor',
    'severityOf',
    'replaceAll',
    'replace',
    'split',
    'join',
    'startsWith',
    'endsWith',
    'literal',
  ],
])

/** Files whose words reach a terminal or a page of documents only. */
const apart =
  /^src\/(?:numerics|data|units)\/|-page\.ts$|^src\/output\/result\.ts$|\.published\.ts$|\/index\.ts$|\/clock-text\.ts$|\/sheet-style\.ts$/

/** Of those, the files whose words the page shows as well. */
const shownToo = /^src\/output\/(?:fault|match|wind|worth|spread)-page\.ts$|^src\/data\/instrument\.ts$/

/** At most so many whole sentences are made of one template with words that depend on a condition. */
const mostForms = 8

interface Choice {
  readonly condition: string
  readonly forms: readonly [string, string]
}

const plainText = (node: ts.Node): string | undefined =>
  ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) ? node.text : undefined

/** A word that depends on one condition: written in place, or named just before. */
function choiceAt(node: ts.Expression, named: ReadonlyMap<string, ts.Expression>): Choice | undefined {
  const inner = ts.isParenthesizedExpression(node) ? node.expression : node
  const meant = ts.isIdentifier(inner) ? named.get(inner.text) : inner
  if (meant === undefined || !ts.isConditionalExpression(meant)) return undefined
  const [yes, no] = [plainText(meant.whenTrue), plainText(meant.whenFalse)]
  return yes === undefined || no === undefined
    ? undefined
    : { condition: meant.condition.getText(), forms: [yes, no] }
}

/** A place that is open, or a word for each way its condition may turn out. */
type Part = string | Choice | undefined

function formsOf(parts: readonly Part[]): string[] {
  const conditions = [...new Set(parts.flatMap((part) => (typeof part === 'object' ? [part.condition] : [])))]
  const open = 2 ** conditions.length > mostForms
  const turns = open ? 1 : 2 ** conditions.length
  return Array.from({ length: turns }, (_, turn) => {
    let places = 0
    return parts
      .map((part) => {
        if (typeof part === 'string') return part
        if (part === undefined || open) return `{${places++}}`
        return part.forms[(turn >> conditions.indexOf(part.condition)) & 1]!
      })
      .join('')
  })
}

/** Literals joined by + are one text, as the reader sees it. */
function partsOf(node: ts.Expression, named: ReadonlyMap<string, ts.Expression>): Part[] | undefined {
  const text = plainText(node)
  if (text !== undefined) return [text]
  if (ts.isTemplateExpression(node))
    return [
      node.head.text,
      ...node.templateSpans.flatMap(({ expression, literal }): Part[] => [
        choiceAt(expression, named),
        literal.text,
      ]),
    ]
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken) {
    const [left, right] = [partsOf(node.left, named), partsOf(node.right, named)]
    return left || right ? [...(left ?? [undefined]), ...(right ?? [undefined])] : undefined
  }
  return undefined
}

/** What stands between the literals and may hold sentences of its own. */
function innerNodes(node: ts.Node): ts.Node[] {
  if (ts.isTemplateExpression(node)) return node.templateSpans.map(({ expression }) => expression)
  if (ts.isBinaryExpression(node))
    return [node.left, node.right].filter((side) => plainText(side) === undefined)
  return []
}

const calledName = ({ expression }: ts.CallExpression): string =>
  ts.isPropertyAccessExpression(expression) ? expression.name.text : expression.getText()

/** "V per 1000 rpm", "all at their worst at once": said in words, not a sign or a name of the machine. */
const isInWords = (node: ts.Node): boolean =>
  ts.isPropertyAssignment(node.parent) &&
  ['unit', 'known', 'kind'].includes(node.parent.name.getText()) &&
  / /.test(node.getText())

function isName(node: ts.Node): boolean {
  const { parent } = node
  if (ts.isPropertyAssignment(parent))
    return (
      parent.name === node ||
      (parent.initializer === node && nameProperties.has(parent.name.getText()) && !isInWords(node))
    )
  if (ts.isBinaryExpression(parent)) return /^[!=]==?$/.test(parent.operatorToken.getText())
  if (ts.isCallExpression(parent))
    return nameCalls.has(calledName(parent)) || /^require/.test(calledName(parent))
  return ts.isCaseClause(parent) || ts.isElementAccessExpression(parent) || ts.isLiteralTypeNode(parent)
}

/** Why a rule of concern holds is told on its page of documents only. */
const isRuleBasis = ({ parent }: ts.Node, path: string): boolean =>
  path.startsWith('src/analysis/concern/') &&
  ts.isPropertyAssignment(parent) &&
  parent.name.getText() === 'basis'

const isMarkup = (text: string): boolean =>
  /^(?:tick-text|line-label|outlined) |<\/?[a-z]|="|^[MLHVZmlhvz] ?[{\d-]/.test(text)

/** Whether it holds words for a reader; a single word in small letters may be a name of the machine. */
function isTold(text: string): boolean {
  const bare = text.replace(/\{\d+\}/g, '◦')
  if (isMarkup(text) || !/\p{L}{2}/u.test(bare)) return false
  return /\p{L}[^\p{L}]* [^\p{L}]*\p{L}|\p{L}{2}[ :]+◦|◦ *\p{L}{2}/u.test(bare)
}

/** Single words that reach a reader stand in these properties. */
const wordProperties = new Set([
  'label',
  'title',
  'name',
  'text',
  'caption',
  'what',
  'condition',
  'head',
  'words',
])

const isWord = (node: ts.Node, text: string): boolean =>
  ts.isPropertyAssignment(node.parent) &&
  wordProperties.has(node.parent.name.getText()) &&
  /^\p{L}[\p{L}-]{2,}$/u.test(text)

/** The templates of one file of code. */
export function templatesIn(path: string, text: string): string[] {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.ESNext, true)
  const named = new Map<string, ts.Expression>()
  const found: string[] = []
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return
    if (ts.isVariableDeclaration(node) && ts.isIdentifier(node.name) && node.initializer)
      named.set(node.name.text, node.initializer)
    const parts = ts.isExpression(node) ? partsOf(node, named) : undefined
    if (parts === undefined) {
      ts.forEachChild(node, visit)
      return
    }
    if (!isName(node) && !isRuleBasis(node, path))
      for (const form of formsOf(parts)) if (isTold(form) || isWord(node, form)) found.push(form)
    for (const inner of innerNodes(node)) visit(inner)
  }
  visit(file)
  return found
}

/** The chunk of the catalogue in which a file's sentences are translated. */
const subjects: readonly (readonly [RegExp, string])[] = [
  [/^src\/analysis\/(?:concern|ladder|remedy)|concern|remed/, 'concern'],
  [/^src\/output\/chart\//, 'chart'],
  [/^src\/(?:machine|refusal|measurement)\//, 'refusal'],
  [/^src\/physics\//, 'refusal'],
]

export const subjectOf = (path: string): string =>
  path === 'field' ? path : (subjects.find(([pattern]) => pattern.test(path))?.[1] ?? 'result')

/** Labels, helps and words of the declared fields. */
function fieldTexts(): string[] {
  const fields = designFields()
  return fields.flatMap(({ path, help, words: choices }) => [
    ...path.split('.').map((key) => plainWords(key.replace('[]', ''))),
    // the help of a choice says each of its words in turn
    ...(choices.length > 0 && choices.every((word) => help.includes(`${word}: `))
      ? help.split('; ')
      : [help]),
    ...choices.filter((word) => /\p{Ll}{2}/u.test(word) && !units.has(word)),
  ])
}

/** What the stations of the form call themselves and what may be added to them. */
const stationTexts = (): string[] =>
  stations.flatMap(({ title, lead, entryNames = {}, extras = [] }) => [
    title,
    lead,
    ...Object.values(entryNames).flatMap((name) => [name, plainWords(name)]),
    ...extras.map(({ label }) => label),
  ])

/** Template → where it is written, for everything the engine tells a reader. */
export function engineTemplates(): Record<string, string> {
  const places = new Map<string, string>()
  for (const text of [...fieldTexts(), ...stationTexts()])
    if (text !== '' && !places.has(text)) places.set(text, 'field')
  for (const path of filesUnder('src')
    .filter((file) => isCode(file) && !isCheck(file) && (shownToo.test(file) || !apart.test(file)))
    .sort())
    for (const template of templatesIn(path, textOf(path)))
      if (!places.has(template)) places.set(template, path)
  return Object.fromEntries([...places].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
}

export const engineTemplateText = (): string => `${JSON.stringify(engineTemplates(), null, 2)}\n`

/** Keys of the sentences that the page says itself, with the file that says them first. */
export function pageSentences(): Record<string, string> {
  const found: Record<string, string> = {}
  for (const path of filesUnder('web').filter((file) => /\.tsx?$/.test(file) && !isCheck(file))) {
    const file = ts.createSourceFile(path, textOf(path), ts.ScriptTarget.ESNext, true)
    const visit = (node: ts.Node): void => {
      if (ts.isTaggedTemplateExpression(node) && node.tag.getText() === 'say') {
        const { template } = node
        const key = ts.isNoSubstitutionTemplateLiteral(template)
          ? template.text
          : template.templateSpans.reduce(
              (text, { literal }, k) => `${text}{${k}}${literal.text}`,
              template.head.text,
            )
        found[key] ??= path
      }
      ts.forEachChild(node, visit)
    }
    visit(file)
  }
  return found
}

export const germanSubjects = ['page', 'field', 'concern', 'chart', 'hint', 'refusal', 'result'] as const

/** One chunk of the German catalogue. */
export const germanOf = (subject: string): Record<string, string> =>
  JSON.parse(readFileSync(new URL(`../web/text/de/${subject}.json`, import.meta.url), 'utf8'))

/** Every sentence that has German, whatever chunk holds it. */
export const allGerman = (): Record<string, string> =>
  Object.assign({}, ...germanSubjects.map((subject) => germanOf(subject)))

/** What still lacks German: sentence → where it is said. */
export function missingGerman(): Record<string, string> {
  const german = allGerman()
  return Object.fromEntries(
    Object.entries({ ...engineTemplates(), ...pageSentences() }).filter(([key]) => !(key in german)),
  )
}

/** Every text and name that is written anywhere in engine or page: a lone word among them may reach a reader. */
function writtenWords(): ReadonlySet<string> {
  const found = new Set<string>()
  const code = [...filesUnder('src'), ...filesUnder('web')].filter(
    (file) => /\.tsx?$/.test(file) && !isCheck(file),
  )
  for (const path of code) {
    const visit = (node: ts.Node): void => {
      if (ts.isStringLiteralLike(node)) found.add(node.text.trim())
      else if (ts.isPropertyAssignment(node)) found.add(node.name.getText())
      ts.forEachChild(node, visit)
    }
    visit(ts.createSourceFile(path, textOf(path), ts.ScriptTarget.ESNext, true))
  }
  return found
}

/** What the page shows of the comments of functions is kept beside the hints. */
const shownComments = (): string =>
  JSON.stringify(Object.values(JSON.parse(textOf('web/hint/figure-method.json'))))

/** German of sentences that nobody says any more: English → the chunk that holds it. Months cut to three letters are told too. */
export function staleGerman(): Record<string, string> {
  const said = { ...engineTemplates(), ...pageSentences() }
  const written = writtenWords()
  const comments = shownComments()
  return Object.fromEntries(
    germanSubjects.flatMap((subject) =>
      Object.keys(germanOf(subject)).flatMap((key) =>
        key in said || written.has(key.trim()) || comments.includes(JSON.stringify(key).slice(1, -1))
          ? []
          : [[key, subject]],
      ),
    ),
  )
}

function listed(sentences: Record<string, string>, words: string): void {
  for (const [sentence, where] of Object.entries(sentences))
    console.log(`${where}\t${JSON.stringify(sentence)}`)
  console.log(`${Object.keys(sentences).length} sentences ${words}`)
}

if (process.argv[1]?.endsWith('text.ts')) {
  if (process.argv.includes('--missing')) listed(missingGerman(), 'without German')
  if (process.argv.includes('--stale')) listed(staleGerman(), 'that nobody says')
}
