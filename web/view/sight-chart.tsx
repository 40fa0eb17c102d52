/** A picture drawn of what the engine found for it; until the engine has answered, its frame says so. */
import type { ComponentChildren } from 'preact'
import type { ChartTable } from '../../src/output/chart/chart-table.ts'
import type { Sight, SightName } from '../sight.ts'
import { useSight } from '../store/sight.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'

interface SightChart<Name extends SightName> {
  readonly of: Name
  /** Of the picture, in file names and styles. */
  readonly name: string
  readonly title: string
  readonly note?: ComponentChildren
  readonly draw: (found: Sight<Name>, width: number) => string
  readonly data: (found: Sight<Name>) => ChartTable
  readonly onWind?: (wind: number) => void
  readonly wind?: number
}

export function SightChart<Name extends SightName>({ of, draw, data, ...rest }: SightChart<Name>) {
  const found = useSight(of)
  if (found === undefined)
    return (
      <figure class={`card chart chart-${rest.name}`}>
        <figcaption>
          <h3>{rest.title}</h3>
        </figcaption>
        <p class="note">{say`It is being drawn.`}</p>
      </figure>
    )
  return <ChartFrame {...rest} draw={(width) => draw(found, width)} data={() => data(found)} />
}
