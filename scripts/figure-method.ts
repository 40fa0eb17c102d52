/** What the hints on the page say of the methods behind its figures, in words without names of the code. */
import { type MethodName, namedMethods } from '../web/hint/figure-method.ts'
import { type Method, methods } from './method.ts'
import { citation } from './method-page.ts'

/** One function as a hint tells it; each text on its own, so that each can be said in another language. */
export interface FigureMethod {
  readonly sentence: string
  readonly formula: string
  readonly holds: string
  readonly accuracy: string
  /** The publication; empty where the formula was derived here. */
  readonly work: string
  /** The place in it, or what it was derived from. */
  readonly where: string
}

/** Names that a sentence cannot do without, in plain words; what a hint has no room for. */
const plainNames: readonly (readonly [RegExp, string])[] = [
  [/`stallDelay`/g, 'the stall delay of turning blades counted in'],
  [/\brotorCoefficients\b/g, 'the coefficients of the blades'],
  [/, see `\w+`|, each listed with both ends \(.*?\)| \([A-Z]+_[A-Z_]+\)/g, ''],
  [/, summed, at each point: Coulomb gauge, zero at infinity/g, ', all magnets summed'],
]

/** For whoever calls the function, and for nobody else. */
const forCallers = /`|\b[a-z]+[A-Z]\w*\b|\barrays\b|\bin place\b|\bhand in\b/

const raised: Readonly<Record<string, string>> = {
  '-': '⁻',
  ...Object.fromEntries([...'⁰¹²³⁴⁵⁶⁷⁸⁹'].entries()),
}

/** 2e-10 → 2 × 10⁻¹⁰ */
const withPowers = (text: string): string =>
  text.replace(/\b(\d+)e(-?\d+)/g, (_, digits: string, power: string) => {
    const ten = `10${[...power].map((sign) => raised[sign]).join('')}`
    return digits === '1' ? ten : `${digits} × ${ten}`
  })

/** Keys of the bibliography within a sentence, by author and year. */
const withWorks = (text: string): string =>
  text.replace(/\b[a-z-]+(?:19|20)\d\d\b/g, (key) => {
    const [author, ...rest] = citation(key).split(', ')
    return rest.length === 0 ? key : `${author}, ${rest.at(-1)}`
  })

/** Sentences and, within them, clauses that speak of the code are left out. */
function plainText(text: string): string {
  const named = plainNames.reduce((all, [name, words]) => all.replace(name, words), text)
  const kept = named
    .split(/(?<=\.)\s+(?=\p{Lu})/u)
    .map((sentence) =>
      sentence
        .replace(/\.$/, '')
        .split('; ')
        .filter((clause) => !forCallers.test(clause))
        .join('; '),
    )
    .filter((sentence) => sentence !== '' && !/^A rotor's /.test(sentence))
    .map((sentence) => `${sentence}.`)
    .join(' ')
  return withPowers(withWorks(kept))
}

/** What follows "Holds:" or "Accuracy:", up to the other of the two. */
function said(prose: readonly string[], head: 'Holds' | 'Accuracy'): string {
  const all = prose.join(' ')
  const found = new RegExp(`${head}: (.*?)(?= (?:Holds|Accuracy):|$)`).exec(all)?.[1] ?? ''
  const text = plainText(found.trim())
  // a letter of the formula that stands alone keeps its size
  return /^\p{L}\b/u.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1)
}

const nameOf = ({ path, name }: Method): MethodName => `${path.replace(/^src\/physics\/|\.ts$/g, '')}#${name}`

export function figureMethod(method: Method): FigureMethod {
  const [source] = method.sources
  const derived = source === undefined || source.key === 'derived'
  return {
    sentence: plainText(method.sentence),
    formula: method.formula.join('\n').replace(/, {2,}/g, '\n'),
    holds: said(method.prose, 'Holds'),
    accuracy: said(method.prose, 'Accuracy'),
    work: derived ? '' : citation(source.key),
    where: plainText(source?.where ?? '').replace(/\.$/, ''),
  }
}

/** By name, every function that a figure of the page names and the engine documents. */
export const documentedMethods = (): Readonly<Record<MethodName, FigureMethod>> => {
  const named = new Set(namedMethods)
  return Object.fromEntries(
    methods()
      .filter((method) => named.has(nameOf(method)))
      .map((method) => [nameOf(method), figureMethod(method)] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  )
}

export const figureMethodText = (): string => `${JSON.stringify(documentedMethods(), null, 2)}\n`
