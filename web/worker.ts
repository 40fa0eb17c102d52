/** The engine behind the page: reads the newest document, computes it step by step, and answers for single winds. */
import {
  type Chain,
  chainOf,
  concernRemedies,
  type Design,
  designFields,
  designForm,
  fairContest,
  faultStudy,
  faultText,
  finished,
  generatorTarget,
  matchMap,
  matchRemedies,
  parseDesignText,
  Refusal,
  resolveDesign,
  type Steps,
  scenarioStudy,
  spreadOutputNames,
  spreadPlan,
  spreadStudyFrom,
  worthOf,
} from '../src/index.ts'
import { contestReport } from '../src/output/contest-report.ts'
import { scenarioReport } from '../src/output/scenario-report.ts'
import type {
  FromContest,
  FromHelps,
  FromRecord,
  FromRemedies,
  FromStorm,
  FromStudy,
  FromWorker,
  ToWorker,
} from './messages.ts'
import { recordReport } from './record.ts'
import { faultOfRefusal } from './refusal-fault.ts'
import { samplerPool } from './sampler-pool.ts'
import { snapshotOf, windSnapshotOf } from './snapshot.ts'
import { wireSnapshotOf } from './wire-snapshot.ts'

declare const self: DedicatedWorkerGlobalScope

type Edit = Extract<ToWorker, { kind: 'edit' }>
type ContestAsked = Extract<ToWorker, { kind: 'contest' }>
type StudyAsked = Extract<ToWorker, { kind: 'study' }>
type StormAsked = Extract<ToWorker, { kind: 'storm' }>
type RecordAsked = Extract<ToWorker, { kind: 'record' }>
type RemediesAsked = Extract<ToWorker, { kind: 'remedies' }>
type HelpsAsked = Extract<ToWorker, { kind: 'helps' }>

let waiting: Edit | undefined
/** The contest to be held or being held; another, or none, supersedes it. */
let contestAsked: ContestAsked | undefined
/** The study to be made or being made. */
let studyAsked: StudyAsked | undefined
/** The storm to be made or being made. */
let stormAsked: StormAsked | undefined
/** The remedies to be tried or being tried. */
let remediesAsked: RemediesAsked | undefined
/** The concern whose remedies are to be tried or being tried. */
let helpsAsked: HelpsAsked | undefined
/** The wind record to be read or being read. */
let recordAsked: RecordAsked | undefined
let busy = false
let done: { readonly id: number; readonly chain: Chain } | undefined
let row = 0

const say = (
  message: FromWorker | FromContest | FromStudy | FromRemedies | FromHelps | FromRecord | FromStorm,
) => self.postMessage(message)

/** Lets messages that have arrived meanwhile be heard; a timer would be slowed to 4 ms. */
const turn = new MessageChannel()
let resume = () => {}
turn.port1.onmessage = () => resume()
const nextTurn = () =>
  new Promise<void>((resolve) => {
    resume = resolve
    turn.port2.postMessage(null)
  })

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

function answerWire(): void {
  if (!done) return
  try {
    say({ kind: 'wire', id: done.id, wire: wireSnapshotOf(done.chain) })
  } catch (error) {
    say({ kind: 'failed', id: done.id, reason: reasonOf(error) })
  }
}

function answerMatch(): void {
  if (!done) return
  try {
    const map = finished(matchMap(done.chain))
    say({ kind: 'match', id: done.id, map, target: generatorTarget(done.chain, map) })
  } catch (error) {
    say({ kind: 'failed', id: done.id, reason: reasonOf(error) })
  }
}

/** Runs steps to their end, hearing messages in between; undefined where a newer wish supersedes them. */
async function run<Result>(
  steps: Steps<Result>,
  tell: (fraction: number) => void = () => {},
  superseded: () => boolean = () => waiting !== undefined,
): Promise<Result | undefined> {
  for (;;) {
    await nextTurn()
    if (superseded()) return undefined
    const step = steps.next()
    if (step.done === true) return step.value
    tell(step.value)
  }
}

const samplers = samplerPool()

