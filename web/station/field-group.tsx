/** Fields that stand together as the document groups them: a noun’s own, an inner group, an entry of a list. */
import { computed } from '@preact/signals'
import { useRef } from 'preact/hooks'
import type { FormField } from '../../src/index.ts'
import { descriptions, document, setValue } from '../store/design.ts'
import { measured } from '../store/measure.ts'
import type { Path } from '../store/raw-document.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { greatestGuess } from './certainty.tsx'
import { FaultNote, faultId, faultsOf } from './fault-note.tsx'
import { Field } from './field.tsx'
import { fieldId, words } from './label.ts'
import type { Station } from './station.ts'
import { generalPath } from './variant.ts'

export interface Group {
  readonly keys: Path
  readonly fields: FormField[]
}

/** List entries and inner groups: the keys between the noun and the field. */
const groupOf = ({ keys }: FormField): Path => keys.slice(1, -1)

export function groupsOf(noun: string, fields: readonly FormField[]): Group[] {
  const groups: Group[] = []
  for (const field of fields) {
    const keys = noun === '' ? [] : [noun, ...groupOf(field)]
    const last = groups.at(-1)
    if (last && JSON.stringify(last.keys) === JSON.stringify(keys)) last.fields.push(field)
    else groups.push({ keys, fields: [field] })
  }
  return groups
}

function ListHead({ field, station }: { readonly field: FormField; readonly station: Station }) {
  const { keys, path, help, value } = field
  const general = generalPath(keys)
  const entry = station.entries?.[general]
  const name = told(station.entryNames?.[general] ?? 'entry')
  const count = Array.isArray(value) ? value.length : 0
  const hasFault = faultsOf(path).length > 0
  const bears = greatestGuess(path)
  return (
    <div class={`list-head${hasFault ? ' faulty' : ''}`} id={fieldId(path)}>
      <h3>
        {words(keys.at(-1)!)} <small>{count}</small>
      </h3>
      {entry ? (
        <button
          type="button"
          aria-describedby={hasFault ? faultId(path) : undefined}
          onClick={() => setValue([...keys, count], entry(document.value))}
        >
          {say`Add a ${name}`}
        </button>
      ) : null}
      {bears === '' ? null : <p class="bears">{bears}</p>}
      <FaultNote path={path} />
      {help === '' ? null : <p class="help">{told(measured(help))}</p>}
    </div>
  )
}

function RemoveButton({ keys, label }: { readonly keys: Path; readonly label: string }) {
  return (
    <button type="button" class="quiet" aria-label={label} onClick={() => setValue(keys, undefined)}>
      {say`remove`}
    </button>
  )
}

function GroupTitle({ group, station }: { readonly group: Group; readonly station: Station }) {
  const { keys } = group
  const last = keys.at(-1)
  if (keys.length < 2 || last === undefined) return null
  if (typeof last === 'number') {
    const name = station.entryNames?.[generalPath(keys.slice(0, -1))] ?? 'entry'
    return (
      <legend>
        {words(name)} {last + 1}
        <RemoveButton keys={keys} label={say`Remove ${told(name)} ${last + 1}`} />
      </legend>
    )
  }
  const extra = station.extras?.find(({ path }) => generalPath(path) === generalPath(keys))
  const label = extra ? told(extra.label) : words(last)
  return (
    <legend>
      {label}
      {extra ? <RemoveButton keys={keys} label={say`Remove: ${label}`} /> : null}
    </legend>
  )
}

/** Lists whose entries have fields of their own; the others are numbers in one line. */
const entryLists = computed(
  () =>
    new Set(
      descriptions.value.flatMap(({ path }) =>
        [...path.matchAll(/\[\]\./g)].map(({ index }) => path.slice(0, index)),
      ),
    ),
)

const isEntryList = ({ kind, keys }: FormField): boolean =>
  kind === 'list' && entryLists.value.has(generalPath(keys))

export function GroupFields({ group, station }: { readonly group: Group; readonly station: Station }) {
  // a field that was in sight stays in sight, so that nothing jumps away under the hand
  const seen = useRef(new Set<string>())
  const inSight: FormField[] = []
  const rare: FormField[] = []
  for (const field of group.fields) {
    const { path } = field
    const given = field.value !== undefined && !seen.current.has(`rare ${path}`)
    if (!field.optional || isEntryList(field) || faultsOf(path).length > 0 || given) seen.current.add(path)
    if (seen.current.has(path)) inSight.push(field)
    else {
      seen.current.add(`rare ${path}`)
      rare.push(field)
    }
  }
  const row = (field: FormField) =>
    isEntryList(field) ? (
      <ListHead key={field.path} field={field} station={station} />
    ) : (
      <Field key={field.path} field={field} />
    )
  const body = (
    <>
      <GroupTitle group={group} station={station} />
      <div class="fields">{inSight.map(row)}</div>
      {rare.length === 0 ? null : (
        <details class="rare">
          <summary>
            {rare.length === 1 ? say`One more, if you know it` : say`${rare.length} more, if you know them`}
          </summary>
          <div class="fields">{rare.map(row)}</div>
        </details>
      )}
    </>
  )
  return group.keys.length < 2 ? <div class="group">{body}</div> : <fieldset class="group">{body}</fieldset>
}
