/** Checks of the machine wind by wind: laws that any machine obeys, on the examples and on changed ones. */
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleNames } from '../../test/example.ts'
import { type FixedName, fixedDocument } from '../../test/fixed-document.ts'
import { computeDesign } from './compute.ts'
import { tellingRow } from './telling-wind.ts'
import { shaftPower } from './watts.ts'

const chainWith = (name: FixedName, change: (document: ReturnType<typeof fixedDocument>) => void) => {
  const document = fixedDocument(name)
  change(document)
  return computeDesign(designOf(document))
}

describe('law: every row of every example', () => {
  for (const name of exampleNames)
    test(name, () => {
      const { rows, blades, machine } = exampleChain(name)
      for (const row of rows) {
        expect(row.powerCoefficient).toBeLessThan(16 / 27)
        expect(row.copperTemperature).toBeGreaterThanOrEqual(machine.site.ambient)
        if (row.state === 'at rest') expect(shaftPower(row.watts)).toBe(0)
        if (row.state === 'turning' || row.state === 'charging' || row.state === 'stalled') {
          // what the shaft takes is what the blades give
          const given = blades.power(row.wind, row.speed)
          expect(Math.abs(shaftPower(row.watts) / given - 1)).toBeLessThan(0.02)
        }
      }
    })
})

describe('law: protection, start and stall', () => {
  test('above the limiter’s wind the power stays what it was there', () => {
    const { rows } = chainWith('twoDiscs', (document) => {
      document.protection = { mechanical: 'furling tail', actsAt_m_per_s: 9 }
    })
    const at = rows.find(({ wind }) => wind === 9)!
    for (const row of rows.filter(({ wind }) => wind > 9)) {
      expect(row.state).toBe('held')
      expect(row.watts).toEqual(at.watts)
    }
  })
  test('a stiff shaft keeps the rotor at rest until the wind has the torque', () => {
    const chain = chainWith('twoDiscs', (document) => {
      document.shaft = { friction_mNm: 60, startingFriction_mNm: 600 }
    })
    const needed = chain.startWind
    expect(chain.blades.torque(needed, 0)).toBeCloseTo(0.6, 9)
    for (const row of chain.rows) expect(row.state === 'at rest').toBe(row.wind < needed)
  })
  test('without friction any wind turns it', () => {
    const { startWind, rows } = chainWith('disc', (document) => {
      document.shaft = { friction_mNm: 0 }
    })
    expect(startWind).toBe(0)
    expect(rows[0]!.state).not.toBe('at rest')
  })
  test('too many turns on small blades stall', () => {
    const { rows } = chainWith('twoDiscs', (document) => {
      document.stator.winding.turns = 75
      document.protection = { mechanical: 'none' }
    })
    expect(rows.filter(({ state }) => state === 'stalled').length).toBeGreaterThan(4)
  })
  test('nothing connected: it turns, and no current flows', () => {
    const { rows, cutInWind, year } = chainWith('disc', (document) => {
      document.load = { kind: 'open' }
    })
    expect(cutInWind).toBe(Number.POSITIVE_INFINITY)
    expect(year.energy).toBe(0)
    for (const row of rows) expect(row.dcCurrent).toBe(0)
    expect(rows.at(-1)!.state).toBe('turning')
  })
})

describe('law: heat', () => {
  test('twice the thermal resistance makes the copper warmer, its resistance higher', () => {
    const cool = chainWith('twoDiscs', (document) => {
      document.stator.thermalResistance_K_per_W = 0.3
    })
    const warm = chainWith('twoDiscs', (document) => {
      document.stator.thermalResistance_K_per_W = 0.6
    })
    const rise = (chain: typeof cool) => tellingRow(chain).copperTemperature - chain.machine.site.ambient
    expect(rise(warm)).toBeGreaterThan(1.5 * rise(cool))
    const row = tellingRow(cool)
    expect(rise(cool)).toBeCloseTo(0.3 * (row.watts.winding + row.watts.eddy), 0)
  })
  test('a winding that cannot shed its heat is said to overheat, with finite numbers', () => {
    const { rows } = chainWith('twoDiscs', (document) => {
      document.stator.thermalResistance_K_per_W = 30
    })
    const hot = rows.filter(({ overheated }) => overheated)
    expect(hot.length).toBeGreaterThan(0)
    for (const row of hot) expect(Number.isFinite(row.watts.winding)).toBe(true)
  })
})

describe('law: a machine with two states keeps the one it is in', () => {
  // far too many turns for the blades: from rest it is held back, yet at speed it would run on
  const chain = chainWith('twoDiscs', (document) => {
    document.protection = { mechanical: 'none' }
    document.stator.winding.turns = 60
  })
  test('rising and falling winds differ somewhere, and both are steady', () => {
    const apart = chain.rows.filter(
      (row, k) => Math.abs(row.speed - chain.fallingRows[k]!.speed) > 0.05 * row.speed + 0.01,
    )
    expect(apart.length).toBeGreaterThan(0)
    expect(chain.year.hysteresis).toBeGreaterThan(0)
    for (const row of [...chain.rows, ...chain.fallingRows])
      if (row.speed > 0 && !row.overheated)
        expect(Math.abs(chain.blades.power(row.wind, row.speed) / shaftPower(row.watts) - 1)).toBeLessThan(
          0.02,
        )
  })
  test('the year lies between the two ways', () => {
    const { year } = chain
    expect(year.energy).toBeGreaterThan(0)
    expect(year.hysteresis).toBeLessThan(year.energy)
  })
  test('any wind asked for agrees with the table where it is on it', () => {
    for (const row of chain.rows.filter(({ wind }) => wind === 4 || wind === 9))
      expect(chain.rowAt(row.wind)).toBe(row)
    const between = chain.rowAt(4.25)
    expect(between.wind).toBe(4.25)
    const [low, high] = [4, 4.5].map((wind) => chain.rows.find((row) => row.wind === wind)!.watts.useful)
    expect(between.watts.useful).toBeGreaterThan(low!)
    expect(between.watts.useful).toBeLessThan(high!)
  })
})
