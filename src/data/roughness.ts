/** How much the ground slows the wind: roughness length and shear exponent by terrain. */

export interface RoughnessClass {
  readonly name: string
  readonly roughnessLength_m: number
  readonly terrain: string
  readonly source: string
  readonly where: string
}

const davenport = 'Davenport–Wieringa classification, as transcribed'

export const roughnessClasses: readonly RoughnessClass[] = [
  {
    name: 'sea',
    roughnessLength_m: 0.0002,
    terrain: 'open water, snow-covered flat plain, tidal flat, smooth desert',
    source: 'stull2000',
    where: davenport,
  },
  {
    name: 'smooth',
    roughnessLength_m: 0.005,
    terrain: 'beach, ice, marsh, snow-covered fields',
    source: 'stull2000',
    where: davenport,
  },
  {
    name: 'open',
    roughnessLength_m: 0.03,
    terrain: 'grass or farm fields, airfield, heath',
    source: 'stull2000',
    where: davenport,
  },
  {
    name: 'roughly open',
    roughnessLength_m: 0.1,
    terrain: 'low crops, single bushes',
    source: 'stull2000',
    where: davenport,
  },
  {
    name: 'rough',
    roughnessLength_m: 0.25,
    terrain: 'high crops, scattered trees or hedges',
    source: 'stull2000',
    where: davenport,
  },
  {
    name: 'very rough',
    roughnessLength_m: 0.5,
    terrain: 'fields and clumps of forest, orchards, scattered buildings',
    source: 'stull2000',
    where: davenport,
  },
  {
    name: 'closed',
    roughnessLength_m: 1,
    terrain: 'suburb, village, forest',
    source: 'stull2000',
    where: davenport,
  },
  {
    name: 'chaotic',
    roughnessLength_m: 2,
    terrain: 'centre of a large town, forest with clearings',
    source: 'stull2000',
    where: davenport,
  },
]

export interface ShearExponent {
  readonly terrain: string
  readonly exponent_1: number
  readonly source: string
  readonly where: string
}

const shear = 'table of wind shear exponents'

export const shearExponents: readonly ShearExponent[] = [
  { terrain: 'open water', exponent_1: 0.1, source: 'wind-shear-terrain', where: shear },
  { terrain: 'smooth, level, grass', exponent_1: 0.15, source: 'wind-shear-terrain', where: shear },
  { terrain: 'row crops', exponent_1: 0.2, source: 'wind-shear-terrain', where: shear },
  { terrain: 'low bushes with a few trees', exponent_1: 0.2, source: 'wind-shear-terrain', where: shear },
  { terrain: 'heavy trees', exponent_1: 0.25, source: 'wind-shear-terrain', where: shear },
  { terrain: 'several buildings', exponent_1: 0.25, source: 'wind-shear-terrain', where: shear },
  { terrain: 'hilly, mountainous', exponent_1: 0.25, source: 'wind-shear-terrain', where: shear },
]
