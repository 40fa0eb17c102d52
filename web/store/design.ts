/** The design on the page: the raw document, what the engine says of it, and the wind looked at. */
import { computed, signal } from '@preact/signals'
import type {
  FieldDescription,
  FormField,
  GeneratorTarget,
  MatchMap,
  SpreadStudy,
  Worth,
} from '../../src/index.ts'
import { migrated } from '../../src/machine/migration.ts'
import type { FromWorker, ShownFault, ToWorker } from '../messages.ts'
import type { Snapshot, WindSnapshot } from '../snapshot.ts'
import type { WireSnapshot } from '../wire-snapshot.ts'
import { openingExample } from './example.ts'
import { changed, type History, historyOf, redone, undone } from './history.ts'
import { keep, keepBefore, kept, keptBefore } from './keeping.ts'
import { type Path, type RawObject, withValue } from './raw-document.ts'

const start = kept()

/** A document of an older version goes on in the present form; one that no version fits stays for the faults to tell. */
function present(old: RawObject): RawObject {
  const found = migrated(old)
  return 'document' in found ? found.document : old
}

export const document = signal<RawObject>(present(start.document ?? openingExample().document))
/** Messages about keeping and opening, in sentences. */
export const notice = signal(start.trouble)
export const descriptions = signal<readonly FieldDescription[]>([])
export const form = signal<readonly FormField[]>([])
export const faults = signal<readonly ShownFault[]>([])
/** Fraction done of the running computation; undefined when nothing runs. */
export const progress = signal<number | undefined>(0)
export const snapshot = signal<Snapshot | undefined>(undefined)
/** How far the guesses let the snapshot be off, first by a few draws; undefined until it has been worked out. */
export const spreadStudy = signal<SpreadStudy | undefined>(undefined)
export const spreads = computed(() => spreadStudy.value?.results)
/** Fraction done of the draws; undefined when none are under way. */
export const spreadProgress = signal<number | undefined>(undefined)
/** The need against the year; undefined until it has been worked out, or where the design names no need. */
export const worth = signal<Worth | undefined>(undefined)
export const windDetail = signal<WindSnapshot | undefined>(undefined)
/** The map of blades and generator; follows the snapshot. */
export const matchDetail = signal<
  { readonly map: MatchMap; readonly target: GeneratorTarget | undefined } | undefined
>(undefined)
/** Where along the wire the volts arise; worked out only while something shows it. */
export const wireDetail = signal<WireSnapshot | undefined>(undefined)
/** Wind wished for [m/s]; undefined until the slider is moved. */
const wishedWind = signal<number | undefined>(undefined)
/** The engine itself failed. */
export const breakdown = signal('')

/** Row of the wind looked at: as wished, else the wanted one, else where the year's energy comes from. */
export const row = computed(() => {
  const result = snapshot.value
  if (!result) return 0
  const { rows, year, wanted } = result
  const richest = year.byWind.indexOf(Math.max(...year.byWind))
  const wind = wishedWind.value ?? wanted?.wind ?? rows[richest]?.wind ?? 6
  const nearest = rows.reduce(
    (best, { wind: other }, k) => (Math.abs(other - wind) < Math.abs(rows[best]!.wind - wind) ? k : best),
    0,
  )
  return nearest
})

/** The numbers shown are not those of the document as it stands. */
export const stale = computed(
  () => faults.value.length > 0 || progress.value !== undefined || breakdown.value !== '',
)

const worker = new Worker(new URL('../worker.ts', import.meta.url), { type: 'module' })
const ask = (message: ToWorker) => worker.postMessage(message)

let newest = 0
let timer: ReturnType<typeof setTimeout> | undefined
let answered = 0

/** Typing rests this long before the engine is asked [ms]. */
const rest = 25

function send(): void {
  timer = undefined
  ask({ kind: 'edit', id: newest, text: JSON.stringify(document.value) })
}

/** Every state of this visit, for the way back and forth. */
export const changes = signal<History<RawObject>>(historyOf(document.value, 'the page opened'))

function show(next: RawObject): void {
  document.value = next
  notice.value = keep(next)
  newest += 1
  progress.value ??= 0
  if (timer !== undefined) clearTimeout(timer)
  timer = setTimeout(send, rest)
}

/** `what` is told beside the way back; steps with one `mark` that follow each other closely are one. */
export function change(typed: RawObject, what = 'a change of several fields', mark?: string): void {
  const state = present(typed)
  changes.value = changed(changes.value, { state, what, mark, at: performance.now() })
  show(state)
}

function turnTo(history: History<RawObject>): void {
  if (history === changes.value) return
  changes.value = history
  show(history.present.state)
}

export const undo = (): void => turnTo(undone(changes.value))
export const redo = (): void => turnTo(redone(changes.value))

export function setValue(path: Path, value: unknown): void {
  const place = path.join('.')
  change(withValue(document.value, path, value) as RawObject, place, place)
}

/** What stood here before another design was opened. */
export const before = signal<RawObject | undefined>(keptBefore())

/** Another design altogether: the wind looked at is chosen anew, and the one before can be brought back. */
export function replace(next: RawObject, what = 'another design opened'): void {
  wishedWind.value = undefined
  before.value = document.value
  keepBefore(document.value)
  change(next, what)
}

export function lookAtRow(index: number): void {
  const found = snapshot.value?.rows[index]
  if (!found) return
  wishedWind.value = found.wind
  ask({ kind: 'wind', row: index })
}

let wireWatchers = 0

/** Something shows where the volts arise, until the function returned is called. */
export function watchWire(): () => void {
  wireWatchers += 1
  if (snapshot.value && !wireDetail.value) ask({ kind: 'wire' })
  return () => {
    wireWatchers -= 1
  }
}

function stopped(reason: string): void {
  progress.value = undefined
  breakdown.value = `The engine stopped: ${reason}. Your design is kept; change it, or save it as a file.`
}

worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
  if (data.kind === 'fields') {
    descriptions.value = data.fields
    return
  }
  if (data.kind === 'wind') {
    if (data.id === answered) windDetail.value = data.wind
    return
  }
  if (data.kind === 'wire') {
    if (data.id === answered) wireDetail.value = data.wire
    return
  }
  if (data.kind === 'match') {
    if (data.id === answered) matchDetail.value = { map: data.map, target: data.target }
    return
  }
  // an answer to an older edit says nothing of the document as it stands
  if (data.id !== newest) return
  if (data.kind === 'failed') stopped(data.reason)
  else if (data.kind === 'form') form.value = data.form
  else if (data.kind === 'spread-progress') spreadProgress.value = data.fraction
  else if (data.kind === 'spreads') {
    spreadStudy.value = data.study
    if (data.last) spreadProgress.value = undefined
  } else if (data.kind === 'worth') worth.value = data.worth
  else if (data.kind === 'progress') {
    faults.value = []
    breakdown.value = ''
    progress.value = data.fraction
  } else if (data.kind === 'faults') {
    faults.value = data.faults
    progress.value = undefined
  } else {
    answered = data.id
    faults.value = []
    snapshot.value = data.snapshot
    spreadStudy.value = undefined
    spreadProgress.value = undefined
    worth.value = undefined
    progress.value = undefined
    ask({ kind: 'wind', row: row.value })
    ask({ kind: 'match' })
    if (wireWatchers > 0) ask({ kind: 'wire' })
    else wireDetail.value = undefined
  }
}

worker.onerror = (event) => stopped(event.message || 'no reason given')

send()
