/** Checks the concern of an overheated winding. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain, samplePhase, sampleTemperatures, sampleVoltage } from '../../../test/sample-chain.ts'
import { adiabaticHeatingRate } from '../../physics/heat/adiabatic-heating.ts'
import { heatVerdict, statorHeat } from './stator-heat.ts'

const third = (2 * Math.PI) / 3

describe('agrees: ρ J²/(c d) by hand, copper at 20 °C', () => {
  for (const [density, rate] of [
    [3, '0.045'],
    [6, '0.18'],
    [10, '0.50'],
  ] as const)
    check(
      `kelvin per second at ${density} A/mm²`,
      adiabaticHeatingRate({
        resistivity: 1.724e-8,
        currentDensity: density * 1e6,
        heatCapacity: 385,
        density: 8960,
      }),
      rate,
    )
})

describe('law: the weakest material less the margin', () => {
  const enamel = { name: 'enamel', temperature: 428.15 }
  const print = { name: 'print', temperature: 353.15 }
  test('verdict', () => {
    expect(heatVerdict(340, [enamel, print])).toEqual({ weakest: print, excess: 340 - 338.15 })
    expect(heatVerdict(340, [enamel]).excess).toBeLessThan(0)
    expect(heatVerdict(340, [enamel, print], 0).excess).toBeLessThan(0)
  })
  const hot =
    (rise: number, overheated = false) =>
    (chain: Parameters<typeof statorHeat.judge>[0]) => ({
      rows: chain.rows.map((row) => ({ ...row, ...sampleTemperatures(285.15 + rise), overheated })),
    })
  test('silent when cool, severity by class when hot', () => {
    expect(statorHeat.judge(sampleChain())).toBeUndefined()
    expect(statorHeat.judge(sampleChain({}, hot(100)))?.severity).toBe('blocking')
    expect(statorHeat.judge(sampleChain({ 'purpose.class': 'bench' }, hot(100)))?.severity).toBe('warning')
    expect(statorHeat.judge(sampleChain({}, hot(338, true)))?.what).toContain('no steady temperature')
  })
  test('a doubt of half the rise warns, a measured way of heat does not', () => {
    expect(statorHeat.judge(sampleChain({}, hot(60)))?.severity).toBe('warning')
    const measured = sampleChain({}, (chain) => ({
      ...hot(60)(chain),
      heat: { ...chain.heat, spread: 0 },
    }))
    expect(statorHeat.judge(measured)).toBeUndefined()
  })
  test('a short that cannot stop the rotor is looked at, in the limiter’s wind and in the storm', () => {
    const shorted = sampleChain({ 'protection.electrical': 'shorting switch' }, () => ({
      voltage: sampleVoltage([0, 2, -2].map((lag) => samplePhase(0.2, lag))),
    }))
    const concern = statorHeat.judge(shorted)
    expect(concern?.figures).toContain('shorted in 11.0 m/s with the load lost')
    expect(concern?.figures).toContain('shorted in 25.0 m/s with the load lost')
    expect(concern?.severity).toBe('blocking')
  })
  test('too hot only when shorted in a storm: a warning beside a limiter, blocking without one', () => {
    const judged = (mechanical: string) =>
      statorHeat.judge(
        sampleChain(
          { 'protection.electrical': 'shorting switch', 'protection.mechanical': mechanical },
          (chain) => ({
            heat: { ...chain.heat, spread: 0 },
            voltage: sampleVoltage([0, third, -third].map((lag) => samplePhase(0.7, lag))),
          }),
        ),
      )
    expect(judged('furling tail')?.severity).toBe('warning')
    expect(judged('furling tail')?.what).toContain('limiter stick')
    expect(judged('none')?.severity).toBe('blocking')
  })
})
