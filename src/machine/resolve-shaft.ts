/** The shaft of a design in SI: friction, bearings, key, balance. */
import type { Design } from './design.ts'
import type { Machine } from './machine.ts'
import type { Bearings } from './shaft-side.ts'
import { si, siOr } from './si.ts'

function bearingsOf(bearings: NonNullable<Design['shaft']['bearings']>): Bearings {
  return {
    spacing: si(bearings.spacing_mm, 'mm'),
    bladeOverhang: si(bearings.bladeOverhang_mm, 'mm'),
    magnetOverhang: si(bearings.magnetOverhang_mm, 'mm'),
    bore: siOr(bearings.bore_mm, 'mm'),
    dynamicRating: siOr(bearings.dynamicRating_N, 'N'),
    staticRating: siOr(bearings.staticRating_N, 'N'),
    axialPlay: siOr(bearings.axialPlay_mm, 'mm'),
  }
}

export function resolveShaft(design: Design['shaft']): Machine['shaft'] {
  const friction = si(design.friction_mNm, 'mNm')
  const { key, bearings, balanceGrade } = design
  return {
    friction,
    startingFriction: siOr(design.startingFriction_mNm, 'mNm') ?? friction,
    inertia: siOr(design.inertia_kg_m2, 'kg_m2'),
    diameter: siOr(design.diameter_mm, 'mm'),
    bore: siOr(design.bore_mm, 'mm') ?? 0,
    bearings: bearings === undefined ? undefined : bearingsOf(bearings),
    key:
      key === undefined
        ? undefined
        : {
            width: si(key.width_mm, 'mm'),
            height: si(key.height_mm, 'mm'),
            length: si(key.length_mm, 'mm'),
          },
    // a grade's number is in millimetres per second
    balanceGrade: balanceGrade === undefined ? undefined : Number(balanceGrade.slice(2)) / 1000,
  }
}
