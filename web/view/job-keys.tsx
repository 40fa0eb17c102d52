/** Starts a long computation, stops it, and tells how far it is. */
import { say } from '../text/say.ts'

interface JobKeys {
  readonly label: string
  readonly start: () => void
  readonly stop: () => void
  /** Fraction done; undefined when it does not run. */
  readonly fraction: number | undefined
  readonly status: string
}

export function JobKeys({ label, start, stop, fraction, status }: JobKeys) {
  return (
    <>
      <button type="button" class="chief" disabled={fraction !== undefined} onClick={start}>
        {label}
      </button>
      {fraction === undefined ? null : (
        <button type="button" onClick={stop}>
          {say`Stop`}
        </button>
      )}
      <output aria-live="polite">{status}</output>
      {fraction === undefined ? null : (
        <progress aria-label={say`Computed so far`} max={1} value={fraction} />
      )}
    </>
  )
}
