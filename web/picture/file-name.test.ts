/** Checks of the names of files taken along. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { takenName } from './file-name.ts'

describe('law: names that every file system bears', () => {
  test('design, picture and wind, letters with marks without them', () => {
    expect(takenName({ design: 'Müllers Höhe, große', picture: 'waveform', wind: 6.5 }, 'svg')).toBe(
      'mullers-hohe-grosse-waveform-6.5-m-s.svg',
    )
    expect(takenName({ design: 'Shed', picture: 'power' }, 'csv')).toBe('shed-power.csv')
  })
  test('a name of signs alone, or of another alphabet, still gives one', () => {
    expect(takenName({ design: '../../', picture: 'power' }, 'png')).toBe('design-power.png')
    expect(takenName({ design: '風車', picture: '…', wind: Number.NaN }, 'png')).toBe('design-picture.png')
  })
  test('whatever the words', () =>
    fc.assert(
      fc.property(
        fc.string({ maxLength: 300, unit: 'binary' }),
        fc.string({ maxLength: 300 }),
        fc.double(),
        (design, picture, wind) => {
          const name = takenName({ design, picture, wind }, 'svg')
          expect(name).toMatch(/^[a-z0-9][a-z0-9.+-]*\.svg$/)
          expect(name.length).toBeLessThan(200)
        },
      ),
    ))
})
