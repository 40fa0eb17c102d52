/** The frame round a picture: its heading above, what of it may be taken along below, and the same numbers as a table. */
import { effect } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { ChartTable } from '../../src/output/chart/chart-table.ts'
import type { TakenKind } from '../picture/take-along.ts'
import { snapshot } from '../store/design.ts'
import { windSaid } from '../store/measure.ts'
import { say } from '../text/say.ts'
import { toldDrawing, toldTable } from '../text/told-picture.ts'
import { ChartTableView, type RowChoice } from './data-table.tsx'
import { drawSoon } from './drawing-turn.ts'

interface ChartFrame {
  readonly name: string
  readonly title: string
  readonly note?: ComponentChildren
  /** The picture at that width, as SVG. */
  readonly draw: (width: number) => string
  /** The numbers behind the picture. */
  readonly data: () => ChartTable
  /** Rows of the table that stand for what is looked at, and may be chosen. */
  readonly rows?: RowChoice
  readonly tableNote?: ComponentChildren
  /** The wind that the picture belongs to, for the name of its file [m/s]. */
  readonly wind?: number
  /**
   * Looks at another wind where the picture has an axis of wind and somebody points along it. A shortcut for hands with
   * a pointer: the keyboard has the slider of the winds, and the rows of the table.
   */
  readonly onWind?: (wind: number) => void
  readonly children?: ComponentChildren
}

/** A picture that leaves the page is at least as wide as a page of paper likes, whatever the screen [px]. */
const leastTakenWidth = 720

const kinds: readonly TakenKind[] = ['svg', 'png', 'csv']

function TakeAlong({ name, title, draw, data, wind, width }: ChartFrame & { readonly width: number }) {
  const [trouble, setTrouble] = useState('')
  const take = async (kind: TakenKind) => {
    try {
      const { takeAlong } = await import('../picture/take-along.ts')
      const design = snapshot.peek()?.name ?? ''
      const below = wind === undefined ? design : say`${design}, in a wind of ${windSaid(wind)}`
      await takeAlong(kind, {
        design,
        picture: name,
        ...(wind === undefined ? {} : { wind }),
        head: { title, below },
        drawing: () => draw(Math.max(width, leastTakenWidth)),
        table: data,
      })
      setTrouble('')
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error)
      setTrouble(say`It could not be taken along as ${kind.toUpperCase()}: ${reason}.`)
    }
  }
  return (
    <>
      <span class="take-along-word" aria-hidden="true">
        {say`Take along`}
      </span>
      {kinds.map((kind) => (
        <button
          key={kind}
          type="button"
          class="take-along-kind"
          aria-label={
            kind === 'csv'
              ? say`Take the numbers of “${title}” along as CSV`
              : say`Take the picture “${title}” along as ${kind.toUpperCase()}`
          }
          onClick={() => void take(kind)}
        >
          {kind.toUpperCase()}
        </button>
      ))}
      <output class="take-along-trouble" aria-live="polite">
        {trouble}
      </output>
    </>
  )
}

/** The wind under the pointer, undefined beside the axis. */
function windAt(place: Element, { clientX, clientY }: PointerEvent): number | undefined {
  for (const plot of place.querySelectorAll<SVGRectElement>('.wind-plot')) {
    const { left, right, top, bottom } = plot.getBoundingClientRect()
    if (clientX < left || clientX > right || clientY < top || clientY > bottom || right <= left) continue
    const [from, to] = [Number(plot.dataset['windFrom']), Number(plot.dataset['windTo'])]
    return from + ((clientX - left) / (right - left)) * (to - from)
  }
  return undefined
}

export function ChartFrame(frame: ChartFrame) {
  const { name, title, note, draw, data, rows, tableNote, onWind, children } = frame
  const place = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  const [tabled, setTabled] = useState(false)
  useLayoutEffect(() => {
    const element = place.current
    if (!element) return
    const measure = () => setWidth(Math.floor(element.clientWidth))
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  const [drawing, setDrawing] = useState('')
  useLayoutEffect(() => {
    const element = place.current
    if (!element || width <= 40) return
    let stop = () => {}
    const takeBack = drawSoon(
      element,
      () => {
        // what the picture reads beside its numbers, as the units chosen, has it drawn anew
        stop = effect(() => setDrawing(toldDrawing(() => draw(width))))
      },
      element.firstChild !== null,
    )
    return () => {
      takeBack()
      stop()
    }
  }, [draw, width])
  const point = (event: PointerEvent) => {
    const wind = place.current === null ? undefined : windAt(place.current, event)
    if (wind !== undefined) onWind?.(wind)
    return wind !== undefined
  }
  const pointing =
    onWind === undefined
      ? {}
      : {
          onPointerDown: (event: PointerEvent) => {
            if (event.button === 0 && point(event)) place.current?.setPointerCapture(event.pointerId)
          },
          onPointerMove: (event: PointerEvent) => {
            if (place.current?.hasPointerCapture(event.pointerId)) point(event)
          },
        }
  return (
    <figure class={`card chart chart-${name}${onWind === undefined ? '' : ' by-wind'}`}>
      <figcaption>
        <h3>{title}</h3>
        {note === undefined ? null : <p class="note">{note}</p>}
      </figcaption>
      <div class="drawing" ref={place} {...pointing} dangerouslySetInnerHTML={{ __html: drawing }} />
      {children}
      <div class="take-along">
        <TakeAlong
          {...frame}
          width={width}
          draw={(wide) => toldDrawing(() => draw(wide))}
          data={() => toldTable(data())}
        />
        <details class="as-table" onToggle={(event) => setTabled(event.currentTarget.open)}>
          <summary>{say`The same as a table`}</summary>
          {tabled ? (
            <>
              <ChartTableView table={toldTable(data())} {...(rows === undefined ? {} : { rows })} />
              {tableNote === undefined ? null : <p class="note">{tableNote}</p>}
            </>
          ) : null}
        </details>
      </div>
    </figure>
  )
}
