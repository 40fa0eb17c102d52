/** The versions of one design: what each was kept for, when, and the way back to it. */
import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { ShelvedVersion } from '../store/shelf.ts'
import { type ListedDesign, restore, versionsOfDesign } from '../store/shelf-list.ts'
import { bytesText, sizeOf } from '../store/shown-design.ts'
import type { TurningPoint } from '../store/turning-point.ts'
import { say } from '../text/say.ts'
import { momentText } from './moment.ts'

const words: Readonly<Record<TurningPoint, () => string>> = {
  opened: () => say`as it was opened`,
  working: () => say`while you worked on it`,
  remedy: () => say`before a remedy was taken`,
  replaced: () => say`before another state took its place`,
  restored: () => say`before an older version was brought back`,
  'other-window': () => say`as another window had it`,
  'left-over': () => say`as a page left it that did not get to keep it`,
}

/** More are shown on demand. */
const shownAtFirst = 8

export function Versions({ one }: { readonly one: ListedDesign }) {
  const versions = useSignal<readonly ShelvedVersion[] | undefined>(undefined)
  const all = useSignal(false)
  useEffect(() => {
    let asked = true
    void versionsOfDesign(one.id).then((found) => {
      if (asked) versions.value = found
    })
    return () => {
      asked = false
    }
  }, [one.id, one.changedAt, one.versions])
  if (versions.value === undefined) return null
  if (versions.value.length === 0)
    return (
      <p class="note">
        {say`No versions yet. One is kept when you begin to change the design, every ten minutes while you work on it, and before a remedy or an older version takes its place.`}
      </p>
    )
  const shown = all.value ? versions.value : versions.value.slice(0, shownAtFirst)
  return (
    <>
      <h4>{say`Versions`}</h4>
      <ol class="version-list">
        {shown.map((version) => (
          <li key={version.at}>
            <span>
              <time dateTime={new Date(version.at).toISOString()}>{momentText(version.at)}</time>
              <small>{say`${words[version.what]()}, ${bytesText(sizeOf(version.document))}`}</small>
            </span>
            <button
              type="button"
              onClick={() => void restore(version)}
              aria-label={say`Go back to the version of ${momentText(version.at)}`}
            >
              {say`Go back to it`}
            </button>
          </li>
        ))}
      </ol>
      {shown.length < versions.value.length ? (
        <button
          type="button"
          onClick={() => {
            all.value = true
          }}
        >
          {say`Show all ${versions.value.length} versions`}
        </button>
      ) : null}
    </>
  )
}