/** A few draws for a first look, then as many as the plan likes; an edit stops them. */
async function drawGuesses(id: number, text: string, chain: Chain): Promise<void> {
  const rounds = [{ samples: 128 }, {}]
  for (const [round, options] of rounds.entries()) {
    if (waiting !== undefined) return
    const plan = spreadPlan(chain, options)
    const none = plan.drawn.length === 0
    const values = none
      ? new Float64Array(plan.samples * spreadOutputNames.length)
      : await samplers.draw(text, options, plan, (fraction) =>
          say({ kind: 'spread-progress', id, fraction: round === 0 ? 0 : fraction }),
        )
    if (values === undefined) return
    const last = none || round === rounds.length - 1
    say({ kind: 'spreads', id, study: spreadStudyFrom(chain, plan, values), last })
    if (none) return
  }
}

async function compute({ id, text }: Edit): Promise<void> {
  try {
    sayForm(id, text)
    const parsed = parseDesignText(text)
    if (!parsed.ok) {
      const shown = parsed.faults.map((fault) => ({ ...fault, text: faultText(fault) }))
      say({ kind: 'faults', id, faults: shown })
      return
    }
    say({ kind: 'progress', id, fraction: 0 })
    const machine = resolveDesign(parsed.design)
    const chain = await run(chainOf(machine, { previous: done?.chain }), (fraction) =>
      say({ kind: 'progress', id, fraction }),
    )
    if (!chain) return
    done = { id, chain }
    say({ kind: 'result', id, snapshot: snapshotOf(chain) })
    const worth = await run(worthOf(chain))
    if (worth) say({ kind: 'worth', id, worth })
    // how far the guesses let it be off takes many chains; it follows when nobody waits for anything else
    await drawGuesses(id, text, chain)
  } catch (error) {
    if (error instanceof Refusal) say({ kind: 'faults', id, faults: [faultOfRefusal(error)] })
    else say({ kind: 'failed', id, reason: reasonOf(error) })
  }
}

async function readRecord(asked: RecordAsked): Promise<void> {
  const { id, file, options, text } = asked
  try {
    const bytes = new Uint8Array(await file.arrayBuffer())
    const wide = bytes[0] === 0xff && bytes[1] === 0xfe
    const made = await run(
      recordReport(file.name, new TextDecoder(wide ? 'utf-16le' : 'utf-8').decode(bytes), options, text),
      (fraction) => say({ kind: 'record-progress', id, fraction }),
      () => waiting !== undefined || recordAsked !== asked,
    )
    if (made)
      say(
        typeof made === 'string'
          ? { kind: 'record-refused', id, reason: made }
          : { kind: 'record', id, report: made },
      )
  } catch (error) {
    say({ kind: 'record-refused', id, reason: reasonOf(error) })
  } finally {
    if (recordAsked === asked && !waiting) recordAsked = undefined
  }
}

async function compare(asked: ContestAsked): Promise<void> {
  const { id, texts, rule } = asked
  const superseded = () => waiting !== undefined || contestAsked !== asked
  try {
    const designs: Design[] = []
    for (const [k, text] of texts.entries()) {
      const parsed = parseDesignText(text)
      if (parsed.ok) designs.push(parsed.design)
      else {
        const reason = `${k === 0 ? 'This design' : 'The other design'}: ${parsed.faults.map(faultText).join('; ')}`
        say({ kind: 'contest-refused', id, reason })
        return
      }
    }
    const contest = await run(
      fairContest(designs, { rule }),
      (fraction) => say({ kind: 'contest-progress', id, fraction }),
      superseded,
    )
    if (contest) say({ kind: 'contest', id, report: contestReport(contest) })
  } catch (error) {
    say({ kind: 'contest-refused', id, reason: reasonOf(error) })
  } finally {
    // an edit in between leaves it to be held afterwards
    if (contestAsked === asked && !waiting) contestAsked = undefined
  }
}

async function putThroughStorm(asked: StormAsked): Promise<void> {
  const { id, text, wind, top } = asked
  const superseded = () => waiting !== undefined || stormAsked !== asked
  const tell = (fraction: number) => say({ kind: 'storm-progress', id, fraction })
  try {
    const parsed = parseDesignText(text)
    if (!parsed.ok) {
      say({ kind: 'storm-refused', id, reason: parsed.faults.map(faultText).join('; ') })
      return
    }
    const chain = await run(chainOf(resolveDesign(parsed.design)), () => tell(0), superseded)
    if (!chain) return
    const options = { kind: wind, ...(top === undefined ? {} : { top }) }
    const made = await run(scenarioStudy(chain, options), tell, superseded)
    if (made) say({ kind: 'storm', id, report: scenarioReport(made) })
  } catch (error) {
    say({ kind: 'storm-refused', id, reason: reasonOf(error) })
  } finally {
    if (stormAsked === asked && !waiting) stormAsked = undefined
  }
}

