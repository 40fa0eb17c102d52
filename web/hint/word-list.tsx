/** All words of the trade that the page explains, in the order of the alphabet of its language. */
import { useSignal } from '@preact/signals'
import { rooms } from '../room/plan.ts'
import { enter, roomAddress } from '../store/room.ts'
import { language, say } from '../text/say.ts'
import { glossary } from './glossary.ts'
import { termSource } from './hint-body.tsx'
import { termKeys } from './term-key.ts'
import '../style/hint.css'

export function WordList() {
  const typed = useSignal('')
  const wanted = typed.value.trim().toLocaleLowerCase(language.value)
  const found = termKeys
    .map((key) => ({ key, room: glossary[key].room, name: glossary[key].name(), says: glossary[key].says() }))
    .filter(({ name, says }) => `${name} ${says}`.toLocaleLowerCase(language.value).includes(wanted))
    .sort((a, b) => a.name.localeCompare(b.name, language.value))
  return (
    <section class="bench word-list" aria-label={say`Words of the trade`}>
      <label>
        {say`Find a word`}{' '}
        <input
          type="search"
          value={typed.value}
          onInput={({ currentTarget }) => {
            typed.value = currentTarget.value
          }}
        />
      </label>
      <p class="note" role="status">
        {found.length === 0
          ? say`No word here holds these letters.`
          : say`${found.length} of ${termKeys.length} words`}
      </p>
      <dl>
        {found.map(({ key, room, name, says }) => (
          <div key={key}>
            <dt>{name}</dt>
            <dd>
              <p>{says}</p>
              <p class="hint-source">
                {termSource(key)}{' '}
                <a
                  href={roomAddress(room)}
                  onClick={(event) => {
                    event.preventDefault()
                    enter(room)
                  }}
                >
                  {say`Met in: ${rooms[room]!.title()}`}
                </a>
              </p>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
