/** The design on the page: the raw document, what the engine says of it, and the wind looked at. */
import { batch, computed, effect, signal } from '@preact/signals'
import type { FieldDescription, FormField, SpreadStudy, Worth } from '../../src/index.ts'
import { migrated } from '../../src/machine/migration.ts'
import type { FromWorker, ShownFault, ToWorker } from '../messages.ts'
import { keptParts } from '../same-parts.ts'
import type { ShownConcern } from '../shown-concern.ts'
import type { SightName } from '../sight.ts'
import type { Snapshot, WindSnapshot } from '../snapshot.ts'
import { say } from '../text/say.ts'
import { begin, type Held, hold, notYetOwn, startCopy, takenFromShelf } from './autosave.ts'
import { openingExample } from './example.ts'
import { changed, type History, historyOf, redone, undone } from './history.ts'
import { newIdentity } from './identity.ts'
import { foundCopies } from './keeping.ts'
import { type Path, type RawObject, withValue } from './raw-document.ts'
import type { TurningPoint } from './turning-point.ts'

const copies = foundCopies()
const copy = startCopy(copies)
/** Nothing was kept here before: whoever opens the page is asked what they have. */
export const firstVisit = copy === undefined && copies.unreadable === 0

/** A document of an older version goes on in the present form; one that no version fits stays for the faults to tell. */
function present(old: RawObject): RawObject {
  const found = migrated(old)
  return 'document' in found ? found.document : old
}

const start: Held = copy
  ? { id: copy.id, document: present(copy.document) }
  : { id: newIdentity(), document: openingExample.document }

export const document = signal<RawObject>(start.document)
/** The open design's place on the shelf. */
export const openId = signal(start.id)
/** Messages about keeping and opening, in sentences. */
export const notice = signal(
  copies.unreadable === 0
    ? ''
    : say`What was kept from your last visit cannot be read. It was put aside in the browser’s store, and another design was opened.`,
)
export const descriptions = signal<readonly FieldDescription[]>([])
export const form = signal<readonly FormField[]>([])
export const faults = signal<readonly ShownFault[]>([])
/** Fraction done of the running computation; undefined when nothing runs. */
export const progress = signal<number | undefined>(0)
export const snapshot = signal<Snapshot | undefined>(undefined)
/** What the rules say, a moment after the numbers; undefined until they have been asked for the first time. */
export const concerns = signal<readonly ShownConcern[] | undefined>(undefined)
/** How far the guesses let the snapshot be off, first by a few draws; undefined until it has been worked out. */
export const spreadStudy = signal<SpreadStudy | undefined>(undefined)
export const spreads = computed(() => spreadStudy.value?.results)
/** Fraction done of the draws; undefined when none are under way. */
export const spreadProgress = signal<number | undefined>(undefined)
/** The need against the year; undefined until it has been worked out, or where the design names no need. */
export const worth = signal<Worth | undefined>(undefined)
export const windDetail = signal<WindSnapshot | undefined>(undefined)
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

/** The numbers stand; only the rules are still being asked about them. */
const judging = 1

/** The numbers shown are not those of the document as it stands. */
export const stale = computed(
  () =>
    faults.value.length > 0 ||
    (progress.value !== undefined && progress.value !== judging) ||
    breakdown.value !== '',
)

/** Numbers that come within this time come at once: nothing on the page says that they were awaited [ms]. */
const patience = 200

/** The page says that its numbers are behind: at once where something is wrong, else when they keep one waiting. */
export const behind = signal(true)
let patienceEnds: ReturnType<typeof setTimeout> | undefined
const fallBehind = () => {
  behind.value = true
}
effect(() => {
  clearTimeout(patienceEnds)
  if (!stale.value) behind.value = false
  else if (faults.value.length > 0 || breakdown.value !== '') fallBehind()
  else patienceEnds = setTimeout(fallBehind, patience)
})

const worker = new Worker(new URL('../worker.ts', import.meta.url), { type: 'module' })
const ask = (message: ToWorker) => worker.postMessage(message)

let newest = 0
let timer: ReturnType<typeof setTimeout> | undefined
let answered = 0
/** What the worker has told, also of an edit that another has followed. */
let told: Partial<Snapshot> = {}

/** In a run of edits typing rests this long before the engine is asked; the first after a quiet time goes at once [ms]. */
const rest = 25
let sentAt = Number.NEGATIVE_INFINITY

/** For whoever measures: an edit, the numbers that came of it, the frame that shows them, and the one that shows what the rules say. */
const mark = (moment: 'edit' | 'result' | 'painted' | 'judged') => {
  performance.clearMarks(moment)
  performance.mark(moment)
}

function send(): void {
  timer = undefined
  sentAt = performance.now()
  ask({ kind: 'edit', id: newest, text: JSON.stringify(document.value) })
}

/** Every state of this visit, for the way back and forth. */
export const changes = signal<History<Held>>(historyOf(start, say`the page opened`))

