/** The popover of the hints: where it stands, and how it closes; put beside the page the first time one is asked for. */
import { render } from 'preact'
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import { snapshot } from '../store/design.ts'
import { room } from '../store/room.ts'
import { say } from '../text/say.ts'
import { HintBody } from './hint-body.tsx'
import { closeHint, keepHint, letGo, type OpenHint, openHint, popoverId } from './open-hint.ts'

/** Left between the hint and what is around it [px]. */
const margin = 8
/** It is never made lower than this, however little room there is [px]. */
const leastHeight = 160
const greatestWidth = 420

/** Under the number where there is room, above it otherwise, and as high as the room allows. */
function stand(popover: HTMLElement, { anchor }: OpenHint): void {
  if (!anchor.isConnected) {
    closeHint()
    return
  }
  const { style } = popover
  const { left, top, bottom, width } = anchor.getBoundingClientRect()
  const [seenWidth, seenHeight] = [document.documentElement.clientWidth, window.innerHeight]
  const own = Math.min(greatestWidth, seenWidth - 2 * margin)
  const [above, below] = [top - 2 * margin, seenHeight - bottom - 2 * margin]
  const under = below >= above || popover.scrollHeight <= below
  style.width = `${own}px`
  style.maxHeight = `${Math.max(leastHeight, under ? below : above)}px`
  const wished = left + width / 2 - own / 2
  style.left = `${Math.min(Math.max(margin, wished), Math.max(margin, seenWidth - own - margin))}px`
  style.top = under ? `${Math.min(bottom + margin, seenHeight - leastHeight)}px` : 'auto'
  style.bottom = under ? 'auto' : `${seenHeight - top + margin}px`
}

const reachable = 'button, a[href], summary'

/** Behind the last of its buttons the way goes on where it was left. */
function keepRound(event: KeyboardEvent): void {
  if (event.key !== 'Tab') return
  const popover = event.currentTarget as HTMLElement
  const stops = [...popover.querySelectorAll<HTMLElement>(reachable)].filter(
    (stop) => stop.offsetParent !== null,
  )
  const here = document.activeElement
  const leaves = event.shiftKey ? here === popover || here === stops[0] : here === stops.at(-1)
  if (!leaves) return
  event.preventDefault()
  closeHint()
}

function HintPlace() {
  const open = openHint.value
  const place = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const popover = place.current!
    if (!open) {
      if (popover.matches(':popover-open')) popover.hidePopover()
      return
    }
    if (!popover.matches(':popover-open')) popover.showPopover()
    popover.scrollTop = 0
    stand(popover, open)
  }, [open])
  useEffect(() => {
    if (open?.firm) place.current?.focus({ preventScroll: true })
  }, [open])
  const [at, result] = [room.value, snapshot.value]
  useEffect(() => {
    // a number that is taken off the page takes its hint with it, once the page is drawn anew
    const frame = requestAnimationFrame(() => {
      const here = openHint.value
      if (here && !here.anchor.isConnected) openHint.value = undefined
    })
    return () => cancelAnimationFrame(frame)
  }, [at, result])
  useEffect(() => {
    const popover = place.current!
    const again = () => {
      if (openHint.value) stand(popover, openHint.value)
    }
    const outside = ({ target }: Event) => {
      const here = openHint.value
      if (!here || !(target instanceof Node)) return
      if (!popover.contains(target) && !here.anchor.contains(target)) openHint.value = undefined
    }
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape') closeHint()
    }
    const watch = new ResizeObserver(again)
    watch.observe(popover)
    addEventListener('resize', again)
    addEventListener('scroll', again, { capture: true, passive: true })
    document.addEventListener('pointerdown', outside)
    document.addEventListener('keydown', onKey)
    return () => {
      watch.disconnect()
      removeEventListener('resize', again)
      removeEventListener('scroll', again, { capture: true })
      document.removeEventListener('pointerdown', outside)
      document.removeEventListener('keydown', onKey)
    }
  }, [])
  return (
    <div
      id={popoverId}
      class="hint"
      popover="manual"
      role="dialog"
      aria-label={say`Where this comes from`}
      tabIndex={-1}
      ref={place}
      onPointerEnter={keepHint}
      onPointerLeave={() => {
        const here = openHint.value
        if (here) letGo(here.id)
      }}
      onKeyDown={keepRound}
    >
      {open ? <HintBody subject={open.subject} back={open.before} /> : null}
    </div>
  )
}

export function placeHints(): void {
  const host = document.createElement('div')
  document.body.append(host)
  render(<HintPlace />, host)
}
