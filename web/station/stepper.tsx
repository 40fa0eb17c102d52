/** A button that steps a number, and goes on stepping while it is held. */
import { useEffect, useRef } from 'preact/hooks'

interface StepperProps {
  readonly sign: '−' | '+'
  readonly label: string
  readonly step: () => void
}

/** Held so long, it begins to repeat, and then so often [ms]. */
const firstRepeat = 450
const nextRepeat = 110

export function Stepper({ sign, label, step }: StepperProps) {
  const latest = useRef(step)
  latest.current = step
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const repeated = useRef(false)
  const release = () => clearTimeout(timer.current)
  useEffect(() => release, [])
  const repeat = () => {
    repeated.current = true
    latest.current()
    timer.current = setTimeout(repeat, nextRepeat)
  }
  return (
    <button
      type="button"
      class="stepper"
      tabIndex={-1}
      aria-label={label}
      onPointerDown={() => {
        release()
        repeated.current = false
        timer.current = setTimeout(repeat, firstRepeat)
      }}
      onPointerUp={release}
      onPointerLeave={release}
      onPointerCancel={release}
      onContextMenu={(event) => event.preventDefault()}
      onClick={() => {
        // the click that ends a long hold has done its work already
        if (!repeated.current) latest.current()
        repeated.current = false
      }}
    >
      {sign}
    </button>
  )
}
