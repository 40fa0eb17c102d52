/** A number of the page that tells where it comes from when it is pointed at, reached by keyboard or tapped. */
import type { FigureKey } from './figure-method.ts'
import { useHint } from './open-hint.ts'
import '../style/hint.css'

export function Figure({
  of,
  name,
  children,
}: {
  readonly of: FigureKey
  /** What is read out before the number. */
  readonly name: string
  /** Value with unit, and its spread where it has one. */
  readonly children: string
}) {
  const hint = useHint({ kind: 'figure', key: of })
  return (
    <button type="button" class="figure-number" aria-label={`${name}: ${children}`} {...hint}>
      {children}
    </button>
  )
}
