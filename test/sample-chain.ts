/** A made-up chain, each number well inside its limit, for the checks of concerns: nothing to say until it is changed. */

import { rotorCurve } from '../src/analysis/blade-rotor.ts'
import type { ChainView } from '../src/analysis/concern/concern.ts'
import { conductorLayout } from '../src/analysis/conductor-layout.ts'
import { machineHeat } from '../src/analysis/machine-heat.ts'
import { bladeMap } from '../src/analysis/match.ts'
import type { OpenCircuitVoltage, PhaseVoltage } from '../src/analysis/open-circuit-voltage.ts'
import type { WindRow } from '../src/analysis/power-curve.ts'
import { noWatts } from '../src/analysis/watts.ts'
import { faultText } from '../src/machine/fault.ts'
import { parseDesign } from '../src/machine/parse.ts'
import { resolveDesign } from '../src/machine/resolve.ts'
import { sweptArea } from '../src/machine/swept-area.ts'
import { windDistribution } from '../src/physics/aerodynamics/weibull.ts'

const sampleDesign = () => ({
  gustloom: 2,
  name: 'Made-up machine without faults',
  purpose: { class: 'outdoor' },
  site: {
    meanWind_m_per_s: { value: 5, spread: 0.3, known: 'measured' },
    ambient_degC: 12,
    stormWind_m_per_s: 25,
  },
  blades: {
    kind: 'table',
    diameter_m: 2.4,
    bladeCount: 3,
    points: [
      [0, 0],
      [1, 0.03],
      [2, 0.12],
      [3, 0.25],
      [4, 0.34],
      [5, 0.39],
      [6, 0.4],
      [7, 0.36],
      [8, 0.26],
      [9.5, 0],
    ].map(([tipSpeedRatio, powerCoefficient]) => ({ tipSpeedRatio, powerCoefficient })),
  },
  protection: {
    mechanical: 'furling tail',
    actsAt_m_per_s: 11,
    electrical: 'dump load',
    dump: {
      resistance_ohm: 0.9,
      power_W: 1500,
      on_V: 28.6,
      off_V: 27,
      place: 'behind the bridge',
      withoutPower: 'on',
      ownFuse: true,
    },
  },
  shaft: {
    locking: {
      hub: 'split pin or wire',
      bladeRoots: 'wedge-locking washers',
      studs: 'wedge-locking washers',
    },
  },
  rotor: {
    arrangement: 'two-discs',
    poleCount: 12,
    pitchRadius_mm: 120,
    magnet: { shape: 'block', length_mm: 46, width_mm: 30, thickness_mm: 10, grade: 'N42' },
    retention: { kind: 'band', wall_mm: 3, material: 'PC', hold_N: 5000 },
    backIron: { kind: 'steel', thickness_mm: 8 },
    faceDistance_mm: 18,
  },
  stator: {
    winding: {
      kind: 'coils',
      coilCount: 9,
      phaseCount: 3,
      turns: 60,
      hole: { shape: 'rectangular', holeWidth_mm: 30, holeLength_mm: 46 },
      legWidth_mm: 18,
      bundleDepth_mm: 12,
      distance_mm: 9,
    },
    wire: { size: 1.5, insulationClass: 'H' },
    connection: 'star',
    support: 'vinyl ester',
  },
  cable: { length_m: 10, area_mm2: 16 },
  bridge: { diode: 'bridge 35 A' },
  load: { kind: 'battery', chemistry: 'lead-acid', voltage_V: 25.2, resistance_mohm: 20, capacity_Ah: 200 },
  wiring: {
    fuse_A: 50,
    fusePlace: 'near the battery',
    switchKind: 'for direct current',
    switchVoltage_V: 100,
    surroundings: 'dry',
    earthing: 'by a licensed person',
  },
  bench: { readings: [{ speed_rpm: 500, voltage_V: 45, kind: 'rms', place: 'line to line' }] },
})

/** Sets `a.b[1].c` style paths, dots only: `'rotor.retention.kind'`. */
function put(document: object, path: string, value: unknown): void {
  const keys = path.split('.')
  const last = keys.pop()!
  let at = document as Record<string, unknown>
  for (const key of keys) {
    at[key] ??= {}
    at = at[key] as Record<string, unknown>
  }
  if (value === undefined) delete at[last]
  else at[last] = value
}

