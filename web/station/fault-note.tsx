/** Faults shown where they arise. */

import type { ShownFault } from '../messages.ts'
import { faults } from '../store/design.ts'
import { fieldId } from './label.ts'

const within = (fault: ShownFault, path: string) =>
  fault.path === path ||
  ['.value', '.spread', '.known'].some((part) => fault.path === path + part) ||
  (fault.path.startsWith(`${path}[`) && /^\[\d+\]$/.test(fault.path.slice(path.length)))

export const faultsOf = (path: string): readonly ShownFault[] =>
  faults.value.filter((fault) => within(fault, path))

export const faultId = (path: string): string => `${fieldId(path)}-fault`

export function FaultNote({ path }: { readonly path: string }) {
  const found = faultsOf(path)
  if (found.length === 0) return null
  return (
    <p class="fault" id={faultId(path)}>
      {found.map((fault) => (
        <span key={fault.text}>{fault.text}</span>
      ))}
    </p>
  )
}
