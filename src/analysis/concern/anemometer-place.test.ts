/** Checks the concern of a disturbed anemometer. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { mastSpeedError } from '../../physics/aerodynamics/anemometer-place.ts'
import { anemometerPlace, mastErrorLimit } from './anemometer-place.ts'

describe('agrees: five mast widths by hand', () => {
  check('error at five widths', mastSpeedError({ diameter: 1, distance: 5 }), '0.0100')
})

describe('law: rotor and mast', () => {
  const judged = (record: object | undefined) => anemometerPlace.judge(sampleChain({ 'site.record': record }))
  // the sample's rotor is 2.4 m across
  test('silent where nothing is said, or all is well', () => {
    expect(judged(undefined)).toBeUndefined()
    expect(judged({})).toBeUndefined()
    expect(judged({ boom_mm: 0, mastWidth_mm: 50 })).toBeUndefined()
    expect(judged({ rotorDistance_m: 60 })).toBeUndefined()
    expect(judged({ rotorDistance_m: 6, wakeLeftOut: true })).toBeUndefined()
  })
  test('in the wake, with its sector about the bearing of the rotor', () => {
    const found = judged({ rotorDistance_m: 6, rotorBearing_deg: 20 })
    expect(found?.severity).toBe('warning')
    expect(found?.figures).toContain('2.5 diameters of 2.40 m; its wake takes 74°, winds from 343° to 57°')
    expect(judged({ rotorDistance_m: 47 })?.severity).toBe('warning')
    expect(judged({ rotorDistance_m: 49 })).toBeUndefined()
  })
  test('nearer than two diameters nothing helps', () => {
    expect(judged({ rotorDistance_m: 4, wakeLeftOut: true })?.severity).toBe('warning')
    expect(judged({ rotorDistance_m: 0, wakeLeftOut: true })?.severity).toBe('warning')
  })
  test('on a boom', () => {
    const near = judged({ boom_mm: 150, mastWidth_mm: 50, wakeLeftOut: true })
    expect(near?.severity).toBe('warning')
    expect(near?.figures).toContain('up to 2.8 % of the speed and 8.1 % of the power')
    expect(near?.remedies.join(' ')).toContain('a boom of 250 mm and more')
    expect(judged({ boom_mm: 300, mastWidth_mm: 50, wakeLeftOut: true })).toBeUndefined()
    expect(judged({ boom_mm: 300, mastWidth_mm: 50 })?.severity).toBe('note')
    expect(judged({ boom_mm: 300 })?.severity).toBe('note')
  })
  test('the measure agrees', () => {
    const measure = (boom_mm: number) =>
      anemometerPlace.measure?.(sampleChain({ 'site.record': { boom_mm, mastWidth_mm: 50 } }))
    expect(measure(150)!.value).toBeGreaterThan(mastErrorLimit)
    expect(measure(300)!.value).toBeLessThan(mastErrorLimit)
    expect(measure(0)).toBeUndefined()
  })
})
