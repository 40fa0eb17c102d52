/** What somebody handed in, read before a job begins: a design, or an error that holds every fault of the text. */
import type { Design, Fault } from '../../src/index.ts'
import { faultText } from '../../src/machine/fault.ts'
import { parseDesignText } from '../../src/machine/parse.ts'
import type { ShownFault } from '../messages.ts'

export const shownFaults = (faults: readonly Fault[]): readonly ShownFault[] =>
  faults.map((fault) => ({ ...fault, text: faultText(fault) }))

/** An error that carries the faults, so that they can be told beside their fields. */
export function faultError(faults: readonly Fault[], before = ''): RangeError {
  const shown = shownFaults(faults)
  return Object.assign(new RangeError(`${before}${shown.map(({ text }) => text).join('; ')}`), {
    faults: shown,
  })
}

/** The faults of such an error; none of any other. */
export const faultsOfError = (error: unknown): readonly ShownFault[] =>
  error instanceof RangeError && 'faults' in error ? (error.faults as readonly ShownFault[]) : []

export function askedDesign(text: string, before = ''): Design {
  const parsed = parseDesignText(text)
  if (parsed.ok) return parsed.design
  throw faultError(parsed.faults, before)
}
