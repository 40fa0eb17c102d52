/** Grades of permanent magnets: remanence, coercivity, limits, temperature coefficients. */

export interface MagnetGrade {
  /** As shops print it, upper case. */
  readonly name: string
  readonly family: 'neodymium' | 'ferrite'
  /** Middle of the range that the sheets at hand give for this grade, at 20 °C. */
  readonly remanence_T: number
  /** Half of that range: the grade's name alone leaves this much open. */
  readonly remanenceSpread_T: number
  /** Normal coercivity, least value of the sheet. */
  readonly coercivity_kA_per_m: number
  /** Intrinsic coercivity, least value of the sheet, at 20 °C. */
  readonly intrinsicCoercivity_kA_per_m: number
  /** What the sheet allows at a magnet as long as it is thick; a thin magnet in an open circuit bears less. */
  readonly limit_degC: number
  readonly remanenceCoefficient_percent_per_K: number
  readonly coercivityCoefficient_percent_per_K: number
  /** How far sheets differ in it. */
  readonly coercivityCoefficientSpread_percent_per_K: number
  /** Knee of the intrinsic curve (J down to 0.9 Br) over intrinsic coercivity, Hk/HcJ. */
  readonly squareness: number
  readonly squarenessSpread: number
  readonly recoilPermeability: number
  readonly recoilPermeabilitySpread: number
  readonly density_kg_per_m3: number
  readonly source: string
  readonly where: string
}

export interface NeodymiumSheetRow {
  readonly name: string
  readonly remanenceMin_T: number
  readonly remanenceTyp_T: number
  readonly coercivityMin_kA_per_m: number
  readonly intrinsicCoercivityMin_kA_per_m: number
  readonly limit_degC: number
  readonly source: string
  readonly where: string
}

type SheetRow = readonly [
  name: string,
  min_mT: number,
  typ_mT: number,
  Hcb: number,
  Hcj: number,
  limit: number,
]

// biome-ignore format: a table
const sheetRows: readonly SheetRow[] = [
  // grade    Br min typ  Hcb  Hcj   °C
  ['N35',   1170, 1220, 870,  955,  80],
  ['N38',   1220, 1260, 870,  955,  80],
  ['N40',   1260, 1300, 870,  955,  80],
  ['N42',   1300, 1330, 870,  955,  80],
  ['N45',   1330, 1370, 900,  955,  80],
  ['N48',   1370, 1410, 900,  955,  80],
  ['N50',   1410, 1440, 830,  875,  70],
  ['N52',   1440, 1470, 830,  875,  70],
  ['N42H',  1300, 1330, 950, 1353, 120],
  ['N42SH', 1300, 1330, 950, 1592, 150],
]

/** One supplier's sheet, as printed. */
export const neodymiumSheet: readonly NeodymiumSheetRow[] = sheetRows.map(
  ([name, min, typ, coercivityMin_kA_per_m, intrinsicCoercivityMin_kA_per_m, limit_degC]) => ({
    name,
    remanenceMin_T: min / 1000,
    remanenceTyp_T: typ / 1000,
    coercivityMin_kA_per_m,
    intrinsicCoercivityMin_kA_per_m,
    limit_degC,
    source: 'ndfeb-sheet-a',
    where: `grade table, row ${name}`,
  }),
)

export interface MagnetSuffix {
  readonly suffix: string
  readonly intrinsicCoercivityMin_kA_per_m: number
  readonly limit_degC: number
  readonly remanenceCoefficient_percent_per_K: number
  readonly coercivityCoefficient_percent_per_K: number
  readonly source: string
  readonly where: string
}

type SuffixRow = readonly [suffix: string, Hcj: number, limit: number, ofBr: number, ofHcj: number]

// biome-ignore format: a table
const suffixRows: readonly SuffixRow[] = [
  //     Hcj    °C   %/K of Br, of Hcj
  ['',    955,  80, -0.120, -0.70],
  ['M',  1114, 100, -0.115, -0.65],
  ['H',  1353, 120, -0.110, -0.60],
  ['SH', 1592, 150, -0.105, -0.55],
  ['UH', 1990, 180, -0.100, -0.55],
  ['EH', 2388, 200, -0.095, -0.50],
]

/** What the letters after the number promise; coefficients hold from 20 to 100 °C. */
export const magnetSuffixes: readonly MagnetSuffix[] = suffixRows.map(
  ([
    suffix,
    intrinsicCoercivityMin_kA_per_m,
    limit_degC,
    remanenceCoefficient_percent_per_K,
    coercivityCoefficient_percent_per_K,
  ]) => ({
    suffix,
    intrinsicCoercivityMin_kA_per_m,
    limit_degC,
    remanenceCoefficient_percent_per_K,
    coercivityCoefficient_percent_per_K,
    source: 'ndfeb-sheet-a',
    where:
      'table of reversible coefficients, 20–100 °C; limits also ndfeb-suffix; Hcj of no letter, M, H, SH in ndfeb-sheet-c and ndfeb-sheet-d, of UH and EH from memory',
  }),
)