function show(next: Held, what?: TurningPoint): void {
  mark('edit')
  const before = { id: openId.value, document: document.value }
  newest += 1
  const quiet = timer === undefined && performance.now() - sentAt > rest
  clearTimeout(timer)
  document.value = next.document
  // the engine is asked before the page draws anything, so that both are at work
  if (quiet) send()
  else timer = setTimeout(send, rest)
  openId.value = next.id
  notice.value = ''
  hold(next, before, what)
  progress.value ??= 0
}

function take(next: Held, what: string, mark?: string, turningPoint?: TurningPoint): void {
  const at = performance.now()
  changes.value = changed(changes.value, { state: next, what, mark, at })
  show(next, turningPoint)
}

/** `what` is told beside the way back; steps with one `mark` that follow each other closely are one. */
export function change(typed: RawObject, what = say`a change of several fields`, mark?: string): void {
  if (typed === document.value) return
  take({ id: openId.value, document: present(typed) }, what, mark)
}

function turnTo(history: History<Held>): void {
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

/** The open design goes on as `next` altogether; the state before is kept as a version, and the wind is chosen anew. */
export function replace(
  next: RawObject,
  what = say`another state taken over`,
  turningPoint: TurningPoint = 'replaced',
): void {
  wishedWind.value = undefined
  take({ id: openId.value, document: present(next) }, what, undefined, turningPoint)
}

export interface Opening {
  /** Its place on the shelf; a new one where it has none yet. */
  readonly id?: string
  /** When the shelf's state of it was changed; undefined where the shelf has none. */
  readonly changedAt?: number
  /** An example, which is no design of one's own until it is changed. */
  readonly example?: boolean
}

/** Opens another design; the one before stays on the shelf. */
export function openAnother(next: RawObject, what: string, opening: Opening = {}): void {
  const held: Held = { id: opening.id ?? newIdentity(), document: present(next) }
  if (opening.example) notYetOwn(held.id)
  if (opening.changedAt !== undefined) takenFromShelf(held, opening.changedAt)
  wishedWind.value = undefined
  concerns.value = undefined
  take(held, what)
}

export function lookAtRow(index: number): void {
  const found = snapshot.value?.rows[index]
  if (!found) return
  wishedWind.value = found.wind
  ask({ kind: 'wind', row: index })
}

/** The row nearest to a wind that somebody pointed at [m/s]. */
export function lookAtWind(wind: number): void {
  const rows = snapshot.value?.rows ?? []
  const nearest = rows.reduce(
    (best, row, k) => (Math.abs(row.wind - wind) < Math.abs(rows[best]!.wind - wind) ? k : best),
    0,
  )
  if (nearest !== row.value) lookAtRow(nearest)
}

let hearSight: (name: SightName, drawn: unknown) => void = () => {}

/** Who is told what the pictures in sight are drawn of. */
export function heardSight(hear: (name: SightName, drawn: unknown) => void): void {
  hearSight = hear
}

export const askSights = (names: readonly SightName[]): void => ask({ kind: 'sights', names })

/** Once what was just changed has been painted. */
const afterFrame = (then: () => void) => requestAnimationFrame(() => setTimeout(then))

function stopped(reason: string): void {
  progress.value = undefined
  breakdown.value = say`The engine stopped: ${reason}. Your design is kept; change it, or save it as a file.`
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
  if (data.kind === 'sight') {
    if (data.id === answered) hearSight(data.name, data.drawn)
    return
  }
  // what stands in the fields is the document's own
  if (data.kind === 'form') {
    form.value = data.form
    return
  }
  if (data.kind === 'result') told = { ...told, ...data.changed }
  // an answer to an older edit says nothing of the document as it stands
  if (data.id !== newest) return
  if (data.kind === 'failed') stopped(data.reason)
  else if (data.kind === 'concerns') {
    concerns.value = keptParts(concerns.peek(), data.concerns)
    progress.value = undefined
    afterFrame(() => mark('judged'))
  } else if (data.kind === 'spread-progress') spreadProgress.value = data.fraction
  else if (data.kind === 'spreads') {
    spreadStudy.value = data.study
    if (data.last) spreadProgress.value = undefined
  } else if (data.kind === 'worth') worth.value = data.worth
  else if (data.kind === 'progress') {
    // a new empty list would have every field drawn anew
    if (faults.value.length > 0) faults.value = []
    breakdown.value = ''
    progress.value = data.fraction
  } else if (data.kind === 'faults') {
    faults.value = data.faults
    progress.value = undefined
  } else {
    mark('result')
    const { id } = data
    answered = id
    batch(() => {
      if (faults.value.length > 0) faults.value = []
      breakdown.value = ''
      snapshot.value = told as Snapshot
      spreadStudy.value = undefined
      spreadProgress.value = undefined
      worth.value = undefined
      progress.value = judging
    })
    afterFrame(() => {
      mark('painted')
      ask({ kind: 'painted', id, row: row.value })
    })
  }
}

worker.onerror = (event) => stopped(event.message || 'no reason given')

send()

begin(start, copies, (held, changedAt) => {
  openAnother(held.document, say`opened from the shelf`, { id: held.id, changedAt })
  changes.value = historyOf({ id: held.id, document: document.value }, say`the page opened`)
})
