/** The page: the river of watts across it, the wind under the river, and the room that is open. */
import { computed } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { wattText } from '../src/output/chart/river.ts'
import { rooms } from './room/plan.ts'
import type { RoomSight } from './room/room.ts'
import { sightOfRoom } from './room/sight.ts'
import { StationForm } from './station/form.tsx'
import { row as rowIndex, snapshot, stale } from './store/design.ts'
import { narrow } from './store/narrow.ts'
import { nounsOf } from './store/place-concern.ts'
import { benchKeys, enter, type RoomKey, room, roomAddress, stationKeys } from './store/room.ts'
import { say, shown } from './text/say.ts'
import { ConcernList, RoomConcerns } from './view/concern-list.tsx'
import { DesignMenu } from './view/design-menu.tsx'
import { KeepingNote } from './view/keeping-note.tsx'
import { PrintHead } from './view/print-head.tsx'
import { reachesOf } from './view/reaches.ts'
import { lossText, RiverAcross, RiverStretch, stationBadge, worthTelling } from './view/river.tsx'
import { Settings } from './view/setting.tsx'
import { Solid } from './view/solid.tsx'
import { FaultSummary, Notice, Status } from './view/status.tsx'
import { KeepTracing } from './view/tracing-keep.tsx'
import { WindStrip } from './view/wind-strip.tsx'

function Mark() {
  return (
    <svg class="mark-sign" viewBox="0 0 32 32" width="30" height="30" aria-hidden="true">
      <path class="mark-wind" d="M3 11c4.3-9 8.7-9 13 0s8.700 9 13 0" />
      <path class="mark-wire" d="M3 21c4.3 9 8.700 9 13 0s8.700-9 13 0" />
    </svg>
  )
}

function RoomLink({ to }: { readonly to: RoomKey }) {
  return (
    <a
      href={roomAddress(to)}
      aria-current={room.value === to ? 'page' : undefined}
      onClick={(event) => {
        event.preventDefault()
        enter(to)
      }}
    >
      {rooms[to]!.title()}
    </a>
  )
}

function Benches() {
  return (
    <nav class="benches" aria-label={say`Benches`}>
      <ul>
        {benchKeys
          .filter((key) => rooms[key])
          .map((key) => (
            <li key={key}>
              <RoomLink to={key} />
            </li>
          ))}
      </ul>
    </nav>
  )
}

/** What stands in a room: its fields, its concerns, its pictures. */
function RoomBody({ of }: { readonly of: RoomKey }) {
  const sight = sightOfRoom(of)
  return (
    <div
      class={`room-body${nounsOf[of].length > 0 ? '' : ' without-fields'}`}
      aria-busy={sight === undefined ? 'true' : undefined}
    >
      <RoomConcerns of={of} />
      {nounsOf[of].length > 0 ? <StationForm nouns={nounsOf[of]} /> : null}
      <div class="room-sight">
        {sight === undefined ? (
          <p class="note waiting">{say`One moment.`}</p>
        ) : sight === 'missing' ? (
          <p class="note waiting">
            {say`This part of the page did not arrive. Load the page again when there is a network.`}
          </p>
        ) : (
          <RoomShown of={of} sight={sight} />
        )}
      </div>
    </div>
  )
}

function RoomShown({ of, sight }: { readonly of: RoomKey; readonly sight: RoomSight }) {
  const { View, Bench } = sight
  const result = snapshot.value
  const index = rowIndex.value
  const row = result?.rows[index]
  return (
    <>
      {Bench ? <Bench /> : null}
      {result && row ? (
        View ? (
          <View result={result} index={index} row={row} />
        ) : null
      ) : Bench ? null : (
        <p class="note waiting">{say`The first numbers are on their way.`}</p>
      )}
      {of === 'whole' && result?.concerns ? <ConcernList concerns={result.concerns} /> : null}
    </>
  )
}

const isStation = (key: RoomKey): boolean => (stationKeys as readonly RoomKey[]).includes(key)

/** The room that was open last: on a phone each one is drawn in a place of its own. */
let roomBefore = room.peek()

