/** A sound machine beside itself with one defect after another: what each would show on the bench and in the wind. */
import type { Design } from '../machine/design.ts'
import { resolveDesign } from '../machine/resolve.ts'
import { Refusal } from '../refusal/require.ts'
import { type BenchReading, benchReading } from './bench-reading.ts'
import { type Chain, chainOf } from './compute.ts'
import { type Defect, defectTest, defectWords, usualDefects } from './defect-catalogue.ts'
import { type SignatureRow, signatureOf } from './fault-signature.ts'
import { type Steps, within } from './step.ts'
import { tellingWind } from './telling-wind.ts'

/** Of a defective machine over the sound one; 1 where nothing changes, or where there is nothing to compare. */
export interface FaultRatios {
  /** Least and greatest of the phases and of the lines, volts by volts. */
  readonly phases: readonly number[]
  readonly lines: readonly number[]
  readonly dcCurrent: number
  readonly phaseLoss: readonly number[]
}

export interface FaultCase {
  readonly defect: Defect
  /** In words, without a full stop. */
  readonly words: string
  /** How to find it where turning by hand shows nothing. */
  readonly test: string | undefined
  readonly reading: BenchReading
  readonly ratios: FaultRatios
  readonly signature: readonly SignatureRow[]
}

export interface FaultStudy {
  readonly name: string
  readonly connection: string
  /** Turned by hand at this [rad/s]; charging in this wind [m/s]. */
  readonly handSpeed: number
  readonly wind: number
  /** From the document's own list; else one of each kind that fits. */
  readonly own: boolean
  readonly sound: BenchReading
  readonly cases: readonly FaultCase[]
  /** Defects with which the machine cannot be computed, and why. */
  readonly refused: readonly { readonly words: string; readonly reason: string }[]
}

export interface FaultStudyOptions {
  /** [rad/s] */
  readonly handSpeed?: number
  readonly defects?: readonly Defect[]
}

/** One turn a second: a speed that a hand holds and a clock tells. Common practice, no source. */
export const usualHandSpeed = 2 * Math.PI

const over = (part: number, whole: number): number => (whole > 0 ? part / whole : 1)

const ratiosOf = (sound: BenchReading, reading: BenchReading): FaultRatios => ({
  phases: reading.phases.map((volts, k) => over(volts, sound.phases[k]!)),
  lines: reading.lines.map((volts, k) => over(volts, sound.lines[k]!)),
  dcCurrent: over(reading.dcCurrent, sound.dcCurrent),
  phaseLoss: reading.phaseLoss.map((watts, k) => over(watts, sound.phaseLoss[k]!)),
})

/** One defect at a time, each by the whole chain. Yields the fraction done. */
export function* faultStudy(design: Design, options: FaultStudyOptions = {}): Steps<FaultStudy> {
  const { handSpeed = usualHandSpeed, defects } = options
  const own = defects === undefined && design.defects.length > 0
  const list = defects ?? (own ? design.defects : usualDefects(design))
  const width = 1 / (list.length + 1)
  const chain = yield* within(chainOf(resolveDesign({ ...design, defects: [] })), 0, width)
  const wind = tellingWind(chain).row.wind
  const sound = benchReading(chain, handSpeed, wind)
  const cases: FaultCase[] = []
  const refused: { words: string; reason: string }[] = []
  for (const [k, defect] of list.entries()) {
    const words = defectWords(defect)
    try {
      const machine = resolveDesign({ ...design, defects: [defect] })
      const faulty: Chain = yield* within(chainOf(machine, { previous: chain }), (k + 1) * width, width)
      const reading = benchReading(faulty, handSpeed, wind)
      const signature = signatureOf(defect, { chain: faulty, sound, reading })
      cases.push({
        defect,
        words,
        test: defectTest(defect),
        reading,
        ratios: ratiosOf(sound, reading),
        signature,
      })
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      refused.push({ words, reason: error.message })
    }
    yield (k + 2) * width
  }
  return {
    name: design.name,
    connection: design.stator.connection,
    handSpeed,
    wind,
    own,
    sound,
    cases,
    refused,
  }
}
