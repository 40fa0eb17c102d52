/** Checks the concern of a free-running ratio taken for that of work. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain } from '../../../test/sample-chain.ts'
import { rotorSpeed } from '../../physics/aerodynamics/wind-power.ts'
import { loadedRatios, unloadedRatio } from './unloaded-ratio.ts'

describe('agrees: a rotor of 1.5 m, free running and work by hand', () => {
  const rpm = (tipSpeedRatio: number, windSpeed: number) =>
    (rotorSpeed({ tipSpeedRatio, windSpeed, radius: 0.75 }) * 30) / Math.PI
  check('free running at 10 in 15 m/s', rpm(10, 15), '1910')
  check('work at 6 in 4 m/s', rpm(6, 4), '306')
  check('work that free running at 10 stands for, at the most', loadedRatios(10)[1], '6.7')
  check('and at the least', loadedRatios(10)[0], '5.0')
})

describe('law: where the most power lies', () => {
  const table = (points: readonly (readonly [number, number])[]) =>
    sampleChain({
      'blades.points': points.map(([tipSpeedRatio, powerCoefficient]) => ({
        tipSpeedRatio,
        powerCoefficient,
      })),
    })
  test('a table read under load is silent, one with its peak at the free end is not', () => {
    expect(unloadedRatio.judge(sampleChain())).toBeUndefined()
    const odd = table([
      [0, 0],
      [4, 0.1],
      [7, 0.25],
      [9, 0.38],
      [10, 0],
    ])
    const found = unloadedRatio.judge(odd)
    expect(found?.severity).toBe('warning')
    expect(found?.path).toBe('blades.points')
    expect(unloadedRatio.measure?.(odd)?.value).toBeGreaterThan(0.8)
    expect(unloadedRatio.measure?.(sampleChain())?.value).toBeLessThan(0.8)
  })
  test('blades that give nothing say nothing', () => {
    expect(
      unloadedRatio.judge(
        table([
          [0, 0],
          [1, 0],
          [2, 0],
        ]),
      ),
    ).toBeUndefined()
  })
  const shaped = (tipSpeedRatio: number, ratioFrom?: string) =>
    sampleChain({
      blades: {
        kind: 'optimum',
        diameter_m: 1.5,
        bladeCount: 3,
        section: 'SD2030',
        tipSpeedRatio,
        ...(ratioFrom === undefined ? {} : { ratioFrom }),
      },
    })
  test('shaped for a ratio that was read turning freely', () => {
    expect(unloadedRatio.judge(shaped(6))).toBeUndefined()
    expect(unloadedRatio.judge(shaped(10))?.severity).toBe('note')
    expect(unloadedRatio.judge(shaped(10, 'read under load'))).toBeUndefined()
    const free = unloadedRatio.judge(shaped(9, 'read turning freely'))
    expect(free?.severity).toBe('warning')
    expect(free?.figures).toContain('work is at 4.5 to 6.0. In 4 m/s that is 458 rpm or 229 rpm to 306 rpm.')
  })
  test('the gentlest remedy silences it', () => {
    const found = unloadedRatio.judge(shaped(9, 'read turning freely'))
    const remedy = found?.remedies.find((each) => typeof each !== 'string')
    const [first] = typeof remedy === 'object' ? remedy.ladder : []
    expect(first?.map(({ to }) => to)).toEqual([6, 'chosen'])
    expect(unloadedRatio.judge(shaped(6, 'chosen'))).toBeUndefined()
  })
})
