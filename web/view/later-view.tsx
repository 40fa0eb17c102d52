/** A part of the page whose script comes only when it is looked at. */
import { type ComponentType, createElement } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { say } from '../text/say.ts'

interface LaterView<Given extends object> {
  readonly load: () => Promise<ComponentType<Given>>
  /** What it is shown with. */
  readonly given: Given
}

export function LaterView<Given extends object>({ load, given }: LaterView<Given>) {
  const [View, setView] = useState<ComponentType<Given>>()
  const [missing, setMissing] = useState(false)
  useEffect(() => {
    let asked = true
    load().then(
      (found) => {
        if (asked) setView(() => found)
      },
      () => {
        if (asked) setMissing(true)
      },
    )
    return () => {
      asked = false
    }
  }, [load])
  if (View) return createElement(View, given)
  return (
    <p class="note waiting">
      {missing
        ? say`This part of the page did not arrive. Load the page again when there is a network.`
        : say`One moment.`}
    </p>
  )
}
