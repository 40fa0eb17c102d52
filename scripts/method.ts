/** What the comment block of a physics function tells: its sentence, formula, range, symbols, source, example. */
import { type DocumentedFunction, exportedFunctions } from '../test/docstring.ts'
import { filesUnder, isCheck, isCode, textOf } from '../test/repository.ts'

export interface MethodSymbol {
  /** As it is called: `wall.thickness`. */
  readonly name: string
  /** As it is written in the formula, where it has a letter of its own. */
  readonly words: string
  readonly unit: string
}

export interface Method {
  /** Name of the function. */
  readonly name: string
  readonly room: string
  readonly path: string
  readonly sentence: string
  /** Lines of the formula. */
  readonly formula: readonly string[]
  /** Whatever else the prose says: range, accuracy, remarks, a paragraph each. */
  readonly prose: readonly string[]
  readonly symbols: readonly MethodSymbol[]
  readonly result: MethodSymbol
  /** Key of the bibliography and the place in it, one for each source. */
  readonly sources: readonly { readonly key: string; readonly where: string }[]
  readonly examples: readonly string[]
}

/** `what it is  [unit]` → words and unit. */
function withUnit(text: string): { words: string; unit: string } {
  const at = text.lastIndexOf('[')
  return at < 0
    ? { words: text.trim(), unit: '' }
    : {
        words: text.slice(0, at).trim().replace(/\s+/g, ' '),
        unit: text.slice(at + 1, text.lastIndexOf(']')),
      }
}

function tagged(lines: readonly string[], wanted: string): string[] {
  const found: string[] = []
  let open = false
  for (const line of lines) {
    const tag = /^@(\w+)\s*(.*)$/.exec(line)
    if (tag) {
      open = tag[1] === wanted
      if (open) found.push(tag[2]!)
    } else if (open && line.trim() !== '') found[found.length - 1] += ` ${line.trim()}`
  }
  return found
}

function methodOf({ name, path, lines }: DocumentedFunction): Method {
  const firstTag = lines.findIndex((line) => line.startsWith('@'))
  const prose = lines.slice(0, firstTag < 0 ? lines.length : firstTag)
  const formula = prose.filter((line) => /^\s{2,}\S/.test(line)).map((line) => line.slice(2))
  const paragraphs: string[] = ['']
  for (const line of prose) {
    if (/^\s{2,}\S/.test(line)) continue
    if (line.trim() === '' || /^(Holds|Accuracy):/.test(line)) paragraphs.push('')
    if (line.trim() !== '')
      paragraphs[paragraphs.length - 1] += `${paragraphs.at(-1) === '' ? '' : ' '}${line.trim()}`
  }
  const [sentence = '', ...rest] = paragraphs.filter((paragraph) => paragraph !== '')
  return {
    name,
    room: path.split('/')[2]!,
    path,
    sentence,
    formula,
    prose: rest,
    symbols: tagged(lines, 'param').map((text) => {
      const [symbol = '', ...words] = text.split(/\s+/)
      return { name: symbol, ...withUnit(words.join(' ')) }
    }),
    result: { name: 'returns', ...withUnit(tagged(lines, 'returns')[0] ?? '') },
    sources: tagged(lines, 'source').map((text) => {
      const [key = '', ...where] = text.split(',')
      return { key: key.trim(), where: where.join(',').trim() }
    }),
    examples: tagged(lines, 'example'),
  }
}

/** Every documented function of the rooms of physics, by room and name. */
export const methods = (): readonly Method[] =>
  filesUnder('src/physics')
    .filter((path) => isCode(path) && !isCheck(path))
    .flatMap((path) => exportedFunctions(path, textOf(path)))
    .filter(({ internal, lines }) => !internal && lines.length > 0)
    .map(methodOf)
    .sort((a, b) => (a.room === b.room ? (a.name < b.name ? -1 : 1) : a.room < b.room ? -1 : 1))
