/** Checks of the verb that compares, as somebody runs it. */
import { spawnSync } from 'node:child_process'
import { describe, expect, test } from 'vitest'
import { scoreNames } from '../src/analysis/fair-contest.ts'
import { repositoryRoot } from '../test/repository.ts'

const compare = (line: string) => {
  const { status, stdout, stderr } = spawnSync(
    'bash',
    ['-c', `node --import tsx cli/main.ts compare ${line}`],
    {
      cwd: repositoryRoot,
      encoding: 'utf8',
      env: { ...process.env, NO_COLOR: '1' },
    },
  )
  return { status, out: stdout, err: stderr }
}

const small = 'examples/class-room-fan.json'
const timeout = 120_000

describe('law: compare', () => {
  test(
    'prints the verdict of designs that nothing blocks, with status 0',
    () => {
      const { status, out, err } = compare(`${small} ${small} --rule as-they-are`)
      expect({ status, err }).toEqual({ status: 0, err: '' })
      expect(out).toContain('As they are nobody wins.')
    },
    timeout,
  )
  test(
    'JSON for other programs, and an amount in grams',
    () => {
      const { status, out } = compare(`${small} ${small} --amount 100 --json`)
      expect(status).toBe(0)
      const result = JSON.parse(out)
      expect(result.amount).toBeCloseTo(0.1, 12)
      expect(Object.keys(result.scores)).toEqual([...scoreNames])
      expect(
        result.contestants.map(({ copperMass_g }: { copperMass_g: number }) => Math.round(copperMass_g)),
      ).toEqual([100, 100])
    },
    timeout,
  )
  test(
    'status 2 for one design, an unknown rule, a faulty amount, a file that is not there, a price that is missing',
    () => {
      const one = compare(small)
      expect(one.status).toBe(2)
      expect(one.err).toBe('designs must be 2 to 8 of them; received 1 (wrong-length)\n')
      const rule = compare(`${small} ${small} --rule equal-luck`)
      expect(rule.status).toBe(2)
      expect(rule.err).toContain('equal-copper-mass')
      expect(compare(`${small} ${small} --amount lots`).status).toBe(2)
      const missing = compare(`${small} nowhere.json`)
      expect(missing.status).toBe(2)
      expect(missing.err).toContain('nowhere.json: file must be readable')
      const price = compare(`${small} ${small} --rule equal-cost --json`)
      expect(price.status).toBe(2)
      expect(JSON.parse(price.out).faults[0].code).toBe('missing-key')
    },
    timeout,
  )
})
