/** The choice of language in the head of the page. */
import { useState } from 'preact/hooks'
import { keepLanguage } from './language.ts'
import { isLanguage, language, languages, say } from './say.ts'

export function LanguageChoice() {
  const [failed, setFailed] = useState(false)
  return (
    <label class="language-choice">
      {say`Language`}{' '}
      <select
        value={language.value}
        onChange={({ currentTarget }) => {
          const name = currentTarget.value
          if (!isLanguage(name)) return
          setFailed(false)
          keepLanguage(name).catch(() => {
            currentTarget.value = language.value
            setFailed(true)
          })
        }}
      >
        {Object.entries(languages).map(([name, own]) => (
          <option key={name} value={name} lang={name}>
            {own}
          </option>
        ))}
      </select>
      {failed ? (
        <span role="alert">
          {say`The words of this language could not be fetched; try again when you are connected.`}
        </span>
      ) : null}
    </label>
  )
}
