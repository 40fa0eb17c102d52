/** The storm that the present design is put through: what was asked, how far it is, its report, the scenario looked at. */
import { signal } from '@preact/signals'
import type { StormWindKind } from '../../src/index.ts'
import { gravest } from '../../src/output/scenario-page.ts'
import { document as design } from './design.ts'
import { jobView } from './job.ts'

export const stormKind = signal<Exclude<StormWindKind, 'logged wind'>>('operating gust')
/** Highest wind as somebody typed it [m/s]; the site's storm where it is empty. */
export const stormTop = signal('')
/** Key of the scenario looked at. */
export const chosenScenario = signal('')

const view = jobView('storm', ({ rows }) => {
  if (!rows.some(({ key }) => key === chosenScenario.value)) chosenScenario.value = gravest(rows).key
})
export const stormState = view.state
export const stormStale = view.stale
export const stopStorm = view.stop

/** Winds that are taken: [m/s]. */
export const stormTopBounds = [5, 80] as const

/** What was typed as a wind; undefined where nothing was, or where no wind was. */
function typedTop(): number | undefined {
  const value = Number(stormTop.value.replace(',', '.'))
  const [least, most] = stormTopBounds
  return stormTop.value.trim() !== '' && value >= least && value <= most ? value : undefined
}

export const startStorm = (): void =>
  view.start({ text: JSON.stringify(design.value), wind: stormKind.value, top: typedTop() })
