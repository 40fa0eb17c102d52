/** Several samplers that share the draws of one plan; the draws are the same however many they are. */
import { drawWidth, type SpreadOptions, type SpreadPlan } from '../src/index.ts'
import type { FromSampler, ToSampler } from './sampler.ts'
import { samplerName } from './sampler-name.ts'

declare const self: DedicatedWorkerGlobalScope

/** More would mostly load the same engine once more. */
const mostSamplers = 6

/** Parts that each sampler should get, so that none waits long for the last. */
const partsEach = 4

export interface SamplerPool {
  /** All draws of a plan, in their order; undefined where they were stopped. */
  readonly draw: (
    text: string,
    options: SpreadOptions,
    plan: SpreadPlan,
    tell: (fraction: number) => void,
  ) => Promise<Float64Array | undefined>
  readonly stop: () => void
}

/** Started when it is first asked. */
export function samplerPool(): SamplerPool {
  let workers: Worker[] | undefined
  let newest = 0
  let end: () => void = () => {}
  const started = () => {
    const count = Math.min(Math.max(navigator.hardwareConcurrency || 2, 1), mostSamplers)
    workers ??= Array.from(
      { length: count },
      // the file that is already here under another name: nothing more has to come over the line
      () => new Worker(self.location.href, { type: 'module', name: samplerName }),
    )
    return workers
  }
  const ask = (worker: Worker, message: ToSampler) => worker.postMessage(message)
  const stop = () => {
    newest += 1
    for (const worker of workers ?? []) ask(worker, { kind: 'stop' })
    end()
    end = () => {}
  }
  const draw: SamplerPool['draw'] = (text, options, plan, tell) => {
    const { samples, perState } = plan
    const width = drawWidth(plan)
    stop()
    const id = newest
    const crew = started()
    const states = Math.ceil(samples / perState)
    const part = Math.max(1, Math.ceil(states / (crew.length * partsEach))) * perState
    const values = new Float64Array(samples * width)
    let given = 0
    let done = 0
    const running = new Map<Worker, number>()
    return new Promise((resolve, reject) => {
      end = () => resolve(undefined)
      const next = (worker: Worker) => {
        running.delete(worker)
        if (given >= samples) return
        const from = given
        given = Math.min(samples, from + part)
        running.set(worker, 0)
        ask(worker, { kind: 'draw', id, text, options, from, to: given })
      }
      const told = () => {
        let open = 0
        for (const fraction of running.values()) open += fraction * part
        tell(Math.min(1, (done + open) / samples))
      }
      for (const worker of crew) {
        worker.onmessage = ({ data }: MessageEvent<FromSampler>) => {
          if (data.id !== id || id !== newest) return
          if (data.kind === 'failed') {
            stop()
            reject(new Error(data.reason))
          } else if (data.kind === 'drawing') {
            running.set(worker, data.fraction)
            told()
          } else {
            values.set(data.values, data.from * width)
            done += data.values.length / width
            next(worker)
            told()
            if (done >= samples) {
              end = () => {}
              resolve(values)
            }
          }
        }
        worker.onerror = (event) => {
          workers = undefined
          reject(new Error(event.message || 'a sampler stopped for no reason given'))
        }
        next(worker)
      }
    })
  }
  return { draw, stop }
}
