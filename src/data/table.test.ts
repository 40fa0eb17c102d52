/** Checks of the data tables: order, plausible units, a source behind every row. */
import { describe, expect, test } from 'vitest'
import { check } from '../../test/check.ts'
import { bands } from './band.ts'
import { batteryChemistries } from './battery.ts'
import { beaufortForces } from './beaufort.ts'
import { cableSizes } from './cable.ts'
import { conductors } from './conductor.ts'
import { constants } from './constant.ts'
import { diodeClasses } from './diode.ts'
import { dragRotors } from './drag-rotor.ts'
import { instruments } from './instrument.ts'
import { insulationClasses } from './insulation-class.ts'
import {
  magnetGrades,
  magnetMaterials,
  magnetSuffixes,
  mmpaNeodymium,
  neodymiumSheet,
} from './magnet-grade.ts'
import { idleDiodes, meterClasses } from './meter.ts'
import { plasticMargin, plastics } from './plastic.ts'
import { resins } from './resin.ts'
import { roughnessClasses, shearExponents } from './roughness.ts'
import sources from './sources.json' with { type: 'json' }
import { mildSteel } from './steel.ts'
import { stripEdges, stripEnamels, stripThicknesses } from './strip.ts'
import { strutShapes } from './strut.ts'
import { usualUses } from './use.ts'
import { awgSizes, enamelledWires, intermediateMetricSizes, swgSizes } from './wire.ts'

interface Sourced {
  readonly source: string
  readonly where: string
}
const tables: Record<string, readonly Sourced[]> = {
  awgSizes,
  batteryChemistries,
  beaufortForces,
  cableSizes,
  conductors,
  constants: Object.values(constants),
  diodeClasses,
  dragRotors,
  enamelledWires,
  idleDiodes,
  instruments,
  insulationClasses,
  intermediateMetricSizes: [intermediateMetricSizes],
  magnetGrades,
  magnetMaterials,
  magnetSuffixes,
  meterClasses,
  mildSteel: [mildSteel],
  mmpaNeodymium,
  neodymiumSheet,
  plasticMargin: [plasticMargin],
  plastics,
  bands,
  resins,
  roughnessClasses,
  shearExponents,
  stripEdges,
  stripEnamels,
  stripThicknesses: [stripThicknesses],
  strutShapes,
  swgSizes,
  usualUses,
}

describe('law: every row has a source that exists, a place in it, and finite numbers', () => {
  const known = new Set(sources.map((source) => source.id))
  test('keys are given once', () => expect(known.size).toBe(sources.length))
  for (const [name, rows] of Object.entries(tables))
    test(name, () => {
      expect(rows.length).toBeGreaterThan(0)
      for (const row of rows) {
        expect(known.has(row.source), row.source).toBe(true)
        expect(row.where.length).toBeGreaterThan(8)
        for (const [column, value] of Object.entries(row))
          if (typeof value === 'number' && column !== 'most_m_per_s')
            expect(Number.isFinite(value), `${name} ${column}`).toBe(true)
      }
    })
})

describe('source: ndfeb-sheet-a, grade table — remanence min and typ, coercivities, limit', () => {
  const rows = [
    ['N35', '1.170', '1.220', '870', '955', '80'],
    ['N38', '1.220', '1.260', '870', '955', '80'],
    ['N40', '1.260', '1.300', '870', '955', '80'],
    ['N42', '1.300', '1.330', '870', '955', '80'],
    ['N45', '1.330', '1.370', '900', '955', '80'],
    ['N48', '1.370', '1.410', '900', '955', '80'],
    ['N50', '1.410', '1.440', '830', '875', '70'],
    ['N52', '1.440', '1.470', '830', '875', '70'],
    ['N42H', '1.300', '1.330', '950', '1353', '120'],
    ['N42SH', '1.300', '1.330', '950', '1592', '150'],
  ] as const
  for (const [name, min, typ, Hcb, Hcj, limit] of rows) {
    const row = neodymiumSheet.find((r) => r.name === name)!
    check(`${name} Br min`, row.remanenceMin_T, min)
    check(`${name} Br typ`, row.remanenceTyp_T, typ)
    check(`${name} Hcb`, row.coercivityMin_kA_per_m, Hcb)
    check(`${name} Hcj`, row.intrinsicCoercivityMin_kA_per_m, Hcj)
    check(`${name} limit`, row.limit_degC, limit)
  }
})

