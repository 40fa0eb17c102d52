/** The machine turned by hand: how fast, which meter, where its probes are, what was read. */
import { computed, signal } from '@preact/signals'
import { type ProbePoint, probePoints } from '../../src/analysis/probe-point.ts'
import type { Meter } from '../../src/index.ts'
import { meterOfClass } from '../../src/machine/meter.ts'
import { snapshot } from './design.ts'

/** [rpm]; one turn a second to begin with. */
export const turnRpm = signal(60)
/** Undefined: the meter of the design. */
export const chosenMeter = signal<string | undefined>(undefined)
export const chosenProbe = signal('line-1-2')
/** As typed. */
export const typedVolts = signal('')

export const turnMeter = computed((): Meter | undefined => {
  const own = snapshot.value?.meter
  const name = chosenMeter.value
  return own === undefined || name === undefined || name === own.name ? own : meterOfClass(name)
})

export const turnPoints = computed((): readonly ProbePoint[] => {
  const source = snapshot.value?.turn
  return source ? probePoints(source) : []
})

export const turnProbe = computed(
  () => turnPoints.value.find(({ id }) => id === chosenProbe.value) ?? turnPoints.value[0],
)

/** Above zero, or undefined where nothing sensible is typed; a comma may stand for the point. */
export function typedNumber(text: string): number | undefined {
  const value = Number(text.trim().replace(',', '.'))
  return text.trim() !== '' && Number.isFinite(value) && value > 0 ? value : undefined
}
