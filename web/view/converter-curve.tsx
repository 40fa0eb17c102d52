/** What the electronics ask for at each speed beside what the machine gives; nothing where there are none. */
import { converterCurveChart, converterCurveTable } from '../../src/output/chart/converter-curve.ts'
import { useSight } from '../store/sight.ts'
import { say } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'

export function ConverterCurve({ wind }: { readonly wind: number }) {
  const duty = useSight('converterDuty')
  if (duty === undefined) return null
  return (
    <ChartFrame
      name="converter-curve"
      title={say`What the electronics ask for at each speed`}
      note={say`Where less is drawn than asked for, the bridge has too few volts or the battery takes the current by itself. Electronics that follow the blades’ best keep a little below it: past it the rotor is held back in stall.`}
      wind={wind}
      draw={(width) => converterCurveChart({ width, height: 320, duty, chosenWind: wind })}
      data={() => converterCurveTable(duty)}
    />
  )
}
