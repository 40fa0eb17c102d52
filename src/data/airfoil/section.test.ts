/** Checks of the section tables. */
import { describe, expect, test } from 'vitest'
import sources from '../sources.json' with { type: 'json' }
import { sectionNames, sections } from './index.ts'

const known = new Set(sources.map(({ id }) => id))

describe('law: every polar has a source, rising angles, drag above zero', () => {
  for (const name of sectionNames) {
    test(name, () => {
      let reynolds = 0
      for (const polar of sections[name]) {
        expect(polar.name).toBe(name)
        expect(known.has(polar.source), polar.source).toBe(true)
        expect(polar.where.length).toBeGreaterThan(20)
        expect(polar.reynolds).toBeGreaterThan(reynolds)
        reynolds = polar.reynolds
        expect(polar.spread.lift).toBeGreaterThan(0)
        expect(polar.spread.dragShare).toBeGreaterThan(0)
        polar.rows.forEach(([α, lift, drag], i) => {
          if (i > 0) expect(α).toBeGreaterThan(polar.rows[i - 1]![0])
          expect(Math.abs(lift)).toBeLessThan(2)
          expect(drag).toBeGreaterThan(0)
        })
      }
    })
    test(`${name}: lift slope near 2π before stall, within a third; within 60 % up to Re 100 700, where bubbles bend it`, () => {
      for (const { rows, reynolds } of sections[name]) {
        const attached = rows.filter(([α]) => α >= -1.5 && α <= 5.5)
        const n = attached.length
        const meanα = attached.reduce((s, [α]) => s + α, 0) / n
        const meanLift = attached.reduce((s, [, lift]) => s + lift, 0) / n
        const slope =
          attached.reduce((s, [α, lift]) => s + (α - meanα) * (lift - meanLift), 0) /
          attached.reduce((s, [α]) => s + (α - meanα) ** 2, 0)
        const ratio = (slope * 180) / Math.PI / (2 * Math.PI)
        const apart = reynolds < 1.01e5 ? 0.6 : 0.33
        expect(Math.abs(ratio - 1), `Re ${reynolds}`).toBeLessThan(apart)
      }
    })
  }
})
