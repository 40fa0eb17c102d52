/** Checks of wires and cables as they are typed and read. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import {
  gaugeOfSection,
  isUnfinishedWire,
  spokenWireSize,
  steppedSection,
  steppedWireSize,
  typedSection,
  typedWireSize,
} from './spoken-wire.ts'
import { gauge, nearestGauge } from './wire-gauge.ts'

describe('source: astm-b258, table of diameters in thousandths of an inch (from memory, not opened)', () => {
  for (const [number, printed] of [
    [4, '204.3'],
    [8, '128.5'],
    [10, '101.9'],
    [12, '80.8'],
    [14, '64.1'],
    [16, '50.8'],
    [18, '40.3'],
    [20, '32.0'],
    [22, '25.3'],
    [24, '20.1'],
    [30, '10.0'],
    [36, '5.0'],
  ] as const)
    check(`AWG ${number}`, () => gauge(`AWG ${number}`)! / 0.0254, printed)
})

describe('source: astm-b258, table of sections in mm² (from memory, not opened)', () => {
  const section = (text: string) => {
    const typed = typedSection(text, '.')
    return typed.kind === 'number' ? typed.value : Number.NaN
  }
  for (const [name, printed] of [
    ['AWG 10', '5.261'],
    ['12 awg', '3.31'],
    ['AWG 14', '2.08'],
    ['#18 AWG', '0.823'],
  ] as const)
    check(name, () => section(name), printed)
})

describe('law: a wire as it is typed', () => {
  const cases = [
    ['0.8', 'mm', 0.8],
    ['0,8', 'mm', 0.8],
    ['0.8 mm', 'AWG', 0.8],
    ['20', 'AWG', 'AWG 20'],
    ['20', 'SWG', 'SWG 20'],
    ['awg20', 'mm', 'AWG 20'],
    ['21 SWG', 'AWG', 'SWG 21'],
    ['0.032 in', 'AWG', 0.8128],
  ] as const
  for (const [text, measure, size] of cases)
    test(`"${text}" where ${measure} is said`, () =>
      expect(typedWireSize(text, measure, '.')).toEqual({ kind: 'size', size }))
  test('what is no gauge is told', () => {
    for (const text of ['99', '0.8', 'AWG 60', 'SWG 1'])
      expect(typedWireSize(text, 'AWG', '.')).toEqual({ kind: 'no gauge' })
  })
  test('every beginning of a gauge is a size or unfinished', () => {
    for (const whole of ['AWG 20', '21 swg', '#20 AWG', '0.8 mm'])
      for (let length = 1; length <= whole.length; length++) {
        const text = whole.slice(0, length)
        const typed = typedWireSize(text, 'mm', '.')
        expect(typed.kind === 'size' || isUnfinishedWire(text, '.'), text).toBe(true)
      }
    expect(isUnfinishedWire('thin', '.')).toBe(false)
  })
  test('nothing and words stay what they are', () => {
    expect(typedWireSize(' ', 'AWG', '.').kind).toBe('nothing')
    expect(typedWireSize('thin', 'AWG', '.').kind).toBe('words')
  })
})

describe('law: a wire as it is said reads back to itself', () => {
  test('where the chosen measure can say it', () => {
    for (const measure of ['mm', 'AWG', 'SWG'] as const)
      for (const size of [0.8, 1.25, 'AWG 20', 'SWG 21', 'AWG 0'] as const) {
        const { text, unit } = spokenWireSize(size, measure)
        const back = typedWireSize(text, measure, '.')
        // a gauge said in millimetres is rounded to four digits: read back it is that diameter
        if (measure === 'mm' && typeof size === 'string') expect(unit).toBe('mm')
        else expect(back).toEqual({ kind: 'size', size })
      }
  })
  test('with the same wire in other words', () => {
    expect(spokenWireSize('AWG 20', 'mm')).toEqual({ text: '0.8118', unit: 'mm', also: 'AWG 20', same: true })
    expect(spokenWireSize('AWG 20', 'AWG')).toEqual({
      text: '20',
      unit: 'AWG',
      also: '0.8118 mm',
      same: true,
    })
    expect(spokenWireSize(0.8, 'AWG')).toEqual({ text: '0.8 mm', unit: '', also: 'AWG 20', same: false })
    expect(spokenWireSize('no such', 'AWG').text).toBe('no such')
  })
  test('the nearest gauge is the smallest ratio away', () => {
    expect(nearestGauge(0.8, 'AWG').name).toBe('AWG 20')
    expect(nearestGauge(1e-9, 'SWG').name).toBe('SWG 45')
    expect(nearestGauge(50, 'AWG').name).toBe('AWG 0')
  })
})

describe('law: steps go along the sizes that are sold', () => {
  test('diameters', () => {
    expect(steppedWireSize(0.8, 'mm', 1)).toBe(0.85)
    expect(steppedWireSize(0.81, 'mm', -1)).toBe(0.8)
    expect(steppedWireSize(3.15, 'mm', 1)).toBe(3.15)
    expect(steppedWireSize('AWG 20', 'mm', 1)).toBe(0.85)
  })
  test('gauges: thicker is the smaller number', () => {
    expect(steppedWireSize('AWG 20', 'AWG', 1)).toBe('AWG 19')
    expect(steppedWireSize('AWG 20', 'AWG', -1)).toBe('AWG 21')
    expect(steppedWireSize(0.8, 'AWG', 1)).toBe('AWG 20')
    expect(steppedWireSize(0.8, 'AWG', -1)).toBe('AWG 21')
    expect(steppedWireSize('AWG 0', 'AWG', 1)).toBe('AWG 0')
    expect(steppedWireSize('AWG 3', 'AWG', 10)).toBe('AWG 0')
  })
  test('sections', () => {
    expect(steppedSection(2.5, 1)).toBe(4)
    expect(steppedSection(3, -1)).toBe(2.5)
    expect(steppedSection(0.5, -1)).toBe(0.5)
    expect(gaugeOfSection(steppedSection(5.261, 1))).toBe('AWG 9')
    expect(gaugeOfSection(2.5)).toBeUndefined()
  })
})
