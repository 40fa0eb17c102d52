/** Opens examples and files, and saves the design as a file. */
import { before, document as design, notice, replace } from '../store/design.ts'
import { examples } from '../store/example.ts'
import { documentText, isRawObject, type RawObject } from '../store/raw-document.ts'
import { copyLink } from '../store/sharing.ts'
import { Undo } from './undo.tsx'

const fileName = (document: RawObject): string =>
  `${
    String(document['name'] ?? '')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'design'
  }.json`

function save(document: RawObject): void {
  const address = URL.createObjectURL(new Blob([documentText(document)], { type: 'application/json' }))
  const link = window.document.createElement('a')
  link.href = address
  link.download = fileName(document)
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 1000)
}

/** A file of a whole workshop is some kilobytes. */
const longestFile = 1_000_000

export function FileBar() {
  const open = (next: RawObject, from: string) => {
    replace(next)
    if (notice.value === '') notice.value = `Opened ${from}.`
  }
  const openFile = async (file: File | undefined) => {
    if (!file) return
    if (file.size > longestFile) {
      notice.value = `${file.name} must be at most ${longestFile} bytes long; received ${file.size} bytes (too-large)`
      return
    }
    try {
      const next: unknown = JSON.parse(await file.text())
      if (isRawObject(next)) open(next, file.name)
      else notice.value = `${file.name} must be an object; received another kind of value (wrong-type)`
    } catch (error) {
      notice.value = `${file.name} must be JSON; received ${error instanceof Error ? error.message : 'something else'} (not-json)`
    }
  }
  return (
    <div class="file-bar">
      <label>
        <span class="hidden">Open an example</span>
        <select
          value=""
          onChange={(event) => {
            const found = examples.find(({ key }) => key === event.currentTarget.value)
            event.currentTarget.value = ''
            if (found) open(found.document, `the example “${found.name}”`)
          }}
        >
          <option value="">Examples …</option>
          {examples.map(({ key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label class="button">
        Open a file
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => {
            void openFile(event.currentTarget.files?.[0])
            event.currentTarget.value = ''
          }}
        />
      </label>
      <button type="button" onClick={() => save(design.value)}>
        Save as a file
      </button>
      <button type="button" onClick={() => void copyLink()}>
        Copy a link
      </button>
      <Undo />
      {before.value === undefined ? null : (
        <button
          type="button"
          onClick={() => {
            if (before.value) replace(before.value)
          }}
        >
          Back to what I had
        </button>
      )}
    </div>
  )
}
