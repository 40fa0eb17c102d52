/** A thin flat plate with sharp edges, computed: what a blade cut from board or sheet does before it stalls. */
import type { AirfoilPolar } from './polar.ts'

/** Largest angle of the table [°]: the bubble behind the sharp edge then reaches the trailing edge. */
const greatestAngle = 6

/** Lift and drag at an angle: thin-plate normal force without suction at the sharp edge, laminar friction on both sides. */
function row(angle_deg: number, reynolds: number): readonly [number, number, number] {
  const α = (angle_deg * Math.PI) / 180
  const normal = 2 * Math.PI * Math.sin(α)
  const friction = (2 * 1.328) / Math.sqrt(reynolds)
  return [
    angle_deg,
    normal * Math.cos(α) - friction * Math.sin(α),
    normal * Math.sin(α) + friction * Math.cos(α),
  ]
}

export const flatPlate: readonly AirfoilPolar[] = [20_000, 60_000, 200_000].map((reynolds) => ({
  name: 'flat plate',
  reynolds,
  spread: { lift: 0.08, dragShare: 0.3 },
  source: 'blasius1908',
  where:
    'computed here, not measured: friction 1.328/√Re on each side, normal force 2π sin α of thin-aerofoil theory, no suction at the sharp leading edge; the table ends where the bubble behind that edge reaches the trailing edge (6 to 8°, from memory); spread: a guess, no source; the paper was not opened',
  rows: Array.from({ length: 2 * greatestAngle + 1 }, (_, k) => row(k - greatestAngle, reynolds)),
}))
