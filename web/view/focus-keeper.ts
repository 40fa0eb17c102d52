/** Keeps the focus near the hand when the control that had it goes away or is put out of use, as "Stop" does when it is pressed. */

/** What takes the focus without bringing up the keys of a phone. */
const takers = 'button:enabled, summary, a[href]'

const gone = (element: HTMLElement): boolean => !element.isConnected || element.matches(':disabled')

/** The nearest control in the narrowest place that is still there. */
function nearest(places: readonly Element[]): HTMLElement | undefined {
  for (const place of places) {
    if (!place.isConnected) continue
    const taker = [...place.querySelectorAll<HTMLElement>(takers)].find(
      (each) => each.tabIndex >= 0 && each.checkVisibility(),
    )
    if (taker) return taker
  }
  return undefined
}

function placesAround(element: Element, within: Element): Element[] {
  const places: Element[] = []
  for (let place = element.parentElement; place && place !== within; place = place.parentElement)
    places.push(place)
  return places
}

/** Watches what has the focus within an element for as long as the page is open. */
export function keepFocus(within: HTMLElement): void {
  let last: HTMLElement | undefined
  let places: readonly Element[] = []
  let waiting = false
  within.addEventListener('focusin', ({ target }) => {
    if (!(target instanceof HTMLElement)) return
    last = target
    places = placesAround(target, within)
  })
  const look = () => {
    waiting = false
    // whoever points beside everything wants no focus: then the control is still there
    if (last === undefined || document.activeElement !== document.body || !gone(last)) return
    // within the room if there is one, whose own place is better than a control far away
    const room = document.getElementById('room')
    const near = places.filter((place) => !room || !place.contains(room))
    ;(nearest(near) ?? room)?.focus({ preventScroll: true })
  }
  new MutationObserver(() => {
    if (waiting) return
    waiting = true
    // a room that is entered takes the focus itself, and the browser lets go of a disabled control when it draws
    requestAnimationFrame(() => requestAnimationFrame(look))
  }).observe(within, { childList: true, subtree: true, attributeFilter: ['disabled'] })
}
