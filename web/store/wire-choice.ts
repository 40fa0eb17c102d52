/** The wire sizes next to the present design’s own: how far they are computed, and one taken or laid over. */
import { signal } from '@preact/signals'
import { withChanges } from '../../src/analysis/remedy/change.ts'
import type { WireChoice } from '../../src/index.ts'
import { say } from '../text/say.ts'
import { document as design, notice, replace } from './design.ts'
import { jobView } from './job.ts'
import type { RawObject } from './raw-document.ts'
import { keepTracing } from './tracing.ts'

const view = jobView('wires')
export const wireChoices = view.state
export const wireChoicesStale = view.stale
export const stopWires = view.stop

/** The design’s own turns in every size; else as many as a patient hand lays into the bundle. */
export const keepTurns = signal(false)

export const tryWires = (): void =>
  view.start({ text: JSON.stringify(design.value), keepTurns: keepTurns.value })

export const wireName = ({ name, turns }: WireChoice): string => say`${name}, ${turns} turns`

/** The document that the sizes were computed for, in another wire. */
function otherWire({ changes }: WireChoice): RawObject | undefined {
  const state = wireChoices.value
  return state.kind === 'done' ? (withChanges(state.of, changes) as RawObject) : undefined
}

/** One step for the way back, under the wire’s name. */
export function takeWire(choice: WireChoice): void {
  const document = otherWire(choice)
  if (document === undefined) return
  const name = wireName(choice)
  replace(document, say`wire: ${name}`, 'remedy')
  notice.value = say`Taken over: ${name}. “Undo” brings back the design as it was, and the shelf keeps it as a version.`
}

/** Keeps it as a tracing under the wire’s name, laid over the design that stays; gives its letter. */
export async function layWireOver(choice: WireChoice): Promise<string | undefined> {
  const document = otherWire(choice)
  return document === undefined ? undefined : keepTracing(wireName(choice), document)
}
