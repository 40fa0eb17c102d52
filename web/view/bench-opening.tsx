/** What stands on a bench before anything is computed there: a small drawing of what will come, a sentence, its keys. */
import type { ComponentChildren } from 'preact'
import '../style/bench-opening.css'

/** Drawings without words; styles give them the colours of the page. */
const drawings = {
  // a wave as it should be, dashed, and one with a coil too few; the difference is what a meter finds
  fault: (
    <>
      <path class="opening-ground" d="M8 58h124" />
      <path class="opening-sound" d="M8 58c10-56 21-56 31 0s21 56 31 0 21-56 31 0 21 56 31 0" />
      <path class="opening-line" d="M8 58c10-56 21-56 31 0s21 56 31 0 21-20 31 0 21 20 31 0" />
      <path class="opening-upright" d="M85.500 22v20m-3-3l3 4 3-4" />
      <rect class="opening-box" x="140" y="34" width="52" height="48" rx="6" />
      <rect class="opening-window" x="147" y="41" width="38" height="15" rx="2" />
      <path class="opening-needle" d="M152 52l4-6 5 4 6-5 4 4" />
      <circle class="opening-knob" cx="166" cy="69" r="7" />
      <path class="opening-needle" d="M166 69l4-5" />
    </>
  ),
  // a gust, and a rotor that runs away in it past its limit
  storm: (
    <>
      <path class="opening-ground" d="M10 96h180M10 96V10" />
      <path class="opening-limit" d="M10 34h180" />
      <path class="opening-sound" d="M10 78h34c14 0 12-22 20-22s8 34 16 34 8-64 20-64 12 52 24 52h66" />
      <path class="opening-line" d="M10 84h58c22 0 26-8 36-32s14-36 20-36 10 10 18 32 14 26 26 26h22" />
      <circle class="opening-dot" cx="123" cy="16" r="4.500" />
    </>
  ),
  // two states of one machine over each other
  tracing: (
    <>
      <path class="opening-ground" d="M16 96h172M16 96V10" />
      <path
        class="opening-tint"
        d="M16 96c40 0 60-26 84-48s34-22 46-22h42v20h-42c-14 0-22 4-42 24s-46 26-88 26Z"
      />
      <path class="opening-sound" d="M16 96c42 0 68-6 88-26s28-24 42-24h42" />
      <path class="opening-line" d="M16 96c40 0 60-26 84-48s34-22 46-22h42" />
      <path class="opening-upright" d="M168 44V28m-3 3l3-4 3 4" />
    </>
  ),
  // a sheet of paper with a drawing, a table and lines to write on
  sheet: (
    <>
      <path class="opening-paper" d="M58 6h66l20 20v80H58Z" />
      <path class="opening-needle" d="M124 6v20h20" />
      <circle class="opening-ring" cx="82" cy="40" r="14" />
      <circle class="opening-ring" cx="82" cy="40" r="6" />
      <path
        class="opening-ground"
        d="M104 36h30M104 44h30M104 52h22M66 66h68M66 76h68M66 86h68M66 96h40M88 66v30M112 66v20"
      />
    </>
  ),
} as const

interface BenchOpening {
  readonly drawing: keyof typeof drawings
  /** The drawing goes when what it stands for is there. */
  readonly drawn: boolean
  readonly children: ComponentChildren
}

export function BenchOpening({ drawing, drawn, children }: BenchOpening) {
  return (
    <div class={drawn ? 'card bench-opening' : 'card bench-opening is-done'}>
      {drawn ? (
        <svg class="opening-drawing" viewBox="0 0 200 112" aria-hidden="true">
          {drawings[drawing]}
        </svg>
      ) : null}
      <div class="opening-words">{children}</div>
    </div>
  )
}
