/** The storm that the present design is put through: what was asked, how far it is, its report, the scenario looked at. */
import { computed, signal } from '@preact/signals'
import type { StormWindKind } from '../../src/index.ts'
import { gravest } from '../../src/output/scenario-page.ts'
import type { ScenarioReport } from '../../src/output/scenario-report.ts'
import { document as design } from './design.ts'
import type { RawObject } from './raw-document.ts'
import { sideEngine } from './side-engine.ts'

export type StormState =
  | { readonly kind: 'none' }
  | { readonly kind: 'running'; readonly fraction: number }
  | { readonly kind: 'refused'; readonly reason: string }
  | { readonly kind: 'done'; readonly report: ScenarioReport; readonly of: RawObject }

export const stormState = signal<StormState>({ kind: 'none' })
export const stormKind = signal<Exclude<StormWindKind, 'logged wind'>>('operating gust')
/** Highest wind as somebody typed it [m/s]; the site's storm where it is empty. */
export const stormTop = signal('')
/** Key of the scenario looked at. */
export const chosenScenario = signal('')

/** The design has been changed since it was put through the storm. */
export const stormStale = computed(
  () => stormState.value.kind === 'done' && stormState.value.of !== design.value,
)

let asked: RawObject | undefined

const engine = sideEngine(
  (data) => {
    if (data.kind === 'storm-progress') stormState.value = { kind: 'running', fraction: data.fraction }
    else if (data.kind === 'storm-refused') stormState.value = { kind: 'refused', reason: data.reason }
    else if (data.kind === 'storm' && asked) {
      const { rows } = data.report
      if (!rows.some(({ key }) => key === chosenScenario.value)) chosenScenario.value = gravest(rows).key
      stormState.value = { kind: 'done', report: data.report, of: asked }
    }
  },
  (reason) => {
    stormState.value = { kind: 'refused', reason }
  },
)

/** Winds that are taken: [m/s]. */
export const stormTopBounds = [5, 80] as const

/** What was typed as a wind; undefined where nothing was, or where no wind was. */
function typedTop(): number | undefined {
  const value = Number(stormTop.value.replace(',', '.'))
  const [least, most] = stormTopBounds
  return stormTop.value.trim() !== '' && value >= least && value <= most ? value : undefined
}

export function startStorm(): void {
  asked = design.value
  const text = JSON.stringify(asked)
  const wind = stormKind.value
  const top = typedTop()
  stormState.value = { kind: 'running', fraction: 0 }
  engine.ask((id) => ({ kind: 'storm', id, text, wind, top }))
}

export function stopStorm(): void {
  engine.ask(() => ({ kind: 'storm-stop' }))
  stormState.value = { kind: 'none' }
}
