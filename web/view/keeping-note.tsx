/** What the person has to know about keeping: a change that is not safe, another window's work, a newer page ready. */
import { changedElsewhere, keptForOther, trouble } from '../store/autosave.ts'
import { newerReady, takeNewer } from '../store/offline.ts'
import { say } from '../text/say.ts'
import { momentText } from './moment.ts'

/** The shelf's own script comes when it is needed. */
const showOther = async (): Promise<void> => (await import('../store/shelf-list.ts')).showOther()

export function KeepingNote() {
  const elsewhere = changedElsewhere.value
  return (
    <>
      {trouble.value === '' ? null : (
        <p class="notice trouble" role="alert">
          {trouble.value}
        </p>
      )}
      {elsewhere === undefined ? null : (
        <div class="notice" role="status">
          <p>
            {say`Another window changed this design, ${momentText(elsewhere)}. Go on here if you like: the other state is then kept as a version.`}
          </p>
          <button type="button" onClick={() => void showOther()}>
            {say`Show the other state here`}
          </button>
        </div>
      )}
      {keptForOther.value ? (
        <p class="notice" role="status">
          {say`Another window had changed this design meanwhile. Its state is kept among the versions on the shelf.`}
        </p>
      ) : null}
      {newerReady.value ? (
        <div class="notice quiet-notice" role="status">
          <p>{say`A newer Gustloom is ready: reload when it suits you.`}</p>
          <button type="button" onClick={takeNewer}>
            {say`Reload now`}
          </button>
        </div>
      ) : null}
    </>
  )
}