describe('source: ndfeb-sheet-a, reversible coefficients by suffix, %/K', () => {
  const rows = [
    ['', '-0.120', '-0.70'],
    ['M', '-0.115', '-0.65'],
    ['H', '-0.110', '-0.60'],
    ['SH', '-0.105', '-0.55'],
    ['UH', '-0.100', '-0.55'],
    ['EH', '-0.095', '-0.50'],
  ] as const
  for (const [suffix, ofBr, ofHcj] of rows) {
    const row = magnetSuffixes.find((r) => r.suffix === suffix)!
    check(`"${suffix}" Br`, row.remanenceCoefficient_percent_per_K, ofBr)
    check(`"${suffix}" Hcj`, row.coercivityCoefficient_percent_per_K, ofHcj)
  }
})

describe('source: mmpa-0100-00, table IV-1 — Br mT, Hc kA/m', () => {
  const rows = [
    ['30/19', '1.130', '860'],
    ['32/16', '1.180', '890'],
    ['34/22', '1.196', '920'],
    ['36/19', '1.231', '920'],
    ['38/15', '1.250', '950'],
    ['40/15', '1.280', '950'],
    ['40/23', '1.290', '990'],
    ['42/15', '1.310', '1010'],
    ['44/15', '1.350', '1030'],
    ['48/11', '1.375', '820'],
    ['50/11', '1.410', '820'],
  ] as const
  for (const [designation, Br, Hc] of rows) {
    const row = mmpaNeodymium.find((r) => r.designation === designation)!
    check(`${designation} Br`, row.remanence_T, Br)
    check(`${designation} Hc`, row.coercivity_kA_per_m, Hc)
  }
})

describe('law: magnet grades', () => {
  test('names are unique, remanence rises with the number', () => {
    expect(new Set(magnetGrades.map((g) => g.name)).size).toBe(magnetGrades.length)
    for (const { suffix } of magnetSuffixes) {
      const rows = magnetGrades.filter(
        (g) => g.family === 'neodymium' && g.name.replace(/^N\d+/, '') === suffix,
      )
      rows.forEach((row, i) => {
        if (i > 0) expect(row.remanence_T).toBeGreaterThan(rows[i - 1]!.remanence_T)
      })
    }
  })
  test('the sheet with min and typ lies inside the range of every grade', () => {
    for (const row of neodymiumSheet) {
      const grade = magnetGrades.find((g) => g.name === row.name)!
      expect(row.remanenceMin_T).toBeGreaterThanOrEqual(grade.remanence_T - grade.remanenceSpread_T - 1e-12)
      expect(row.remanenceTyp_T).toBeLessThanOrEqual(grade.remanence_T + grade.remanenceSpread_T + 1e-12)
      expect(row.limit_degC).toBe(grade.limit_degC)
      expect(row.intrinsicCoercivityMin_kA_per_m).toBe(grade.intrinsicCoercivity_kA_per_m)
    }
  })
  test('the number in the name is the energy product: Br²/(4 μ0 μrec) within 9 %, in MGOe', () => {
    for (const grade of magnetGrades.filter((g) => g.family === 'neodymium')) {
      const product_J =
        grade.remanence_T ** 2 / (4 * constants.vacuumPermeability.value * grade.recoilPermeability)
      // 1 MGOe = 100/(4π) kJ/m³
      const ratio = product_J / (1e5 / (4 * Math.PI)) / Number(/\d+/.exec(grade.name)![0])
      expect(ratio).toBeGreaterThan(0.91)
      expect(ratio).toBeLessThan(1.09)
    }
  })
  test('intrinsic coercivity is at least the normal one; ferrite weakens in the cold', () => {
    for (const grade of magnetGrades) {
      expect(grade.intrinsicCoercivity_kA_per_m).toBeGreaterThanOrEqual(grade.coercivity_kA_per_m)
      expect(grade.coercivityCoefficient_percent_per_K > 0).toBe(grade.family === 'ferrite')
      expect(grade.remanenceSpread_T / grade.remanence_T).toBeLessThan(0.05)
    }
  })
})

describe('source: nakata1992, B–H table of the steel, A/m', () => {
  const printed = { 0.1: '191', 0.5: '247', 1: '342', 1.5: '933', 1.8: '9423', 2.2: '41976' }
  for (const [B, H] of Object.entries(printed))
    check(`${B} T`, mildSteel.fieldStrength_A_per_m[mildSteel.fluxDensity_T.indexOf(Number(B))]!, H)
})

