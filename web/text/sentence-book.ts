/** A book of sentences with open places: finds the one that a text was made of, and says it in the other language. */

/** English → the other language; places are {0}, {1}, … in both. */
export type Sentences = Readonly<Record<string, string>>

export interface SentenceBook {
  /** The text in the other language, as far as the book knows it. */
  readonly told: (text: string) => string
  /** The places of the best template that fits: filled in again they give the text. Undefined where none fits. */
  readonly recognized: (text: string) => Recognition | undefined
  /** What no template fitted, as often as it was met. */
  readonly unknown: ReadonlyMap<string, number>
}

export interface Recognition {
  readonly key: string
  /** By the number of the place. */
  readonly values: ReadonlyMap<string, string>
}

interface Template {
  readonly key: string
  readonly german: string
  /** One more than there are places. */
  readonly pieces: readonly string[]
  readonly places: readonly string[]
  readonly weight: number
}

/** Letters of a piece by which templates are looked up. */
const gramLength = 8

const mostDepth = 8

/** Letters that a template must have to be tried before the text is cut into sentences. */
const tellingWeight = 12

/** Ways in which one template may be laid over one text that are looked at. */
const mostTries = 40

/** Parts of one text that are looked at before it is taken for unknown. */
const mostWork = 2000

/** Texts whose telling is remembered. */
const mostKnown = 3000

/** Neighbouring places cannot be told apart: they are one. */
function template(key: string, german: string): Template | undefined {
  const joined = key.trim().replace(/(\{\d+\})(?:\{\d+\})+/g, '$1')
  const parts = joined.split(/\{(\d+)\}/)
  const pieces = parts.filter((_, k) => k % 2 === 0)
  const places = parts.filter((_, k) => k % 2 === 1)
  const weight = pieces.reduce((sum, piece) => sum + piece.length, 0)
  if (places.length === 0 || !/\p{L}{2}/u.test(pieces.join(' '))) return undefined
  return {
    key: joined,
    german: german.trim().replace(/(\{\d+\})(?:\{\d+\})+/g, '$1'),
    pieces,
    places,
    weight,
  }
}

/** The texts that the places may have held, the shortest first ones first; nothing where the template does not fit. */
function* fits({ pieces, places }: Template, text: string): Generator<ReadonlyMap<string, string>> {
  const [first, last] = [pieces[0]!, pieces[pieces.length - 1]!]
  if (text.length < first.length + last.length || !text.startsWith(first) || !text.endsWith(last)) return
  const end = text.length - last.length
  let tries = 0
  function* rest(
    k: number,
    at: number,
    values: ReadonlyMap<string, string>,
  ): Generator<ReadonlyMap<string, string>> {
    if (k === pieces.length) return yield values
    const isLast = k === pieces.length - 1
    for (
      let until = isLast ? end : text.indexOf(pieces[k]!, at);
      until >= at && until <= end && tries < mostTries;
      until = isLast ? -1 : text.indexOf(pieces[k]!, until + 1)
    ) {
      tries++
      const value = text.slice(at, until)
      const before = values.get(places[k - 1]!)
      // a place met twice holds the same text twice
      if (before === undefined || before === value)
        yield* rest(k + 1, until + pieces[k]!.length, new Map(values).set(places[k - 1]!, value))
    }
  }
  yield* rest(1, first.length, new Map())
}

export const filled = (pattern: string, values: ReadonlyMap<string, string>): string =>
  pattern.replace(/\{(\d+)\}/g, (whole, place: string) => values.get(place) ?? whole)

/** Templates by one short run of letters that each must hold, the rarest of its longest piece. */
function indexed(templates: readonly Template[]): ReadonlyMap<string, readonly Template[]> {
  const longest = ({ pieces }: Template) =>
    pieces.reduce((best, piece) => (piece.length > best.length ? piece : best))
  const grams = (piece: string) => {
    const length = Math.min(gramLength, piece.length)
    return Array.from({ length: piece.length - length + 1 }, (_, k) => piece.slice(k, k + length))
  }
  const counts = new Map<string, number>()
  for (const one of templates)
    for (const gram of grams(longest(one))) counts.set(gram, (counts.get(gram) ?? 0) + 1)
  const index = new Map<string, Template[]>()
  for (const one of templates) {
    const rarest = grams(longest(one)).reduce((best, gram) =>
      counts.get(gram)! < counts.get(best)! ? gram : best,
    )
    index.set(rarest, [...(index.get(rarest) ?? []), one])
  }
  return index
}

