/** The form of the whole design: a section for each station, fields grouped as the document groups them. */
import { useMemo, useRef, useState } from 'preact/hooks'
import type { FormField } from '../../src/index.ts'
import { descriptions, document, faults, form, setValue } from '../store/design.ts'
import { type Path, valueAt } from '../store/raw-document.ts'
import { FaultNote, faultId, faultsOf } from './fault-note.tsx'
import { Field } from './field.tsx'
import { fieldId, words } from './label.ts'
import { stations } from './plan.ts'
import type { Station } from './station.ts'
import { generalPath } from './variant.ts'

const stationOfField = ({ keys }: FormField): string =>
  keys.length === 1 && typeof keys[0] === 'string' && !stations.some(({ noun }) => noun === keys[0])
    ? ''
    : String(keys[0])

/** List entries and inner groups: the keys between the noun and the field. */
const groupOf = ({ keys }: FormField): Path => keys.slice(1, -1)

interface Group {
  readonly keys: Path
  readonly fields: FormField[]
}

function groupsOf(noun: string, fields: readonly FormField[]): Group[] {
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
  const name = station.entryNames?.[general] ?? 'entry'
  const count = Array.isArray(value) ? value.length : 0
  const hasFault = faultsOf(path).length > 0
  return (
    <div class={`list-head${hasFault ? ' faulty' : ''}`} id={fieldId(path)}>
      <h4>
        {words(keys.at(-1)!)} <small>{count}</small>
      </h4>
      {entry ? (
        <button
          type="button"
          aria-describedby={hasFault ? faultId(path) : undefined}
          onClick={() => setValue([...keys, count], entry(document.value))}
        >
          Add a {name}
        </button>
      ) : null}
      <FaultNote path={path} />
      {help === '' ? null : <p class="help">{help}</p>}
    </div>
  )
}

function GroupTitle({ group, station }: { readonly group: Group; readonly station: Station }) {
  const last = group.keys.at(-1)
  if (group.keys.length < 2 || last === undefined) return null
  if (typeof last === 'number') {
    const list = group.keys.slice(0, -1)
    const name = station.entryNames?.[generalPath(list)] ?? 'entry'
    return (
      <legend>
        {words(name)} {last + 1}
        <button
          type="button"
          class="quiet"
          aria-label={`Remove ${name} ${last + 1}`}
          onClick={() => setValue(group.keys, undefined)}
        >
          remove
        </button>
      </legend>
    )
  }
  const extra = station.extras?.find(({ path }) => generalPath(path) === generalPath(group.keys))
  return (
    <legend>
      {extra?.label ?? words(last)}
      {extra ? (
        <button
          type="button"
          class="quiet"
          aria-label={`Remove ${extra.label.toLowerCase()}`}
          onClick={() => setValue(group.keys, undefined)}
        >
          remove
        </button>
      ) : null}
    </legend>
  )
}

function GroupFields({ group, station }: { readonly group: Group; readonly station: Station }) {
  // a field that was in sight stays in sight, so that nothing jumps away under the hand
  const seen = useRef(new Set<string>())
  const isList = (field: FormField) =>
    field.kind === 'list' && !/^(?:reversed|months$|monthlyMean_|count$)/.test(String(field.keys.at(-1)))
  const shown: FormField[] = []
  const rare: FormField[] = []
  for (const field of group.fields) {
    const faulty = faultsOf(field.path).length > 0
    if (
      !field.optional ||
      isList(field) ||
      faulty ||
      (field.value !== undefined && !seen.current.has(`rare ${field.path}`))
    )
      seen.current.add(field.path)
    if (seen.current.has(field.path)) shown.push(field)
    else {
      seen.current.add(`rare ${field.path}`)
      rare.push(field)
    }
  }
  const row = (field: FormField) =>
    isList(field) ? (
      <ListHead key={field.path} field={field} station={station} />
    ) : (
      <Field key={field.path} field={field} />
    )
  const body = (
    <>
      <GroupTitle group={group} station={station} />
      {shown.map(row)}
      {rare.length === 0 ? null : (
        <details class="rare">
          <summary>
            {rare.length === 1 ? 'One more, if you know it' : `${rare.length} more, if you know them`}
          </summary>
          {rare.map(row)}
        </details>
      )}
    </>
  )
  return group.keys.length < 2 ? <div class="group">{body}</div> : <fieldset class="group">{body}</fieldset>
}

function StationSection({
  station,
  fields,
}: {
  readonly station: Station
  readonly fields: readonly FormField[]
}) {
  const { noun, title, lead, open, extras = [] } = station
  const groups = groupsOf(noun, fields)
  // on a phone every station would make a page of its own
  const roomy = useMemo(() => matchMedia('(min-width: 1040px)').matches, [])
  // what a fault or a hand has opened stays open when the fault is mended
  const [shown, setShown] = useState(open && roomy)
  const wrong = faults.value.filter(({ path }) =>
    noun === ''
      ? fields.some((field) => field.path === path)
      : path === noun || path.startsWith(`${noun}.`) || path.startsWith(`${noun}[`),
  ).length
  const missing = extras.filter(
    ({ path, fits }) => fits(document.value) && valueAt(document.value, path) === undefined,
  )
  return (
    <details
      class="station"
      open={shown || wrong > 0}
      onToggle={({ currentTarget }) => setShown(currentTarget.open)}
      id={`station-${noun || 'design'}`}
    >
      <summary>
        <h3>{title}</h3>
        <span class="lead">{lead}</span>
        {wrong > 0 ? <span class="badge">{wrong} to mend</span> : null}
      </summary>
      {groups.map((group, k) => (
        <GroupFields key={`${JSON.stringify(group.keys)} ${k}`} group={group} station={station} />
      ))}
      {missing.map(({ path, label, start }) => (
        <button key={label} type="button" class="add" onClick={() => setValue(path, start)}>
          Add: {label.toLowerCase()}
        </button>
      ))}
    </details>
  )
}

export function Form() {
  // which fields there are comes from the engine; what stands in them is what was typed last
  const raw = document.value
  const helps = useMemo(
    () => new Map(descriptions.value.map(({ path, help }) => [path, help])),
    [descriptions.value],
  )
  const fields = useMemo(
    () =>
      form.value.map((field) => ({
        ...field,
        value: valueAt(raw, field.keys),
        help: field.help || (helps.get(generalPath(field.keys)) ?? ''),
      })),
    [form.value, raw, helps],
  )
  const byStation = useMemo(() => {
    const map = new Map<string, FormField[]>()
    for (const field of fields) {
      const noun = stationOfField(field)
      map.set(noun, [...(map.get(noun) ?? []), field])
    }
    return map
  }, [fields])
  return (
    <form
      class="form"
      aria-label="The design"
      onSubmit={(event) => {
        event.preventDefault()
      }}
    >
      {stations.map((station) => (
        <StationSection key={station.noun} station={station} fields={byStation.get(station.noun) ?? []} />
      ))}
    </form>
  )
}
