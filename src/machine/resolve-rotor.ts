/** The magnet rotor of a design in SI, grades and plastics looked up. */
import { bands } from '../data/band.ts'
import { magnetGrades } from '../data/magnet-grade.ts'
import { plastics } from '../data/plastic.ts'
import { mildSteel } from '../data/steel.ts'
import { alternatingSequence } from '../physics/magnetics/magnet-ring.ts'
import { nominal, type Quantity, spreadOf } from '../units/quantity.ts'
import { toSi, unit } from '../units/unit.ts'
import type { Design } from './design.ts'
import type { Iron, Magnet, MagnetMaterial, MagnetPlace, MagnetShape, Retention, Rotor } from './machine.ts'
import { measuredPolarization } from './magnet-measurement.ts'
import type { MagnetReading } from './magnet-reading.ts'
import type { Carrier } from './shaft-side.ts'
import { celsius, row, si, siOr } from './si.ts'

type MagnetDocument = Design['rotor']['magnet']

/** A polarisation without a grade is taken for neodymium of the plain kind above 0.6 T, else for ferrite. */
const leastNeodymium = 0.6

const gradeRow = (name: string) => row(magnetGrades, name)

/** The grade said, or the first of the family that such a polarisation belongs to. */
function kinOf({ grade, polarization_T }: MagnetDocument) {
  if (grade !== undefined) return gradeRow(grade)
  const family = nominal(polarization_T!) >= leastNeodymium ? 'neodymium' : 'ferrite'
  return magnetGrades.find((candidate) => candidate.family === family)!
}

type Grade = ReturnType<typeof kinOf>

const materialOf = (grade: Grade, recoilPermeability: number): MagnetMaterial => ({
  remanence: grade.remanence_T,
  remanenceSpread: grade.remanenceSpread_T,
  recoilPermeability,
  temperatureCoefficient: grade.remanenceCoefficient_percent_per_K / 100,
})

interface Extent {
  readonly shape: MagnetShape
  readonly length: number
  readonly width: number
  readonly thickness: number
  readonly volume: number
}

function extent(magnet: MagnetDocument, { onDrum, pitchRadius }: RingPlace): Extent {
  const thickness = si(magnet.thickness_mm, 'mm')
  if (magnet.shape === 'disc') {
    const diameter = si(magnet.diameter_mm, 'mm')
    return {
      shape: { kind: 'disc' },
      length: diameter,
      width: diameter,
      thickness,
      volume: (Math.PI / 4) * diameter ** 2 * thickness,
    }
  }
  const length = si(magnet.length_mm, 'mm')
  if (magnet.shape === 'block') {
    const width = si(magnet.width_mm, 'mm')
    return { shape: { kind: 'block' }, length, width, thickness, volume: length * width * thickness }
  }
  if (magnet.shape === 'wedge') {
    const innerWidth = si(magnet.innerWidth_mm, 'mm')
    const outerWidth = si(magnet.outerWidth_mm, 'mm')
    return {
      shape: { kind: 'wedge', innerWidth, outerWidth },
      length,
      width: Math.max(innerWidth, outerWidth),
      thickness,
      volume: (length * thickness * (innerWidth + outerWidth)) / 2,
    }
  }
  const span = si(magnet.span_deg, 'deg')
  const outer = pitchRadius + (onDrum ? thickness : length) / 2
  return {
    shape: { kind: 'arc', span, parallel: magnet.magnetisation === 'parallel' },
    length,
    width: 2 * outer * Math.sin(Math.min(span, Math.PI) / 2),
    thickness,
    volume: pitchRadius * span * length * thickness,
  }
}

interface RingPlace {
  readonly onDrum: boolean
  readonly pitchRadius: number
}

