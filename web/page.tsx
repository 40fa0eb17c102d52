/** The page: the river of watts across it, the wind under the river, and the room that is open. */
import { computed } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { wattText } from '../src/output/chart/river.ts'
import { rooms } from './room/plan.ts'
import type { RoomSight } from './room/room.ts'
import { sightOfRoom } from './room/sight.ts'
import { StationForm } from './station/form.tsx'
import { behind, progress, row as rowIndex, snapshot, stale } from './store/design.ts'
import { narrow } from './store/narrow.ts'
import { nounsOf } from './store/place-concern.ts'
import {
  benchKeys,
  enter,
  type RoomKey,
  room,
  roomAddress,
  type StationKey,
  stationKeys,
} from './store/room.ts'
import { say, shown } from './text/say.ts'
import { ConcernList, RoomConcerns } from './view/concern-list.tsx'
import { DesignMenu } from './view/design-menu.tsx'
import { KeepingNote } from './view/keeping-note.tsx'
import { PrintHead } from './view/print-head.tsx'
import { Badge, LossTexts, RiverAcross, RiverStretch, reaches } from './view/river.tsx'
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

/** Benches where what one came for stands before what can be changed. */
const sightFirst: readonly RoomKey[] = ['turn', 'faults', 'sure', 'shelf']

/** What stands in a room: its fields, its concerns, its pictures. */
function RoomBody({ of }: { readonly of: RoomKey }) {
  const sight = sightOfRoom(of)
  const nouns = nounsOf[of]
  const fields =
    nouns.length > 0 ? <StationForm nouns={nouns} titles={nouns.length > 1 || !isStation(of)} /> : null
  const fieldsLast = sightFirst.includes(of) || (narrow.value && of === 'whole')
  return (
    <div
      class={`room-body${fields ? '' : ' without-fields'}`}
      aria-busy={sight === undefined ? 'true' : undefined}
    >
      <RoomConcerns of={of} />
      {fieldsLast ? null : fields}
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
      {fieldsLast ? fields : null}
    </div>
  )
}

function RoomShown({ of, sight: { View, Bench } }: { readonly of: RoomKey; readonly sight: RoomSight }) {
  return (
    <>
      {Bench ? <Bench /> : null}
      {View ? <Viewed View={View} /> : null}
      {!View && !Bench && snapshot.value === undefined ? <FirstAwaited /> : null}
      {of === 'whole' ? <ConcernList /> : null}
    </>
  )
}

const FirstAwaited = () => <p class="note waiting">{say`The first numbers are on their way.`}</p>

function Viewed({ View }: { readonly View: NonNullable<RoomSight['View']> }) {
  const result = snapshot.value
  const index = rowIndex.value
  const row = result?.rows[index]
  return result && row ? <View result={result} index={index} row={row} /> : <FirstAwaited />
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

function Stretch({
  of,
  open,
  index,
}: {
  readonly of: StationKey
  readonly open: boolean
  readonly index: number
}) {
  const found = reaches.value
  const reach = found?.[index]
  return (
    <li class={`stretch${open ? ' is-open' : ''}`}>
      <button
        type="button"
        class="stretch-head"
        aria-expanded={open}
        onClick={() => enter(open ? 'whole' : of)}
      >
        {found ? <RiverStretch reaches={found} index={index} /> : null}
        <span class="station-name">{reach?.label ?? rooms[of]!.title()}</span>
        <Badge of={of} />
        <b class="station-watts">{reach ? shown(wattText(reach.arriving)) : ''}</b>
        {reach ? <LossTexts of={reach} /> : null}
      </button>
      {open ? <OpenRoom of={of} /> : null}
    </li>
  )
}

/** In the order in which the cable and the bridge follow each other. */
const stretchKeys = computed(() => reaches.value?.map(({ key }) => key).join(' ') ?? stationKeys.join(' '))

/** On a phone the river runs down the page, and a room opens in it. */
function RiverDown() {
  const keys = stretchKeys.value.split(' ') as StationKey[]
  return (
    <div class="river-down">
      <ol aria-label={say`The way of the watts`}>
        {keys.map((key, k) => (
          <Stretch key={key} of={key} open={room.value === key} index={k} />
        ))}
      </ol>
    </div>
  )
}

/** Where the open room stands within the page. */
const openPlace = '#room'

/** On the element itself: the rest of the page is not drawn anew for it. */
const resultsClass = computed(() => `results${behind.value ? ' stale' : ''}`)
const awaited = computed(() => (stale.value || progress.value !== undefined ? '' : undefined))

function StaleMark() {
  return behind.value && snapshot.value ? (
    <p class="stale-mark">{say`Numbers of the last valid design`}</p>
  ) : null
}

function Strip() {
  const result = snapshot.value
  return result ? <WindStrip snapshot={result} index={rowIndex.value} /> : null
}

function Side() {
  const result = snapshot.value
  const row = result?.rows[rowIndex.value]
  return result && row ? (
    <aside class="side" aria-label={say`The machine in three dimensions`}>
      <Solid solid={result.solid} row={row} />
    </aside>
  ) : null
}

export function Page() {
  const key = rooms[room.value] ? room.value : 'whole'
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
      <main class={resultsClass} data-awaited={awaited}>
        {first ? <div class="columns">{open}</div> : null}
        {key === 'begin' ? null : (
          <>
            <div class="water">{narrow.value ? <RiverDown /> : <RiverAcross />}</div>
            <Strip />
          </>
        )}
        <div class="stale-place">
          <StaleMark />
        </div>
        <FaultSummary />
        <div class="columns">
          {first || (narrow.value && isStation(key)) ? null : open}
          {key === 'begin' ? null : <Side />}
        </div>
        <p class="frank">
          {say`A calculation is not a permit, an inspection or a guarantee. Rotors, magnets, batteries and towers injure people: fix the rotor before you reach in, check the voltage at runaway, fit a fuse near the battery.`}
        </p>
      </main>
    </>
  )
}