const isList = (text: string): boolean => (text.match(/, /g)?.length ?? 0) > 2

const isTelling = ({ weight }: Template): boolean => weight >= tellingWeight

interface Cut {
  /** Where the part before it ends, and where the one behind it starts. */
  readonly end: number
  readonly start: number
  readonly gap: string
}

/** Parts that one text is cut into at most: their combinations are looked at. */
const mostCuts = 24

const cutsAt = (text: string, sign: RegExp): Cut[] =>
  [...text.matchAll(sign)].map(({ index, 0: gap }) => ({ end: index, start: index + gap.length, gap }))

/** How a piece begins that follows upon another: with its space, comma or semicolon. */
const headOf = (key: string): string | undefined =>
  /^(?: |, |; )/.test(key) ? key.split(/\{/)[0]!.slice(0, 12) : undefined

/** The name of a grade, a gauge, a section, a field or a rule. */
const isCode = (word: string): boolean =>
  /^(?:[A-Z]+\d*[A-Z]*|\d+[A-Z]+|[a-z]+(?:[A-Z]\w*|(?:_\w+)+)|(?:[a-z0-9]+-)+[a-z0-9]+)$/.test(word)

/** Numbers, units, paths of fields, quoted entries and single signs read the same in every language. */
const sameEverywhere = (text: string, isUnit: (word: string) => boolean): boolean => {
  if (/^"[^"]*"$|^“[^”]*”$/.test(text)) return true
  if (/^[a-z][A-Za-z0-9]*(?:[.[\]_][A-Za-z0-9]+)+\]?(?:\.[A-Za-z0-9_]+)*$/.test(text)) return true
  if (isCode(text)) return true
  return text
    .split(/[\s(),;:/±…–×·+=<>−→↔-]+/)
    .every((word) => !/\p{L}{2}/u.test(word) || isCode(word) || isUnit(word.replace(/^[\d.]+/, '')))
}

