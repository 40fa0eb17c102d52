/** The one door between workshop units and SI: a design becomes a machine, grades and gauges looked up. */
import { batteryChemistries } from '../data/battery.ts'
import { conductors } from '../data/conductor.ts'
import { diodeClasses } from '../data/diode.ts'
import { insulationClasses } from '../data/insulation-class.ts'
import { magnetGrades } from '../data/magnet-grade.ts'
import { plastics } from '../data/plastic.ts'
import { resins } from '../data/resin.ts'
import { alternatingSequence } from '../physics/magnetics/magnet-ring.ts'
import { nominal, type Quantity, spreadOf } from '../units/quantity.ts'
import { toSi, unit } from '../units/unit.ts'
import type { Design } from './design.ts'
import type { Blades, Load, Machine, Magnet, Rotor, Stator, Winding } from './machine.ts'
import { enamelledDiameter_mm, gauge } from './wire-size.ts'

const si = (quantity: Quantity, suffix: string): number => toSi(nominal(quantity), unit(suffix))

const siOr = (quantity: Quantity | undefined, suffix: string): number | undefined =>
  quantity === undefined ? undefined : si(quantity, suffix)

const celsius = (value: number): number => toSi(value, unit('degC'))

/** The row of that name; the document's words come from the same table, so it is there. */
function row<Row extends { readonly name: string }>(rows: readonly Row[], name: string): Row {
  return rows.find((candidate) => candidate.name === name)!
}

function blades(design: Design['blades']): Blades {
  const radius = si(design.diameter_m, 'm') / 2
  if (design.kind === 'table')
    return {
      kind: 'table',
      radius,
      bladeCount: design.bladeCount,
      points: design.points.map((point) => ({
        tipSpeedRatio: nominal(point.tipSpeedRatio),
        powerCoefficient: nominal(point.powerCoefficient),
      })),
    }
  const common = {
    radius,
    hubRadius: design.hubDiameter_mm === undefined ? 0.15 * radius : si(design.hubDiameter_mm, 'mm') / 2,
    pitch: si(design.pitch_deg, 'deg'),
    section: design.section,
    bladeCount: design.bladeCount,
  }
  if (design.kind === 'optimum')
    return {
      ...common,
      kind: 'optimum',
      tipSpeedRatio: nominal(design.tipSpeedRatio),
      straightTaper: design.straightTaper,
    }
  return {
    ...common,
    kind: 'stations',
    stations: design.stations.map((station) => ({
      radius: si(station.radius_mm, 'mm'),
      chord: si(station.chord_mm, 'mm'),
      twist: si(station.twist_deg, 'deg'),
    })),
  }
}

/** A polarisation without a grade is taken for neodymium of the plain kind above 0.6 T, else for ferrite. */
const leastNeodymium = 0.6

function magnet(design: Design['rotor']['magnet']): Magnet {
  const size = {
    length: si(design.length_mm, 'mm'),
    width: si(design.width_mm, 'mm'),
    thickness: si(design.thickness_mm, 'mm'),
    recoilPermeability: nominal(design.recoilPermeability),
  }
  if (design.grade !== undefined) {
    const grade = row(magnetGrades, design.grade)
    return {
      ...size,
      remanence: grade.remanence_T,
      remanenceSpread: grade.remanenceSpread_T,
      temperatureCoefficient: grade.remanenceCoefficient_percent_per_K / 100,
      highestTemperature: celsius(grade.limit_degC),
      density: grade.density_kg_per_m3,
    }
  }
  const polarization = design.polarization_T!
  const family = nominal(polarization) >= leastNeodymium ? 'neodymium' : 'ferrite'
  const kin = magnetGrades.find((grade) => grade.family === family)!
  return {
    ...size,
    remanence: nominal(polarization),
    remanenceSpread: spreadOf(polarization),
    temperatureCoefficient: kin.remanenceCoefficient_percent_per_K / 100,
    highestTemperature: undefined,
    density: kin.density_kg_per_m3,
  }
}