/** The design of the sample with the named fields set, undefined to leave one out. */
export function sampleMachine(fields: Readonly<Record<string, unknown>> = {}) {
  const document = sampleDesign()
  for (const [path, value] of Object.entries(fields)) put(document, path, value)
  const parsed = parseDesign(document)
  if (!parsed.ok) throw new Error(parsed.faults.map(faultText).join('\n'))
  return resolveDesign(parsed.design)
}

/** A phase whose EMF is A cos(x − lag) per unit of speed. */
export const samplePhase = (amplitude: number, lag: number): PhaseVoltage => ({
  emf: {
    cos: Float64Array.of(0, amplitude * Math.cos(lag), 0, 0),
    sin: Float64Array.of(0, amplitude * Math.sin(lag), 0, 0),
  },
  rms: amplitude / Math.SQRT2,
  peak: amplitude,
  fundamental: amplitude,
  lag,
  resistance: 0.2,
  inductance: 1e-3,
  inStep: 1,
  branches: [],
  branchMismatch: 0,
})

const third = (2 * Math.PI) / 3

/** Volts of three phases, their lines taken as those of a star. */
export function sampleVoltage(
  phases: readonly PhaseVoltage[] = [0, third, -third].map((lag) => samplePhase(0.7, lag)),
): OpenCircuitVoltage {
  const line = Math.sqrt(3) * phases[0]!.peak
  const emf = phases[0]!.emf
  return {
    base: 6,
    order: 1,
    linkages: [],
    coils: phases.flatMap((phase, k) =>
      [0, 1, 2].map((n) => ({
        coil: { number: 3 * k + n + 1, shape: 0, angle: 0, phase: k, sense: 1 as const, group: 0 },
        emf: phase.emf,
        fundamental: phase.fundamental / 3,
        phaseAngle: phase.lag,
      })),
    ),
    phases,
    loops: [],
    inductance: phases.map((_, i) => phases.map((__, k) => (i === k ? 1e-3 : -2e-4))),
    lines: phases.map(() => ({ emf, rms: line / Math.SQRT2, peak: line })),
    greatestLinePeak: line,
    openCorner: 0,
  }
}

/** Parts as warm as made-up copper makes them: magnets take a third of its rise, its hottest spot a tenth more. */
export function sampleTemperatures(
  copper: number,
  ambient = 285.15,
): Pick<WindRow, 'copperTemperature' | 'temperatures'> {
  const rise = copper - ambient
  return {
    copperTemperature: copper,
    temperatures: {
      hotSpot: ambient + 1.1 * rise,
      magnets: ambient + rise / 3,
      support: copper,
      gapAir: ambient + rise / 2,
    },
  }
}

function sampleRow(wind: number): WindRow {
  const held = Math.min(wind, 11)
  const charging = wind >= 3
  const watts = { ...noWatts, friction: 2, useful: charging ? 0.6 * held ** 3 : 0, winding: 0.03 * held ** 3 }
  return {
    wind,
    state: wind > 11 ? 'held' : charging ? 'charging' : 'turning',
    speed: (6 * held) / 1.2,
    tipSpeedRatio: (6 * held) / wind,
    powerCoefficient: 0.38,
    available: 2.7 * wind ** 3,
    watts: { ...watts, cable: charging ? 0.005 * held ** 3 : 0 },
    dcCurrent: watts.useful / 26,
    loadCurrent: watts.useful / 26,
    loadVoltage: 26,
    phaseCurrent: watts.useful / 32,
    currentDensity: watts.useful / 32 / 5e-6,
    ...sampleTemperatures(285.15 + 0.02 * held ** 3),
    nodeRises: new Float64Array(0),
    overheated: false,
  }
}

