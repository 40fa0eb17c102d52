/** The phasors of the coils, put down one after the other: step by step, or by themselves. */
import { useEffect, useState } from 'preact/hooks'
import type { CoilPhasors } from '../../src/analysis/coil-phasor.ts'
import { phasorChart, phasorSteps, phasorTable } from '../../src/output/chart/phasor.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'

interface PhasorPlayer {
  readonly phasors: CoilPhasors
  readonly windingFactors?: readonly (number | undefined)[]
}

/** Between one coil and the next [ms]. */
const pace = 650

/** Somebody asked for pages that do not move. */
const stillness = matchMedia('(prefers-reduced-motion: reduce)')

function useStillness(): boolean {
  const [still, setStill] = useState(stillness.matches)
  useEffect(() => {
    const heard = () => setStill(stillness.matches)
    stillness.addEventListener('change', heard)
    return () => stillness.removeEventListener('change', heard)
  }, [])
  return still
}

export function PhasorPlayer({ phasors, windingFactors = [] }: PhasorPlayer) {
  const steps = phasorSteps(phasors)
  const last = steps.length
  const still = useStillness()
  const [wished, setWished] = useState(Number.POSITIVE_INFINITY)
  const [asked, setPlaying] = useState(false)
  const at = Math.min(wished, last)
  const playing = asked && !still && at < last
  useEffect(() => {
    if (asked && at >= last) setPlaying(false)
    if (!playing) return
    const timer = setTimeout(() => setWished(at + 1), pace)
    return () => clearTimeout(timer)
  }, [playing, asked, at, last])
  const show = (step: number) => {
    setPlaying(false)
    setWished(Math.min(Math.max(step, 0), last))
  }
  const play = () => {
    if (at === last) setWished(0)
    setPlaying(!playing)
  }
  const keys: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => show(at - 1),
    ArrowRight: () => show(at + 1),
    Home: () => show(0),
    End: () => show(last),
  }
  const coils = steps[at - 1]?.map(({ number, against }) => (against ? `${number}!` : String(number)))
  return (
    <ChartFrame
      name="phasors"
      title={say`Coil by coil to the volts of a phase`}
      note={say`Each arrow is one coil: as long as its volts, turned by how far it is ahead. Coils in step lie in one line; what bends off is lost.`}
      draw={(width) => phasorChart({ width, phasors, windingFactors, ...(at < last ? { upTo: at } : {}) })}
      data={() => phasorTable(phasors)}
    >
      {last > 1 ? (
        <div
          class="player"
          role="toolbar"
          aria-label={say`Coil by coil`}
          onKeyDown={(event) => {
            const act = keys[event.key]
            if (act === undefined || event.altKey || event.ctrlKey || event.metaKey) return
            event.preventDefault()
            act()
          }}
        >
          <button type="button" aria-disabled={at === 0} onClick={() => show(at - 1)}>
            {say`One back`}
          </button>
          {still ? null : (
            <button type="button" class="player-play" onClick={play}>
              {playing ? say`Hold` : say`Play`}
            </button>
          )}
          <button type="button" aria-disabled={at === last} onClick={() => show(at + 1)}>
            {say`One on`}
          </button>
          <button type="button" aria-disabled={at === last} onClick={() => show(last)}>
            {say`All`}
          </button>
          <output class="player-place" aria-live={playing ? 'off' : 'polite'}>
            {at === 0
              ? say`No coil yet, of ${last} steps.`
              : at === last
                ? say`All ${last} steps.`
                : say`Step ${at} of ${last}: coil ${coils?.join(', ') ?? ''}.`}
          </output>
        </div>
      ) : null}
    </ChartFrame>
  )
}
