/** Checks of the speed at which a bridge with bad diodes lets current through. */
import { describe, expect, test } from 'vitest'
import { machine as circuit, diagonal } from '../../test/sample-rectifier.ts'
import type { DiodeFault } from '../physics/electrics/bridge-rectifier.ts'
import { rectifierPoint } from '../physics/electrics/bridge-rectifier.ts'
import { openingSpeed } from './bridge-opening.ts'

const peaks = (...list: number[]) => list.map((peak) => ({ peak }))
const at = (connection: string, list: readonly number[], faults: readonly DiodeFault[]) =>
  openingSpeed(
    {
      stator: { connection },
      diode: { threshold: 0.7 },
      defects: { diodeFaults: faults },
    } as unknown as Parameters<typeof openingSpeed>[0],
    {
      lines: peaks(...list),
      phases: list,
      greatestLinePeak: Math.max(...list),
    } as unknown as Parameters<typeof openingSpeed>[1],
    12,
  )
const bad = (kind: DiodeFault['kind'], line: number, side: DiodeFault['side']): DiodeFault => ({
  kind,
  line,
  side,
})

describe('law: the best way that is left', () => {
  test('one open diode leaves every pair of lines one way round, two of a line leave one pair', () => {
    expect(at('star', [1, 1, 1.1], [])).toBeCloseTo(13.4 / 1.1, 12)
    expect(at('star', [1, 1, 1.1], [bad('open', 0, 'positive')])).toBeCloseTo(13.4 / 1.1, 12)
    const line = [bad('open', 0, 'positive'), bad('open', 0, 'negative')]
    expect(at('star', [1, 1, 1.1], line)).toBeCloseTo(13.4, 12)
  })
  test('a shorted diode asks for one threshold less', () => {
    expect(at('star', [1, 1, 1], [bad('shorted', 1, 'negative')])).toBeCloseTo(12.7, 12)
    expect(at('separate', [1, 1, 1], [bad('shorted', 1, 'negative')])).toBeCloseTo(12.7, 12)
  })
  test('no diode left on one side: never', () => {
    const side = [0, 1, 2].map((line) => bad('open', line, 'negative'))
    expect(at('star', [1, 1, 1], side)).toBe(Number.POSITIVE_INFINITY)
  })
})

describe('agrees: current of the circuit begins there', () => {
  for (const faults of [[bad('open', 0, 'positive')], [bad('shorted', 1, 'negative')]])
    test(`${faults[0]!.kind} diode`, () => {
      const line = Math.sqrt(3)
      const speed = at('star', [line, line, line], faults)
      const amps = (share: number) => {
        const E = share * speed
        const wave = (k: number) => ({
          cos: Float64Array.of(0, -E * Math.sin((2 * Math.PI * k) / 3)),
          sin: Float64Array.of(0, E * Math.cos((2 * Math.PI * k) / 3)),
        })
        return rectifierPoint(
          circuit({
            emf: [0, 1, 2].map(wave),
            inductance: diagonal(3, 0),
            diodeFaults: faults,
          }),
        ).dcCurrent
      }
      expect(amps(0.999)).toBeLessThan(1e-9)
      expect(amps(1.01)).toBeGreaterThan(1e-4)
    })
})
