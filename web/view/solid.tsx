/** The machine in three dimensions, fetched when it comes into sight; it turns as it does in the wind looked at, slowed. */
import { useEffect, useRef, useState } from 'preact/hooks'
import type { WindRow } from '../../src/index.ts'
import { phaseLetter } from '../../src/output/chart/phase-letter.ts'
import type { SolidView } from '../snapshot.ts'
import { windSaid } from '../store/measure.ts'
import { useSight } from '../store/sight.ts'
import { say } from '../text/say.ts'
import { rpmText } from './row-words.ts'
import type { Scene } from './solid-scene.ts'
import { WireLegend } from './wire-legend.tsx'

/** An eye follows that much: one turn in eight seconds [rad/s]. */
const followed = Math.PI / 4

/** By what the rotor is slowed: the least of 1, 2, 5, 10 … that lets an eye follow. */
export function slowing(speed: number): number {
  if (!(speed > followed)) return 1
  const decade = 10 ** Math.floor(Math.log10(speed / followed))
  return decade * ([1, 2, 5, 10].find((step) => speed / followed <= step * decade) ?? 10)
}

const calm = matchMedia('(prefers-reduced-motion: reduce)')

function Button({ label, onClick }: { readonly label: string; readonly onClick: () => void }) {
  return (
    <button type="button" onClick={onClick}>
      {label}
    </button>
  )
}

export function Solid({ solid, row }: { readonly solid: SolidView; readonly row: WindRow }) {
  const place = useRef<HTMLDivElement>(null)
  const scene = useRef<Scene | undefined>(undefined)
  const latest = useRef(solid)
  const [state, setState] = useState<'away' | 'there' | 'failed'>('away')
  const [seen, setSeen] = useState(false)
  const [byVolts, setByVolts] = useState(false)
  const [turns, setTurns] = useState(!calm.matches)
  const wire = useSight('wire', byVolts)
  const latestWire = useRef(wire)
  latest.current = solid
  latestWire.current = wire

  useEffect(() => {
    const element = place.current
    if (!element) return
    let gone = false
    let asked = false
    const load = async () => {
      try {
        const { openScene } = await import('./solid-scene.ts')
        if (gone) return
        scene.current = openScene(element)
        scene.current.show(latest.current, latestWire.current)
        setState('there')
      } catch {
        if (!gone) setState('failed')
      }
    }
    const watcher = new IntersectionObserver((entries) => {
      const inSight = entries.some(({ isIntersecting }) => isIntersecting)
      setSeen(inSight)
      if (!inSight || asked) return
      asked = true
      void load()
    })
    watcher.observe(element)
    return () => {
      gone = true
      watcher.disconnect()
      scene.current?.close()
      scene.current = undefined
    }
  }, [])

  useEffect(() => {
    scene.current?.show(solid, wire)
  }, [solid, wire])

  const slow = slowing(row.speed)
  const rate = turns && seen && state === 'there' ? row.speed / slow : 0
  useEffect(() => {
    scene.current?.spin(rate)
  }, [rate])

  const phases = new Set(solid.wires.map(({ phase }) => phase)).size
  const { length } = solid.magnets
  const windings = solid.wires.length
  const words =
    windings === phases
      ? say`${length} magnets, ${phases} phases of one winding each`
      : say`${length} magnets, ${windings} windings in ${phases} phases`
  const legend = [...new Set(solid.wires.map(({ phase }) => phase))].sort()
  const turn = (across: number, up: number) => () => scene.current?.turn(across, up)
  return (
    <figure class="card solid">
      <figcaption>
        <h3>{say`The machine`}</h3>
        <p class="note">{say`${words}, to scale.`}</p>
      </figcaption>
      <div class="solid-view" ref={place} role="img" aria-label={say`The machine: ${words}.`} />
      {state === 'failed' ? (
        <p class="note">{say`This browser cannot draw in three dimensions; every number is there without it.`}</p>
      ) : null}
      <p class="note solid-speed">
        {row.speed === 0
          ? say`At ${windSaid(row.wind)} it stands still.`
          : slow === 1
            ? say`At ${windSaid(row.wind)} it turns at ${rpmText(row.speed)}, as shown.`
            : say`At ${windSaid(row.wind)} it turns at ${rpmText(row.speed)}, shown ${slow} times slower.`}
      </p>
      {byVolts ? <WireLegend /> : null}
      <ul class="solid-legend">
        {(byVolts ? [] : legend).map((phase) => (
          <li key={phase}>
            <span class={`swatch swatch-${(phase % 3) + 1}`} /> {say`phase ${phaseLetter(phase)}`}
          </li>
        ))}
        <li>
          <span class={`swatch swatch-n${wire ? ' quiet' : ''}`} /> {say`N, north pole`}
        </li>
        <li>
          <span class={`swatch swatch-s${wire ? ' quiet' : ''}`} /> {say`S, south pole`}
        </li>
        {solid.plates.length > 0 || solid.tubes.length > 0 ? (
          <li>
            <span class="swatch swatch-steel" /> {say`steel`}
          </li>
        ) : null}
      </ul>
      <div class="solid-keys">
        <label class="tick-box">
          <input
            type="checkbox"
            checked={turns}
            onChange={(event) => setTurns(event.currentTarget.checked)}
          />{' '}
          {say`turning`}
        </label>
        <label class="tick-box">
          <input
            type="checkbox"
            defaultChecked
            onChange={(event) => scene.current?.showWire(event.currentTarget.checked)}
          />{' '}
          {say`wire`}
        </label>
        <label class="tick-box">
          <input type="checkbox" onChange={(event) => setByVolts(event.currentTarget.checked)} />{' '}
          {say`colour by volts`}
        </label>
      </div>
      <details class="solid-ways">
        <summary>{say`Turn and come nearer by keys`}</summary>
        <div class="solid-keys">
          <Button label={say`Turn left`} onClick={turn(-0.35, 0)} />
          <Button label={say`Turn right`} onClick={turn(0.35, 0)} />
          <Button label={say`Tilt up`} onClick={turn(0, 0.3)} />
          <Button label={say`Tilt down`} onClick={turn(0, -0.3)} />
          <Button label={say`Nearer`} onClick={() => scene.current?.nearer(0.8)} />
          <Button label={say`Farther`} onClick={() => scene.current?.nearer(1.25)} />
        </div>
      </details>
    </figure>
  )
}
