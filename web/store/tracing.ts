/** The tracings: kept states of the design, which of them lie over it, and what was computed of those. */
import { computed, effect, signal } from '@preact/signals'
import type { DrawnTracing, RefusedTracing } from '../job/tracing.ts'
import { say } from '../text/say.ts'
import { document as design, openId, replace, row, snapshot } from './design.ts'
import { newIdentity } from './identity.ts'
import { jobView } from './job.ts'
import type { RawObject } from './raw-document.ts'
import { freeLetter, freeLook } from './tracing-look.ts'
import type { Tracing, TracingPlace } from './tracing-place.ts'

export type { Tracing } from './tracing-place.ts'

/** All that are kept, the first kept first. */
export const tracings = signal<readonly Tracing[]>([])
/** Why one is not safe on this machine, in a sentence; empty when all are. */
export const tracingTrouble = signal('')
/** The last one taken away, until another is. */
export const takenAway = signal<Tracing | undefined>(undefined)

let place: Promise<TracingPlace> | undefined

async function written(write: (place: TracingPlace) => Promise<void>): Promise<void> {
  try {
    const { openTracingPlace } = await import('./tracing-place.ts')
    place ??= openTracingPlace()
    await write(await place)
    tracingTrouble.value = ''
    others?.postMessage('changed')
  } catch (error) {
    place = undefined
    const reason = error instanceof Error ? error.message : String(error)
    tracingTrouble.value = say`Your last change of the tracings is not kept on this machine (${reason}). They stay as long as this page is open; take one back as the design and save it as a file to be sure of it.`
  }
}

const put = (tracing: Tracing) =>
  written(async (place) => {
    const { putTracing } = await import('./tracing-place.ts')
    await putTracing(place, tracing)
  })

/** Another window may have kept or taken away some: what this one holds beside them stays. */
async function readAgain(): Promise<void> {
  try {
    const { openTracingPlace, tracingsIn } = await import('./tracing-place.ts')
    place ??= openTracingPlace()
    const found = await tracingsIn(await place)
    const unsaved = tracingTrouble.value === '' ? [] : tracings.value
    tracings.value = [...found, ...unsaved.filter(({ id }) => found.every((each) => each.id !== id))]
  } catch (error) {
    place = undefined
    const reason = error instanceof Error ? error.message : String(error)
    tracingTrouble.value = say`The tracings kept on this machine cannot be read (${reason}).`
  }
}

const others = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('gustloom-tracings')
if (others) others.onmessage = () => void readAgain()

const ready = readAgain()

const changed = (id: string, part: Partial<Tracing>): void => {
  const old = tracings.value.find((each) => each.id === id)
  if (old === undefined) return
  const next = { ...old, ...part }
  tracings.value = tracings.value.map((each) => (each === old ? next : each))
  void put(next)
}

export const tracingsOver = computed(() => tracings.value.filter(({ look }) => look !== undefined))

/** Keeps a state under a name, laid over at once where there is room. Gives its letter. */
export async function keepTracing(name: string, document: RawObject = design.value): Promise<string> {
  await ready
  const kept: Tracing = {
    id: newIdentity(),
    letter: freeLetter(tracings.value.map(({ letter }) => letter)),
    name: name.trim() === '' ? String(document['name'] ?? '') : name.trim(),
    document,
    design: openId.value,
    keptAt: Date.now(),
    look: freeLook(tracings.value.map(({ look }) => look)),
  }
  tracings.value = [...tracings.value, kept]
  void put(kept)
  return kept.letter
}

export const renameTracing = (id: string, name: string): void => {
  if (name.trim() !== '') changed(id, { name: name.trim() })
}

/** Laid over in the first dash that is free; false where as many lie over as may. */
export function layOver(id: string): boolean {
  const look = freeLook(tracings.value.map((each) => each.look))
  if (look === undefined) return false
  changed(id, { look })
  return true
}

export const liftOff = (id: string): void => changed(id, { look: undefined })

/** Taken away; it can be brought back until another one is taken away. */
export function takeAway(id: string): void {
  const gone = tracings.value.find((each) => each.id === id)
  if (gone === undefined) return
  tracings.value = tracings.value.filter((each) => each !== gone)
  takenAway.value = gone
  void written(async (place) => {
    const { dropTracing } = await import('./tracing-place.ts')
    await dropTracing(place, id)
  })
}

export function bringBack(): void {
  const gone = takenAway.value
  if (gone === undefined) return
  takenAway.value = undefined
  const free = (look: number | undefined) => tracings.value.every((each) => each.look !== look)
  const letters = tracings.value.map(({ letter }) => letter)
  const back: Tracing = {
    ...gone,
    letter: letters.includes(gone.letter) ? freeLetter(letters) : gone.letter,
    look: gone.look !== undefined && free(gone.look) ? gone.look : undefined,
  }
  tracings.value = [...tracings.value, back].sort((a, b) => a.keptAt - b.keptAt)
  void put(back)
}

/** The design goes on as the tracing: one step for the way back. */
export const takeAsDesign = ({ letter, name, document }: Tracing): void =>
  replace(document, say`tracing ${letter}, ${name}, taken back`)

const view = jobView('tracing')

/** Of each tracing, by its identity, what was computed of it last, and of which document. */
const answers = signal<
  ReadonlyMap<string, { readonly of: RawObject; readonly answer: DrawnTracing | RefusedTracing }>
>(new Map())

const lookedAt = computed(() => snapshot.value?.rows[row.value]?.wind)

/** Computed anew in every visit, by the engine of that visit: a newer engine leaves no old numbers behind. */
effect(() => {
  const over = tracingsOver.value
  const wind = lookedAt.value
  if (over.length === 0 || wind === undefined) return
  view.start({ tracings: over.map(({ id, document }) => ({ id, text: JSON.stringify(document) })), wind })
})

effect(() => {
  const state = view.state.value
  if (state.kind !== 'done') return
  const documents = new Map(tracings.peek().map(({ id, document }) => [id, document]))
  answers.value = new Map(
    state.report.flatMap((answer) => {
      const of = documents.get(answer.id)
      return of === undefined ? [] : [[answer.id, { of, answer }] as const]
    }),
  )
})

/** Fraction done of what is computed for the tracings laid over; undefined when nothing is. */
export const tracingProgress = computed(() =>
  view.state.value.kind === 'running' ? view.state.value.fraction : undefined,
)

/** Why the tracings laid over could not be computed; empty where they were. */
export const tracingRefusal = computed(() =>
  view.state.value.kind === 'refused' ? view.state.value.reason : '',
)

export interface LaidTracing {
  readonly tracing: Tracing
  readonly look: number
  readonly answer: DrawnTracing | RefusedTracing
}

/** Those laid over whose numbers are there: never of another document than the one that is kept. */
export const laidOver = computed((): readonly LaidTracing[] =>
  tracingsOver.value.flatMap((tracing) => {
    const found = answers.value.get(tracing.id)
    return found === undefined || found.of !== tracing.document || tracing.look === undefined
      ? []
      : [{ tracing, look: tracing.look, answer: found.answer }]
  }),
)