test('law: the steel never magnetises easier than vacuum near saturation, and rises', () => {
  const { fluxDensity_T: B, fieldStrength_A_per_m: H } = mildSteel
  expect(B).toHaveLength(H.length)
  for (let i = 1; i < B.length; i++) {
    const slope = (B[i]! - B[i - 1]!) / (H[i]! - H[i - 1]!)
    expect(slope).toBeGreaterThan(constants.vacuumPermeability.value)
  }
})

describe('source: iec-60085, limits of the classes', () => {
  for (const [name, limit] of [
    ['A', '105'],
    ['B', '130'],
    ['F', '155'],
    ['H', '180'],
  ] as const)
    check(`class ${name}`, insulationClasses.find((c) => c.name === name)!.limit_degC, limit)
  test('law: the classes rise', () => {
    insulationClasses.forEach((c, i) => {
      if (i > 0) expect(c.limit_degC).toBeGreaterThan(insulationClasses[i - 1]!.limit_degC)
    })
  })
})

describe('source: iec-60228, greatest resistance at 20 °C', () => {
  for (const [area, rigid, flexible] of [
    [1.5, '12.1', '13.3'],
    [6, '3.08', '3.30'],
    [16, '1.15', '1.21'],
    [25, '0.727', '0.780'],
  ] as const) {
    const row = cableSizes.find((c) => c.crossSection_mm2 === area)!
    check(`${area} mm², rigid`, row.rigidMaximum_ohm_per_km, rigid)
    check(`${area} mm², flexible`, row.flexibleMaximum_ohm_per_km, flexible)
  }
  test('law: between 0 and 16 % above annealed copper of the nominal area', () => {
    for (const row of cableSizes)
      for (const ohm of [row.rigidMaximum_ohm_per_km, row.flexibleMaximum_ohm_per_km]) {
        const ratio = ohm / (1000 / 58 / row.crossSection_mm2)
        expect(ratio).toBeGreaterThan(1)
        expect(ratio).toBeLessThan(1.16)
      }
  })
})

describe('source: beaufort-limits and simpson1906 — the formula lies in the printed band', () => {
  test('forces 1 to 11', () => {
    for (const row of beaufortForces.slice(1, 12)) {
      expect(row.middle_m_per_s).toBeGreaterThan(row.least_m_per_s)
      expect(row.middle_m_per_s).toBeLessThan(row.most_m_per_s)
    }
  })
  check('force 6', beaufortForces[6]!.middle_m_per_s, '12.3')
})

describe('source: an3303, equation 7 and its result 3.87 W at 6.25 A mean, 9.82 A rms', () => {
  const row = diodeClasses.find((c) => c.source === 'an3303')!
  check('loss', row.threshold_V * 6.25 + row.slope_ohm * 9.82 ** 2, '3.87')
})

describe('source: bridge-datasheet-class, 1.1 V at half the rated current', () => {
  for (const row of diodeClasses.filter((c) => c.source === 'bridge-datasheet-class'))
    check(row.name, row.threshold_V + (row.slope_ohm * row.rated_A) / 2, '1.1')
})

