/** Steps back and forth through what was done to the design, by button and by keys. */
import { useEffect } from 'preact/hooks'
import { words } from '../station/label.ts'
import { changes, redo, undo } from '../store/design.ts'
import { say } from '../text/say.ts'

/** A place of the document by its last word; anything else as it is said. */
const said = (what: string): string =>
  what.includes(' ')
    ? what
    : words(
        what
          .split('.')
          .at(-1)!
          .replace(/\[\d+\]$/, ''),
      ).toLowerCase()

const arrows = {
  back: 'M8 4 3 9l5 5M3 9h10a5 5 0 0 1 0 10h-3',
  forth: 'M14 4l5 5-5 5M19 9H9a5 5 0 0 0 0 10h3',
} as const

const Arrow = ({ to }: { readonly to: keyof typeof arrows }) => (
  <svg class="step-arrow" viewBox="0 0 22 22" width="18" height="18" aria-hidden="true">
    <path d={arrows[to]} fill="none" stroke="currentColor" stroke-width="2" stroke-linecap="round" />
  </svg>
)

export function Undo() {
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return
      const key = event.key.toLowerCase()
      if (key !== 'z' && key !== 'y') return
      event.preventDefault()
      if (key === 'y' || event.shiftKey) redo()
      else undo()
    }
    addEventListener('keydown', pressed)
    return () => removeEventListener('keydown', pressed)
  }, [])
  const { past, present, future } = changes.value
  const [next] = future
  return (
    <>
      <button
        type="button"
        class="step"
        disabled={past.length === 0}
        onClick={undo}
        aria-label={say`Undo`}
        title={past.length === 0 ? say`Nothing to undo` : say`Undo: ${said(present.what)}`}
      >
        <Arrow to="back" />
      </button>
      <button
        type="button"
        class="step"
        disabled={next === undefined}
        onClick={redo}
        aria-label={say`Redo`}
        title={next === undefined ? say`Nothing to redo` : say`Redo: ${said(next.what)}`}
      >
        <Arrow to="forth" />
      </button>
    </>
  )
}
