/** Checks the page of a machine turned by hand: sound words for every meter, machine and reading. */
import { describe, expect, test } from 'vitest'
import { designOf } from '../../test/example.ts'
import { fixedDocument } from '../../test/fixed-document.ts'
import { computeDesign } from '../analysis/compute.ts'
import { compareVolts } from '../analysis/kind-of-volts.ts'
import { loadedReading } from '../analysis/loaded-reading.ts'
import { meterReading } from '../analysis/meter-reading.ts'
import { ohmReadings } from '../analysis/ohm-reading.ts'
import { probePoints } from '../analysis/probe-point.ts'
import { turnSource } from '../analysis/turn-source.ts'
import { turnVerdict } from '../analysis/turn-verdict.ts'
import { meterNames, meterOfClass } from '../machine/meter.ts'
import { turnPage, turnResult } from './turn-page.ts'
import { displayText } from './turn-words.ts'

const open = fixedDocument('drum')
open.load = { kind: 'open' }

describe('law: the page', () => {
  test('a display keeps the digits it has', () => {
    expect(displayText(1.2, 0.1, 'V')).toBe('1.2 V')
    expect(displayText(12, 1e-2, 'V')).toBe('12.00 V')
    expect(displayText(150, 1, 'V')).toBe('150 V')
  })
  for (const [name, document] of [
    ['two discs', fixedDocument('twoDiscs')],
    ['drum without a load', open],
  ] as const)
    test(`every meter, slow and fast: ${name}`, () => {
      const chain = computeDesign(designOf(document))
      const source = turnSource(chain)
      const points = probePoints(source)
      const probe = points[0]!
      for (const meterName of meterNames)
        for (const speed of [0.5, 6, 60]) {
          const meter = meterOfClass(meterName)
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
            comparison: { probe, volts: compareVolts(source, { read: 1, speed, meter, probe }) },
            diagnosis: undefined,
          }
          const page = turnPage(turned)
          const text = page.map((line) => line.text).join('\n')
          expect(text).not.toMatch(/NaN|undefined|Infinity/)
          expect(text).toContain('None by itself')
          expect(JSON.stringify(turnResult(turned))).not.toMatch(/NaN|undefined|Infinity/)
        }
    })
})
