/** A worker's work where it is one of several that draw the guesses of a design and put each draw through the chain. */
import {
  type Chain,
  chainOf,
  parseDesignText,
  resolveDesign,
  type SpreadOptions,
  type SpreadPlan,
  spreadPlan,
  spreadSamples,
} from '../src/index.ts'
import { run } from './run.ts'

export type ToSampler =
  /** The samples from `from` to `to` of the plan that these options make for that text; ends whatever was asked before. */
  | {
      readonly kind: 'draw'
      readonly id: number
      readonly text: string
      readonly options: SpreadOptions
      readonly from: number
      readonly to: number
    }
  | { readonly kind: 'stop' }

export type FromSampler =
  | { readonly kind: 'drawing'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'drawn'; readonly id: number; readonly from: number; readonly values: Float64Array }
  | { readonly kind: 'failed'; readonly id: number; readonly reason: string }

declare const self: DedicatedWorkerGlobalScope

type Asked = Extract<ToSampler, { kind: 'draw' }>

let asked: Asked | undefined
let known: { readonly text: string; readonly chain: Chain } | undefined
let planned: { readonly key: string; readonly plan: SpreadPlan } | undefined

const say = (message: FromSampler) => self.postMessage(message)

async function draw(current: Asked): Promise<void> {
  const { id, text, options, from, to } = current
  const superseded = () => asked !== current
  try {
    if (known?.text !== text) {
      const parsed = parseDesignText(text)
      if (!parsed.ok) throw new Error('the text is no design')
      const chain = await run(
        chainOf(resolveDesign(parsed.design), { previous: known?.chain }),
        () => {},
        superseded,
      )
      if (chain === undefined) return
      known = { text, chain }
      planned = undefined
    }
    const key = JSON.stringify(options)
    if (planned?.key !== key) planned = { key, plan: spreadPlan(known.chain, options) }
    const values = await run(
      spreadSamples(known.chain, planned.plan, [from, to]),
      (fraction) => say({ kind: 'drawing', id, fraction }),
      superseded,
    )
    if (values) say({ kind: 'drawn', id, from, values })
  } catch (error) {
    if (asked === current)
      say({ kind: 'failed', id, reason: error instanceof Error ? error.message : String(error) })
  }
}

export function hearSampler(message: ToSampler): void {
  asked = message.kind === 'draw' ? message : undefined
  if (asked) void draw(asked)
}
