/** Station of the site: its wind and air. */
import type { Station } from './station.ts'

export const siteStation: Station = {
  noun: 'site',
  title: 'Site',
  lead: 'The wind and air where it stands.',
  open: true,
  extras: [
    {
      path: ['site', 'record'],
      label: 'How the wind was recorded',
      start: {},
      fits: () => true,
    },
    {
      path: ['site', 'windHistogram'],
      label: 'Measured frequencies of the wind',
      start: {},
      // made-up frequencies would be taken for measured ones: they come from a logger's file alone
      fits: () => false,
    },
  ],
}
