/** A group of pictures that are seldom asked for: open on a wide page, folded on a phone until it is wanted. */
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { narrow } from '../store/narrow.ts'

interface FoldGroup {
  readonly title: string
  /** What is in it, in one line. */
  readonly note: string
  readonly children: ComponentChildren
}

export function FoldGroup({ title, note, children }: FoldGroup) {
  const [open, setOpen] = useState(() => !narrow.peek())
  return (
    <details class="fold-group" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h3>{title}</h3> <span class="note">{note}</span>
      </summary>
      <div class="fold-body">{children}</div>
    </details>
  )
}
