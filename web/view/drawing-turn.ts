/** Turns of the pictures: numbers are shown first, then picture after picture is drawn, those in sight before the others. */

interface Waiting {
  readonly place: Element
  readonly draw: () => void
  /** An older drawing stands there still. */
  readonly again: boolean
}

/** Drawn between two frames at most so long, so that a hand on the page is never kept waiting [ms]. */
const most = 10
/** What is out of sight is drawn again when so long nothing was asked for, unless it comes into sight before [ms]. */
const calm = 350

const waiting = new Set<Waiting>()
let called = false
let askedAt = Number.NEGATIVE_INFINITY
let later: ReturnType<typeof setTimeout> | undefined

/** Above and below what is looked at nobody waits. */
function isInSight({ place }: Waiting): boolean {
  const { top, bottom } = place.getBoundingClientRect()
  return bottom > 0 && top < innerHeight
}

function draw(one: Waiting): void {
  waiting.delete(one)
  one.draw()
}

const tell = () => document.documentElement.toggleAttribute('data-drawing', waiting.size > 0)

function turn(): void {
  called = false
  const begun = performance.now()
  const isCalm = begun - askedAt >= calm
  const inSight = [...waiting].filter(isInSight)
  const others = [...waiting].filter((one) => !inSight.includes(one) && (isCalm || !one.again))
  const due = [...inSight, ...others]
  for (const one of due) {
    if (performance.now() - begun > most) break
    draw(one)
  }
  tell()
  clearTimeout(later)
  if (due.some((one) => waiting.has(one))) call()
  else if (waiting.size > 0) later = setTimeout(call, calm)
}

/** After the next frame has been painted. */
function call(): void {
  if (called || waiting.size === 0) return
  called = true
  requestAnimationFrame(() => setTimeout(turn))
}

/** Draws when the picture’s turn comes; what it returns takes it back. */
export function drawSoon(place: Element, drawn: () => void, again: boolean): () => void {
  const one: Waiting = { place, draw: drawn, again }
  waiting.add(one)
  askedAt = performance.now()
  tell()
  call()
  return () => {
    waiting.delete(one)
    tell()
  }
}

addEventListener('scroll', call, { passive: true })

/** Draws all that waits, for paper, which has no later. */
export function drawNow(): void {
  for (const one of [...waiting]) draw(one)
  tell()
}
