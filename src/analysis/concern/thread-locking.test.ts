/** Checks the concern of nuts that may shake loose. */
import { describe, expect, test } from 'vitest'
import { sampleChain } from '../../../test/sample-chain.ts'
import { threadLocks } from '../../machine/shaft.ts'
import { lockingVerdict, threadLocking } from './thread-locking.ts'

describe('law: every way of locking is judged', () => {
  test('two lock nothing, one is not said', () => {
    const holds = threadLocks.filter((each) => lockingVerdict(each) === 'holds')
    expect(threadLocks.filter((each) => lockingVerdict(each) === 'useless')).toEqual([
      'spring washer',
      'nothing',
    ])
    expect(holds).toHaveLength(threadLocks.length - 3)
  })
  const judged = (fields: Record<string, unknown>, hotter = 0) =>
    threadLocking.judge(
      sampleChain(fields, ({ rows }) => ({
        rows: rows.map((row) => ({ ...row, copperTemperature: row.copperTemperature + hotter })),
      })),
    )
  test('silent where all is locked; not said is a note outdoors', () => {
    expect(judged({})).toBeUndefined()
    expect(judged({ 'shaft.locking': undefined })?.severity).toBe('note')
    expect(judged({ 'shaft.locking.studs': 'not said' })?.severity).toBe('note')
    expect(judged({ 'shaft.locking': undefined, 'purpose.class': 'bench' })).toBeUndefined()
    expect(judged({ 'shaft.locking.hub': 'not said', 'purpose.class': 'bench' })).toBeUndefined()
  })
  test('nothing on shaft or blades blocks outdoors, on the studs it is a warning', () => {
    expect(judged({ 'shaft.locking.hub': 'nothing' })?.severity).toBe('blocking')
    expect(judged({ 'shaft.locking.bladeRoots': 'spring washer' })?.severity).toBe('blocking')
    expect(judged({ 'shaft.locking.bladeRoots': 'spring washer' })?.path).toBe('shaft.locking.bladeRoots')
    expect(judged({ 'shaft.locking.studs': 'nothing' })?.severity).toBe('warning')
    expect(judged({ 'shaft.locking.hub': 'nothing', 'purpose.class': 'bench' })?.severity).toBe('warning')
  })
  test('what softens beside hot copper', () => {
    const glued = { 'shaft.locking.studs': 'thread-locking adhesive' }
    expect(judged(glued)).toBeUndefined()
    expect(judged(glued, 110)?.severity).toBe('warning')
    expect(judged({}, 110)).toBeUndefined()
    // the sample's runaway is 150 rad/s
    expect(judged(glued, 110)?.figures).toContain('Shaken up to 1432 times a minute at runaway')
  })
})
