/** The shelf: every design with its versions, opened, doubled, renamed, put aside, brought in and taken along. */
import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { saveFile } from '../picture/save-file.ts'
import { openId } from '../store/design.ts'
import { copyLink } from '../store/sharing.ts'
import {
  bringBack,
  bringIn,
  clearForGood,
  duplicate,
  type ListedDesign,
  layAside,
  listed,
  listNotes,
  listTrouble,
  openShelved,
  watchShelf,
  wholeShelf,
} from '../store/shelf-list.ts'
import { bytesText } from '../store/shown-design.ts'
import { say } from '../text/say.ts'
import { DesignName } from './design-name.tsx'
import { useLinkLength } from './link-length.ts'
import { momentText } from './moment.ts'
import { saveDesign } from './saved-design.ts'
import { StoreRoom } from './store-room.tsx'
import { Versions } from './version-list.tsx'
import '../style/shelf.css'

function LinkButton({ one }: { readonly one: ListedDesign }) {
  const letters = useLinkLength(one.document)
  const told = useSignal('')
  return (
    <>
      <button
        type="button"
        onClick={() =>
          void copyLink(one.document).then((sentence) => {
            told.value = sentence
          })
        }
      >
        {letters === undefined ? say`Copy a link` : say`Copy a link of ${letters} letters`}
      </button>
      <p class="shelf-told" role="status">
        {told.value}
      </p>
    </>
  )
}

function Managed({ one, open }: { readonly one: ListedDesign; readonly open: boolean }) {
  return (
    <div class="shelf-managed">
      <DesignName one={one} />
      <div class="shelf-keys">
        <button type="button" onClick={() => void duplicate(one.id)}>
          {say`Duplicate`}
        </button>
        <button type="button" onClick={() => saveDesign(one.document)}>
          {say`Save as a file`}
        </button>
        {open ? null : (
          <button type="button" onClick={() => void layAside(one.id)}>
            {say`Put aside`}
          </button>
        )}
        <LinkButton one={one} />
      </div>
      {open ? <p class="note">{say`To put this one aside, open another one first.`}</p> : null}
      <Versions one={one} />
    </div>
  )
}

const versionsText = (count: number): string =>
  count === 0 ? say`no versions yet` : count === 1 ? say`one version` : say`${count} versions`

function Facts({ one }: { readonly one: ListedDesign }) {
  return (
    <p class="note">
      {say`Changed ${momentText(one.changedAt)}, ${bytesText(one.size)}, ${versionsText(one.versions)}`}
    </p>
  )
}

function InUse({ one }: { readonly one: ListedDesign }) {
  const managed = useSignal(false)
  const open = one.id === openId.value
  const place = `shelved-${one.id}`
  return (
    <li class={open ? 'shelved open' : 'shelved'}>
      <div class="shelf-line">
        <div class="shelf-words">
          <h3>
            <bdi>{one.name}</bdi>
            {open ? <span class="open-mark">{say`open now`}</span> : null}
          </h3>
          <Facts one={one} />
        </div>
        <div class="shelf-keys">
          {open ? null : (
            <button type="button" onClick={() => void openShelved(one.id)} aria-label={say`Open ${one.name}`}>
              {say`Open`}
            </button>
          )}
          <button
            type="button"
            aria-expanded={managed.value}
            aria-controls={place}
            aria-label={say`Manage ${one.name}`}
            onClick={() => {
              managed.value = !managed.value
            }}
          >
            {say`Manage`}
          </button>
        </div>
      </div>
      <div id={place}>{managed.value ? <Managed one={one} open={open} /> : null}</div>
    </li>
  )
}

