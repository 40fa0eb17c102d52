/** Station of the site: its wind and air. */
import type { Station } from './station.ts'

export const siteStation: Station = {
  noun: 'site',
  title: 'Site',
  lead: 'The wind and air where it stands.',
  open: true,
}