export function sentenceBook(
  sentences: Sentences,
  shown: (text: string) => string,
  isUnit: (word: string) => boolean,
): SentenceBook {
  const index = indexed(Object.entries(sentences).flatMap(([key, german]) => template(key, german) ?? []))
  const lengths = [...new Set([...index.keys()].map((gram) => gram.length))]
  const plain = new Map(
    Object.entries(sentences)
      .filter(([key]) => !/\{\d+\}/.test(key))
      .map(([key, german]) => [key.trim(), german.trim()]),
  )
  const heads = [...new Set(Object.keys(sentences).flatMap((key) => headOf(key) ?? []))]
  const known = new Map<string, string | undefined>()
  const unknown = new Map<string, number>()
  /** Texts looked at for the one that is asked for now. */
  let work = 0

  function candidates(text: string): Template[] {
    const found = new Set<Template>()
    for (const length of lengths)
      for (let at = 0; at + length <= text.length; at++)
        for (const one of index.get(text.slice(at, at + length)) ?? []) found.add(one)
    return [...found].sort((a, b) => b.weight - a.weight)
  }

  function recognized(text: string): Recognition | undefined {
    for (const one of candidates(text)) for (const values of fits(one, text)) return { key: one.key, values }
    return undefined
  }

  /** The space round a text stays where it is. */
  function whole(text: string, depth: number): string | undefined {
    const inner = text.trim()
    if (inner === text) return bare(text, depth)
    const told = bare(inner, depth)
    return told === undefined ? undefined : text.replace(inner, () => told)
  }

  /** One sentence or word; undefined where the book does not know it to the last place. */
  function bare(text: string, depth: number): string | undefined {
    const direct = plain.get(text)
    if (direct !== undefined) return shown(direct)
    if (sameEverywhere(text, isUnit)) return shown(text)
    if (known.has(text)) return known.get(text)
    if (depth > mostDepth || work >= mostWork) return undefined
    work++
    if (known.size > mostKnown) known.clear()
    // while it is being looked at it is not its own part
    known.set(text, undefined)
    const fitting = candidates(text)
    const result =
      byTemplate(text, fitting.filter(isTelling), depth) ??
      (/^[;,]/.test(text) ? byParts(text, ['heads'], depth) : undefined) ??
      byParts(text, [/(?<=[.!?]) /g], depth) ??
      byParts(text, [/(?<=;) /g], depth) ??
      (isList(text) ? byParts(text, [/(?<=,) /g], depth) : undefined) ??
      byTemplate(
        text,
        fitting.filter((one) => !isTelling(one)),
        depth,
      ) ??
      bySmallLetter(text, depth) ??
      byParts(text, [/(?<=[.!?:;,)]) | (?=\()| · | and | or | → | (?=[−±]?\d)/g, 'heads'], depth)
    known.set(text, result)
    return result
  }

  function byTemplate(text: string, templates: readonly Template[], depth: number): string | undefined {
    for (const one of templates)
      for (const values of fits(one, text)) {
        const told = new Map<string, string>()
        for (const [place, value] of values) {
          const inside = whole(value, depth + 1)
          if (inside === undefined) break
          told.set(place, inside)
        }
        if (told.size === values.size) return shown(filled(one.german, told))
      }
    return undefined
  }

  /** A word or sentence of the catalogue that begins with a great letter where it stands alone. */
  function bySmallLetter(text: string, depth: number): string | undefined {
    const letter = text.charAt(0)
    if (letter === letter.toLowerCase()) return undefined
    const small = bare(letter.toLowerCase() + text.slice(1), depth + 1)
    return small === undefined ? undefined : small.charAt(0).toUpperCase() + small.slice(1)
  }

  /** Several sentences, or a list: each part is known, or nothing is said of the whole. */
  function byParts(text: string, signs: readonly (RegExp | 'heads')[], depth: number): string | undefined {
    const cuts = signs
      .flatMap((sign) => (sign === 'heads' ? headCuts(text) : cutsAt(text, sign)))
      .sort((a, b) => a.end - b.end || a.start - b.start)
    return cuts.length === 0 || cuts.length > mostCuts ? undefined : joinedParts(text, cuts, depth)
  }

  function headCuts(text: string): Cut[] {
    return heads.flatMap((head) => {
      const at = text.indexOf(head, 1)
      return at > 0 ? [{ end: at, start: at, gap: '' }] : []
    })
  }

  function joinedParts(text: string, cuts: readonly Cut[], depth: number): string | undefined {
    const starts: Cut[] = [{ end: 0, start: 0, gap: '' }, ...cuts]
    const ends = [...cuts.map(({ end }) => end), text.length]
    /** Told up to the end of each part; several cuts may end at one place. */
    const best: (string | undefined)[] = ends.map(() => undefined)
    for (let last = 0; last < ends.length; last++)
      // the longest part that is known comes first
      for (let first = 0; first <= last && best[last] === undefined; first++) {
        const { start, gap } = starts[first]!
        const before = first === 0 ? '' : best[first - 1]
        if (before === undefined || start >= ends[last]! || (start === 0 && ends[last] === text.length))
          continue
        const piece = text.slice(start, ends[last])
        const told = whole(piece, depth + 1) ?? withEndSign(piece, depth)
        if (told !== undefined) best[last] = before + (gapWords[gap] ?? gap) + told
      }
    return best[ends.length - 1]
  }

  /** A part that carries the sign which ties it to the next one. */
  function withEndSign(piece: string, depth: number): string | undefined {
    const sign = /^([\s(“]*)(.*?)([.!?:;,)”]+)$/s.exec(piece)
    if (!sign || sign[2] === '') return undefined
    const told = whole(sign[2]!, depth + 1)
    return told === undefined ? undefined : sign[1]! + told + sign[3]!
  }

  /** As much as is known where the whole is not: sentence by sentence, the rest stays as it was. */
  function told(text: string): string {
    work = 0
    const all = whole(text, 0)
    if (all !== undefined) return all
    const sentenceParts = text.split(/(?<=[.!?]) /)
    if (sentenceParts.length > 1) return sentenceParts.map(told).join(' ')
    unknown.set(text, (unknown.get(text) ?? 0) + 1)
    for (const one of candidates(text).filter(isTelling))
      for (const values of fits(one, text)) {
        const some = [...values].map(([place, value]) => [place, whole(value, 1) ?? shown(value)] as const)
        return shown(filled(one.german, new Map(some)))
      }
    return shown(text)
  }

  return { told, recognized, unknown }
}

const gapWords: Readonly<Record<string, string>> = { ' and ': ' und ', ' or ': ' oder ' }
