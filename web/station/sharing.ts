/** Station of what is handed on: files, and whether they tell a place. */
import type { Station } from './station.ts'

export const sharingStation: Station = {
  noun: 'sharing',
  title: 'Sharing',
  lead: 'Files that go to strangers with the design.',
  open: false,
  entries: {
    'sharing.files': () => ({ name: 'photo of the stator', kind: 'photo', placeData: 'not said' }),
  },
  entryNames: { 'sharing.files': 'file' },
  extras: [
    {
      path: ['sharing'],
      label: 'Files that go with it',
      start: { files: [{ name: 'photo of the stator', kind: 'photo', placeData: 'not said' }] },
      fits: () => true,
    },
  ],
}