/** The document's readings in SI. */
const readingsOf = ({ readings }: MagnetDocument): MagnetReading[] =>
  readings.map((reading) => {
    const spread = (quantity: Quantity, suffix: string) => {
      const half = toSi(spreadOf(quantity), unit(suffix))
      return half > 0 ? half : undefined
    }
    if (reading.kind === 'hall')
      return definedOnly({
        kind: 'hall',
        distance: si(reading.distance_mm, 'mm'),
        distanceSpread: spread(reading.distance_mm, 'mm'),
        fluxDensity: si(reading.fluxDensity_mT, 'mT'),
        fluxDensitySpread: spread(reading.fluxDensity_mT, 'mT'),
        sensorRange: siOr(reading.sensorRange_mT, 'mT'),
      })
    return definedOnly({
      kind: 'pull',
      spacer: si(reading.spacer_mm, 'mm'),
      spacerSpread: spread(reading.spacer_mm, 'mm'),
      force: si(reading.force_N, 'N'),
      forceSpread: spread(reading.force_N, 'N'),
    })
  })

/** The same without the keys that hold nothing. */
const definedOnly = <Whole extends object>(whole: { [Key in keyof Whole]: Whole[Key] | undefined }): Whole =>
  Object.fromEntries(Object.entries(whole).filter(([, value]) => value !== undefined)) as Whole

/** Remanence that a magnet can have [T]; a fit beyond it tells of a reading gone wrong. */
const possibleRemanence = [0.05, 1.55] as const

/**
 * What the readings make of the remanence that the label promises. A remanence that the document states without a spread
 * stands as it is, and so does a label against one single reading that contradicts it; arcs and wedges are not fitted.
 */
function measuredOf(document: MagnetDocument, label: MagnetMaterial, { length, width, thickness }: Extent) {
  const { remanence, remanenceSpread, recoilPermeability, temperatureCoefficient } = label
  if (document.readings.length === 0 || remanenceSpread === 0) return undefined
  if (document.shape !== 'block' && document.shape !== 'disc') return undefined
  const material = { recoilPermeability, temperatureCoefficient }
  const measured = measuredPolarization({
    magnet:
      document.shape === 'block'
        ? { ...material, shape: 'block', size: [length, width, thickness] }
        : { ...material, shape: 'disc', diameter: width, thickness },
    prior: { value: remanence, spread: remanenceSpread },
    readings: readingsOf(document),
  })!
  const [least, most] = possibleRemanence
  const alone = measured.prior?.disagrees === true && measured.readings.length < 2
  return alone || measured.polarization < least || measured.polarization > most ? undefined : measured
}

function magnetOf(document: MagnetDocument, place: RingPlace): Magnet {
  const kin = kinOf(document)
  const named = document.grade !== undefined
  const label = {
    ...materialOf(kin, nominal(document.recoilPermeability)),
    ...(named
      ? {}
      : {
          remanence: nominal(document.polarization_T!),
          remanenceSpread: spreadOf(document.polarization_T!),
        }),
  }
  const size = extent(document, place)
  const measured = measuredOf(document, label, size)
  return {
    ...size,
    ...label,
    ...(measured === undefined ? {} : { remanence: measured.polarization, remanenceSpread: measured.spread }),
    measured,
    labelRemanence: label.remanence,
    grade: document.grade,
    highestTemperature: named ? celsius(kin.limit_degC) : undefined,
    density: kin.density_kg_per_m3,
  }
}

type MagnetDefect = Extract<Design['defects'][number], { position: number }>

/** A place as a defect leaves it. */
function defectivePlace(place: MagnetPlace, defect: MagnetDefect, pitchRadius: number): MagnetPlace {
  switch (defect.kind) {
    case 'flipped magnet':
      return { ...place, sense: -place.sense as 1 | -1 }
    case 'weak magnet':
      return { ...place, strength: nominal(defect.strength) }
    case 'missing magnet':
      return { ...place, strength: 0 }
    case 'shifted magnet':
      return { ...place, shift: si(defect.shift_mm, 'mm') / pitchRadius }
    default: {
      const other = gradeRow(defect.grade)
      return { ...place, material: materialOf(other, other.recoilPermeability) }
    }
  }
}

/** Places round each ring, the defects of the document put in. */
function ringsOf(
  sequence: readonly (1 | -1)[],
  { rotor, defects }: Design,
  pitchRadius: number,
): readonly (readonly MagnetPlace[])[] {
  const ring = (disc: number): MagnetPlace[] => {
    const places = sequence.map(
      (sense): MagnetPlace => ({ sense, strength: 1, shift: 0, material: undefined }),
    )
    for (const defect of defects)
      if ('position' in defect && (defect.disc ?? disc) === disc) {
        const at = defect.position - 1
        places[at] = defectivePlace(places[at]!, defect, pitchRadius)
      }
    return places
  }
  return rotor.arrangement === 'two-discs' ? [ring(1), ring(2)] : [ring(1)]
}

