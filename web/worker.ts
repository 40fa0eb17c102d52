/** The engine behind the page: reads the newest document, computes it step by step, and answers for single winds. */

import { type UnjudgedChain, unjudgedChain } from '../src/analysis/unjudged-chain.ts'
import type { Chain } from '../src/index.ts'
import { designFields, designForm } from '../src/machine/design-fields.ts'
import { parseDesignText } from '../src/machine/parse.ts'
import { resolveDesign } from '../src/machine/resolve.ts'
import { Refusal } from '../src/refusal/require.ts'
import { shownFaults } from './job/asked.ts'
import { jobDesk } from './job/desk.ts'
import type { FromJob } from './job/plan.ts'
import type { FromWorker, ToWorker } from './messages.ts'
import { nextTurn } from './next-turn.ts'
import { faultOfRefusal } from './refusal-fault.ts'
import { run } from './run.ts'
import { changedParts, keptParts } from './same-parts.ts'
import type { ToSampler } from './sampler.ts'
import { samplerName } from './sampler-name.ts'
import type { SightName } from './sight.ts'
import { type Snapshot, snapshotOf, windSnapshotOf } from './snapshot.ts'

declare const self: DedicatedWorkerGlobalScope

type Edit = Extract<ToWorker, { kind: 'edit' }>

let waiting: Edit | undefined
let busy = false
let done: { readonly id: number; readonly chain: UnjudgedChain; readonly judged?: Chain } | undefined
let row = 0
/** What the page holds of the last result that it was told. */
let held: Snapshot | undefined
/** What the pictures in sight are drawn of, and those already told of the newest chain. */
let inSight: readonly SightName[] = []
let told = new Set<SightName>()

// what the first numbers do not need is fetched when they stand: the rules, the pictures, the guesses
let rules: typeof import('./judgement.ts') | undefined
const sights = () => import('./sight.ts')

const say = (message: FromWorker | FromJob) => self.postMessage(message)

const reasonOf = (error: unknown) => (error instanceof Error ? error.message : String(error))

/** The document without its numbers, on which no field's being there depends. */
let outline = ''

function sayForm(text: string): void {
  let document: unknown
  try {
    document = JSON.parse(text)
  } catch {
    return
  }
  const next = JSON.stringify(document, (_, value: unknown) => (typeof value === 'number' ? 0 : value))
  if (next === outline) return
  outline = next
  say({ kind: 'form', form: designForm(document) })
}

function answerWind(): void {
  if (!done) return
  row = Math.min(Math.max(Math.trunc(row) || 0, 0), done.chain.rows.length - 1)
  try {
    say({ kind: 'wind', id: done.id, wind: windSnapshotOf(done.chain, row) })
  } catch (error) {
    say({ kind: 'failed', id: done.id, reason: reasonOf(error) })
  }
}

const editWaits = () => waiting !== undefined

/** Between two tellings of how far a computation is, and without an edit before guesses are drawn [ms]. */
const tellingPause = 60
const quietTime = 400

/** The page is given this long to paint its numbers: one that is hidden paints none [ms]. */
const paintTime = 300

/** Ends the waiting that is under way: the page has painted, or an edit came. */
let endWait = () => {}

/** Waits a while, unless `endWait` is called or an edit is there. */
const wait = (time: number) =>
  new Promise<void>((resolve) => {
    const timer = setTimeout(resolve, waiting ? 0 : time)
    endWait = () => {
      clearTimeout(timer)
      resolve()
    }
  })

/** One picture after the other, hearing messages in between. */
async function answerSights(): Promise<void> {
  const next = () => inSight.find((each) => !told.has(each))
  if (next() === undefined) return
  const { sightOf } = await sights()
  for (let name = next(); name; name = next()) {
    if (!done?.judged || waiting) return
    told.add(name)
    try {
      say({ kind: 'sight', id: done.id, name, drawn: sightOf(name, done.judged, row) })
    } catch (error) {
      say({ kind: 'failed', id: done.id, reason: reasonOf(error) })
    }
    await nextTurn()
  }
}

async function forgetSightsOfWind(): Promise<void> {
  if (told.size === 0) return
  const { sightsOfWind } = await sights()
  told = new Set([...told].filter((name) => !sightsOfWind.has(name)))
  await answerSights()
}

const desk = jobDesk(say, editWaits)
let stopDrawing = () => {}

/** Numbers first; what follows them waits until they have been painted, so that nothing keeps the page from it. */
async function sayResult(id: number, chain: UnjudgedChain): Promise<void> {
  const next = keptParts(held, snapshotOf(chain))
  say({ kind: 'result', id, changed: changedParts(held, next) })
  held = next
  await wait(paintTime)
}

async function compute({ id, text }: Edit): Promise<void> {
  try {
    sayForm(text)
    const parsed = parseDesignText(text)
    if (!parsed.ok) {
      say({ kind: 'faults', id, faults: shownFaults(parsed.faults) })
      return
    }
    const machine = resolveDesign(parsed.design)
    let toldAt = performance.now()
    const tell = (fraction: number) => {
      // the page has better things to draw than every step
      if (performance.now() - toldAt < tellingPause) return
      toldAt = performance.now()
      say({ kind: 'progress', id, fraction })
    }
    const chain = await run(unjudgedChain(machine, { previous: done?.chain }), tell, editWaits)
    if (!chain) return
    done = { id, chain }
    told = new Set()
    await sayResult(id, chain)
    if (waiting) return
    rules ??= await import('./judgement.ts')
    if (waiting) return
    const { judged, concerns } = rules.judgement(chain)
    done = { id, chain, judged }
    say({ kind: 'concerns', id, concerns })
    await answerSights()
    if (waiting) return
    const { drawGuesses, worthOf } = await import('./afterwards.ts')
    const worth = await run(worthOf(judged), () => {}, editWaits)
    if (worth) say({ kind: 'worth', id, worth })
    // how far the guesses let it be off takes many chains; it follows when nobody waits for anything else
    await wait(quietTime)
    if (waiting) return
    const drawing = drawGuesses(id, text, judged, { say, superseded: editWaits })
    stopDrawing = drawing.stop
    await drawing.done
  } catch (error) {
    if (error instanceof Refusal) say({ kind: 'faults', id, faults: [faultOfRefusal(error)] })
    else say({ kind: 'failed', id, reason: reasonOf(error) })
  }
}

async function work(): Promise<void> {
  if (busy) return
  busy = true
  try {
    while (waiting || desk.waiting()) {
      const edit = waiting
      waiting = undefined
      if (edit) await compute(edit)
      else await desk.next()
    }
  } finally {
    busy = false
  }
}

function hear({ data }: MessageEvent<ToWorker>): void {
  if (data.kind === 'edit') {
    waiting = data
    stopDrawing()
    endWait()
    void work()
  } else if (data.kind === 'job' || data.kind === 'job-stop') {
    desk.hear(data)
    void work()
  } else if (data.kind === 'sights') {
    inSight = data.names
    void answerSights()
  } else if (data.kind === 'painted') {
    if (data.id !== done?.id) return
    row = data.row
    answerWind()
    endWait()
  } else {
    row = data.row
    answerWind()
    void forgetSightsOfWind()
  }
}

// the same file draws guesses where it is started for that
if (self.name === samplerName) {
  const sampler = import('./sampler.ts')
  self.onmessage = async ({ data }: MessageEvent<ToSampler>) => (await sampler).hearSampler(data)
} else {
  self.onmessage = hear
  say({ kind: 'fields', fields: designFields() })
}
