/** A remedy laid over the design before it is taken: what it would make is kept as a tracing. */
import { useState } from 'preact/hooks'
import { enter } from '../store/room.ts'
import { tracings } from '../store/tracing.ts'
import { say } from '../text/say.ts'

interface LayOver {
  /** What is laid over, for those who hear the button's name alone. */
  readonly name: string
  /** Keeps it and gives its letter; nothing where there is no longer anything to lay over. */
  readonly lay: () => Promise<string | undefined>
}

export function LayOver({ name, lay }: LayOver) {
  const [letter, setLetter] = useState<string | undefined>(undefined)
  const kept = letter !== undefined && tracings.value.some((each) => each.letter === letter)
  return (
    <>
      <button
        type="button"
        disabled={kept}
        aria-label={say`Lay it over: ${name}`}
        onClick={() => void lay().then(setLetter)}
      >
        {say`Lay it over`}
      </button>
      <output aria-live="polite">{kept ? say`Kept as tracing ${letter}.` : ''}</output>
      {kept ? (
        <button type="button" class="quiet" onClick={() => enter('compare')}>
          {say`see it side by side`}
        </button>
      ) : null}
    </>
  )
}