async function study(asked: StudyAsked): Promise<void> {
  const { id, text } = asked
  try {
    const parsed = parseDesignText(text)
    if (!parsed.ok) {
      say({ kind: 'study-refused', id, reason: parsed.faults.map(faultText).join('; ') })
      return
    }
    const made = await run(
      faultStudy(parsed.design),
      (fraction) => say({ kind: 'study-progress', id, fraction }),
      () => waiting !== undefined || studyAsked !== asked,
    )
    if (made) say({ kind: 'study', id, study: made })
  } catch (error) {
    say({ kind: 'study-refused', id, reason: reasonOf(error) })
  } finally {
    if (studyAsked === asked && !waiting) studyAsked = undefined
  }
}

async function remedies(asked: RemediesAsked): Promise<void> {
  const { id, text } = asked
  try {
    const parsed = parseDesignText(text)
    if (!parsed.ok) {
      say({ kind: 'remedies-refused', id, reason: parsed.faults.map(faultText).join('; ') })
      return
    }
    const report = await run(
      matchRemedies(parsed.design),
      (fraction) => say({ kind: 'remedies-progress', id, fraction }),
      () => waiting !== undefined || remediesAsked !== asked,
    )
    if (report) say({ kind: 'remedies', id, report })
  } catch (error) {
    say({ kind: 'remedies-refused', id, reason: reasonOf(error) })
  } finally {
    if (remediesAsked === asked && !waiting) remediesAsked = undefined
  }
}

async function helps(asked: HelpsAsked): Promise<void> {
  const { id, text, code } = asked
  try {
    const parsed = parseDesignText(text)
    if (!parsed.ok) {
      say({ kind: 'helps-refused', id, reason: parsed.faults.map(faultText).join('; ') })
      return
    }
    const report = await run(
      concernRemedies(parsed.design, { codes: [code] }),
      (fraction) => say({ kind: 'helps-progress', id, fraction }),
      () => waiting !== undefined || helpsAsked !== asked,
    )
    if (report) say({ kind: 'helps', id, report })
  } catch (error) {
    say({ kind: 'helps-refused', id, reason: reasonOf(error) })
  } finally {
    if (helpsAsked === asked && !waiting) helpsAsked = undefined
  }
}

async function work(): Promise<void> {
  if (busy) return
  busy = true
  try {
    while (
      waiting ||
      contestAsked ||
      stormAsked ||
      studyAsked ||
      remediesAsked ||
      helpsAsked ||
      recordAsked
    ) {
      const edit = waiting
      waiting = undefined
      if (edit) await compute(edit)
      else if (contestAsked) await compare(contestAsked)
      else if (studyAsked) await study(studyAsked)
      else if (stormAsked) await putThroughStorm(stormAsked)
      else if (remediesAsked) await remedies(remediesAsked)
      else if (helpsAsked) await helps(helpsAsked)
      else if (recordAsked) await readRecord(recordAsked)
    }
  } finally {
    busy = false
  }
}

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'edit') {
    waiting = data
    samplers.stop()
    void work()
  } else if (data.kind === 'contest') {
    contestAsked = data
    void work()
  } else if (data.kind === 'contest-stop') contestAsked = undefined
  else if (data.kind === 'study') {
    studyAsked = data
    void work()
  } else if (data.kind === 'study-stop') studyAsked = undefined
  else if (data.kind === 'storm') {
    stormAsked = data
    void work()
  } else if (data.kind === 'storm-stop') stormAsked = undefined
  else if (data.kind === 'remedies') {
    remediesAsked = data
    void work()
  } else if (data.kind === 'remedies-stop') remediesAsked = undefined
  else if (data.kind === 'helps') {
    helpsAsked = data
    void work()
  } else if (data.kind === 'helps-stop') helpsAsked = undefined
  else if (data.kind === 'record') {
    recordAsked = data
    void work()
  } else if (data.kind === 'record-stop') recordAsked = undefined
  else if (data.kind === 'match') answerMatch()
  else if (data.kind === 'wire') answerWire()
  else {
    row = data.row
    answerWind()
  }
}

say({ kind: 'fields', fields: designFields() })
