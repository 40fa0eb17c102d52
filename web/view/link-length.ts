/** How long the link with a design would be, told before it is copied. */
import { useEffect, useState } from 'preact/hooks'
import type { RawObject } from '../store/raw-document.ts'
import { linkOf } from '../store/sharing.ts'

/** Typing goes before; the length may follow [ms]. */
const rest = 300

/** Letters of the link; undefined until it has been made. */
export function useLinkLength(document: RawObject): number | undefined {
  const [length, setLength] = useState<number>()
  useEffect(() => {
    let asked = true
    const timer = setTimeout(() => {
      void linkOf(document).then((link) => {
        if (asked) setLength(link.length)
      })
    }, rest)
    return () => {
      asked = false
      clearTimeout(timer)
    }
  }, [document])
  return length
}
