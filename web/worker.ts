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
import type { ToSampler } from './sampler.ts'
import { samplerName } from './sampler-name.ts'
import type { SightName } from './sight.ts'
import { snapshotOf, windSnapshotOf } from './snapshot.ts'

declare const self: DedicatedWorkerGlobalScope

type Edit = Extract<ToWorker, { kind: 'edit' }>

let waiting: Edit | undefined
let busy = false
let done: { readonly id: number; readonly chain: UnjudgedChain; readonly judged?: Chain } | undefined
let row = 0
/** Counts the states of magnets and wire that have been shown. */
let bodies = 0
/** What the pictures in sight are drawn of, and those already told of the newest chain. */
let inSight: readonly SightName[] = []
let told = new Set<SightName>()

// what the first numbers do not need is fetched when they stand: the rules, the pictures, the guesses
let rules: typeof import('./judgement.ts') | undefined
const sights = () => import('./sight.ts')

const say = (message: FromWorker | FromJob) => self.postMessage(message)

const reasonOf = (error: unknown) => (error instanceof Error ? error.message : String(error))

function sayForm(id: number, text: string): void {
  let document: unknown
  try {
    document = JSON.parse(text)
  } catch {
    return
  }
  say({ kind: 'form', id, form: designForm(document) })
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

let endQuiet = () => {}

/** Waits a while; false as soon as an edit comes. */
const stillQuiet = () =>
  new Promise<boolean>((resolve) => {
    if (waiting) resolve(false)
    const timer = setTimeout(resolve, quietTime, true)
    endQuiet = () => {
      clearTimeout(timer)
      resolve(false)
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

async function compute({ id, text }: Edit): Promise<void> {
  try {
    sayForm(id, text)
    const parsed = parseDesignText(text)
    if (!parsed.ok) {
      say({ kind: 'faults', id, faults: shownFaults(parsed.faults) })
      return
    }
    say({ kind: 'progress', id, fraction: 0 })
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
    if (chain.field !== done?.chain.field || chain.layout !== done.chain.layout) bodies += 1
    done = { id, chain }
    told = new Set()
    const early = rules === undefined
    if (early) say({ kind: 'result', id, snapshot: snapshotOf(chain), bodies })
    rules ??= await import('./judgement.ts')
    if (waiting) return
    const { judged, concerns } = rules.judgement(chain)
    done = { id, chain, judged }
    if (early) say({ kind: 'concerns', id, concerns })
    else say({ kind: 'result', id, snapshot: { ...snapshotOf(chain), concerns }, bodies })
    await answerSights()
    if (waiting) return
    const { drawGuesses, worthOf } = await import('./afterwards.ts')
    const worth = await run(worthOf(judged), () => {}, editWaits)
    if (worth) say({ kind: 'worth', id, worth })
    // how far the guesses let it be off takes many chains; it follows when nobody waits for anything else
    if (!(await stillQuiet())) return
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
    endQuiet()
    void work()
  } else if (data.kind === 'job' || data.kind === 'job-stop') {
    desk.hear(data)
    void work()
  } else if (data.kind === 'sights') {
    inSight = data.names
    void answerSights()
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
