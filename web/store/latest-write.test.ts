/** Checks of writing the newest only. */
import { describe, expect, test } from 'vitest'
import { latestWrite } from './latest-write.ts'

describe('law: the newest is written, each write whole, in order', () => {
  test('the first at once, then the last of those that came meanwhile', async () => {
    const written: number[] = []
    const open: (() => void)[] = []
    const { write, rest } = latestWrite<number>(
      (value) =>
        new Promise((resolve) => {
          written.push(value)
          open.push(resolve)
        }),
      () => {},
    )
    write(1)
    expect(written).toEqual([1])
    write(2)
    write(3)
    expect(written).toEqual([1])
    open.shift()!()
    await Promise.resolve()
    await Promise.resolve()
    expect(written).toEqual([1, 3])
    open.shift()!()
    await rest()
    write(4)
    expect(written).toEqual([1, 3, 4])
    open.shift()!()
    await rest()
  })

  test('a write that fails is told, the next is tried all the same', async () => {
    const told: unknown[] = []
    const { write, rest } = latestWrite<number>(
      (value) => (value === 1 ? Promise.reject(new Error('full')) : Promise.resolve()),
      (error) => told.push(error),
    )
    write(1)
    await rest()
    write(2)
    await rest()
    expect(told).toEqual([new Error('full'), undefined])
  })
})
