/** Checks of colour and progress on a terminal that is only pretended. */
import { afterEach, describe, expect, test, vi } from 'vitest'
import type { PageLine } from '../src/output/chain-page.ts'
import { print, withProgress } from './terminal.ts'

function terminal(isTTY: boolean) {
  let text = ''
  const stream = {
    isTTY,
    write: (part: unknown) => {
      text += String(part)
      return true
    },
  }
  return { stream: stream as Parameters<typeof print>[1] & object, text: () => text }
}

const lines: readonly PageLine[] = [
  { text: 'head', tone: 'title' },
  { text: 'body', tone: 'plain' },
  { text: 'stop', tone: 'blocking' },
]

afterEach(() => {
  vi.unstubAllEnvs()
  vi.useRealTimers()
})

describe('law: colour on a terminal only, and never against NO_COLOR', () => {
  const shown = (isTTY: boolean, noColor: string) => {
    vi.stubEnv('NO_COLOR', noColor)
    const { stream, text } = terminal(isTTY)
    print(lines, stream)
    return text()
  }
  test('on a terminal', () =>
    expect(shown(true, '')).toBe('\u001b[1mhead\u001b[0m\nbody\n\u001b[31mstop\u001b[0m\n'))
  test('on a terminal with NO_COLOR', () => expect(shown(true, '1')).toBe('head\nbody\nstop\n'))
  test('elsewhere', () => expect(shown(false, '')).toBe('head\nbody\nstop\n'))
})

describe('law: progress is shown to somebody who watches and waits', () => {
  function* steps(): Generator<number, string> {
    vi.advanceTimersByTime(400)
    yield 0.25
    vi.advanceTimersByTime(400)
    yield 0.5
    return 'done'
  }
  const told = (isTTY: boolean) => {
    vi.useFakeTimers()
    const { stream, text } = terminal(isTTY)
    expect(withProgress(steps(), stream)).toBe('done')
    return text()
  }
  test('after half a second, and wiped away in the end', () =>
    expect(told(true)).toBe('\rcomputing 50 %\r\u001b[K'))
  test('not into a file', () => expect(told(false)).toBe(''))
})
