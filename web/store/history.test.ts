/** Checks of undo and redo: every state comes back, typing is one step, a change cuts off what was undone. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exampleDocument } from '../../test/example.ts'
import { changed, type History, historyOf, redone, undone } from './history.ts'
import { type Path, type RawObject, withValue } from './raw-document.ts'

const typed = (history: History<string>, state: string, mark: string | undefined, at: number) =>
  changed(history, { state, what: mark ?? 'another', mark, at })

describe('law: a history of a document', () => {
  test('all the way back and all the way forth again, whatever was done', () => {
    fc.assert(
      fc.property(fc.array(fc.string(), { maxLength: 40 }), (states) => {
        let history = historyOf('start', 'opened')
        const seen = ['start']
        for (const state of states) {
          history = typed(history, state, undefined, 0)
          if (state !== seen.at(-1)) seen.push(state)
        }
        const back: string[] = [history.present.state]
        while (history.past.length > 0) {
          history = undone(history)
          back.push(history.present.state)
        }
        expect(back.reverse()).toEqual(seen)
        for (let k = 1; k < seen.length; k++) history = redone(history)
        expect(history.present.state).toBe(seen.at(-1))
        expect(redone(history)).toBe(history)
      }),
      { seed: 6 },
    )
  })

  test('keys typed closely into one field are one step; a rest or another field begins a new one', () => {
    let history = historyOf('', 'opened')
    history = typed(history, '1', 'turns', 0)
    history = typed(history, '12', 'turns', 400)
    history = typed(history, '120', 'turns', 900)
    history = typed(history, '120 x', 'name', 1000)
    history = typed(history, '120 y', 'name', 9000)
    expect(history.past.map(({ state }) => state)).toEqual(['', '120', '120 x'])
    expect(undone(undone(history)).present.state).toBe('120')
  })

  test('typing after a step back does not join the step before it', () => {
    let history = typed(historyOf('a', 'opened'), 'b', 'turns', 0)
    history = undone(history)
    history = typed(history, 'c', 'turns', 100)
    expect(history.past.map(({ state }) => state)).toEqual(['a'])
    expect(history.future).toEqual([])
    expect(undone(history).present.state).toBe('a')
  })

  test('no step back from the beginning', () => {
    const history = historyOf('a', 'opened')
    expect(undone(history)).toBe(history)
    expect(typed(history, 'a', undefined, 5)).toBe(history)
  })
})

describe('law: states share what did not change', () => {
  test('five thousand edits keep fewer than six new objects each', () => {
    const start = exampleDocument('boathouse-two-disc') as RawObject
    const paths: readonly Path[] = [
      ['stator', 'winding', 'turns'],
      ['site', 'meanWind_m_per_s'],
      ['rotor', 'magnet', 'length_mm'],
      ['name'],
    ]
    let history = historyOf(start, 'opened')
    const edits = 5000
    for (let k = 0; k < edits; k++) {
      const state = withValue(history.present.state, paths[k % paths.length]!, k) as RawObject
      history = changed(history, { state, what: 'edit', at: 10_000 * k })
    }
    expect(history.past).toHaveLength(edits)
    const seen = new Set<object>()
    const queue: unknown[] = [...history.past, history.present].map(({ state }) => state)
    for (let item = queue.pop(); item !== undefined; item = queue.pop()) {
      if (typeof item !== 'object' || item === null || seen.has(item)) continue
      seen.add(item)
      queue.push(...Object.values(item).filter((inner) => inner !== undefined))
    }
    expect(seen.size).toBeLessThan(6 * edits)
    expect(history.past[0]!.state).toBe(start)
  })
})
