/** The verb that shows what a meter reads of a machine turned by hand, and what that proves. */
import {
  compareVolts,
  type Diagnosis,
  faultStudy,
  likelyDefects,
  loadedReading,
  type MeterReadings,
  meterOf,
  meterOfClass,
  meterReading,
  ohmReadings,
  probePoints,
  Refusal,
  turnSource,
  turnVerdict,
} from '../src/index.ts'
import { turnPage, turnResult } from '../src/output/turn-page.ts'
import { chainOrFaults, type ExitStatus, printFaults } from './compute.ts'
import { readDesign } from './read.ts'
import { print, withProgress } from './terminal.ts'

export interface TurnWords extends Omit<MeterReadings, 'speed'> {
  readonly json: boolean
  readonly rpm: number
  readonly meter?: string
  /** Volts read, and between which points. */
  readonly read?: number
  readonly between?: string
}

export async function turnVerb(file: string, words: TurnWords): Promise<ExitStatus> {
  const { json, rpm, meter: kind, read, between, lines, phases, corner, resistances } = words
  const parsed = await readDesign(file)
  const chain = chainOrFaults(parsed)
  if (!('machine' in chain) || !parsed.ok) return printFaults('machine' in chain ? [] : chain, json)
  const { bench } = chain.machine.design
  const meter = kind === undefined ? meterOf(bench) : meterOfClass(kind, bench)
  const speed = (2 * Math.PI * rpm) / 60
  const source = turnSource(chain)
  const points = probePoints(source)
  const probe = between === undefined ? points[0] : points.find(({ id }) => id === between)
  if (!probe) {
    const condition = `one of ${points.map(({ id }) => id).join(', ')}`
    return printFaults(
      [{ path: '--between', condition, received: between ?? '', code: 'not-a-choice' }],
      json,
    )
  }
  let diagnosis: Diagnosis | undefined
  try {
    if (lines ?? phases ?? corner ?? resistances)
      diagnosis = likelyDefects(
        {
          speed,
          ...(lines ? { lines } : {}),
          ...(phases ? { phases } : {}),
          ...(corner === undefined ? {} : { corner }),
          ...(resistances ? { resistances } : {}),
        },
        withProgress(faultStudy(parsed.design)),
      )
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const { message: condition, code } = error
    return printFaults([{ path: 'the machine', condition, received: 'this design', code }], json)
  }
  const turned = {
    source,
    speed,
    meter,
    readings: points.map((each) => ({
      probe: each,
      reading: meterReading(source, { speed, meter, probe: each }),
    })),
    verdict: turnVerdict(source, { speed, meter, probe }),
    ohms: ohmReadings(source, meter),
    loaded: speed > source.cutIn ? loadedReading(chain, { speed, meter }) : undefined,
    comparison:
      read === undefined ? undefined : { probe, volts: compareVolts(source, { read, speed, meter, probe }) },
    diagnosis,
  }
  if (json) process.stdout.write(`${JSON.stringify(turnResult(turned), null, 2)}\n`)
  else print(turnPage(turned))
  return 0
}
