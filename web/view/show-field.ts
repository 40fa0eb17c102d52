/** Brings the control of a path into sight, opening what hides it. */
import { fieldId } from '../station/label.ts'

export function showField(path: string): void {
  const id = fieldId(path)
  const element =
    document.getElementById(id) ?? document.querySelector<HTMLElement>(`[id^="${CSS.escape(id)}"]`)
  if (!element) return
  for (let around = element.parentElement; around; around = around.parentElement)
    if (around instanceof HTMLDetailsElement) around.open = true
  element.scrollIntoView({ block: 'center' })
  element.focus()
}
