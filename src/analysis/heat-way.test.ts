/** Checks that the heat born in a wind leaves by the faces told. */
import { describe, expect, test } from 'vitest'
import { exampleChain } from '../../test/example.ts'
import { heatStudy } from './heat-study.ts'
import { heatWays } from './heat-way.ts'
import { finished } from './step.ts'

describe('law: as much heat leaves as is born, in every wind in which the copper finds a steady warmth', () => {
  test.each(['hen-house-drum', 'boathouse-two-disc', 'class-room-fan', 'garden-vertical'])('%s', (name) => {
    const chain = exampleChain(name)
    const rows = chain.rows.filter(({ watts, overheated }) => watts.winding > 0.1 && !overheated)
    expect(rows.length).toBeGreaterThan(2)
    for (const row of rows) {
      const { born, ways } = heatWays(chain, row)
      const out = ways.reduce((sum, { power }) => sum + power, 0)
      expect(out / (born.copper + born.metal)).toBeCloseTo(1, 2)
      expect(ways.map(({ power }) => power)).toEqual(ways.map(({ power }) => power).sort((a, b) => b - a))
    }
  })
})

test('agrees: the study tells the ways of its hottest wind', () => {
  const chain = exampleChain('hen-house-drum')
  const study = finished(heatStudy(chain))
  const { ways, born } = heatWays(chain, study.hottest)
  expect(study.ways).toEqual(ways)
  expect(study.born).toEqual(born)
})