type NumberRow = readonly [number: number, least_mT: number, most_mT: number, Hcb: number, sheets: string]

/*
 * Least and greatest remanence over the sheets: a (min, typ), b, c and d (min, max), e (min, max), and the least
 * values of a second edition of a (2017: N40 1240, N42 1280, N45 1320, N52 1430).
 * Sheets b, c and d give M, H and SH grades the same range as the number without letter, within 20 mT.
 */
// biome-ignore format: a table
const numberRows: readonly NumberRow[] = [
  // N   Br least most  Hcb
  [30, 1080, 1130, 796, 'e'],
  [33, 1130, 1180, 836, 'c (33M) and e'],
  [35, 1170, 1220, 868, 'a, b, c, e'],
  [38, 1220, 1260, 870, 'a, b, c, e'],
  [40, 1240, 1300, 870, 'a, a (2017), b, c, e'],
  [42, 1280, 1330, 870, 'a, a (2017), b, c, e'],
  [45, 1320, 1380, 876, 'a, a (2017), b, c, d, e'],
  [48, 1370, 1420, 836, 'a, b, c, d, e'],
  [50, 1390, 1450, 796, 'a, b, c, d, e'],
  [52, 1420, 1480, 796, 'a, a (2017), b, c, d, e'],
]

/** Numbers that are sold with a letter; the strongest numbers do not reach the higher coercivities. */
const numbersOfSuffix: Readonly<Record<string, readonly number[]>> = {
  '': [30, 33, 35, 38, 40, 42, 45, 48, 50, 52],
  M: [33, 35, 38, 40, 42, 45, 48, 50, 52],
  H: [33, 35, 38, 40, 42, 45, 48, 50],
  SH: [33, 35, 38, 40, 42, 45, 48],
  UH: [30, 33, 35, 38, 40, 42],
  EH: [30, 33, 35, 38],
}

// Limits that the sheets lower for the strongest grades without a letter: 60–80 °C; the middle is taken.
const weakNumbers: Readonly<Record<string, { readonly Hcj: number; readonly limit: number }>> = {
  N50: { Hcj: 875, limit: 70 },
  N52: { Hcj: 875, limit: 70 },
}

/*
 * No sheet at hand prints Hk. Those whose normal coercivity lies beyond the knee tell it all the same: a curve
 * through Br and HcJ that meets their HcB has Hk/HcJ from 0.87 to 0.97 (sheets a and b, N38 to N52, N45M and N48M).
 * Towards the low end, for what is lost at the knee does not come back.
 */
const neodymiumSquareness = { value: 0.9, spread: 0.05 } as const
const kneeWhere =
  'squareness from Br, HcB and HcJ of ndfeb-sheet-a and ndfeb-sheet-b by the curve of ruoho2007 (0.87–0.97, the low end taken); for H and above, whose HcB tells nothing of the knee, the same: common practice, no source'

const neodymium: readonly MagnetGrade[] = magnetSuffixes.flatMap((s) =>
  numberRows
    .filter(([number]) => numbersOfSuffix[s.suffix]?.includes(number))
    .map(([number, least, most, Hcb, sheets]): MagnetGrade => {
      const name = `N${number}${s.suffix}`
      const weak = weakNumbers[name]
      return {
        name,
        family: 'neodymium',
        remanence_T: (least + most) / 2000,
        remanenceSpread_T: (most - least) / 2000,
        coercivity_kA_per_m: Hcb,
        intrinsicCoercivity_kA_per_m: weak?.Hcj ?? s.intrinsicCoercivityMin_kA_per_m,
        limit_degC: weak?.limit ?? s.limit_degC,
        remanenceCoefficient_percent_per_K: s.remanenceCoefficient_percent_per_K,
        coercivityCoefficient_percent_per_K: s.coercivityCoefficient_percent_per_K,
        // sheet b has −0.76 and −0.68 %/K where sheet a has −0.70 and −0.65
        coercivityCoefficientSpread_percent_per_K: 0.06,
        squareness: neodymiumSquareness.value,
        squarenessSpread: neodymiumSquareness.spread,
        recoilPermeability: 1.05,
        recoilPermeabilitySpread: 0.03,
        density_kg_per_m3: 7500,
        source: 'ndfeb-sheet-b',
        where: `range over ndfeb-sheet-a to ndfeb-sheet-e: ${sheets}; letter: magnetSuffixes; recoil 1.05 and density 7500 sheet b, spread of recoil common practice, no source; ${kneeWhere}`,
      }
    }),
)

type FerriteRow = readonly [
  name: string,
  Br_mT: number,
  half_mT: number,
  Hcb: number,
  Hcj: number,
  squareness: number,
  rho: number,
  key: string,
]

/*
 * Hk/HcJ is what the curve through Br and HcJ needs to meet HcB at a recoil permeability of 1.1. C1 is isotropic: its
 * curve is round all the way.
 */
