/** Faults shown where they arise. */

import type { ShownFault } from '../messages.ts'
import { faults } from '../store/design.ts'
import { measured } from '../store/measure.ts'
import { told } from '../text/engine-sentence.ts'
import { fieldId } from './label.ts'

const within = (fault: ShownFault, path: string) =>
  fault.path === path ||
  ['.value', '.spread', '.known'].some((part) => fault.path === path + part) ||
  (fault.path.startsWith(`${path}[`) && /^\[\d+\]$/.test(fault.path.slice(path.length)))

export const faultsOf = (path: string): readonly ShownFault[] =>
  faults.value.filter((fault) => within(fault, path))

export const faultId = (path: string): string => `${fieldId(path)}-fault`

interface FaultNoteProps {
  readonly path: string
  /** What the field itself has against the text in it: with a way out, in place of the engine's plain word. */
  readonly typed?: string
}

export function FaultNote({ path, typed = '' }: FaultNoteProps) {
  const sentences = typed === '' ? faultsOf(path).map(({ text }) => told(measured(text))) : [typed]
  if (sentences.length === 0) return null
  return (
    <p class="fault" id={faultId(path)}>
      {sentences.map((sentence) => (
        <span key={sentence}>{sentence}</span>
      ))}
    </p>
  )
}
