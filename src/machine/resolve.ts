/** The one door between workshop units and SI: a design becomes a machine, grades and gauges looked up. */
import { batteryChemistries } from '../data/battery.ts'
import { conductors } from '../data/conductor.ts'
import { diodeClasses } from '../data/diode.ts'
import { nominal } from '../units/quantity.ts'
import { ownPolars, ownSection } from './blade-polar.ts'
import type { Design } from './design.ts'
import type { Blades, Machine } from './machine.ts'
import { resolveVerticalBlades } from './resolve-blade-vertical.ts'
import { resolveWindingDefects } from './resolve-defect.ts'
import { resolveConverter, resolveProtection, resolveWiring } from './resolve-protection.ts'
import { resolveRotor } from './resolve-rotor.ts'
import { resolveShaft } from './resolve-shaft.ts'
import { resolveStator } from './resolve-stator.ts'
import { resolveTolerances } from './resolve-tolerance.ts'
import { celsius, row, si, siOr } from './si.ts'
import type { Load } from './supply-side.ts'

function blades(design: Design['blades']): Blades {
  if (design.kind === 'straight-blade' || design.kind === 'drag-rotor') return resolveVerticalBlades(design)
  const radius = si(design.diameter_m, 'm') / 2
  if (design.kind === 'table')
    return {
      kind: 'table',
      radius,
      bladeCount: design.bladeCount,
      mass: siOr(design.mass_kg, 'kg'),
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
    ownPolars: design.section === ownSection ? ownPolars(design.polar) : undefined,
    bladeCount: design.bladeCount,
    mass: siOr(design.mass_kg, 'kg'),
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

/** Hot over cold resistance of nickel-chromium wire near 650 °C: a heater whose cold resistance nobody measured. */
const heaterHotRatio = 1.08

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
  if (design.kind === 'capacitor')
    return {
      kind: 'capacitor',
      capacitance: si(design.capacitance_F, 'F'),
      ratedVoltage: si(design.ratedVoltage_V, 'V'),
      resistance: si(design.resistance_mohm, 'mohm'),
      drawn: si(design.drawn_ohm, 'ohm'),
    }
  if (design.kind === 'heater' || design.kind === 'lamp') {
    const ratedVoltage = si(design.ratedVoltage_V, 'V')
    const ratedPower = si(design.ratedPower_W, 'W')
    if (design.kind === 'lamp') return { kind: 'lamp', lamp: design.lamp, ratedVoltage, ratedPower }
    const hot = ratedVoltage ** 2 / ratedPower
    const cold = siOr(design.coldResistance_ohm, 'ohm') ?? hot / heaterHotRatio
    return { kind: 'heater', cold, hot, ratedPower }
  }
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
    cells,
    rest: [
      { charge: 0, voltage: cells * cell.restEmpty_V_per_cell },
      { charge: 0.2, voltage: cells * cell.restLow_V_per_cell },
      { charge: 0.5, voltage: cells * cell.restHalf_V_per_cell },
      { charge: 1, voltage: cells * cell.restFull_V_per_cell },
    ],
    disconnect:
      design.disconnect === undefined
        ? undefined
        : {
            above: siOr(design.disconnect.above_V, 'V') ?? cells * cell.charge_V_per_cell,
            below: siOr(design.disconnect.below_degC, 'degC') ?? celsius(cell.chargeLeast_degC),
          },
  }
}

export function resolveDesign(design: Design): Machine {
  const diode = row(diodeClasses, design.bridge.diode)
  const copper = row(conductors, 'copper')
  const cableLength = si(design.cable.length_m, 'm')
  const cableArea = si(design.cable.area_mm2, 'mm2')
  const { site } = design
  const magnets = resolveRotor(design)
  return {
    name: design.name,
    safetyClass: design.purpose.class,
    site: {
      meanWind: si(site.meanWind_m_per_s, 'm_per_s'),
      measuredHeight: si(site.measuredHeight_m, 'm'),
      hubHeight: si(site.hubHeight_m, 'm'),
      shearExponent: nominal(site.shearExponent),
      weibullShape: nominal(site.weibullShape),
      averaging: siOr(site.averaging_s, 's'),
      turbulenceIntensity:
        site.turbulenceIntensity === undefined ? undefined : nominal(site.turbulenceIntensity),
      monthlyMean: site.monthlyMean_m_per_s,
      windHistogram:
        site.windHistogram === undefined
          ? undefined
          : {
              binWidth: si(site.windHistogram.binWidth_m_per_s, 'm_per_s'),
              count: site.windHistogram.count,
            },
      airDensity: siOr(site.airDensity_kg_per_m3, 'kg_per_m3'),
      altitude: si(site.altitude_m, 'm'),
      ambient: si(site.ambient_degC, 'degC'),
      stormWind: si(site.stormWind_m_per_s, 'm_per_s'),
    },
    blades: blades(design.blades),
    protection: resolveProtection(design),
    shaft: resolveShaft(design.shaft),
    rotor: magnets,
    stator: resolveStator(design.stator, magnets),
    cable: {
      length: cableLength,
      area: cableArea,
      place: design.cable.place,
      conductorResistance: (copper.resistivity_ohm_mm2_per_m * 1e-6 * cableLength) / cableArea,
      seriesResistance: siOr(design.cable.series_mohm, 'mohm') ?? 0,
    },
    diode: {
      kind: diode.kind,
      threshold: siOr(design.bridge.threshold_V, 'V') ?? diode.threshold_V,
      slope: siOr(design.bridge.slope_mohm, 'mohm') ?? diode.slope_ohm,
      reverseVoltage: siOr(design.bridge.reverseVoltage_V, 'V') ?? diode.reverse_V,
      drive: diode.drive_W,
    },
    converter: resolveConverter(design),
    load: load(design.load),
    wiring: resolveWiring(design),
    defects: resolveWindingDefects(design),
    tolerances: resolveTolerances(design),
    design,
  }
}
