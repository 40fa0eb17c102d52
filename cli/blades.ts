/** The verb that shapes blades: chord and twist, straight lines for carving, and what each shape costs. */
import {
  bladeDesign,
  type Parsed,
  parseDesign,
  parsePolarText,
  Refusal,
  resolveDesign,
} from '../src/index.ts'
import { bladePage, bladeResult } from '../src/output/blade-page.ts'
import { type ExitStatus, printFaults } from './compute.ts'
import { readDesign, readText } from './read.ts'
import { print } from './terminal.ts'

export interface BladesOptions {
  readonly json: boolean
  readonly tipSpeedRatio?: number | undefined
  readonly blades?: number | undefined
  /** In millimetres, as typed. */
  readonly chord?: number | undefined
  readonly plankWidth?: number | undefined
  readonly plankDepth?: number | undefined
  readonly pipe?: number | undefined
  readonly wind?: number | undefined
  /** File of a polar to take in place of the section. */
  readonly polar?: string | undefined
  readonly reynolds?: number | undefined
}

/** The design with the polar of a text in place of its section, or what is wrong with either. */
async function withPolar(parsed: Parsed, { polar, reynolds }: BladesOptions): Promise<Parsed> {
  if (polar === undefined || !parsed.ok) return parsed
  const text = await readText(polar)
  if (typeof text !== 'string') return { ok: false, faults: [text] }
  const read = parsePolarText(text, reynolds)
  if (!read.ok)
    return {
      ok: false,
      faults: read.faults.map(({ line, what, remedy }) => ({
        path: line > 0 ? `${polar}, line ${line}` : polar,
        condition: `readable as angle, lift and drag: ${remedy}`,
        received: what,
        code: 'wrong-type' as const,
      })),
    }
  for (const { line, what } of read.notes) process.stderr.write(`${polar}, line ${line}: ${what}\n`)
  return parseDesign({
    ...parsed.design,
    blades: { ...parsed.design.blades, section: 'own polar', polar: read.polars },
  })
}

const metres = (millimetres: number | undefined): number | undefined =>
  millimetres === undefined ? undefined : millimetres / 1000

/** The object without what is undefined. */
const given = <T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>
  }

export async function bladesVerb(file: string, options: BladesOptions): Promise<ExitStatus> {
  const parsed = await withPolar(await readDesign(file), options)
  if (!parsed.ok) return printFaults(parsed.faults, options.json)
  const pipe = metres(options.pipe)
  try {
    const design = bladeDesign(resolveDesign(parsed.design), {
      ...given({
        tipSpeedRatio: options.tipSpeedRatio,
        bladeCount: options.blades,
        wind: options.wind,
      }),
      limits: given({
        chord: metres(options.chord),
        plankWidth: metres(options.plankWidth),
        plankDepth: metres(options.plankDepth),
        pipeRadius: pipe === undefined ? undefined : pipe / 2,
      }),
    })
    if (options.json) process.stdout.write(`${JSON.stringify(bladeResult(design), null, 2)}\n`)
    else print(bladePage(parsed.design.name, design))
    return 0
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const { message: condition, code } = error
    return printFaults([{ path: 'blades', condition, received: 'this design', code }], options.json)
  }
}
