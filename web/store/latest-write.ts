/** Writes one after another, the newest only: what was asked for while a write ran and is already out of date is left out. */

export interface LatestWrite<Value> {
  /** Begins at once where nothing runs, so that a page that dies keeps all but the last moments. */
  readonly write: (value: Value) => void
  /** Settles when nothing is left to be written. */
  readonly rest: () => Promise<void>
}

export function latestWrite<Value>(
  put: (value: Value) => Promise<void>,
  told: (error: unknown) => void,
): LatestWrite<Value> {
  let waiting: { readonly value: Value } | undefined
  let running: Promise<void> | undefined
  const run = async (): Promise<void> => {
    while (waiting) {
      const { value } = waiting
      waiting = undefined
      try {
        await put(value)
        told(undefined)
      } catch (error) {
        told(error)
      }
    }
    running = undefined
  }
  return {
    write: (value) => {
      waiting = { value }
      running ??= run()
    },
    rest: () => running ?? Promise.resolve(),
  }
}
