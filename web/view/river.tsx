/** The river of watts as the page's way about: across the page its stations lie side by side. */

import { computed } from '@preact/signals'
import { type RiverLoss, riverBand, wattText } from '../../src/output/chart/river.ts'
import { keptParts } from '../same-parts.ts'
import { concerns, faults, row as rowIndex, snapshot } from '../store/design.ts'
import { badgeOf, concernsIn, roomOfPath } from '../store/place-concern.ts'
import { enter, room, roomAddress, type StationKey } from '../store/room.ts'
import { say, shown } from '../text/say.ts'
import { reachesOf, type StationReach } from './reaches.ts'

/** Lengths of the picture across the page [px]. */
const across = { fullest: 54, widest: 78, foot: 116, lies: true, reach: 160 } as const

export interface StationBadge {
  /** `!` is graver than `?`; the sign tells it without colour. */
  readonly sign: string
  readonly className: string
  readonly words: string
}

function badgeAt(key: StationKey): StationBadge | undefined {
  const wrong = faults.value.filter(({ path }) => roomOfPath(path) === key).length
  if (wrong > 0)
    return {
      sign: `✎ ${wrong}`,
      className: 'is-fault',
      words: wrong === 1 ? say`one entry to mend` : say`${wrong} entries to mend`,
    }
  const badge = badgeOf(concernsIn(concerns.value ?? [], key))
  if (!badge) return undefined
  const { count, gravest } = badge
  return gravest === 'blocking'
    ? {
        sign: `! ${count}`,
        className: 'is-blocking',
        words: count === 1 ? say`one concern that blocks` : say`${count} concerns, one at least blocks`,
      }
    : {
        sign: `? ${count}`,
        className: 'is-warning',
        words: count === 1 ? say`one concern` : say`${count} concerns`,
      }
}

export function Badge({ of }: { readonly of: StationKey }) {
  const badge = badgeAt(of)
  return badge === undefined ? null : (
    <>
      {' '}
      <span class={`badge ${badge.className}`} title={badge.words}>
        <span aria-hidden="true">{badge.sign}</span>
        <span class="hidden">{badge.words}</span>
      </span>
    </>
  )
}

let flowed: readonly StationReach[] | undefined

/** What flows at the wind looked at; what flows as before stays the same object. */
export const reaches = computed(() => {
  const result = snapshot.value
  const row = result?.rows[rowIndex.value]
  if (result && row) flowed = keptParts(flowed, reachesOf(result, row))
  return flowed
})

/** A loss so small that it would only be noise is left out of words; the table has it. */
const worthTelling = ({ watts }: RiverLoss, arriving: number): boolean => watts > 0.0005 * arriving

const lossText = ({ label, watts }: RiverLoss): string => say`−${wattText(watts)} ${label}`

export function LossTexts({ of: { losses, arriving } }: { readonly of: StationReach }) {
  return (
    <span class="station-losses">
      {losses
        .filter((loss) => worthTelling(loss, arriving))
        .map((loss) => (
          <span key={loss.label}>{lossText(loss)}</span>
        ))}
    </span>
  )
}

function Station({ reach }: { readonly reach: StationReach }) {
  const { key, label, arriving } = reach
  const open = room.value === key
  return (
    <li class={`river-station${open ? ' is-open' : ''}`}>
      <a
        href={roomAddress(key)}
        aria-current={open ? 'page' : undefined}
        onClick={(event) => {
          event.preventDefault()
          enter(key)
        }}
      >
        <span class="station-name">
          {label}
          <Badge of={key} />
        </span>
        <b class="station-watts">{shown(wattText(arriving))}</b>
        <LossTexts of={reach} />
      </a>
    </li>
  )
}

export function RiverAcross() {
  const found = reaches.value
  if (found === undefined) return <div class="river is-waiting" />
  const { body, scale, torn } = riverBand({ reaches: found }, across)
  const turns = found.some(({ key, arriving }) => key === 'shaft' && arriving > 0)
  const width = across.reach * found.length
  return (
    <nav class={`river${turns ? '' : ' is-dry'}`} aria-label={say`The way of the watts`}>
      <svg
        class="river-picture"
        viewBox={`0 0 ${width} ${across.foot + 2}`}
        preserveAspectRatio="none"
        aria-hidden="true"
        // our own drawing, made of numbers alone
        dangerouslySetInnerHTML={{ __html: body }}
      />
      <ol class="river-stations">
        {found.map((reach) => (
          <Station key={reach.key} reach={reach} />
        ))}
      </ol>
      <p class="river-scale" aria-hidden="true">
        <svg aria-hidden="true" width="10" height={scale.width + 2} viewBox={`0 0 10 ${scale.width + 2}`}>
          <path class="axis" d={`M1 1h8m-4 0v${scale.width}m-4 0h8`} />
        </svg>
        <span>
          {shown(wattText(scale.watts))}
          {torn ? <small>{say`the wind’s band is torn: wider than drawn`}</small> : null}
        </span>
      </p>
    </nav>
  )
}

/** Lengths of a stretch down the page [px]. */
const down = { fullest: 34, widest: 46, foot: 72, lies: false, reach: 76 } as const

/** The stretch of one station where the river runs down the page. */
export function RiverStretch({
  reaches,
  index,
}: {
  readonly reaches: readonly StationReach[]
  readonly index: number
}) {
  const { body } = riverBand({ reaches }, down, index)
  return (
    <svg
      class="river-stretch"
      viewBox={`0 ${index * down.reach} ${down.foot + 2} ${down.reach}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      dangerouslySetInnerHTML={{ __html: body }}
    />
  )
}
