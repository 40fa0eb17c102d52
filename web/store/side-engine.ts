/** An engine of its own for one long question, so that the page goes on answering edits. */
import type {
  FromContest,
  FromHelps,
  FromRecord,
  FromRemedies,
  FromStorm,
  FromStudy,
  FromWorker,
  ToWorker,
} from '../messages.ts'

export type Heard = Extract<
  FromWorker | FromContest | FromStudy | FromRemedies | FromHelps | FromRecord | FromStorm,
  { id: number }
>

export interface SideEngine {
  /** Asks, with a number that makes every answer to an earlier question too late. */
  readonly ask: (message: (id: number) => ToWorker) => void
}

/** Started when it is first asked; `failed` is told when it stops for good. */
export function sideEngine(heard: (data: Heard) => void, failed: (reason: string) => void): SideEngine {
  let worker: Worker | undefined
  let newest = 0
  const engine = (): Worker => {
    if (worker) return worker
    worker = new Worker(new URL('../worker.ts', import.meta.url), { type: 'module' })
    worker.onmessage = ({
      data,
    }: MessageEvent<
      FromWorker | FromContest | FromStudy | FromRemedies | FromHelps | FromRecord | FromStorm
    >) => {
      if ('id' in data && data.id === newest) heard(data)
    }
    worker.onerror = (event) => {
      worker = undefined
      failed(event.message || 'The engine stopped for no reason given.')
    }
    return worker
  }
  return {
    ask: (message) => {
      newest += 1
      engine().postMessage(message(newest))
    },
  }
}