/** The chain of the sample's machine with made-up results; `change` replaces some of them. */
export function sampleChain(
  fields: Readonly<Record<string, unknown>> = {},
  change: (chain: ChainView) => Partial<ChainView> = () => ({}),
): ChainView {
  const machine = sampleMachine(fields)
  const rotor = rotorCurve(machine)
  const heat = machineHeat(machine, {
    layout: conductorLayout(machine),
    wound: { copperMass: 4, wireLength: 300 },
    working: { speed: 50, wind: 11 },
  })
  const rows = Array.from({ length: 50 }, (_, k) => sampleRow((k + 1) / 2))
  const joule = 3.6e6
  const parts = {
    ...noWatts,
    friction: 20 * joule,
    winding: 30 * joule,
    useful: 600 * joule,
    eddy: 5 * joule,
    cable: 6 * joule,
  }
  const chain: ChainView = {
    machine,
    airDensity: 1.22,
    rotor,
    blades: bladeMap(rotor, {
      density: 1.22,
      radius: machine.blades.radius,
      area: sweptArea(machine.blades),
    }),
    field: {
      poles: [],
      magnets: [],
      sources: [],
      workingPoint: {
        polarization: 1.3,
        fluxDensity: 1,
        fieldStrength: -2e5,
        permeanceCoefficient: 4,
        loadFactor: -0.2,
      },
      iron: undefined,
      fundamental: undefined,
      remanence: 1.31,
    },
    gap: { angle: new Float64Array(0), normal: new Float64Array(0), fundamental: 0.7, poleCentre: 0.75 },
    steel:
      machine.rotor.backIron === undefined
        ? []
        : [
            {
              place: 'behind',
              thickness: machine.rotor.backIron.thickness,
              fluxDensity: 1.3,
              peakFluxDensity: 1.4,
              backFlux: 0,
              leakage: 0,
              pastKnee: false,
            },
          ],
    layout: {
      shapes: [
        {
          filaments: [],
          repeats: 1,
          curve: [],
          turns: machine.stator.winding.turns,
          turnLength: 0.2,
          bundle: { width: 0.018, thickness: 0.012 },
          distance: 0.009,
        },
      ],
      coils: [],
      phaseCount: 3,
      groups: 1,
    } as unknown as ChainView['layout'],
    wound: {
      coilResistance: [],
      leadResistance: 0,
      phaseLeadResistance: [0, 0, 0],
      loops: [],
      coilInductance: [],
      phases: [],
      copperMass: 4,
      wireLength: 300,
      price: undefined,
      conductorArea: 5e-6,
      fit: { handTurns: 80, hexagonalTurns: 100, copperFill: 0.5, neighbourRoom: 2e-3, reelShort: undefined },
      reelRest: undefined,
    },
    voltage: sampleVoltage(),
    magnetLoad: { own: () => undefined, winding: () => undefined },
    generator: {
      cutIn: 22,
      speeds: new Float64Array(0),
      at: () => ({ watts: noWatts, dcCurrent: 0, loadCurrent: 0, loadVoltage: 26, phaseCurrent: 0 }),
      idlePower: () => 0,
      shaftPower: () => 0,
      residual: 0,
    },
    circulating: { branches: () => 0, delta: () => 0, loops: () => 0, bridge: () => 0 },
    drag: {
      strands: { total: 1e-3, underMagnets: 9e-4, ends: 1e-4 },
      parts: [],
      between: undefined,
      at: () => ({ friction: 0, eddy: 0, parts: 0 }),
    },
    heat,
    cooling: { resistance: () => 0.3, spread: 0.5 },
    startWind: 2,
    cutInWind: 3,
    rows,
    fallingRows: rows,
    rowAt: (wind) => rows.find((row) => row.wind >= wind) ?? rows[rows.length - 1]!,
    runaway: {
      wind: 25,
      speed: 150,
      tipSpeed: 180,
      lineVoltage: 11,
      directVoltage: 20,
      magnetMass: 0.1,
      magnetForce: 270,
      magnetHold: machine.rotor.retention.hold ?? 0,
    },
    year: {
      meanWind: 5,
      wind: { kind: 'Weibull', ...windDistribution({ mean: 5, shape: 2 }) },
      distribution: windDistribution({ mean: 5, shape: 2 }),
      patternFactor: 1.91,
      energy: parts.useful,
      hysteresis: 0,
      energyOfMeanWind: 400 * joule,
      energyInGusts: undefined,
      meanPower: 68,
      ledger: {
        available: 3000 * joule,
        pastBlades: 2339 * joule,
        held: 0,
        shaft: 661 * joule,
        parts,
      },
      byWind: new Float64Array(0),
      range: { energy: parts.useful, low: parts.useful, high: parts.useful },
      months: undefined,
    },
  }
  return { ...chain, ...change(chain) }
}
