/** What the gallery draws of a design: every shared picture, each computed when it is first asked for. */
import { bladeFigure } from '../src/analysis/blade-figure.ts'
import { circuitPlan } from '../src/analysis/circuit-plan.ts'
import { coilPhasors } from '../src/analysis/coil-phasor.ts'
import { handForce } from '../src/analysis/concern/assembly-pull.ts'
import { converterDuty } from '../src/analysis/converter-duty.ts'
import { energyByWind } from '../src/analysis/energy-by-wind.ts'
import { gapMap } from '../src/analysis/gap-map.ts'
import { heatWays } from '../src/analysis/heat-way.ts'
import { loadPoint } from '../src/analysis/load-point.ts'
import { machineFace } from '../src/analysis/machine-face.ts'
import { machineSection } from '../src/analysis/machine-section.ts'
import { pullStudy } from '../src/analysis/mechanics/mechanics-study.ts'
import { shaftSection } from '../src/analysis/mechanics/shaft-section.ts'
import { speedLine } from '../src/analysis/mechanics/speed-line.ts'
import { temperatureByWind } from '../src/analysis/temperature-by-wind.ts'
import { voltageAlongWire } from '../src/analysis/voltage-along-wire.ts'
import { voltageHarmonics } from '../src/analysis/voltage-harmonics.ts'
import { shaftPower } from '../src/analysis/watts.ts'
import { windingPlan } from '../src/analysis/winding-plan.ts'
import { wireAngleCurve } from '../src/analysis/wire-angle.ts'
import { inPhasePerMetre } from '../src/analysis/wire-reading.ts'
import { worthOf } from '../src/analysis/worth.ts'
import { monthNames } from '../src/analysis/worth-verdict.ts'
import { type Chain, finished, matchMap, spreadStudy, warmUp, windingFactors } from '../src/index.ts'
import { bladeChart } from '../src/output/chart/blade.ts'
import { circuitChart } from '../src/output/chart/circuit.ts'
import { contestChart } from '../src/output/chart/contest.ts'
import { converterCurveChart } from '../src/output/chart/converter-curve.ts'
import { discPullChart } from '../src/output/chart/disc-pull.ts'
import { energyByWindChart } from '../src/output/chart/energy-by-wind.ts'
import { gapFieldChart } from '../src/output/chart/gap-field.ts'
import { gapMapChart } from '../src/output/chart/gap-map.ts'
import { harmonicChart } from '../src/output/chart/harmonic.ts'
import { heatWayChart } from '../src/output/chart/heat-way.ts'
import { machineFaceChart } from '../src/output/chart/machine-face.ts'
import { machineSectionChart } from '../src/output/chart/machine-section.ts'
import { matchChart } from '../src/output/chart/match.ts'
import { monthEnergyChart } from '../src/output/chart/month-energy.ts'
import { phasorChart } from '../src/output/chart/phasor.ts'
import { powerCurveChart } from '../src/output/chart/power-curve.ts'
import { riverChart } from '../src/output/chart/river.ts'
import { shaftLineChart } from '../src/output/chart/shaft-line.ts'
import { speedLineChart } from '../src/output/chart/speed-line.ts'
import { starOfSlotsChart } from '../src/output/chart/star-of-slots.ts'
import { temperatureChart } from '../src/output/chart/temperature.ts'
import { waveformChart } from '../src/output/chart/waveform.ts'
import { windDistributionChart } from '../src/output/chart/wind-distribution.ts'
import { type WindMark, windStripChart } from '../src/output/chart/wind-strip.ts'
import { windingDiagram } from '../src/output/chart/winding-diagram.ts'
import { wireAngleChart } from '../src/output/chart/wire-angle.ts'
import { wireProfileChart } from '../src/output/chart/wire-profile.ts'
import { wireVoltageChart } from '../src/output/chart/wire-voltage.ts'
import { yearLedgerChart } from '../src/output/chart/year-ledger.ts'
import { wirePartNames } from '../src/output/wire-part-name.ts'
import { ledgerRows } from '../src/output/year-ledger-row.ts'
import { snapshotOf } from '../web/snapshot.ts'
import { reachesOf } from '../web/view/reaches.ts'

