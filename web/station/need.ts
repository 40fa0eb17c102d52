/** Station of the need: what the energy is wanted for. */
import { usualUses } from '../../src/data/use.ts'
import { isRawObject, type RawObject, valueAt } from '../store/raw-document.ts'
import type { Station } from './station.ts'

/** The first of the usual uses that is not in the list yet. */
function nextUse(document: RawObject): RawObject {
  const uses = valueAt(document, ['need', 'uses'])
  const taken = Array.isArray(uses) ? uses.map((use) => (isRawObject(use) ? use['name'] : undefined)) : []
  const { name, power_W, daily_h } = usualUses.find((use) => !taken.includes(use.name)) ?? usualUses[0]!
  return { name, power_W, daily_h }
}

export const needStation: Station = {
  noun: 'need',
  title: 'Need',
  lead: 'What the energy is for, and whether it suffices.',
  open: false,
  entries: { 'need.uses': nextUse },
  entryNames: { 'need.uses': 'use' },
  extras: [
    {
      path: ['need'],
      label: 'What it is to run',
      start: { uses: [{ name: 'LED lamp, small room', power_W: 5, daily_h: 4 }] },
      fits: () => true,
    },
  ],
}
