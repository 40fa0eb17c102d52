/** Checks of the desk: a job is answered, a stop is heard, a newer question wins, an interruption only puts it off. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { jobDesk } from './desk.ts'
import type { FromJob } from './plan.ts'

const text = readFileSync(new URL('../../examples/class-room-fan.json', import.meta.url), 'utf8')
const storm = (id: number, design = text) =>
  ({
    kind: 'job',
    name: 'storm',
    id,
    asked: { text: design, wind: 'operating gust', top: undefined },
  }) as const

function desk(interrupted: () => boolean = () => false) {
  const heard: FromJob[] = []
  let onWord: (message: FromJob) => void = () => {}
  const made = jobDesk((message) => {
    heard.push(message)
    onWord(message)
  }, interrupted)
  const answers = () => heard.filter(({ kind }) => kind !== 'job-progress')
  return {
    ...made,
    heard,
    answers,
    at: (act: (message: FromJob) => void) => {
      onWord = act
    },
    all: async () => {
      while (made.waiting()) await made.next()
    },
  }
}

describe('law: a desk answers each question once, unless it is taken back', () => {
  test('progress grows, then the report comes, and nothing waits', async () => {
    const one = desk()
    one.hear(storm(1))
    await one.all()
    expect(one.answers()).toMatchObject([{ kind: 'job-done', name: 'storm', id: 1 }])
    const told = one.heard.flatMap((message) => (message.kind === 'job-progress' ? [message.fraction] : []))
    expect(told.length).toBeGreaterThan(3)
    expect([...told].sort((a, b) => a - b)).toEqual(told)
  })

  test('a stop in the middle leaves no answer', async () => {
    const one = desk()
    one.hear(storm(1))
    one.at(() => one.hear({ kind: 'job-stop', name: 'storm' }))
    await one.all()
    expect(one.answers()).toEqual([])
    expect(one.heard.length).toBe(1)
  })

  test('a newer question takes the place of the older', async () => {
    const one = desk()
    one.hear(storm(1))
    let asked = false
    one.at(() => {
      if (asked) return
      asked = true
      one.hear(storm(2))
    })
    await one.all()
    expect(one.answers().map(({ id }) => id)).toEqual([2])
  })

  test('an interruption puts it off, and it is answered afterwards', async () => {
    let urgent = false
    const one = desk(() => urgent)
    one.hear(storm(1))
    one.at(() => {
      urgent = true
    })
    await one.next()
    expect(one.answers()).toEqual([])
    expect(one.waiting()).toBe(true)
    urgent = false
    one.at(() => {})
    await one.all()
    expect(one.answers()).toMatchObject([{ kind: 'job-done', id: 1 }])
  })

  test('a text that is no design is refused with its faults, and the desk goes on', async () => {
    const one = desk()
    one.hear(storm(1, '{"gustloom": 2}'))
    one.hear({ kind: 'job', name: 'study', id: 4, asked: { text: 'nothing' } })
    await one.all()
    const [first, second] = one.answers()
    expect(first).toMatchObject({ kind: 'job-refused', name: 'storm', id: 1 })
    expect(first?.kind === 'job-refused' && first.faults.length).toBeGreaterThan(0)
    expect(first?.kind === 'job-refused' && first.reason).toContain(' must be ')
    expect(second).toMatchObject({ kind: 'job-refused', name: 'study', id: 4 })
  })

  test('a stock that is none is refused with the field named', async () => {
    const one = desk()
    const stock = JSON.parse(
      readFileSync(new URL('../../examples/stock/shed-drawer.json', import.meta.url), 'utf8'),
    )
    const asked = { stock: { ...stock, magnet: { ...stock.magnet, diameter_mm: -3 } } }
    one.hear({ kind: 'job', name: 'first', id: 1, asked })
    await one.all()
    const [answer] = one.answers()
    expect(answer?.kind === 'job-refused' && answer.faults.map(({ path }) => path)).toEqual([
      'magnet.diameter_mm',
    ])
  })
})
