/** The engine behind the page: reads the newest document, computes it step by step, and answers for single winds. */
import {
  type Chain,
  chainOf,
  designFields,
  designForm,
  faultText,
  parseDesignText,
  Refusal,
  resolveDesign,
  type Steps,
  spreadsOf,
} from '../src/index.ts'
import type { FromWorker, ShownFault, ToWorker } from './messages.ts'
import { snapshotOf, windSnapshotOf } from './snapshot.ts'

declare const self: DedicatedWorkerGlobalScope

type Edit = Extract<ToWorker, { kind: 'edit' }>

let waiting: Edit | undefined
let busy = false
let done: { readonly id: number; readonly chain: Chain } | undefined
let row = 0

const say = (message: FromWorker) => self.postMessage(message)

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

function faultOfRefusal(error: Refusal): ShownFault {
  const [path = '', rest = ''] = error.message.split(' must be ')
  const [condition = '', received = ''] = rest.split('; received ')
  return {
    path,
    condition,
    received: received.replace(/ \([a-z-]+\)$/, ''),
    code: error.code,
    text: error.message,
  }
}

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

/** Runs steps to their end, hearing messages in between; undefined where a newer edit supersedes them. */
async function run<Result>(
  steps: Steps<Result>,
  tell: (fraction: number) => void = () => {},
): Promise<Result | undefined> {
  for (;;) {
    await nextTurn()
    if (waiting) return undefined
    const step = steps.next()
    if (step.done === true) return step.value
    tell(step.value)
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
    // how far the guesses let it be off takes many chains; it follows when nobody waits for anything else
    const spreads = await run(spreadsOf(chain))
    if (spreads) say({ kind: 'spreads', id, spreads })
  } catch (error) {
    if (error instanceof Refusal) say({ kind: 'faults', id, faults: [faultOfRefusal(error)] })
    else say({ kind: 'failed', id, reason: reasonOf(error) })
  }
}

async function work(): Promise<void> {
  if (busy) return
  busy = true
  try {
    while (waiting) {
      const edit = waiting
      waiting = undefined
      await compute(edit)
    }
  } finally {
    busy = false
  }
}

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'edit') {
    waiting = data
    void work()
  } else {
    row = data.row
    answerWind()
  }
}

say({ kind: 'fields', fields: designFields() })
