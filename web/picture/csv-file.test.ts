/** Checks of a table as a file: letters, and the numbers read back. */
import { describe, expect, test } from 'vitest'
import { csvFile, csvText } from './csv-file.ts'

const table = {
  caption: 'any',
  columns: [{ head: 'part, "named"' }, { head: 'copper', unit: '°C' }],
  rows: [
    ['run, straight', 61.23456789],
    ['crown', undefined],
  ],
} as const

describe('law: RFC 4180 behind a mark of its encoding', () => {
  test('text', () => {
    expect(csvText(table)).toBe(
      '\uFEFF"part, ""named""","copper, °C"\r\n"run, straight",61.23457\r\ncrown,\r\n',
    )
  })
  test('bytes begin with EF BB BF, and ° is two of them', async () => {
    const bytes = new Uint8Array(await csvFile(table).arrayBuffer())
    expect([...bytes.slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf])
    expect(bytes.indexOf(0xc2)).toBeGreaterThan(0)
  })
})
