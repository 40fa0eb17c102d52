/** Steps back and forth through what was done to the design, by button and by keys. */
import { useEffect } from 'preact/hooks'
import { words } from '../station/label.ts'
import { changes, redo, undo } from '../store/design.ts'

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
        disabled={past.length === 0}
        onClick={undo}
        title={past.length === 0 ? undefined : `Undo: ${said(present.what)}`}
      >
        Undo
      </button>
      <button
        type="button"
        disabled={next === undefined}
        onClick={redo}
        title={next === undefined ? undefined : `Redo: ${said(next.what)}`}
      >
        Redo
      </button>
    </>
  )
}
