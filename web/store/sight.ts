/** What the pictures in sight are drawn of; asked of the engine only while something shows them. */
import { type Signal, signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Sight, SightName } from '../sight.ts'
import { askSights, heardSight } from './design.ts'

const found = new Map<SightName, Signal<unknown>>()
const watchers = new Map<SightName, number>()

function placeOf(name: SightName): Signal<unknown> {
  const there = found.get(name) ?? signal<unknown>(undefined)
  found.set(name, there)
  return there
}

heardSight((name, drawn) => {
  placeOf(name).value = drawn
})

/** Undefined until the engine has answered for the first time; the last answer stays until the next one comes. */
export function useSight<Name extends SightName>(name: Name, wanted = true): Sight<Name> | undefined {
  useEffect(() => {
    if (!wanted) return
    watchers.set(name, (watchers.get(name) ?? 0) + 1)
    askSights([...watchers.keys()])
    return () => {
      const left = (watchers.get(name) ?? 1) - 1
      if (left > 0) watchers.set(name, left)
      else watchers.delete(name)
      askSights([...watchers.keys()])
    }
  }, [name, wanted])
  return wanted ? (placeOf(name).value as Sight<Name> | undefined) : undefined
}