export type Pictures = Readonly<Record<string, (width: number) => string>>

const chosenWind = 6

/** Computed when it is first asked for, and once. */
function once<Found>(find: () => Found): () => Found {
  let found: { readonly value: Found } | undefined
  return () => {
    found ??= { value: find() }
    return found.value
  }
}

/** Nothing where a machine has no such picture. */
const drawnIf = <Found>(found: Found | undefined, draw: (found: Found) => string): string =>
  found === undefined ? '' : draw(found)

/** The pictures of one chain, each at a width. */
export function picturesOf(chain: Chain): Pictures {
  const row = Math.max(
    0,
    chain.rows.findIndex(({ wind }) => wind === chosenWind),
  )
  return {
    ...windPictures(chain, row),
    ...windingPictures(chain, row),
    ...bodyPictures(chain),
  }
}

/** Wind, power, energy and heat. */
function windPictures(chain: Chain, row: number): Pictures {
  const { rows, year } = chain
  const state = rows[row]!
  const winds = rows.map(({ wind }) => wind)
  const useful = rows.map(({ watts }) => watts.useful)
  const snapshot = once(() => snapshotOf(chain))
  const temperatures = once(() => temperatureByWind(chain))
  const energy = once(() => energyByWind(chain))
  const warming = once(() => warmUp(chain, row))
  const ways = once(() => heatWays(chain, state))
  const spread = once(() => finished(spreadStudy(chain, { samples: 16, curve: true })).curve)
  const blades = once(() => finished(matchMap(chain)))
  const duty = once(() => converterDuty(chain))
  const worth = once(() => finished(worthOf(chain)))
  const marks = once((): WindMark[] => [
    { wind: snapshot().startWind, label: 'turns', kind: 'begins' },
    { wind: snapshot().cutInWind, label: 'charges', kind: 'begins' },
    { wind: snapshot().runaway.wind, label: 'storm', kind: 'danger' },
  ])
  return {
    river: (width) =>
      riverChart({ width: Math.max(width, 660), wind: state.wind, reaches: reachesOf(snapshot(), state) }),
    strip: (width) =>
      windStripChart({
        width,
        wind: winds,
        hours: snapshot().hours,
        energy: year.byWind,
        marks: marks(),
        chosenWind,
        border: 14,
      }),
    hours: (width) =>
      windDistributionChart({
        width,
        height: 220,
        wind: winds,
        hours: snapshot().hours,
        energy: year.byWind,
        chosenWind,
        meanWind: year.meanWind,
      }),
    blade: (width) => bladeChart({ width, figure: bladeFigure(chain), chosenWind }),
    temperature: (width) =>
      temperatureChart({
        width,
        height: 300,
        along: { quantity: 'wind', values: temperatures().wind },
        lines: temperatures().lines,
        limits: temperatures().limits,
      }),
    'warm-up': (width) =>
      drawnIf(warming(), ({ time, lines, limits }) =>
        temperatureChart({ width, height: 300, along: { quantity: 'time', values: time }, lines, limits }),
      ),
    heat: (width) =>
      state.dcCurrent > 0 ? heatWayChart({ width, ways: ways().ways, wind: state.wind }) : '',
    energy: (width) => energyByWindChart({ width, height: 320, energy: energy() }),
    months: (width) =>
      drawnIf(year.months, (months) =>
        monthEnergyChart({
          width,
          height: 260,
          months: months.map(({ month, energy: brought, low, high }, k) => ({
            label: monthNames[month - 1]!.slice(0, 3),
            energy: brought,
            low,
            high,
            need: worth()?.months?.[k]?.need,
          })),
        }),
      ),
    converter: (width) =>
      drawnIf(duty(), (found) => converterCurveChart({ width, height: 320, duty: found, chosenWind })),
    power: (width) =>
      powerCurveChart({
        width,
        height: Math.round(Math.min(420, Math.max(300, width * 0.5))),
        wind: winds,
        shaft: rows.map(({ watts }) => shaftPower(watts)),
        useful,
        usefulName: 'into the battery',
        chosenWind,
        ...(spread() === undefined ? {} : { spread: spread()! }),
      }),
    contest: (width) =>
      contestChart({
        width,
        height: 300,
        letters: ['A', 'B'],
        winds: rows.map(({ wind }, k) => ({
          wind,
          watts: [useful[k]!, wind < 8 ? 0.8 * useful[k]! : 1.3 * useful[k]!],
        })),
      }),
    match: (width) =>
      matchChart({
        width,
        height: Math.round(Math.min(460, Math.max(320, width * 0.52))),
        map: blades(),
        chosen: Math.floor(blades().winds.length / 2),
      }),
    year: (width) =>
      yearLedgerChart({
        width,
        whole: year.ledger.available,
        bars: ledgerRows(year.ledger).map(({ label, energy: part }) => ({
          label,
          energy: part,
          className: 'ink-store',
        })),
      }),
  }
}

