/** The strip of the site's wind: it is drawn small, and it is the slider by which one walks from calm to storm. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { WindRow } from '../../src/index.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import { type WindMark, windStripChart } from '../../src/output/chart/wind-strip.ts'
import { formatSi } from '../../src/units/format.ts'
import { Figure } from '../hint/figure.tsx'
import type { FigureKey } from '../hint/figure-method.ts'
import type { Snapshot } from '../snapshot.ts'
import { lookAtRow } from '../store/design.ts'
import { measure, signSaid, warmthSaid, windSaid } from '../store/measure.ts'
import { say, shown } from '../text/say.ts'
import { toldDrawing } from '../text/told-picture.ts'
import { rowSentence, rpmText } from './row-words.ts'

/** Half the knob of the slider [px], as in the style sheet. */
const knob = 14

function marksOf({ rows, startWind, cutInWind, runaway, wanted }: Snapshot): WindMark[] {
  const first = (state: WindRow['state']) => rows.find((row) => row.state === state)?.wind
  const stall = first('stalled')
  const held = first('held')
  const burning = rows.find(({ overheated }) => overheated)?.wind
  return [
    { wind: startWind, label: say`turns`, kind: 'begins' },
    { wind: cutInWind, label: say`charges`, kind: 'begins' },
    ...(wanted ? [{ wind: wanted.wind, label: say`wanted`, kind: 'begins' as const }] : []),
    ...(stall === undefined ? [] : [{ wind: stall, label: say`stall`, kind: 'limit' as const }]),
    ...(held === undefined ? [] : [{ wind: held, label: say`limiter`, kind: 'limit' as const }]),
    ...(burning === undefined ? [] : [{ wind: burning, label: say`burns`, kind: 'danger' as const }]),
    { wind: runaway.wind, label: say`storm`, kind: 'danger' },
  ]
}

function Now({ snapshot, row }: { readonly snapshot: Snapshot; readonly row: WindRow }) {
  const figures: [FigureKey, string, string][] = [
    ['wind', say`wind`, `${windSaid(row.wind)}`],
    ['speed', say`speed`, rpmText(row.speed)],
    ['loadVoltage', say`load`, formatSi(row.loadVoltage, 'V')],
    ['loadCurrent', say`current`, formatSi(row.loadCurrent, 'A')],
    ['copperTemperature', say`copper`, row.overheated ? say`burns` : warmthSaid(row.copperTemperature)],
  ]
  return (
    <>
      <dl class="now">
        {figures.map(([of, name, value]) => (
          <div key={of}>
            <dt>{name}</dt>
            <dd>
              <Figure of={of} name={name}>
                {shown(value)}
              </Figure>
            </dd>
          </div>
        ))}
      </dl>
      <output class="hidden" aria-live="polite">
        {rowSentence(snapshot, row)}
      </output>
    </>
  )
}

export function WindStrip({ snapshot, index }: { readonly snapshot: Snapshot; readonly index: number }) {
  const place = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  useLayoutEffect(() => {
    const element = place.current
    if (!element) return
    const fit = () => setWidth(Math.floor(element.clientWidth))
    fit()
    const observer = new ResizeObserver(fit)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  const { rows, year, hours } = snapshot
  const row = rows[index]!
  const first = rows[0]!.wind
  const last = rows.at(-1)!.wind
  const step = rows.length > 1 ? rows[1]!.wind - first : 0.5
  const drawing =
    width > 40
      ? toldDrawing(() =>
          windStripChart({
            width,
            wind: rows.map(({ wind }) => wind),
            hours,
            energy: year.byWind,
            marks: marksOf(snapshot),
            chosenWind: row.wind,
            border: knob,
          }),
        )
      : ''
  return (
    <section class="strip" aria-label={say`The wind you stand in`}>
      <Now snapshot={snapshot} row={row} />
      <div class="strip-place" ref={place}>
        <div class="strip-picture" dangerouslySetInnerHTML={{ __html: drawing }} />
        <input
          id="wind"
          type="range"
          aria-label={say`Wind, ${signSaid('m_per_s')}`}
          min={first}
          max={last}
          step={step}
          value={row.wind}
          aria-valuetext={
            measure.value.wind === 'm/s'
              ? say`${shortNumber(row.wind)} metres per second`
              : windSaid(row.wind)
          }
          onInput={(event) => lookAtRow(Math.round((Number(event.currentTarget.value) - first) / step))}
        />
      </div>
    </section>
  )
}