// biome-ignore format: a table
const ferriteRows: readonly FerriteRow[] = [
  // grade   Br   ±   Hcb  Hcj  Hk/HcJ kg/m³
  ['C1',  230, 10, 148, 258, 0.40, 4800, 'ferrite-sheet-a'],
  ['C5',  380, 10, 191, 199, 0.89, 4800, 'ferrite-sheet-a'],
  ['C7',  370, 10, 262, 310, 0.84, 4800, 'ferrite-sheet-a'],
  ['C8',  390, 10, 223, 227, 0.96, 4800, 'ferrite-sheet-a'],
  ['C10', 400, 10, 259, 271, 0.92, 4900, 'ferrite-sheet-a'],
  ['C11', 420, 10, 215, 219, 0.95, 4900, 'ferrite-sheet-a'],
  ['Y25', 365, 10, 135, 140, 0.85, 4800, 'ferrite-sheet-b'],
  ['Y30', 385, 10, 191, 199, 0.89, 4800, 'ferrite-sheet-b'],
  ['Y33', 415, 10, 220, 225, 0.94, 4800, 'ferrite-sheet-b'],
  ['Y35', 405, 10, 175, 180, 0.90, 4800, 'ferrite-sheet-b'],
]

const ferrite: readonly MagnetGrade[] = ferriteRows.map(
  ([name, Br, half, Hcb, Hcj, squareness, rho, key]): MagnetGrade => ({
    name,
    family: 'ferrite',
    remanence_T: Br / 1000,
    remanenceSpread_T: half / 1000,
    coercivity_kA_per_m: Hcb,
    intrinsicCoercivity_kA_per_m: Hcj,
    limit_degC: 250,
    remanenceCoefficient_percent_per_K: -0.2,
    // Coercivity of ferrite falls in the cold: the worst point is the coldest night, not the hottest day.
    coercivityCoefficient_percent_per_K: 0.35,
    coercivityCoefficientSpread_percent_per_K: 0.15,
    squareness,
    squarenessSpread: 0.03,
    recoilPermeability: 1.1,
    recoilPermeabilitySpread: 0.05,
    density_kg_per_m3: rho,
    source: key,
    where: `row ${name === 'C8' ? 'C8A' : name} (middle less tolerance for coercivity; ±10 mT of rows that print one stands for all); limit 250 °C, −0.20 %/K, 0.2–0.5 %/K (middle; +0.27 of ferrite-sheet-c lies within), recoil 1.05–1.3 and density of ferrite-sheet-a; recoil 1.1 ± 0.05 within it is common practice, no source; squareness from the row’s Br, HcB and HcJ by the curve of ruoho2007, its spread common practice, no source`,
  }),
)

/** Every grade, neodymium by letter and number, then ferrite. */
export const magnetGrades: readonly MagnetGrade[] = [...neodymium, ...ferrite]

export interface MmpaNeodymium {
  /** Energy product in MGOe / intrinsic coercivity in kOe, as the standard writes it. */
  readonly designation: string
  readonly remanence_T: number
  readonly coercivity_kA_per_m: number
  readonly source: string
  readonly where: string
}

type MmpaRow = readonly [designation: string, Br_mT: number, Hc: number]

// biome-ignore format: a table
const mmpaRows: readonly MmpaRow[] = [
  ['30/19', 1130,  860],
  ['32/16', 1180,  890],
  ['34/22', 1196,  920],
  ['36/19', 1231,  920],
  ['38/15', 1250,  950],
  ['40/15', 1280,  950],
  ['40/23', 1290,  990],
  ['42/15', 1310, 1010],
  ['44/15', 1350, 1030],
  ['48/11', 1375,  820],
  ['50/11', 1410,  820],
]

/** Typical values of the manufacturers' association. */
export const mmpaNeodymium: readonly MmpaNeodymium[] = mmpaRows.map(([designation, Br, Hc]) => ({
  designation,
  remanence_T: Br / 1000,
  coercivity_kA_per_m: Hc,
  source: 'mmpa-0100-00',
  where: `table IV-1, row ${designation}`,
}))

/** What a computation of heat and stress needs to know of sintered magnets. */
export const magnetMaterials = [
  {
    family: 'neodymium',
    resistivity_ohm_m: 1.6e-6,
    tensileStrength_MPa: 83,
    thermalConductivity_W_per_mK: 8.95,
    heatCapacity_J_per_kgK: 502,
    youngsModulus_GPa: 160,
    curie_degC: 310,
    source: 'mmpa-0100-00',
    where:
      'tables IV-3 and IV-4 (resistivity, strength, Curie point); conductivity 7.7 kcal/(m·h·K), heat 0.12 kcal/(kg·K) and modulus of ndfeb-physical',
  },
  {
    family: 'ferrite',
    resistivity_ohm_m: 1e4,
    tensileStrength_MPa: 34,
    thermalConductivity_W_per_mK: 2.9,
    heatCapacity_J_per_kgK: 800,
    youngsModulus_GPa: 180,
    curie_degC: 460,
    source: 'ferrite-sheet-a',
    where: 'Curie point; the other values from memory, not opened',
  },
] as const