/** Field, winding, volts and circuit. */
function windingPictures(chain: Chain, row: number): Pictures {
  const { speed, copperTemperature } = chain.rows[row]!
  const phasors = once(() => coilPhasors(chain))
  const factors = once(() =>
    phasors().phases.map((_, phase) => windingFactors(chain, phase).rows[0]?.textbook),
  )
  const waves = once(() =>
    speed > 0
      ? loadPoint(chain.machine, chain.voltage, { speed, copperTemperature, samples: 180 }).waveforms
      : undefined,
  )
  const along = once(() => voltageAlongWire(chain))
  const parts = once(() =>
    along().phases[0]!.parts.map((part) => ({ ...part, label: wirePartNames[part.part] })),
  )
  const angle = once(() =>
    wireAngleCurve(chain.machine, chain.field, {
      distance: chain.layout.shapes[0]!.distance,
      base: chain.voltage.base,
    }),
  )
  const map = once(() => finished(gapMap(chain)))
  return {
    harmonics: (width) => harmonicChart({ width, height: 300, harmonics: voltageHarmonics(chain) }),
    phasors: (width) => phasorChart({ width, phasors: phasors(), windingFactors: factors() }),
    star: (width) => starOfSlotsChart({ width, phasors: phasors() }),
    diagram: (width) => windingDiagram({ width, plan: windingPlan(chain) }),
    map: (width) => gapMapChart({ width, map: map() }),
    gap: (width) => gapFieldChart({ width, height: 270, angle: chain.gap.angle, normal: chain.gap.normal }),
    circuit: (width) => circuitChart({ width, plan: circuitPlan(chain) }),
    waveform: (width) =>
      drawnIf(waves(), (found) =>
        waveformChart({
          width,
          ...found,
          ownLeads: ['single', 'separate'].includes(chain.machine.stator.connection),
          dcVoltage: found.loadVoltage,
          frequency: (chain.voltage.base * speed) / (2 * Math.PI),
        }),
      ),
    angle: (width) => wireAngleChart({ width, height: 320, ...angle(), parts: parts() }),
    parts: (width) => wireVoltageChart({ width, parts: parts() }),
    profile: (width) => {
      const coil = along().coils[0]!
      const inStep = inPhasePerMetre(along(), coil).map((value) => value * speed)
      return wireProfileChart({
        width,
        height: 300,
        ...along().shapes[coil.shape]!,
        inStep,
        moment: inStep.map((each) => each / 2),
      })
    },
  }
}

/** The machine cut and seen from the front, its shaft, speeds and pull. */
function bodyPictures(chain: Chain): Pictures {
  const pull = once(() => finished(pullStudy(chain)))
  const drawn = chain.machine.rotor.faceDistance
  return {
    section: (width) => machineSectionChart({ width, section: machineSection(chain) }),
    face: (width) => machineFaceChart({ width, face: machineFace(chain) }),
    shaft: (width) => shaftLineChart({ width, section: shaftSection(chain) }),
    speeds: (width) => speedLineChart({ width, line: speedLine(chain), now: chain.rows[10]?.speed ?? 0 }),
    pull: (width) =>
      drawn === undefined || pull().pull.length === 0
        ? ''
        : discPullChart({
            width,
            pull: pull().pull,
            drawn,
            handForce,
            handDistance: pull().handDistance,
          }),
  }
}
