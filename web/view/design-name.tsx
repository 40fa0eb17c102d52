/** The field in which a design of the shelf is renamed. */
import { useSignal } from '@preact/signals'
import { type ListedDesign, rename } from '../store/shelf-list.ts'
import { say } from '../text/say.ts'

/** As long as the document allows. */
const longest = 120

export function DesignName({ one }: { readonly one: ListedDesign }) {
  const typed = useSignal(one.name)
  const place = `name-${one.id}`
  return (
    <form
      class="shelf-name"
      onSubmit={(event) => {
        event.preventDefault()
        const name = typed.value.trim()
        if (name !== '' && name !== one.name) void rename(one.id, name)
      }}
    >
      <label for={place}>{say`Name`}</label>
      <input
        id={place}
        type="text"
        required
        maxLength={longest}
        value={typed.value}
        onInput={(event) => {
          typed.value = event.currentTarget.value
        }}
      />
      <button type="submit" disabled={typed.value.trim() === '' || typed.value.trim() === one.name}>
        {say`Rename`}
      </button>
    </form>
  )
}
