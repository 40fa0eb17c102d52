/** The frame round a chart: as wide as its place, its heading above, the same numbers as a table below. */
import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'

interface ChartFrame {
  readonly name: string
  readonly title: string
  readonly note?: ComponentChildren
  /** The picture at that width, as SVG. */
  readonly draw: (width: number) => string
  readonly table: () => ComponentChildren
  readonly children?: ComponentChildren
}

export function ChartFrame({ name, title, note, draw, table, children }: ChartFrame) {
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
  return (
    <figure class={`card chart chart-${name}`}>
      <figcaption>
        <h3>{title}</h3>
        {note === undefined ? null : <p class="note">{note}</p>}
      </figcaption>
      <div class="drawing" ref={place} dangerouslySetInnerHTML={{ __html: width > 40 ? draw(width) : '' }} />
      {children}
      <details class="as-table" onToggle={(event) => setTabled(event.currentTarget.open)}>
        <summary>The same as a table</summary>
        {tabled ? table() : null}
      </details>
    </figure>
  )
}
