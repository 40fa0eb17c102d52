/** A year's energy by wind and where it goes, with the tracings laid over. */
import { energyByWindChart, energyByWindTable } from '../../src/output/chart/energy-by-wind.ts'
import { withTracings } from '../../src/output/chart/tracing.ts'
import { lookAtWind } from '../store/design.ts'
import { say } from '../text/say.ts'
import { SightChart } from './sight-chart.tsx'
import { tracedEnergy } from './traced.ts'

export function EnergyByWindView({ wind }: { readonly wind: number }) {
  const tracings = tracedEnergy()
  return (
    <SightChart
      of="energyByWind"
      name="energy-by-wind"
      title={say`A year’s energy by wind, and where it goes`}
      draw={(energy, width) => energyByWindChart({ width, height: 320, energy, chosenWind: wind, tracings })}
      data={(energy) =>
        withTracings(energyByWindTable(energy), energy.wind, tracings, { of: 'useful', unit: 'kWh' })
      }
      onWind={lookAtWind}
    />
  )
}
