/** The walk round the page: a strip that tells in six steps what stands where, and shows it. */
import { render } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { enter, type RoomKey } from '../store/room.ts'
import { endWalk, walkStep } from '../store/walk.ts'
import { say } from '../text/say.ts'
import '../style/hint.css'

interface Step {
  readonly says: () => string
  /** Shown with a border; the first of these that is on the page. */
  readonly at: string
  /** Has to be open for it. */
  readonly room?: RoomKey
}

const steps: readonly Step[] = [
  {
    says: () =>
      say`This is the wind of your site. Drag it, or use the arrow keys, and stand in any wind from calm to storm.`,
    at: '.strip',
    room: 'whole',
  },
  {
    says: () =>
      say`This is the river of watts at that wind, from the air to the store. What leaves it on the way is lost; each station on it opens a room.`,
    at: '.river, .river-down',
  },
  {
    says: () =>
      say`These are the figures of the whole machine. Point at a number, or tap it, and it tells its formula, what went into it, and its source.`,
    at: '.figures',
    room: 'whole',
  },
  {
    says: () =>
      say`In a room you change the design. Each field has its unit, how sure you are of it, and a help; every number on the page follows at once.`,
    at: '#room',
    room: 'magnets',
  },
  {
    says: () =>
      say`In these rooms you work with the machine as a whole: turn it by hand, let a storm come, look for a fault, print a sheet.`,
    at: '.benches',
  },
  {
    says: () =>
      say`Here your design has its name, and the ways back and forth. It is kept in this browser as you type; the shelf holds all designs and their versions.`,
    at: '.design-menu',
  },
]

/** What has not come by then is not shown; its step is told all the same. */
const mostFrames = 240

function Walk() {
  const step = walkStep.value
  const text = useRef<HTMLParagraphElement>(null)
  const came = useRef<HTMLElement | undefined>(undefined)
  useEffect(() => {
    if (step === undefined) {
      came.current?.focus()
      came.current = undefined
      return
    }
    const { at, room } = steps[step]!
    if (came.current === undefined && document.activeElement instanceof HTMLElement)
      came.current = document.activeElement
    if (room) enter(room)
    let shown: Element | null = null
    let frame = 0
    let timer: ReturnType<typeof setTimeout> | undefined
    const show = () => {
      shown = document.querySelector(at)
      shown?.classList.add('is-walked')
      shown?.scrollIntoView({ block: 'center' })
      text.current?.focus({ preventScroll: true })
    }
    // a room is fetched and drawn first, and then takes the keyboard for itself
    const wait = (left: number) => {
      frame = requestAnimationFrame(() => {
        const drawn = room === undefined || document.querySelector(`.room-${room}`)
        if ((!drawn || !document.querySelector(at)) && left > 0) wait(left - 1)
        else frame = requestAnimationFrame(() => (timer = setTimeout(show)))
      })
    }
    wait(mostFrames)
    return () => {
      cancelAnimationFrame(frame)
      clearTimeout(timer)
      shown?.classList.remove('is-walked')
    }
  }, [step])
  if (step === undefined) return null
  const last = step === steps.length - 1
  const go = (to: number) => {
    walkStep.value = to
  }
  return (
    <section
      class="walk"
      aria-label={say`A walk round the page`}
      onKeyDown={({ key }) => {
        if (key === 'Escape') endWalk()
      }}
    >
      <p tabIndex={-1} ref={text}>
        <b>{say`${step + 1} of ${steps.length}`}</b> {steps[step]!.says()}
      </p>
      <div class="walk-ways">
        {step === 0 ? null : (
          <button type="button" onClick={() => go(step - 1)}>
            {say`Back`}
          </button>
        )}
        <button type="button" onClick={() => (last ? endWalk() : go(step + 1))}>
          {last ? say`Done` : say`Next`}
        </button>
        {last ? null : (
          <button type="button" onClick={endWalk}>
            {say`Leave the walk`}
          </button>
        )}
      </div>
    </section>
  )
}

/** Before everything else, so that the keyboard meets it first. */
export function placeWalk(): void {
  const host = document.createElement('div')
  document.body.prepend(host)
  render(<Walk />, host)
}