describe('law: the other tables are ordered and plausible', () => {
  test('diodes: Schottky starts below silicon, drops stay under 1.7 V at rated current', () => {
    const silicon = diodeClasses.filter((c) => c.kind === 'silicon').map((c) => c.threshold_V)
    for (const c of diodeClasses) {
      if (c.kind === 'Schottky') expect(c.threshold_V).toBeLessThan(Math.min(...silicon))
      expect(c.threshold_V + c.slope_ohm * c.rated_A).toBeLessThan(1.7)
    }
  })
  test('batteries: cut-off < low < half < full ≤ float ≤ charge', () => {
    for (const b of batteryChemistries) {
      const rising = [
        b.cutOff_V_per_cell,
        b.restLow_V_per_cell,
        b.restHalf_V_per_cell,
        b.restFull_V_per_cell,
        b.charge_V_per_cell,
      ]
      expect([...rising].sort((p, q) => p - q)).toEqual(rising)
      expect(b.float_V_per_cell).toBeLessThanOrEqual(b.charge_V_per_cell)
      expect(b.nominal_V_per_cell).toBeLessThan(b.charge_V_per_cell)
      expect(b.internalResistanceFactor_1).toBeGreaterThan(1)
    }
  })
  test('copper and aluminium', () => {
    const [copper, aluminium] = conductors
    expect(1 / copper!.resistivity_ohm_mm2_per_m).toBeCloseTo(58, 10)
    expect(aluminium!.resistivity_ohm_mm2_per_m / copper!.resistivity_ohm_mm2_per_m).toBeCloseTo(1.64, 2)
    expect(aluminium!.density_kg_per_m3).toBeLessThan(copper!.density_kg_per_m3)
  })
  test('plastics and resins soften between 40 and 160 °C and are lighter than 2 g/cm³', () => {
    for (const material of [...plastics, ...bands, ...resins]) {
      expect(material.softening_degC).toBeGreaterThan(40)
      expect(material.softening_degC).toBeLessThan(160)
      expect(material.softeningSpread_K).toBeGreaterThan(0)
      expect(material.density_kg_per_m3).toBeGreaterThan(900)
      expect(material.density_kg_per_m3).toBeLessThan(2000)
      expect(material.thermalConductivity_W_per_mK).toBeLessThan(1)
    }
    for (const p of plastics) expect(p.acrossLayers_1).toBeLessThan(1)
  })
  test('terrain gets rougher, exponents lie between 0.1 and 0.25', () => {
    roughnessClasses.forEach((c, i) => {
      if (i > 0) expect(c.roughnessLength_m).toBeGreaterThan(roughnessClasses[i - 1]!.roughnessLength_m)
    })
    for (const s of shearExponents) {
      expect(s.exponent_1).toBeGreaterThanOrEqual(0.1)
      expect(s.exponent_1).toBeLessThanOrEqual(0.25)
    }
  })
  test('Beaufort bands join without a gap wider than 0.1 m/s', () => {
    beaufortForces.forEach((row, i) => {
      if (i > 0) expect(row.least_m_per_s - beaufortForces[i - 1]!.most_m_per_s).toBeCloseTo(0.1, 6)
    })
  })
})

describe('source: codata2018, si-brochure-9 — constants as printed', () => {
  check('μ0 / (4π·1e-7)', constants.vacuumPermeability.value / (4e-7 * Math.PI), '1.00000000055', {
    absolute: 5e-11,
  })
  check('Stefan–Boltzmann', constants.stefanBoltzmann.value * 1e8, '5.670374419')
  check(
    'air at sea level from the gas law',
    constants.standardPressure.value / (constants.dryAirGasConstant.value * 288.15),
    '1.2250',
  )
})

describe('law: metals and strip', () => {
  test('resistivities in the order of every handbook: copper, aluminium, its alloys, brass, mild steel, stainless', () => {
    const order = ['copper', 'aluminium', 'aluminium alloy', 'brass', 'mild steel', 'stainless steel']
    const values = order.map(
      (name) => conductors.find((metal) => metal.name === name)!.resistivity_ohm_mm2_per_m,
    )
    expect([...values].sort((a, b) => a - b)).toEqual(values)
  })
  test('thicker strip has rounder edges, and a thicker grade more enamel', () => {
    stripEdges.forEach((row, k) => {
      if (k > 1) expect(row.radius_mm!).toBeGreaterThan(stripEdges[k - 1]!.radius_mm!)
      // never rounder than half of the thinnest strip of its row
      const thinnest = k === 0 ? row.thickestThickness_mm : stripEdges[k - 1]!.thickestThickness_mm
      expect(row.radius_mm ?? row.radiusShare! * thinnest).toBeLessThanOrEqual(thinnest / 2 + 1e-12)
    })
    expect(stripEnamels[1]!.leastIncrease_mm).toBeGreaterThan(stripEnamels[0]!.greatestIncrease_mm)
  })
  test('thicknesses follow the R 20 series: each step about 12 %', () => {
    const list = stripThicknesses.thickness_mm
    list.forEach((value, k) => {
      if (k > 0) expect(Math.abs(value / list[k - 1]! / 10 ** (1 / 20) - 1)).toBeLessThan(0.02)
    })
  })
})

describe('source: mitchell2004, appendix 8 — conductivity of stainless steel 301, 10⁷ S/m', () => {
  const stainless = conductors.find(({ name }) => name === 'stainless steel')!
  check('stainless', 1e6 / stainless.resistivity_ohm_mm2_per_m / 1e7, '0.14')
})