/** The second of two steps, in place: says what goes, and stands ready to be left. */
function Sure({ one, leave }: { readonly one: ListedDesign; readonly leave: () => void }) {
  const harmless = useRef<HTMLButtonElement>(null)
  useEffect(() => harmless.current?.focus(), [])
  return (
    <div class="shelf-sure">
      <p>
        {one.versions === 0
          ? say`“${one.name}” goes for good. There is no way back from this.`
          : say`“${one.name}” goes for good, with ${versionsText(one.versions)}. There is no way back from this.`}
      </p>
      <div class="shelf-keys">
        <button type="button" class="grave" onClick={() => void clearForGood(one.id)}>
          {say`Clear for good`}
        </button>
        <button type="button" ref={harmless} onClick={leave}>
          {say`Keep it`}
        </button>
      </div>
    </div>
  )
}

function Aside({ one }: { readonly one: ListedDesign }) {
  const sure = useSignal(false)
  return (
    <li class="shelved">
      <div class="shelf-line">
        <div class="shelf-words">
          <h3>
            <bdi>{one.name}</bdi>
          </h3>
          <Facts one={one} />
        </div>
        <div class="shelf-keys">
          <button
            type="button"
            onClick={() => void bringBack(one.id)}
            aria-label={say`Bring back ${one.name}`}
          >
            {say`Bring back`}
          </button>
          <button
            type="button"
            aria-expanded={sure.value}
            aria-label={say`Clear ${one.name} …`}
            onClick={() => {
              sure.value = true
            }}
          >
            {say`Clear …`}
          </button>
        </div>
      </div>
      {sure.value ? (
        <Sure
          one={one}
          leave={() => {
            sure.value = false
          }}
        />
      ) : null}
    </li>
  )
}

async function saveShelf(): Promise<void> {
  const text = await wholeShelf()
  if (text !== undefined) saveFile('gustloom-shelf.json', new Blob([text], { type: 'application/json' }))
}

function Doors() {
  return (
    <div class="shelf-keys">
      <label class="button file-button">
        {say`Bring in files`}
        <input
          type="file"
          multiple
          accept=".json,application/json"
          onChange={(event) => {
            void bringIn([...(event.currentTarget.files ?? [])])
            event.currentTarget.value = ''
          }}
        />
      </label>
      <button type="button" onClick={() => void saveShelf()}>
        {say`Save all as one file`}
      </button>
    </div>
  )
}

export function ShelfView() {
  const over = useSignal(false)
  useEffect(watchShelf, [])
  const designs = listed.value
  const inUse = designs?.filter(({ asideAt }) => asideAt === undefined) ?? []
  const aside = designs?.filter(({ asideAt }) => asideAt !== undefined) ?? []
  return (
    <section
      class={over.value ? 'shelf over' : 'shelf'}
      aria-label={say`Your designs`}
      onDragOver={(event) => {
        if (!event.dataTransfer?.types.includes('Files')) return
        event.preventDefault()
        over.value = true
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) over.value = false
      }}
      onDrop={(event) => {
        event.preventDefault()
        over.value = false
        void bringIn([...(event.dataTransfer?.files ?? [])])
      }}
    >
      <p>
        {say`Every change is kept here by itself, on this machine only. Files may be dropped anywhere on this shelf.`}
      </p>
      <Doors />
      {listTrouble.value === '' ? null : (
        <p class="notice" role="alert">
          {listTrouble.value}
        </p>
      )}
      <div role="status">
        {listNotes.value.map((note) => (
          <p class="shelf-note" key={note}>
            {note}
          </p>
        ))}
      </div>
      {designs === undefined ? (
        <p class="note">{say`The shelf is being read.`}</p>
      ) : inUse.length === 0 ? (
        <p class="note">{say`Nothing here yet: an example becomes a design of yours at the first change.`}</p>
      ) : (
        <ul class="shelf-list">
          {inUse.map((one) => (
            <InUse key={one.id} one={one} />
          ))}
        </ul>
      )}
      {aside.length === 0 ? null : (
        <>
          <h3 class="shelf-aside">{say`Put aside`}</h3>
          <ul class="shelf-list">
            {aside.map((one) => (
              <Aside key={one.id} one={one} />
            ))}
          </ul>
        </>
      )}
      <StoreRoom />
    </section>
  )
}
