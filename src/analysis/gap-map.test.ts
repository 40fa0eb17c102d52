/** Checks of the field's map: against the field on a circle, and against the symmetry of poles that alternate. */
import { describe, expect, test } from 'vitest'
import { exampleChain } from '../../test/example.ts'
import { circleField } from './air-gap-field.ts'
import { gapMap } from './gap-map.ts'
import { finished } from './step.ts'

const names = ['boathouse-two-disc', 'class-room-fan', 'hen-house-drum'] as const

describe('agrees: a row of the map and the field on a circle', () => {
  for (const name of names)
    test(name, () => {
      const chain = exampleChain(name)
      const { machine, field } = chain
      const map = finished(gapMap(chain, { columns: 24, rows: 5 }))
      const row = 2
      const circle = circleField(machine, field, { distance: (2.5 / 5) * map.height, samples: 48 })
      const most = Math.max(...circle.normal.map(Math.abs))
      // the answer of steel to harmonics is kept to the circle
      const digits = field.iron === undefined ? 9 : 2
      for (let k = 0; k < map.columns; k++) {
        const electrical = 2 * Math.PI * ((k + 0.5) / map.columns) - Math.PI / 2
        const sample = ((Math.round((electrical / (2 * Math.PI)) * 48) % 48) + 48) % 48
        const at = row * map.columns + k
        expect(map.normal[at]! / most).toBeCloseTo(circle.normal[sample]! / most, digits)
        expect(map.tangential[at]! / most).toBeCloseTo(circle.tangential[sample]! / most, digits)
      }
    })
})

describe('law: poles that alternate', () => {
  for (const name of names)
    test(`${name}: one pole on, the field is the other way round`, () => {
      const chain = exampleChain(name)
      const { normal, tangential, columns, rows, poles } = finished(gapMap(chain, { columns: 20, rows: 4 }))
      const most = Math.max(...normal.map(Math.abs))
      for (let row = 0; row < rows; row++)
        for (let k = 0; k < columns / 2; k++) {
          const [here, there] = [row * columns + k, row * columns + k + columns / 2]
          expect(normal[there]! / most).toBeCloseTo(-normal[here]! / most, 3)
          expect(tangential[there]! / most).toBeCloseTo(-tangential[here]! / most, 3)
        }
      expect(poles.map(({ sense }) => sense)).toEqual([1, -1])
      // over the middle of a north pole the field leaves the magnet
      expect(normal[columns / 4]).toBeGreaterThan(0)
    })
})

describe('law: the steps can be stopped', () => {
  test('each row is one step, rising to the whole', () => {
    const steps = gapMap(exampleChain('class-room-fan'), { columns: 6, rows: 4 })
    expect(Array.from(steps)).toEqual([0.25, 0.5, 0.75, 1])
  })
})

describe('law: the sides in the map are those of the winding', () => {
  test('as many to a pole as in the whole machine', () => {
    // nine coils on twelve poles have eighteen sides, three to two poles; those cut at the ends count once more
    const { sides, from, to } = finished(gapMap(exampleChain('boathouse-two-disc'), { columns: 2, rows: 1 }))
    const within = sides.filter(({ angle }) => angle >= from && angle < to)
    expect(within).toHaveLength(3)
    expect(within.every(({ distance }) => Math.abs(distance - 8.5e-3) < 1e-9)).toBe(true)
  })
})
