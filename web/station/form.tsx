/** The form of the design: the fields of chosen nouns, as they stand in a room. */
import { computed } from '@preact/signals'
import type { FormField } from '../../src/index.ts'
import { descriptions, document, faults, form, setValue } from '../store/design.ts'
import { valueAt } from '../store/raw-document.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { GroupFields, groupsOf } from './field-group.tsx'
import { fieldId } from './label.ts'
import { stations } from './plan.ts'
import type { Station } from './station.ts'
import { generalPath } from './variant.ts'

const stationOfField = ({ keys }: FormField): string =>
  keys.length === 1 && typeof keys[0] === 'string' && !stations.some(({ noun }) => noun === keys[0])
    ? ''
    : String(keys[0])

const helps = computed(() => new Map(descriptions.value.map(({ path, help }) => [path, help])))

/** As they were last shown: one in which nothing has changed stays the same object, and is not drawn anew. */
let shownFields = new Map<string, { readonly of: FormField; readonly field: FormField }>()

/** By noun. Which fields there are comes from the engine; what stands in them is what was typed last. */
const fieldsByNoun = computed(() => {
  const map = new Map<string, FormField[]>()
  const shown: typeof shownFields = new Map()
  for (const of of form.value) {
    const value = valueAt(document.value, of.keys)
    const help = of.help || (helps.value.get(generalPath(of.keys)) ?? '')
    const before = shownFields.get(of.path)
    const field =
      before?.of === of && before.field.value === value && before.field.help === help
        ? before.field
        : { ...of, value, help }
    shown.set(of.path, { of, field })
    const noun = stationOfField(field)
    const list = map.get(noun) ?? []
    list.push(field)
    map.set(noun, list)
  }
  shownFields = shown
  return map
})

const faultCount = ({ noun }: Station, fields: readonly FormField[]): number =>
  faults.value.filter(({ path }) =>
    noun === ''
      ? fields.some((field) => field.path === path)
      : path === noun || path.startsWith(`${noun}.`) || path.startsWith(`${noun}[`),
  ).length

function Badge({ count }: { readonly count: number }) {
  return count === 0 ? null : <span class="badge">{say`${count} to mend`}</span>
}

/** Fields and groups of one noun, and what may be added to it. */
function NounFields({
  station,
  fields,
}: {
  readonly station: Station
  readonly fields: readonly FormField[]
}) {
  const missing = (station.extras ?? []).filter(
    ({ path, fits }) => fits(document.value) && valueAt(document.value, path) === undefined,
  )
  return (
    <>
      {groupsOf(station.noun, fields).map((group, k) => (
        <GroupFields key={`${JSON.stringify(group.keys)} ${k}`} group={group} station={station} />
      ))}
      {missing.map(({ path, label, start }) => (
        <button
          key={label}
          id={fieldId(path.join('.'))}
          type="button"
          class="add"
          onClick={() => setValue(path, start)}
        >
          {say`Add: ${told(label)}`}
        </button>
      ))}
    </>
  )
}

interface StationFormProps {
  /** Keys in the document, '' for what stands beside the nouns; shown in the order of the stations. */
  readonly nouns: readonly string[]
  /** A title over each noun; left out, there is one where there are several. */
  readonly titles?: boolean
  /** The sentence under each title. */
  readonly leads?: boolean
}

export function StationForm({ nouns, titles = nouns.length > 1, leads = false }: StationFormProps) {
  const chosen = stations.filter(({ noun }) => nouns.includes(noun))
  const name = chosen.map(({ title }) => told(title)).join(', ')
  return (
    <form class="form" aria-label={say`Fields: ${name}`} onSubmit={(event) => event.preventDefault()}>
      {chosen.map((station) => {
        const { noun, title, lead } = station
        const fields = fieldsByNoun.value.get(noun) ?? []
        return (
          <section key={noun} class="station-fields" id={`station-${noun || 'design'}`}>
            {titles ? (
              <header>
                <h3>{told(title)}</h3>
                <Badge count={faultCount(station, fields)} />
                {leads ? <p class="lead">{told(lead)}</p> : null}
              </header>
            ) : null}
            <NounFields station={station} fields={fields} />
          </section>
        )
      })}
    </form>
  )
}
