/** Which hint is open, beside what, and how firmly; its popover and all it tells are fetched the first time. */
import { signal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { notice } from '../store/design.ts'
import { say } from '../text/say.ts'
import type { FigureKey } from './figure-method.ts'
import type { TermKey } from './term-key.ts'

export type HintSubject =
  | { readonly kind: 'figure'; readonly key: FigureKey }
  | { readonly kind: 'term'; readonly key: TermKey }

export interface OpenHint {
  /** Of the button it stands beside. */
  readonly id: string
  readonly anchor: HTMLElement
  readonly subject: HintSubject
  /** What was told before a word in it was asked for. */
  readonly before?: HintSubject
  /** Asked for by a press: it stays, and takes the keyboard, until it is closed. */
  readonly firm: boolean
}

export const openHint = signal<OpenHint | undefined>(undefined)

/** The element that shows hints. */
export const popoverId = 'hint'

/** A pointer that rests so long wants to know [ms]. */
const rest = 300
/** It may take so long on its way from the number into the hint [ms]. */
const grace = 250

let timer: ReturnType<typeof setTimeout> | undefined
/** Given back the keyboard on closing: it does not open again by that alone. */
let returned: HTMLElement | undefined
let fetched = false

const later = (work: () => void, delay: number) => {
  clearTimeout(timer)
  timer = setTimeout(work, delay)
}

/** The pointer came back, or reached the hint. */
export const keepHint = (): void => clearTimeout(timer)

export function closeHint(): void {
  clearTimeout(timer)
  const open = openHint.value
  if (open === undefined) return
  openHint.value = undefined
  const popover = document.getElementById(popoverId)
  if (popover?.contains(document.activeElement)) {
    returned = open.anchor
    open.anchor.focus()
  }
}

/** Closes what was not asked for by a press, once the pointer or the keyboard has been gone for a moment. */
export const letGo = (id: string): void =>
  later(() => {
    if (openHint.value?.id === id && !openHint.value.firm) openHint.value = undefined
  }, grace)

function open(next: OpenHint): void {
  clearTimeout(timer)
  openHint.value = next
  if (fetched) return
  fetched = true
  import('./hint-place.tsx').then(
    ({ placeHints }) => placeHints(),
    () => {
      fetched = false
      openHint.value = undefined
      notice.value = say`This part of the page did not arrive. Load the page again when there is a network.`
    },
  )
}

/** Another subject in the hint that is open, beside the same button. */
export function turnHint(subject: HintSubject): void {
  const here = openHint.value
  if (!here) return
  const { before: _, ...rest } = here
  const deeper = here.subject.kind === 'figure' && subject.kind === 'term'
  openHint.value = { ...rest, subject, firm: true, ...(deeper ? { before: here.subject } : {}) }
}

/** What a button needs to open the hint on its subject: by pointer, keyboard or tap. */
export function useHint(subject: HintSubject) {
  const id = useId()
  const here = openHint.value?.id === id ? openHint.value : undefined
  return {
    'aria-haspopup': 'dialog' as const,
    'aria-expanded': here !== undefined,
    onPointerEnter: ({ pointerType, currentTarget }: PointerEvent) => {
      if (pointerType !== 'mouse') return
      if (openHint.value?.id === id) keepHint()
      else if (!openHint.value?.firm)
        later(() => open({ id, anchor: currentTarget as HTMLElement, subject, firm: false }), rest)
    },
    onPointerLeave: () => letGo(id),
    onFocus: ({ currentTarget }: FocusEvent) => {
      const anchor = currentTarget as HTMLElement
      const again = returned === anchor
      returned = undefined
      // a press gives the keyboard too, and then decides by itself
      if (!again && anchor.matches(':focus-visible')) open({ id, anchor, subject, firm: false })
    },
    onBlur: ({ relatedTarget }: FocusEvent) => {
      const next = relatedTarget instanceof Element ? relatedTarget : undefined
      // the keyboard goes on elsewhere: the hint must not lie over what it reaches
      if (
        next &&
        !document.getElementById(popoverId)?.contains(next) &&
        openHint.value?.id === id &&
        !openHint.value.firm
      )
        closeHint()
      else letGo(id)
    },
    onClick: ({ currentTarget }: MouseEvent) => {
      if (openHint.value?.id === id && openHint.value.firm) closeHint()
      else open({ id, anchor: currentTarget as HTMLElement, subject, firm: true })
    },
  }
}
