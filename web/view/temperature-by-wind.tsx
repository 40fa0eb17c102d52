/** How warm the machine gets in each wind, with the tracings laid over. */
import { temperatureChart, temperatureTable } from '../../src/output/chart/temperature.ts'
import { withTracings } from '../../src/output/chart/tracing.ts'
import { lookAtWind } from '../store/design.ts'
import { say } from '../text/say.ts'
import { SightChart } from './sight-chart.tsx'
import { tracedTemperature } from './traced.ts'

export function TemperatureByWindView({ wind }: { readonly wind: number }) {
  const tracings = tracedTemperature()
  return (
    <SightChart
      of="temperatureByWind"
      name="temperature"
      title={say`How warm it gets in each wind`}
      note={tracings.length === 0 ? undefined : say`Of a tracing the hot spot of its winding is drawn.`}
      draw={({ wind: values, lines, limits }, width) =>
        temperatureChart({
          width,
          height: 300,
          along: { quantity: 'wind', values },
          lines,
          limits,
          chosenWind: wind,
          tracings,
        })
      }
      data={({ wind: values, lines }) =>
        withTracings(
          temperatureTable({ along: { quantity: 'wind', values }, lines }),
          values,
          tracings.map((tracing) => ({ ...tracing, y: Array.from(tracing.y, (kelvin) => kelvin - 273.15) })),
          { of: 'hot spot', unit: '°C' },
        )
      }
      onWind={lookAtWind}
    />
  )
}
