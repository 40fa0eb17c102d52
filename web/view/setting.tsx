/** The settings of the page, folded away in the head. */
import { WalkStart } from '../hint/walk-start.tsx'
import { type Look, look, looks } from '../store/look.ts'
import { LanguageChoice } from '../text/language-choice.tsx'
import { say } from '../text/say.ts'
import { MeasureChoice } from './measure-choice.tsx'

const lookNames: Readonly<Record<Look, () => string>> = {
  system: () => say`as the system`,
  light: () => say`light`,
  dark: () => say`dark`,
  sun: () => say`full sun`,
}

function LookChoice() {
  return (
    <label>
      {say`Look`}{' '}
      <select value={look.value} onChange={({ currentTarget }) => (look.value = currentTarget.value as Look)}>
        {looks.map((each) => (
          <option key={each} value={each}>
            {lookNames[each]()}
          </option>
        ))}
      </select>
    </label>
  )
}

export function Settings() {
  return (
    <details class="settings">
      <summary>{say`Settings`}</summary>
      <div class="settings-body">
        <LookChoice />
        <LanguageChoice />
        <MeasureChoice />
        <WalkStart />
      </div>
    </details>
  )
}
