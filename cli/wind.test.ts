/** Checks of the verb that reads a wind logger's file, as somebody runs it. */
import { spawnSync } from 'node:child_process'
import { describe, expect, test } from 'vitest'
import { repositoryRoot } from '../test/repository.ts'
import { logRows, logText, plainForm } from '../test/sample-log.ts'

const wind = (line: string, input: string) => {
  const { status, stdout, stderr } = spawnSync('bash', ['-c', `node --import tsx cli/main.ts wind ${line}`], {
    cwd: repositoryRoot,
    encoding: 'utf8',
    input,
    env: { ...process.env, NO_COLOR: '1' },
  })
  return { status, out: stdout, err: stderr }
}

const year = logText(logRows(8760, { from: Date.UTC(2023, 0, 1) / 1000, step: 3600 }), {
  ...plainForm,
  separator: ';',
  decimal: ',',
  dates: 'day first',
})
const timeout = 120_000

describe('law: wind', () => {
  test(
    'a page with the rows, the wind and a design’s year; the three years in order of what they promise',
    () => {
      const { status, out, err } = wind('- --design examples/hen-house-drum.json --height 10', year)
      expect({ status, err }).toEqual({ status: 0, err: '' })
      for (const part of [
        '8760 readings, 0 refused',
        'Weibull by maximum likelihood',
        'by the measured frequencies',
      ])
        expect(out).toContain(part)
      expect(out).not.toMatch(/NaN|undefined|Infinity/)
      expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100)
    },
    timeout,
  )
  test(
    'JSON whose site a design takes as it is',
    () => {
      const { status, out } = wind('- --json', year)
      expect(status).toBe(0)
      const { report, site, statistics } = JSON.parse(out)
      expect(report.rows.total).toBe(8762)
      expect(site.monthlyMean_m_per_s).toHaveLength(12)
      expect(site.meanWind_m_per_s.value).toBeCloseTo(statistics.mean_m_per_s, 2)
    },
    timeout,
  )
  test(
    'status 2 with a reason for a file that holds no wind, and for one that is not there',
    () => {
      const empty = wind('-', 'nothing\n')
      expect(empty.status).toBe(2)
      expect(empty.err).toContain('a column of times beside a column of numbers')
      const missing = wind('nowhere.csv', '')
      expect(missing.status).toBe(2)
      expect(missing.err).toContain('nowhere.csv (ENOENT)')
    },
    timeout,
  )
})
