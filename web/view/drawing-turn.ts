/** Turns of the pictures: numbers are shown first, then picture after picture is drawn, those in sight before the others. */

interface Waiting {
  readonly place: Element
  readonly draw: () => void
}

/** Drawn between two frames at most so long, so that a hand on the page is never kept waiting [ms]. */
const most = 10

const waiting = new Set<Waiting>()
let called = false

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
  const inSight = [...waiting].filter(isInSight)
  for (const one of [...inSight, ...waiting]) {
    if (performance.now() - begun > most) break
    if (waiting.has(one)) draw(one)
  }
  tell()
  call()
}

/** After the next frame has been painted. */
function call(): void {
  if (called || waiting.size === 0) return
  called = true
  requestAnimationFrame(() => setTimeout(turn))
}

/** Draws when the picture’s turn comes; what it returns takes it back. */
export function drawSoon(place: Element, drawn: () => void): () => void {
  const one: Waiting = { place, draw: drawn }
  waiting.add(one)
  tell()
  call()
  return () => {
    waiting.delete(one)
    tell()
  }
}

/** Draws all that waits, for paper, which has no later. */
export function drawNow(): void {
  for (const one of [...waiting]) draw(one)
  tell()
}