function OpenRoom({ of }: { readonly of: RoomKey }) {
  const { title, lead } = rooms[of]!
  const place = useRef<HTMLElement>(null)
  useEffect(() => {
    const entered = roomBefore !== of
    roomBefore = of
    // whoever closes a stretch of the river stays at it
    const closed = of === 'whole' && document.activeElement?.matches('.stretch-head')
    if (!entered || closed) return
    // whoever reads by ear is told where they are; on a phone the room's head comes under the thumb
    place.current?.focus({ preventScroll: true })
    if (narrow.value) place.current?.closest('.stretch, .columns')?.scrollIntoView({ block: 'start' })
  }, [of])
  return (
    <section class={`room room-${of}`} id="room" tabIndex={-1} ref={place} aria-labelledby="room-title">
      <header class="room-head">
        <h2 id="room-title">{title()}</h2>
        <p class="lead">{lead()}</p>
        {isStation(of) || of === 'whole' ? <KeepTracing /> : null}
      </header>
      <RoomBody of={of} />
    </section>
  )
}

/** On a phone the river runs down the page, and a room opens in it. */
function RiverDown() {
  const result = snapshot.value
  const row = result?.rows[rowIndex.value]
  const reaches = result && row ? reachesOf(result, row) : undefined
  const keys = reaches?.map(({ key }) => key) ?? stationKeys
  return (
    <div class="river-down">
      <ol aria-label={say`The way of the watts`}>
        {keys.map((key, k) => {
          const reach = reaches?.[k]
          const badge = stationBadge(result, key)
          const open = room.value === key
          return (
            <li key={key} class={`stretch${open ? ' is-open' : ''}`}>
              <button
                type="button"
                class="stretch-head"
                aria-expanded={open}
                onClick={() => enter(open ? 'whole' : key)}
              >
                {reaches ? <RiverStretch reaches={reaches} index={k} /> : null}
                <span class="station-name">{reach?.label ?? rooms[key]!.title()}</span>
                {badge ? (
                  <span class={`badge ${badge.className}`}>
                    <span aria-hidden="true">{badge.sign}</span>
                    <span class="hidden">{badge.words}</span>
                  </span>
                ) : null}
                <b class="station-watts">{reach ? shown(wattText(reach.arriving)) : ''}</b>
                <span class="station-losses">
                  {reach?.losses
                    .filter((loss) => worthTelling(loss, reach.arriving))
                    .map((loss) => (
                      <span key={loss.label}>{lossText(loss)}</span>
                    ))}
                </span>
              </button>
              {open ? <OpenRoom of={key} /> : null}
            </li>
          )
        })}
      </ol>
    </div>
  )
}

/** Where the open room stands within the page. */
const openPlace = '#room'

/** On the element itself: the rest of the page is not drawn anew for it. */
const resultsClass = computed(() => `results${stale.value ? ' stale' : ''}`)

function StaleMark() {
  return stale.value && snapshot.value ? (
    <p class="stale-mark">{say`Numbers of the last valid design`}</p>
  ) : null
}

export function Page() {
  const key = rooms[room.value] ? room.value : 'whole'
  const result = snapshot.value
  const index = rowIndex.value
  const row = result?.rows[index]
  const open = <OpenRoom of={key} />
  // on a phone a bench is what one came for, and the river follows it
  const first = key === 'begin' || (narrow.value && !isStation(key) && key !== 'whole')
  return (
    <>
      <a
        class="skip"
        href={openPlace}
        onClick={(event) => {
          // the address goes on saying which room is open
          event.preventDefault()
          document.getElementById('room')?.focus()
        }}
      >
        {say`Skip to the open room`}
      </a>
      <header class="head">
        <h1>
          <Mark /> <span>Gustloom</span>
        </h1>
        <DesignMenu />
        <Status />
        <Settings />
      </header>
      <Notice />
      <KeepingNote />
      <Benches />
      <PrintHead />
      <main class={resultsClass}>
        {first ? <div class="columns">{open}</div> : null}
        {key === 'begin' ? null : (
          <>
            <div class="water">
              {narrow.value ? (
                <RiverDown />
              ) : result && row ? (
                <RiverAcross result={result} row={row} />
              ) : (
                <div class="river is-waiting" />
              )}
            </div>
            {result ? <WindStrip snapshot={result} index={index} /> : null}
          </>
        )}
        <div class="stale-place">
          <StaleMark />
        </div>
        <FaultSummary />
        <div class="columns">
          {first || (narrow.value && isStation(key)) ? null : open}
          {result && row && key !== 'begin' ? (
            <aside class="side" aria-label={say`The machine in three dimensions`}>
              <Solid solid={result.solid} row={row} />
            </aside>
          ) : null}
        </div>
        <p class="frank">
          {say`A calculation is not a permit, an inspection or a guarantee. Rotors, magnets, batteries and towers injure people: fix the rotor before you reach in, check the voltage at runaway, fit a fuse near the battery.`}
        </p>
      </main>
    </>
  )
}
