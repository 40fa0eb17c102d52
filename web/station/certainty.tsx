/** How sure a number is: give or take, how it is known, and how much of the year's spread it bears. */
import type { FormField } from '../../src/index.ts'
import { waysOfKnowing } from '../../src/units/quantity.ts'
import { setValue, spreads } from '../store/design.ts'
import { isRawObject } from '../store/raw-document.ts'
import { told } from '../text/engine-sentence.ts'
import { say } from '../text/say.ts'
import { fieldId } from './label.ts'
import { numberManner, quantitySaying } from './number-saying.ts'
import { TypedInput } from './typed-input.tsx'

export const bareValue = (value: unknown): unknown => (isRawObject(value) ? value['value'] : value)

/** The number alone where nothing more is said of it. */
export function quantityWith(value: unknown, key: 'value' | 'spread' | 'known', part: unknown): unknown {
  const parts: Record<string, unknown> = isRawObject(value) ? { ...value } : { value }
  if (part === undefined) delete parts[key]
  else parts[key] = part
  if (parts['spread'] === undefined && parts['known'] === undefined) return parts['value']
  return parts
}

export function Certainty({
  field,
  label,
  manner,
}: {
  readonly field: FormField
  readonly label: string
  readonly manner: string
}) {
  const { keys, value, path } = field
  const parts = isRawObject(value) ? value : {}
  const id = fieldId(path)
  const saying = quantitySaying(field, true)
  const put = (key: 'spread' | 'known', part: unknown) => setValue(keys, quantityWith(value, key, part))
  const { spread } = parts
  return (
    <div class="certainty" id={`${id}-certainty`}>
      <label for={`${id}-spread`}>±</label>
      <TypedInput
        id={`${id}-spread`}
        value={spread}
        read={saying.read}
        write={(part) => put('spread', part)}
        show={saying.show}
        manner={manner}
        number={numberManner(saying, spread)}
        label={say`${label}: give or take`}
      />
      <span class="unit">{saying.unit(spread)}</span>
      <select
        aria-label={say`${label}: how known`}
        value={String(parts['known'] ?? '')}
        onChange={({ currentTarget }) =>
          put('known', currentTarget.value === '' ? undefined : currentTarget.value)
        }
      >
        <option value="">{say`how known?`}</option>
        {waysOfKnowing.map((way) => (
          <option key={way} value={way}>
            {told(way)}
          </option>
        ))}
      </select>
    </div>
  )
}

/** Guesses of the engine's own, by the field that takes the place of each. */
const fieldsOfGuess: Readonly<Record<string, string>> = {
  'estimated thermal resistance': 'stator.thermalResistance_K_per_W',
  'drag of the blade sections': 'blades.section',
}

export const fieldOfGuess = (path: string): string => fieldsOfGuess[path] ?? path

/** Said at the one field whose guess bears most of how far the year may be off; empty elsewhere. */
export function greatestGuess(path: string): string {
  const cause = spreads.value?.energy.causes[0]
  if (cause === undefined || fieldOfGuess(cause.path) !== path) return ''
  return say`Bears ${Math.round(100 * cause.share)} % of how unsure the year is.`
}
