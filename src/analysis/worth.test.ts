/** Checks of the need against the year: covered or not, days of the battery, steps up, plain words. */
import { describe, expect, test } from 'vitest'
import { fixedDocument } from '../../test/fixed-document.ts'
import { parseDesign } from '../machine/parse.ts'
import { type Chain, computeDesign } from './compute.ts'
import { finished } from './step.ts'
import { type Worth, worthOf } from './worth.ts'

const wavy = [6.5, 6.2, 5.6, 4.8, 4, 3.4, 3, 3.1, 3.8, 4.8, 5.6, 6.3]
const lamp = { name: 'lamp', power_W: 5, daily_h: 4 }

function machineWith(need: object | undefined, months = true): Chain {
  const document = fixedDocument('drum')
  if (months) document.site.monthlyMean_m_per_s = wavy
  document.load.capacity_Ah = 100
  if (need) document.need = need
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  return computeDesign(parsed.design)
}
const bare = machineWith({})
/** The same machine with another need: the chain does not depend on it. */
function worthWith(need: object, months = true, chain = bare): Worth {
  const parsed = parseDesign({ ...chain.machine.design, need })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults))
  const year = months ? chain.year : { ...chain.year, months: undefined }
  return finished(worthOf({ ...chain, year, machine: { ...chain.machine, design: parsed.design } }))!
}
const kWh = 3.6e6

describe('law: the need', () => {
  test('a lamp of 5 W for 4 h a day is 7.3 kWh a year, months by their days, winter alone 182 of 365', () => {
    expect(worthWith({ uses: [lamp] }).year.need / kWh).toBeCloseTo(7.3, 10)
    expect(worthWith({ uses: [{ ...lamp, count: 3 }] }).year.need / kWh).toBeCloseTo(21.9, 10)
    const winter = worthWith({ uses: [{ ...lamp, months: [10, 11, 12, 1, 2, 3] }] })
    expect(winter.year.need / kWh).toBeCloseTo(0.02 * 182, 10)
    expect(winter.months![6]!.need).toBe(0)
  })
  test('no need, no answer', () => expect(finished(worthOf(machineWith(undefined)))).toBeUndefined())
  test('standing use counts day and night', () =>
    expect(worthWith({ standing_W: 1 }).standing / kWh).toBeCloseTo(8.76, 10))
})

describe('law: covered, perhaps, short', () => {
  test('a small need is covered in every month, a huge one in none, each in its own words', () => {
    const small = worthWith({ uses: [{ name: 'lamp', power_W: 0.1, daily_h: 1 }] })
    expect(new Set(small.months!.map(({ cover }) => cover))).toEqual(new Set(['covered']))
    expect(small.verdict[0]).toMatch(/^Yes\./)
    const huge = worthWith({ uses: [{ name: 'oven', power_W: 2000, daily_h: 3 }] })
    expect(new Set(huge.months!.map(({ cover }) => cover))).toEqual(new Set(['short']))
    expect(huge.verdict[0]).toMatch(/^No\./)
    expect(huge.year.refused).toBe(0)
  })
  test('the calm months fall short first; a surplus is what the need leaves', () => {
    const mean = bare.year.energy / 365 / 3600
    const worth = worthWith({ uses: [{ name: 'pump', power_W: mean * 0.7, daily_h: 1 }] })
    const { months } = worth
    const rank = { covered: 2, perhaps: 1, short: 0 }
    expect(rank[months![6]!.cover]).toBeLessThanOrEqual(rank[months![0]!.cover])
    for (const { energy, need, refused } of months!)
      expect(refused * worth.storageEfficiency).toBeCloseTo(Math.max(0, energy - need), 3)
  })
  test('electronics that take all of it make the answer no, without months too', () => {
    const hungry = { standing_W: 200 }
    for (const months of [true, false])
      expect(worthWith(hungry, months).verdict[0]).toMatch(/^No\..*empty the battery/)
  })
  test('without months the year alone is told, and that the months are not known', () => {
    const { verdict, months } = worthWith({ uses: [lamp] }, false)
    expect(months).toBeUndefined()
    expect(verdict[1]).toContain('Months are not known')
  })
})

describe('law: battery and steps', () => {
  test('half of a lead-acid battery of 100 Ah carries 20 Wh a day for as many days; all of it twice as many', () => {
    const { load } = bare.machine
    if (load.kind !== 'battery' || load.chemistry !== 'lead-acid') throw new Error('another battery')
    const gentle = worthWith({ uses: [lamp] }).autonomy!
    expect(gentle).toBeCloseTo((0.5 * 100 * load.voltage) / 20, 6)
    expect(worthWith({ uses: [lamp], batteryUse: 'full' }).autonomy! / gentle).toBeCloseTo(2, 10)
  })
  test('the chain itself gives the steps: higher is windier, and twice the exponent’s gain is no guess', () => {
    const { steps } = worthWith({ uses: [lamp] })
    const towers = steps.filter(({ kind }) => kind === 'higher tower')
    expect(towers).toHaveLength(2)
    expect(towers[0]!.energy).toBeGreaterThan(bare.year.energy)
    expect(towers[1]!.energy).toBeGreaterThan(towers[0]!.energy)
    const rotors = steps.filter(({ kind }) => kind === 'larger rotor')
    expect(rotors.map(({ size }) => size)).toEqual([1.375, 1.65].map((size) => expect.closeTo(size, 9)))
    const document = fixedDocument('drum')
    document.site.hubHeight_m = towers[0]!.size
    const parsed = parseDesign(document)
    if (!parsed.ok) throw new Error('not a design')
    expect(computeDesign(parsed.design).year.energy / towers[0]!.energy).toBeCloseTo(1, 6)
  })
})
