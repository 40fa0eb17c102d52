/** The magnet rotor of a design in SI, grades and plastics looked up. */
import { magnetGrades } from '../data/magnet-grade.ts'
import { plastics } from '../data/plastic.ts'
import { alternatingSequence } from '../physics/magnetics/magnet-ring.ts'
import { nominal, spreadOf } from '../units/quantity.ts'
import type { Design } from './design.ts'
import type { Magnet, Rotor } from './machine.ts'
import { celsius, row, si, siOr } from './si.ts'

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

export function resolveRotor(design: Design['rotor']): Rotor {
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