function rotor(design: Design['rotor']): Rotor {
  const sequence =
    design.poleSequence === undefined
      ? alternatingSequence(design.poleCount)
      : [...design.poleSequence].map((letter) => (letter === 'N' ? 1 : -1) as 1 | -1)
  const wall = row(plastics, design.retention.material)
  return {
    arrangement: design.arrangement,
    windingSide: design.arrangement === 'drum' ? design.windingSide : 'outside',
    poleCount: design.poleCount,
    polePairs: design.poleCount / 2,
    pitchRadius: si(design.pitchRadius_mm, 'mm'),
    magnet: magnet(design.magnet),
    sequence,
    alternating: sequence.every((sign, k) => sign === (k % 2 === 0 ? sequence[0] : -sequence[0]!)),
    cover: si(design.cover_mm, 'mm'),
    retention: {
      kind: design.retention.kind,
      wall: si(design.retention.wall_mm, 'mm'),
      allowableStress: wall.tensileStrength_MPa * 1e6 * wall.acrossLayers_1 * longTermShare,
      material: wall.name,
      softening: celsius(wall.softening_degC),
      hold: siOr(design.retention.hold_N, 'N'),
    },
    backIron:
      design.arrangement !== 'drum' && design.backIron.kind === 'steel'
        ? si(design.backIron.thickness_mm, 'mm')
        : undefined,
    faceDistance:
      design.arrangement === 'two-discs'
        ? si(design.faceDistance_mm, 'mm')
        : design.arrangement === 'disc'
          ? siOr(design.opposite?.faceDistance_mm, 'mm')
          : undefined,
    oppositeSteel: design.arrangement === 'disc' && design.opposite?.kind === 'steel',
  }
}

/** Share of short-term strength that a print may carry for years (creep, layers, notches): common practice, no source. */
const longTermShare = 0.2

function winding(design: Design['stator']['winding'], rotor: Rotor): Winding {
  const bundleDepth = si(design.bundleDepth_mm, 'mm')
  if (design.kind === 'serpentine')
    return {
      kind: 'serpentine',
      turns: design.turns,
      runLength: si(design.runLength_mm, 'mm'),
      // a slant of just the pole pitch must not exceed it by the last bit
      slant: Math.min(si(design.slant_deg, 'deg'), Math.PI / rotor.polePairs),
      crownHeight: si(design.crownHeight_mm, 'mm'),
      bundleWidth: si(design.bundleWidth_mm, 'mm'),
      bundleDepth,
      phases: design.phases.map((phase) => ({
        offset: si(phase.offset_deg, 'deg'),
        distance: si(phase.distance_mm, 'mm'),
        sense: phase.sense === 'reversed' ? -1 : 1,
      })),
    }
  const { hole } = design
  return {
    kind: 'coils',
    coilCount: design.coilCount,
    phaseCount: design.phaseCount,
    turns: design.turns,
    hole:
      hole.shape === 'round'
        ? { shape: 'round', diameter: si(hole.holeDiameter_mm, 'mm') }
        : hole.shape === 'rectangular'
          ? {
              shape: 'rectangular',
              width: si(hole.holeWidth_mm, 'mm'),
              length: si(hole.holeLength_mm, 'mm'),
              cornerRadius: si(hole.cornerRadius_mm, 'mm'),
            }
          : {
              shape: 'wedge',
              innerWidth: si(hole.holeInnerWidth_mm, 'mm'),
              outerWidth: si(hole.holeOuterWidth_mm, 'mm'),
              length: si(hole.holeLength_mm, 'mm'),
              cornerRadius: si(hole.cornerRadius_mm, 'mm'),
            },
    legWidth: si(design.legWidth_mm, 'mm'),
    bundleDepth,
    distance: si(design.distance_mm, 'mm'),
    centreRadius: siOr(design.centreRadius_mm, 'mm') ?? rotor.pitchRadius,
    parallelGroups: design.parallelGroups,
    reversedCoils: design.reversedCoils,
    reversedPhases: design.reversedPhases,
  }
}

