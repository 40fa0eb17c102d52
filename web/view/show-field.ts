/** Brings the control of a path into sight: opens its room, and what hides it there. */
import { fieldId } from '../station/label.ts'
import { roomOfPath } from '../store/place-concern.ts'
import { enter } from '../store/room.ts'

export function showField(path: string): void {
  enter(roomOfPath(path))
  // the room has to be drawn first
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      const id = fieldId(path)
      const element =
        document.getElementById(id) ?? document.querySelector<HTMLElement>(`[id^="${CSS.escape(id)}"]`)
      if (!element) return
      for (let around = element.parentElement; around; around = around.parentElement)
        if (around instanceof HTMLDetailsElement) around.open = true
      // the room takes the keyboard when it is entered; the field has it after that
      setTimeout(() => {
        element.scrollIntoView({ block: 'center' })
        element.focus()
      })
    }),
  )
}
