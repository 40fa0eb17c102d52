/** The walk round the page: its step, and that it has been done, which this browser remembers. */
import { signal } from '@preact/signals'
import { say } from '../text/say.ts'
import { notice } from './design.ts'

const place = 'gustloom.walk'

function kept(): boolean {
  try {
    return localStorage.getItem(place) === 'done'
  } catch {
    return false
  }
}

export const walkDone = signal(kept())
/** Undefined while nobody walks. */
export const walkStep = signal<number | undefined>(undefined)

let fetched = false

export function startWalk(): void {
  walkStep.value = 0
  if (fetched) return
  fetched = true
  import('../hint/walk.tsx').then(
    ({ placeWalk }) => placeWalk(),
    () => {
      fetched = false
      walkStep.value = undefined
      notice.value = say`This part of the page did not arrive. Load the page again when there is a network.`
    },
  )
}

/** However far it came, it does not offer itself again. */
export function endWalk(): void {
  walkStep.value = undefined
  walkDone.value = true
  try {
    localStorage.setItem(place, 'done')
  } catch {
    // a browser that keeps nothing offers the walk again
  }
}
