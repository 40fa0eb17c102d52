/** Checks the concern of a coil or phase the wrong way round. */
import { describe, expect, test } from 'vitest'
import { check } from '../../../test/check.ts'
import { sampleChain, sampleVoltage } from '../../../test/sample-chain.ts'
import {
  opposingCoils,
  reversedCoilShare,
  reversedElement,
  reversedPhase,
  reversedPhasePattern,
} from './reversed-element.ts'

describe('agrees: phasors by hand', () => {
  check('one of three coils reversed', reversedCoilShare(3), '0.333')
  check('one of four', reversedCoilShare(4), '0.50')
  check('one of two', reversedCoilShare(2), '0')
  check('one of six', reversedCoilShare(6), '0.67')
  test('a reversed phase shows as E, E, √3 E between the lines', () => {
    const e = (angle: number) => [Math.cos(angle), Math.sin(angle)] as const
    const phases = [e(0), e((2 * Math.PI) / 3 + Math.PI), e((-2 * Math.PI) / 3)] as const
    const lines = phases.map((a, k) => {
      const b = phases[(k + 1) % 3]!
      return Math.hypot(a[0] - b[0], a[1] - b[1])
    })
    expect([...lines].sort().map((line) => line.toFixed(3))).toEqual(['1.000', '1.000', '1.732'])
    expect(reversedPhasePattern(lines)).toBe(true)
    expect(reversedPhasePattern([10, 10, 10])).toBe(false)
    expect(reversedPhasePattern([0, 0, 0])).toBe(false)
    expect(reversedPhasePattern([10, 17])).toBe(false)
  })
  test('the phase to swap', () => {
    const third = (2 * Math.PI) / 3
    expect(reversedPhase([0, third, -third])).toBeUndefined()
    expect(reversedPhase([0, third + Math.PI, -third])).toBe(2)
    expect(reversedPhase([0, third, -third + Math.PI])).toBe(3)
    expect(reversedPhase([0, Math.PI / 2])).toBeUndefined()
    expect(reversedPhase([0, 0.1, 0.2])).toBeUndefined()
  })
})

const turned = (...numbers: readonly number[]) => {
  const voltage = sampleVoltage()
  return {
    voltage: {
      ...voltage,
      coils: voltage.coils.map((each) =>
        numbers.includes(each.coil.number) ? { ...each, phaseAngle: each.phaseAngle + Math.PI } : each,
      ),
      phases: voltage.phases.map((phase) => ({ ...phase, inStep: 1 / 3 })),
    },
  }
}

describe('law: the rule', () => {
  test('each reversed coil is named', () => {
    for (let k = 1; k <= 9; k++) expect(opposingCoils(turned(k).voltage)).toEqual([k])
    expect(opposingCoils(sampleVoltage())).toEqual([])
  })
  test('of two that cancel the declared one is named', () => {
    const { coils, ...rest } = turned(2).voltage
    const two = { ...rest, coils: coils.slice(0, 2) }
    expect(opposingCoils(two)).toEqual([2])
    expect(opposingCoils(two, [1])).toEqual([1])
  })
  test('silent when all agree, severity by class', () => {
    expect(reversedElement.judge(sampleChain())).toBeUndefined()
    const concern = reversedElement.judge(sampleChain({}, () => turned(5)))
    expect(concern?.severity).toBe('blocking')
    expect(concern?.what).toContain('Coil 5')
    expect(concern?.figures).toContain('33.0 %')
    expect(reversedElement.judge(sampleChain({ 'purpose.class': 'bench' }, () => turned(5)))?.severity).toBe(
      'warning',
    )
  })
  test('readings speak too', () => {
    const reading = (voltage_V: number) => ({ speed_rpm: 500, voltage_V, kind: 'rms', place: 'line to line' })
    const chain = (third: number) =>
      sampleChain({ 'bench.readings': [reading(20), reading(20.4), reading(third)] })
    expect(reversedElement.judge(chain(35))?.path).toBe('bench.readings')
    expect(reversedElement.judge(chain(20))).toBeUndefined()
  })
})
