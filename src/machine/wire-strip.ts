/** Enamel and edges of rectangular wire, by the standard. */
import { stripEdges, stripEnamels, stripThicknesses } from '../data/strip.ts'

/** Radius of the edges of a strip of that thickness; that of the standard's thickest above its table. */
export function stripEdgeRadius_mm(thickness_mm: number): number {
  const row = stripEdges.find(({ thickestThickness_mm }) => thickness_mm <= thickestThickness_mm)
  const { radius_mm, radiusShare } = row ?? stripEdges[stripEdges.length - 1]!
  return Math.min(radius_mm ?? radiusShare! * thickness_mm, thickness_mm / 2)
}

/** What the enamel adds to each side of a typical strip: half-way between the least and the greatest allowed. */
export function stripEnamel_mm(grade: 1 | 2): number {
  const { leastIncrease_mm, greatestIncrease_mm } = stripEnamels.find((row) => row.grade === grade)!
  return (leastIncrease_mm + greatestIncrease_mm) / 2
}

/** Thicknesses that strip is sold in on either side of this one, the nearest first. */
export function neighbourThicknesses_mm(thickness_mm: number, count: number) {
  const sizes = stripThicknesses.thickness_mm
  const same = 1e-9
  return {
    thinner: sizes
      .filter((size) => size < thickness_mm - same)
      .slice(-count)
      .reverse(),
    thicker: sizes.filter((size) => size > thickness_mm + same).slice(0, count),
  }
}