function stator(design: Design['stator'], rotor: Rotor): Stator {
  const { wire } = design
  const diameter_mm = typeof wire.size === 'string' ? gauge(wire.size)! : nominal(wire.size)
  const copper = row(conductors, 'copper')
  const insulation = row(insulationClasses, wire.insulationClass)
  const plastic = plastics.find(({ name }) => name === design.support)
  const resin = resins.find(({ name }) => name === design.support)
  return {
    winding: winding(design.winding, rotor),
    wire: {
      diameter: toSi(diameter_mm, unit('mm')),
      enamelledDiameter: toSi(enamelledDiameter_mm(diameter_mm, wire.enamelGrade as 1 | 2), unit('mm')),
      strands: wire.strands,
      resistivity: copper.resistivity_ohm_mm2_per_m * 1e-6,
      temperatureCoefficient: copper.temperatureCoefficient_1_per_K,
      density: copper.density_kg_per_m3,
      insulationClass: insulation.name,
      highestTemperature: celsius(insulation.limit_degC),
      reelLength: siOr(wire.reelLength_m, 'm'),
      pricePerKilogram: wire.price_per_kg === undefined ? undefined : nominal(wire.price_per_kg),
    },
    connection: design.connection,
    leadLength: si(design.leadLength_m, 'm'),
    jointResistance: si(design.jointResistance_mohm, 'mohm'),
    support: {
      name: design.support,
      softening: celsius(plastic?.softening_degC ?? resin!.softening_degC),
      conductivity: plastic?.thermalConductivity_W_per_mK ?? resin!.thermalConductivity_W_per_mK,
    },
    thermalResistance: siOr(design.thermalResistance_K_per_W, 'K_per_W'),
  }
}

/**
 * Cells of a battery at rest at `voltage`: of the counts whose rest band holds it, lead the one that batteries are sold
 * in (a multiple of six, else of three), others the one nearest to half full.
 */
function cellCount(cell: (typeof batteryChemistries)[number], voltage: number): number {
  const fewest = Math.max(1, Math.ceil(voltage / cell.charge_V_per_cell))
  const most = Math.max(fewest, Math.floor(voltage / cell.restLow_V_per_cell))
  const half = Math.min(most, Math.max(fewest, Math.round(voltage / cell.restHalf_V_per_cell)))
  if (cell.name !== 'lead-acid') return half
  for (const size of [6, 3]) {
    const sold = size * Math.round(half / size)
    if (sold >= fewest && sold <= most) return sold
  }
  return half
}

function load(design: Design['load']): Load {
  if (design.kind === 'open') return { kind: 'open' }
  if (design.kind === 'resistor') return { kind: 'resistor', resistance: si(design.resistance_ohm, 'ohm') }
  const cell = row(batteryChemistries, design.chemistry)
  const voltage = si(design.voltage_V, 'V')
  const cells = design.cells ?? cellCount(cell, voltage)
  return {
    kind: 'battery',
    chemistry: cell.name,
    voltage,
    resistance: si(design.resistance_mohm, 'mohm'),
    capacity: siOr(design.capacity_Ah, 'Ah'),
    band: [cells * cell.restLow_V_per_cell, cells * cell.charge_V_per_cell],
  }
}

export function resolveDesign(design: Design): Machine {
  const diode = row(diodeClasses, design.bridge.diode)
  const copper = row(conductors, 'copper')
  const cableLength = si(design.cable.length_m, 'm')
  const cableArea = si(design.cable.area_mm2, 'mm2')
  const friction = si(design.shaft.friction_mNm, 'mNm')
  const { site } = design
  const magnets = rotor(design.rotor)
  return {
    name: design.name,
    safetyClass: design.purpose.class,
    site: {
      meanWind: si(site.meanWind_m_per_s, 'm_per_s'),
      measuredHeight: si(site.measuredHeight_m, 'm'),
      hubHeight: si(site.hubHeight_m, 'm'),
      shearExponent: nominal(site.shearExponent),
      weibullShape: nominal(site.weibullShape),
      airDensity: siOr(site.airDensity_kg_per_m3, 'kg_per_m3'),
      altitude: si(site.altitude_m, 'm'),
      ambient: si(site.ambient_degC, 'degC'),
      stormWind: si(site.stormWind_m_per_s, 'm_per_s'),
    },
    blades: blades(design.blades),
    protection: design.protection,
    shaft: {
      friction,
      startingFriction: siOr(design.shaft.startingFriction_mNm, 'mNm') ?? friction,
    },
    rotor: magnets,
    stator: stator(design.stator, magnets),
    cable: {
      length: cableLength,
      area: cableArea,
      place: design.cable.place,
      conductorResistance: (copper.resistivity_ohm_mm2_per_m * 1e-6 * cableLength) / cableArea,
    },
    diode: {
      kind: diode.kind,
      threshold: siOr(design.bridge.threshold_V, 'V') ?? diode.threshold_V,
      slope: siOr(design.bridge.slope_mohm, 'mohm') ?? diode.slope_ohm,
      reverseVoltage: siOr(design.bridge.reverseVoltage_V, 'V') ?? diode.reverse_V,
    },
    load: load(design.load),
    design,
  }
}
