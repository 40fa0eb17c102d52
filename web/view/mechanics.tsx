/** Will it burst, rub, bend or seize: quantities beside their limits in words and bars, and what to fill in where nothing can be told. */
import type { MechanicsGroup, MechanicsRow } from '../../src/analysis/mechanics/mechanics-row.ts'
import {
  mechanicsLimit,
  mechanicsMargin,
  mechanicsValue,
  pastLimit,
} from '../../src/output/mechanics-words.ts'
import { formatNumber } from '../../src/units/format.ts'
import { words } from '../station/label.ts'
import { measured, unitSaid } from '../store/measure.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { MarginBar } from './mechanics-bar.tsx'
import { showField } from './show-field.ts'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const placeWords = (path: string): string => path.split('.').map(words).join(', ')

export function FieldButtons({ paths }: { readonly paths: readonly string[] }) {
  if (paths.length === 0) return null
  return (
    <span class="mechanics-fields">
      {paths.map((path) => (
        <button key={path} type="button" class="quiet" onClick={() => showField(path)}>
          {say`go to ${placeWords(path)}`}
        </button>
      ))}
    </span>
  )
}

function limitWords(row: MechanicsRow): string {
  const limit = shown(mechanicsLimit(row, unitSaid).replace(/^[≤≥] /, ''))
  return row.limit?.sound === 'below'
    ? say`may be ${told(limit)} at most`
    : say`has to be ${told(limit)} at least`
}

/** How much is in hand, or by how much it is past: as a share of what it may be, or of what it has to be. */
function marginWords(row: MechanicsRow): string {
  const { margin, limit } = row
  if (margin === undefined || limit === undefined) return ''
  if (!pastLimit(row)) return say`${mechanicsMargin(row)} times in hand`
  if (limit.sound === 'above')
    return margin > 0 ? say`only ${formatNumber(margin, 2)} of what it has to be` : say`nothing is left`
  return margin > 0 ? say`${formatNumber(1 / margin, 2)} times what it may be` : say`nothing holds it`
}

function Row({ row }: { readonly row: MechanicsRow }) {
  const { name, value, limit, margin, known, from, enter } = row
  if (value === undefined)
    return (
      <li class="mechanics-open">
        <span class="mechanics-name">{capital(told(name))}</span>
        {enter.length === 0 ? (
          <p class="note">{capital(told(known))}.</p>
        ) : (
          <p class="note">
            {say`Not told yet: the machine does not say enough of itself.`} <FieldButtons paths={enter} />
          </p>
        )}
      </li>
    )
  const past = pastLimit(row)
  return (
    <li>
      <details class={`mechanics-row${past ? ' is-past' : ''}`}>
        <summary>
          <span class="mechanics-name">{capital(told(name))}</span>{' '}
          <b class="mechanics-value">{told(shown(mechanicsValue(row, unitSaid)))}</b>{' '}
          {limit === undefined ? null : (
            <span class="mechanics-limit">
              <MarginBar margin={margin} />
              <strong class="mechanics-margin">{marginWords(row)}</strong> <span>{limitWords(row)}</span>
            </span>
          )}
        </summary>
        <div class="mechanics-why">
          <p class="note">{capital(told(measured(known)))}.</p>
          {from === '' ? null : (
            <p class="note">
              {limit === undefined
                ? `${capital(told(measured(from)))}.`
                : say`Where the limit comes from: ${told(measured(from))}.`}
            </p>
          )}
          <FieldButtons paths={enter} />
        </div>
      </details>
    </li>
  )
}

const groupTitles: Readonly<Record<MechanicsGroup, () => string>> = {
  'what holds the magnets': () => say`What holds the magnets`,
  'pull between the faces': () => say`Pull between the faces`,
  'discs under that pull': () => say`Discs under that pull`,
  'air between rotor and stator': () => say`Air between rotor and stator`,
  bearings: () => say`Bearings`,
  shaft: () => say`Strength of the shaft`,
  balance: () => say`Balance`,
  'blades and tower: for information': () => say`Blades and tower: for information`,
}

/** What is past its limit, in one sentence. */
export function MechanicsVerdict({ rows }: { readonly rows: readonly MechanicsRow[] }) {
  const past = rows.filter(pastLimit)
  return (
    <p class={`mechanics-verdict${past.length === 0 ? '' : ' is-past'}`}>
      {past.length === 0
        ? say`Nothing that could be asked here is past its limit.`
        : say`Past its limit: ${past.map(({ name }) => told(name)).join('; ')}.`}
    </p>
  )
}

/** The rows of one group; nothing where it has none. */
export function MechanicsGroupView({
  of,
  rows,
  caution,
}: {
  readonly of: MechanicsGroup
  readonly rows: readonly MechanicsRow[]
  readonly caution?: string
}) {
  const own = rows.filter(({ group }) => group === of)
  if (own.length === 0) return null
  const title = groupTitles[of]()
  return (
    <section class="card mechanics" aria-label={title}>
      <h3>{title}</h3>
      {caution === undefined ? null : <p class="mechanics-caution">{caution}</p>}
      <ul class="mechanics-rows">
        {own.map((row) => (
          <Row key={row.name} row={row} />
        ))}
      </ul>
    </section>
  )
}
