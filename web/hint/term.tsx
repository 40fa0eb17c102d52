/** A word of the trade, underlined by dots, that says what it means when it is asked. */
import type { ComponentChildren } from 'preact'
import { useHint } from './open-hint.ts'
import type { TermKey } from './term-key.ts'
import '../style/hint.css'

export function Term({ of, children }: { readonly of: TermKey; readonly children: ComponentChildren }) {
  const hint = useHint({ kind: 'term', key: of })
  return (
    <button type="button" class="term" {...hint}>
      {children}
    </button>
  )
}
