/** The machine in three dimensions, fetched when it comes into sight. */
import { useEffect, useRef, useState } from 'preact/hooks'
import type { SolidView } from '../snapshot.ts'
import { watchWire, wireDetail } from '../store/design.ts'
import type { Scene } from './solid-scene.ts'
import { WireLegend } from './wire-legend.tsx'

export function Solid({ solid }: { readonly solid: SolidView }) {
  const place = useRef<HTMLDivElement>(null)
  const scene = useRef<Scene | undefined>(undefined)
  const latest = useRef(solid)
  const [state, setState] = useState<'away' | 'there' | 'failed'>('away')
  const [byVolts, setByVolts] = useState(false)
  const wire = byVolts ? wireDetail.value : undefined
  const latestWire = useRef(wire)
  latest.current = solid
  latestWire.current = wire

  useEffect(() => {
    const element = place.current
    if (!element) return
    let gone = false
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
      if (!entries.some(({ isIntersecting }) => isIntersecting)) return
      watcher.disconnect()
      void load()
    })
    watcher.observe(element)
    return () => {
      gone = true
      watcher.disconnect()
      scene.current?.close()
    }
  }, [])

  useEffect(() => {
    scene.current?.show(solid, wire)
  }, [solid, wire])

  useEffect(() => (byVolts ? watchWire() : undefined), [byVolts])

  const phases = new Set(solid.wires.map(({ phase }) => phase)).size
  const words = `${solid.magnets.length} magnets, ${solid.wires.length} ${solid.wires.length === 1 ? 'winding' : 'windings'} in ${phases} ${phases === 1 ? 'phase' : 'phases'}`
  const legend = [...new Set(solid.wires.map(({ phase }) => phase))].sort()
  const turn = (across: number, up: number) => () => scene.current?.turn(across, up)
  return (
    <figure class="card solid">
      <figcaption>
        <h3>Magnets and wire</h3>
        <p class="note">
          {words}, to scale. Drag to turn, or use the buttons. N and S are the poles at each face.
        </p>
      </figcaption>
      <div class="solid-view" ref={place} role="img" aria-label={`The machine: ${words}.`} />
      {state === 'failed' ? (
        <p class="note">This browser cannot draw in three dimensions; every number is there without it.</p>
      ) : null}
      {byVolts ? <WireLegend /> : null}
      <ul class="solid-legend">
        {(byVolts ? [] : legend).map((phase) => (
          <li key={phase}>
            <span class={`swatch swatch-${(phase % 3) + 1}`} /> phase {phase + 1}
          </li>
        ))}
        <li>
          <span class={`swatch swatch-n${wire ? ' quiet' : ''}`} /> N, north pole
        </li>
        <li>
          <span class={`swatch swatch-s${wire ? ' quiet' : ''}`} /> S, south pole
        </li>
        {solid.plates.length > 0 ? (
          <li>
            <span class="swatch swatch-steel" /> steel
          </li>
        ) : null}
      </ul>
      <div class="solid-keys">
        <label class="tick-box">
          <input
            type="checkbox"
            defaultChecked
            onChange={(event) => scene.current?.showWire(event.currentTarget.checked)}
          />{' '}
          wire
        </label>
        <label class="tick-box">
          <input type="checkbox" onChange={(event) => setByVolts(event.currentTarget.checked)} /> colour by
          volts
        </label>
        <button type="button" onClick={turn(-0.35, 0)}>
          Turn left
        </button>
        <button type="button" onClick={turn(0.35, 0)}>
          Turn right
        </button>
        <button type="button" onClick={turn(0, 0.3)}>
          Tilt up
        </button>
        <button type="button" onClick={turn(0, -0.3)}>
          Tilt down
        </button>
        <button type="button" onClick={() => scene.current?.nearer(0.8)}>
          Nearer
        </button>
        <button type="button" onClick={() => scene.current?.nearer(1.25)}>
          Farther
        </button>
      </div>
    </figure>
  )
}
