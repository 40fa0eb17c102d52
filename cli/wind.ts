/** The verb that reads a wind logger's file: report, statistics, and a design's year in that wind. */
import { createReadStream } from 'node:fs'
import { basename } from 'node:path'
import { importWind, Refusal, type WindImportOptions, windStatistics } from '../src/index.ts'
import {
  designInMeasuredWind,
  type WindComparison,
  type WindHeights,
  windComparison,
} from '../src/output/wind-comparison.ts'
import { windPage, windResult } from '../src/output/wind-page.ts'
import { type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export interface WindOptions extends WindImportOptions, WindHeights {
  readonly json: boolean
  /** File of the design to set into the wind. */
  readonly design: string | undefined
}

/** Bytes of ten years of seconds, and some more. */
const enough = 400_000_000

/** The text of a file in UTF-8, or in UTF-16 where its first bytes say so. */
async function textOf(file: string): Promise<string> {
  const parts: Buffer[] = []
  let length = 0
  for await (const part of file === '-' ? process.stdin : createReadStream(file)) {
    parts.push(part as Buffer)
    length += (part as Buffer).length
    if (length > enough) throw Object.assign(new Error('too large'), { code: 'too large' })
  }
  const bytes = Buffer.concat(parts)
  return bytes.toString(bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf16le' : 'utf8')
}

function refused(reasons: readonly string[], json: boolean): ExitStatus {
  if (json) process.stdout.write(`${JSON.stringify({ faults: reasons }, null, 2)}\n`)
  else
    print(
      reasons.map((text) => ({ text, tone: 'blocking' as const })),
      process.stderr,
    )
  return 2
}

export async function windVerb(file: string, options: WindOptions): Promise<ExitStatus> {
  const { json, design: designFile, measuredHeight, roughness, ...asked } = options
  let text: string
  try {
    text = await textOf(file)
  } catch (error) {
    const reason = (error as NodeJS.ErrnoException).code ?? 'unknown reason'
    return refused([`file must be readable; received ${file} (${reason})`], json)
  }
  const found = withProgress(importWind(text, asked))
  if (!found.ok) return refused([found.reason], json)
  const statistics = windStatistics(found.series)
  let comparison: WindComparison | undefined
  if (designFile !== undefined) {
    const parsed = await readDesign(designFile)
    if (!parsed.ok) return printFaults(parsed.faults, json)
    try {
      const design = designInMeasuredWind(parsed.design, statistics, { measuredHeight, roughness })
      if (!('site' in design)) return refused(design, json)
      comparison = withProgress(windComparison(design, statistics))
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      return refused([error.message], json)
    }
  }
  if (json)
    process.stdout.write(`${JSON.stringify(windResult(found.report, statistics, comparison), null, 2)}\n`)
  else print(windPage(basename(file), found.report, statistics, comparison))
  return 0
}
