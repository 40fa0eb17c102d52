/** How much room the shelf takes on this machine, and whether the browser may clear it when room gets short. */
import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { listed } from '../store/shelf-list.ts'
import { bytesText } from '../store/shown-design.ts'
import { say } from '../text/say.ts'

export function StoreRoom() {
  const room = useSignal<StorageEstimate | undefined>(undefined)
  const lasting = useSignal<boolean | undefined>(undefined)
  const refused = useSignal(false)
  const store: StorageManager | undefined = navigator.storage
  const designs = listed.value
  useEffect(() => {
    // without a secure connection, or in a private window, the browser tells nothing
    void store?.estimate?.().then(
      (found) => {
        room.value = found
      },
      () => {},
    )
    void store?.persisted?.().then(
      (found) => {
        lasting.value = found
      },
      () => {},
    )
  }, [designs])
  const { usage, quota } = room.value ?? {}
  return (
    <div class="store-room">
      {usage === undefined || quota === undefined ? null : (
        <p class="note">
          {say`The page with its shelf takes ${bytesText(usage)} of the ${bytesText(quota)} that the browser gives it.`}
        </p>
      )}
      {lasting.value === false ? (
        <>
          <p class="note">
            {say`The browser may clear the shelf when the machine runs short of room. Save all as one file now and then, or ask it to keep the shelf for good.`}
          </p>
          <button
            type="button"
            onClick={() =>
              void store?.persist?.().then((granted) => {
                lasting.value = granted
                refused.value = !granted
              })
            }
          >
            {say`Ask the browser to keep it`}
          </button>
          {refused.value ? (
            <p class="note" role="status">
              {say`The browser declined for now. It often agrees once the page is installed or bookmarked.`}
            </p>
          ) : null}
        </>
      ) : null}
      {lasting.value === true ? (
        <p class="note">{say`The browser has agreed to keep the shelf until you clear it yourself.`}</p>
      ) : null}
    </div>
  )
}
