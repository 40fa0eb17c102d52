/** Other ways to begin: an example to look round in, or a file of one's own. */
import { examples } from '../store/example.ts'
import { openExample, openFile } from '../store/opening.ts'
import { enter } from '../store/room.ts'
import { say } from '../text/say.ts'

/** What an example is, in one sentence; its own note where the page has none. */
function exampleWords(key: string, note: unknown): string {
  switch (key) {
    case 'boathouse-two-disc':
      return say`Nine coils cast in resin between two steel discs charge a 24 V battery by a lake.`
    case 'class-room-fan':
      return say`Small magnets, six coils wound by hand and cardboard blades light a resistor before a desk fan.`
    case 'garden-vertical':
      return say`Three straight blades on an upright axis behind a garden shed keep a 12 V battery for a lamp and a pump.`
    case 'hen-house-drum':
      return say`Three waves of wire round a printed drum keep a 12 V lamp battery charged through the winter.`
    case 'moor-weather-station':
      return say`Six coils between two small discs feed a converter that keeps a weather station awake through every month.`
    case 'many-faults':
      return say`Deliberately wrong, to see what the concerns say. Nobody should build it.`
    default:
      return typeof note === 'string' ? note : ''
  }
}

export function OpeningChoice() {
  return (
    <section class="opening" aria-labelledby="opening-head">
      <h3 id="opening-head">{say`Or begin otherwise`}</h3>
      <p class="note">
        {say`The examples are invented: no such machine stands anywhere. Look round in one, change it, make it yours.`}
      </p>
      <ul class="opening-list">
        {examples.value.map(({ key, name, document }) => (
          <li key={key}>
            <button
              type="button"
              class="card opening-example"
              onClick={() => {
                openExample(key)
                enter('whole')
              }}
            >
              <b>{name}</b> <span>{exampleWords(key, document['note'])}</span>
            </button>
          </li>
        ))}
      </ul>
      <label class="button opening-file">
        {say`Open a file of yours`}
        <input
          type="file"
          accept=".json,application/json"
          onChange={async (event) => {
            const { currentTarget } = event
            const opened = await openFile(currentTarget.files?.[0])
            currentTarget.value = ''
            if (opened) enter('whole')
          }}
        />
      </label>
    </section>
  )
}
