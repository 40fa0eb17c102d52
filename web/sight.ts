/** What the pictures of the rooms are drawn of: one question each, asked of the newest chain while something shows it. */
import { bladeFigure } from '../src/analysis/blade-figure.ts'
import { bridgeDuty } from '../src/analysis/bridge-duty.ts'
import { circuitPlan } from '../src/analysis/circuit-plan.ts'
import { coilPhasors } from '../src/analysis/coil-phasor.ts'
import { converterDuty } from '../src/analysis/converter-duty.ts'
import { dumpDuty } from '../src/analysis/dump-duty.ts'
import { energyByWind } from '../src/analysis/energy-by-wind.ts'
import { gapMap } from '../src/analysis/gap-map.ts'
import { heatWays } from '../src/analysis/heat-way.ts'
import { machineFace } from '../src/analysis/machine-face.ts'
import { machineSection } from '../src/analysis/machine-section.ts'
import { clearances } from '../src/analysis/mechanics/clearance.ts'
import { mechanicalHeat } from '../src/analysis/mechanics/mechanical-heat.ts'
import { rowsBesidePull } from '../src/analysis/mechanics/mechanics-study.ts'
import { shaftSection } from '../src/analysis/mechanics/shaft-section.ts'
import { speedLine } from '../src/analysis/mechanics/speed-line.ts'
import { temperatureByWind } from '../src/analysis/temperature-by-wind.ts'
import { voltageHarmonics } from '../src/analysis/voltage-harmonics.ts'
import { windingPlan } from '../src/analysis/winding-plan.ts'
import { type Chain, finished, generatorTarget, matchMap, warmUp, windingFactors } from '../src/index.ts'
import { safetyReport } from '../src/output/safety-report.ts'
import { wireSnapshotOf } from './wire-snapshot.ts'

const questions = {
  phasors: (chain: Chain) => ({
    phasors: coilPhasors(chain),
    windingFactors: chain.voltage.phases.map((_, phase) => windingFactors(chain, phase).rows[0]?.textbook),
  }),
  windingPlan,
  harmonics: (chain: Chain) => voltageHarmonics(chain),
  gapMap: (chain: Chain) => finished(gapMap(chain)),
  machineSection,
  machineFace,
  circuitPlan,
  energyByWind,
  temperatureByWind,
  bladeFigure,
  match: (chain: Chain) => {
    const map = finished(matchMap(chain))
    return { map, target: generatorTarget(chain, map) }
  },
  wire: wireSnapshotOf,
  mechanics: (chain: Chain) => ({
    rows: rowsBesidePull(chain, clearances(chain)),
    temperatures: mechanicalHeat(chain).how,
  }),
  shaftSection,
  speedLine,
  warmUp,
  safety: safetyReport,
  bridgeDuty,
  converterDuty,
  dumpDuty,
  heatWays: (chain: Chain, row: number) => {
    const { state: _, ...told } = heatWays(chain, chain.rows[row]!)
    return { ...told, lookedAt: chain.rows[row]!.wind, spread: chain.heat.spread }
  },
  reel: ({ wound: { reelRest, price, copperMass, wireLength } }: Chain) => ({
    reelRest,
    price,
    copperMass,
    wireLength,
  }),
} as const

export type SightName = keyof typeof questions
export type Sight<Name extends SightName> = ReturnType<(typeof questions)[Name]>

/** Those that are another in another wind. */
export const sightsOfWind: ReadonlySet<SightName> = new Set<SightName>([
  'warmUp',
  'bridgeDuty',
  'dumpDuty',
  'heatWays',
])

/** At the row of the table of winds that is looked at. */
export const sightOf = <Name extends SightName>(name: Name, chain: Chain, row: number): Sight<Name> =>
  questions[name](chain, row) as Sight<Name>
