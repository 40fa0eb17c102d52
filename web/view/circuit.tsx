/** The circuit from the coils to the store. */
import { circuitChart, circuitTable } from '../../src/output/chart/circuit.ts'
import { say } from '../text/say.ts'
import { SightChart } from './sight-chart.tsx'

export const CircuitView = () => (
  <SightChart
    of="circuitPlan"
    name="circuit"
    title={say`The circuit from the coils to the store`}
    draw={(plan, width) => circuitChart({ width, plan })}
    data={circuitTable}
  />
)
