/** Checks of the stock as it is typed: the usual one is a stock, places and variants are taken by the engine, faults go with their field. */
import { beforeEach, describe, expect, test } from 'vitest'
import { parseStock } from '../../src/index.ts'
import {
  choosePlace,
  chosenPlace,
  forgetStock,
  places,
  setStock,
  setVariant,
  stock,
  stockFaults,
  stockFaultsOf,
  stockValue,
  untold,
  wishPower,
} from './stock.ts'

const faultAt = (path: string) => ({ path, condition: '', received: '', code: 'below-minimum', text: path })

beforeEach(() => {
  forgetStock()
  stockFaults.value = []
})

describe('law: what stands on the page before anybody typed is a stock', () => {
  test('as it is', () => {
    expect(untold.value).toBe(true)
    expect(parseStock(stock.value).ok).toBe(true)
  })

  test('with every place, every magnet, every load', () => {
    for (const { key, wind } of places) {
      choosePlace(key)
      expect(chosenPlace.value).toBe(key)
      const parsed = parseStock(stock.value)
      expect(parsed.ok && parsed.stock.meanWind_m_per_s).toMatchObject({ value: wind })
    }
    for (const shape of ['block', 'disc', 'block'])
      for (const load of ['resistor', 'battery']) {
        setVariant('magnet', shape)
        setVariant('store', load)
        expect(parseStock(stock.value).ok, `${shape} ${load}`).toBe(true)
      }
    expect(untold.value).toBe(false)
  })

  test('a number of one’s own is no place; a wish without power is none', () => {
    choosePlace('open')
    setStock(['meanWind_m_per_s', 'value'], 4.6)
    expect(chosenPlace.value).toBeUndefined()
    wishPower(25)
    expect(parseStock(stock.value).ok).toBe(true)
    setStock(['wish', 'atWind_m_per_s'], 5)
    wishPower(30)
    expect(stockValue(['wish'])).toEqual({ power_W: 30, atWind_m_per_s: 5 })
    wishPower(undefined)
    expect('wish' in stock.value).toBe(false)
  })
})

describe('law: another shape keeps what both shapes have', () => {
  test('thickness of the magnets', () => {
    setStock(['magnet', 'thickness_mm'], 7)
    setVariant('magnet', 'block')
    expect(stockValue(['magnet'])).toMatchObject({ shape: 'block', thickness_mm: 7 })
    expect(stockValue(['magnet', 'diameter_mm'])).toBeUndefined()
  })
})

describe('law: a fault stays until its own field is changed', () => {
  test('neighbours leave it', () => {
    stockFaults.value = [faultAt('magnet.diameter_mm'), faultAt('magnetCount')]
    setStock(['magnet', 'thickness_mm'], 4)
    expect(stockFaults.value.length).toBe(2)
    setStock(['magnet', 'diameter_mm'], 12)
    expect(stockFaultsOf('magnet.diameter_mm')).toEqual([])
    expect(stockFaultsOf('magnetCount').length).toBe(1)
  })

  test('a size of −3 mm is refused, with the field named', () => {
    setStock(['magnet', 'diameter_mm'], -3)
    const parsed = parseStock(stock.value)
    expect(parsed.ok ? [] : parsed.faults.map(({ path, code }) => [path, code])).toEqual([
      ['magnet.diameter_mm', 'below-minimum'],
    ])
  })
})
