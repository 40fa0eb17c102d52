/** The open design by name in the head of the page, with what is done to it as a whole; one line on a phone. */
import { signal } from '@preact/signals'
import { document as design, notice } from '../store/design.ts'
import { examples } from '../store/example.ts'
import { openExample, openFile } from '../store/opening.ts'
import { copyLink } from '../store/sharing.ts'
import { nameOf } from '../store/shown-design.ts'
import { say } from '../text/say.ts'
import { saveDesign } from './saved-design.ts'
import { Undo } from './undo.tsx'
import '../style/design-menu.css'

/** Brought forward on a narrow page only; a wide one has room for everything. */
const brought = signal(false)

async function tellLink(): Promise<void> {
  notice.value = await copyLink(design.value)
}

function Actions() {
  return (
    <div class={brought.value ? 'design-actions brought' : 'design-actions'} id="design-actions">
      <label>
        <span class="hidden">{say`Open an example`}</span>
        <select
          value=""
          onChange={(event) => {
            openExample(event.currentTarget.value)
            event.currentTarget.value = ''
            brought.value = false
          }}
        >
          <option value="">{say`Examples …`}</option>
          {examples.value.map(({ key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label class="button">
        {say`Open a file`}
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => {
            void openFile(event.currentTarget.files?.[0])
            event.currentTarget.value = ''
            brought.value = false
          }}
        />
      </label>
      <button type="button" onClick={() => saveDesign(design.value)}>
        {say`Save as a file`}
      </button>
      <button type="button" onClick={() => void tellLink()}>
        {say`Copy a link`}
      </button>
    </div>
  )
}

export function DesignMenu() {
  return (
    <div class="design-menu">
      <bdi class="design-name">{nameOf(design.value)}</bdi>
      <Undo />
      <button
        type="button"
        class="bring-actions"
        aria-expanded={brought.value}
        aria-controls="design-actions"
        onClick={() => {
          brought.value = !brought.value
        }}
      >
        {say`File`}
      </button>
      <Actions />
    </div>
  )
}
