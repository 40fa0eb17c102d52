/** The buttons that start the walk round the page: one that stays, and an offer that goes once the walk was done. */
import { startWalk, walkDone } from '../store/walk.ts'
import { say } from '../text/say.ts'

/** The settings fold away, and the keyboard has a place to come back to. */
function start({ currentTarget }: { readonly currentTarget: HTMLElement }): void {
  const folded = currentTarget.closest('details')
  folded?.querySelector('summary')?.focus()
  folded?.removeAttribute('open')
  startWalk()
}

export const WalkStart = () => (
  <button type="button" class="walk-start" onClick={start}>
    {say`Show me round the page`}
  </button>
)

/** Where somebody may begin to look round. */
export const WalkOffer = () =>
  walkDone.value ? null : (
    <p class="note walk-offer">
      {say`New here? Six steps show what stands where.`} <WalkStart />
    </p>
  )