const alternates = (ring: readonly MagnetPlace[]): boolean =>
  ring.every(
    ({ sense, strength, shift, material }, k) =>
      strength === 1 &&
      shift === 0 &&
      material === undefined &&
      sense === (k % 2 === 0 ? 1 : -1) * ring[0]!.sense,
  )

interface PlateDocument {
  readonly thickness_mm: Quantity
  readonly innerRadius_mm?: Quantity | undefined
  readonly outerRadius_mm?: Quantity | undefined
}

const iron = (plate: PlateDocument): Iron => ({
  thickness: si(plate.thickness_mm, 'mm'),
  steel: mildSteel.name,
  innerRadius: siOr(plate.innerRadius_mm, 'mm'),
  outerRadius: siOr(plate.outerRadius_mm, 'mm'),
})

/** Share of short-term strength that a print may carry for years (creep, layers, notches): common practice, no source. */
const longTermShare = 0.2

function retentionOf({ retention }: Design['rotor']): Retention {
  const wall = row([...plastics, ...bands], retention.material)
  return {
    kind: retention.kind,
    wall: si(retention.wall_mm, 'mm'),
    allowableStress: wall.tensileStrength_MPa * 1e6 * wall.acrossLayers_1 * longTermShare,
    material: wall.name,
    density: wall.density_kg_per_m3,
    modulus: wall.youngsModulus_GPa * 1e9,
    softening: celsius(wall.softening_degC),
    hold: siOr(retention.hold_N, 'N'),
  }
}

function carrierOf({ carrier }: Design['rotor']): Carrier | undefined {
  if (carrier === undefined) return undefined
  const plastic = row(plastics, carrier.material)
  return {
    material: plastic.name,
    thickness: si(carrier.thickness_mm, 'mm'),
    modulus: plastic.youngsModulus_GPa * 1e9,
    softening: celsius(plastic.softening_degC),
    expansion: plastic.expansion_1_per_K,
  }
}

export function resolveRotor(design: Design): Rotor {
  const { rotor } = design
  const onDrum = rotor.arrangement === 'drum'
  const pitchRadius = si(rotor.pitchRadius_mm, 'mm')
  const magnet = magnetOf(rotor.magnet, { onDrum, pitchRadius })
  const sequence =
    rotor.poleSequence === undefined
      ? alternatingSequence(rotor.poleCount)
      : [...rotor.poleSequence].map((letter) => (letter === 'N' ? 1 : -1) as 1 | -1)
  const rings = ringsOf(sequence, design, pitchRadius)
  const { opposite } = rotor.arrangement === 'disc' ? rotor : {}
  return {
    arrangement: rotor.arrangement,
    windingSide: rotor.arrangement === 'drum' ? rotor.windingSide : 'outside',
    poleCount: rotor.poleCount,
    polePairs: rotor.poleCount / 2,
    pitchRadius,
    magnet,
    piecesPerPole: rotor.piecesPerPole,
    rings,
    sequence: rings[0]!.map(({ sense }) => sense),
    alternating: rings.every(alternates),
    cover: si(rotor.cover_mm, 'mm'),
    retention: retentionOf(rotor),
    hubRadius: siOr(rotor.hubRadius_mm, 'mm'),
    carrier: carrierOf(rotor),
    backIron: rotor.backIron?.kind === 'steel' ? iron(rotor.backIron) : undefined,
    faceDistance:
      rotor.arrangement === 'two-discs'
        ? si(rotor.faceDistance_mm, 'mm')
        : siOr(opposite?.faceDistance_mm, 'mm'),
    opposite: opposite?.kind === 'steel' ? iron(opposite) : undefined,
    sleeve:
      rotor.arrangement === 'drum' && rotor.sleeve !== undefined
        ? {
            ...iron(rotor.sleeve),
            distance: si(rotor.sleeve.distance_mm, 'mm'),
            turns: rotor.sleeve.motion === 'turns',
          }
        : undefined,
  }
}
