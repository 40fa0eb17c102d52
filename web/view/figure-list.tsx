/** Figures side by side: a name, a value with its unit, and what it means. */
import type { ComponentChildren } from 'preact'

export interface ShownFigure {
  readonly name: string
  readonly value: ComponentChildren
  readonly note?: ComponentChildren
  /** Said beside it where it is past what it may be. */
  readonly trouble?: string
}

export function FigureList({
  label,
  figures,
}: {
  readonly label: string
  readonly figures: readonly ShownFigure[]
}) {
  return (
    <section class="figures" aria-label={label}>
      <dl>
        {figures.map(({ name, value, note, trouble }) => (
          <div key={name} class={trouble === undefined ? '' : 'is-past'}>
            <dt>{name}</dt>
            <dd>
              <b>{value}</b>
              {trouble === undefined ? null : <strong class="past-words">{trouble}</strong>}
              {note === undefined ? null : <small>{note}</small>}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
