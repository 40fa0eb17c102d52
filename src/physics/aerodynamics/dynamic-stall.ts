/** Dynamic stall: the lift and drag of a section whose flow needs time to let go and to lie on again. */
import { requireFinite } from '../../refusal/require.ts'
import type { SectionCoefficients } from './polar.ts'
import { readSection, type SectionTable } from './section-table.ts'

/** Chords that the air passes while the separation falls behind by 63 %: oye1991, from memory, not opened. [1] */
export const separationLag = 4

/*
 * Øye's lag of the separation point stands here in place of Gormont's lagging angle, the usual one for streamtubes: Gormont's lag vanishes
 * wherever the angle stops to rise, which makes the torque of a thick section jump from tube to tube.
 */

/** Angles beyond this are taken as static: the blade stands across the flow. [rad] */
const staticFrom = Math.PI / 4

/**
 * Share of the chord with attached flow, from the lift of a section at rest (Kirchhoff's flow past a plate).
 *
 *   f = (2 √(C_L / (C_Lα (α − α₀))) − 1)²,   1 where C_L is at least C_Lα (α − α₀), 0 where it is at most a quarter of it
 *
 * Holds: thin sections before and in the stall. Accuracy: a definition; the drag it leads to about 20 %.
 *
 * @param at.lift       C_L  of the section at rest            [1]
 * @param at.attached   C_Lα (α − α₀)  without separation      [1]
 * @returns             f  0…1                                 [1]
 * @throws RangeError   a value not finite
 * @source hansen2004, equation for the static separation point, from memory, not opened
 * @example attachedShare({ lift: 0.8, attached: 1.2 }) // 0.400680
 */
export function attachedShare(at: { readonly lift: number; readonly attached: number }): number {
  requireFinite('lift', at.lift)
  requireFinite('attached', at.attached)
  return shareOf(at.lift, at.attached)
}

const shareOf = (lift: number, attached: number): number => {
  if (Math.abs(attached) < 1e-9) return 1
  const ratio = lift / attached
  if (ratio >= 1) return 1
  if (ratio <= 0.25) return 0
  return (2 * Math.sqrt(ratio) - 1) ** 2
}

/**
 * Coefficients of a section whose attached share is f, not the one that belongs to its angle.
 *
 *   C_L = f C_Lα (α − α₀) + (1 − f) C_L,s,   C_D = C_D,st + (C_D,st − C_D0) ((√f_st − √f) / 2 − (f_st − f) / 4)
 *
 * C_L,s is the lift of the wholly separated section, so chosen that f = f_st gives the curve at rest.
 */
const withShare = (
  statics: SectionCoefficients,
  { attached, fst, f, leastDrag }: { attached: number; fst: number; f: number; leastDrag: number },
): void => {
  const { lift, drag } = statics
  const separated = fst > 0.999 ? lift / 2 : (lift - attached * fst) / (1 - fst)
  statics.lift = f * attached + (1 - f) * separated
  statics.drag = drag + (drag - leastDrag) * ((Math.sqrt(fst) - Math.sqrt(f)) / 2 - (fst - f) / 4)
}

const mixture = { attached: 0, fst: 0, f: 0, leastDrag: 0 }

/**
 * Coefficients at an angle for a blade that comes with the attached share `before` and has had `chords` chords of air pass since; returns
 * the share it has now. @internal
 */
export const readDynamicSection = (
  table: SectionTable,
  logReynolds: number,
  angle: number,
  before: number,
  chords: number,
  out: SectionCoefficients,
): number => {
  readSection(table, logReynolds, 0, out)
  const leastDrag = out.drag
  readSection(table, logReynolds, angle, out)
  const Δ = angle - table.zeroLift
  const attached = table.slope * Math.sin(Δ)
  const fst = shareOf(out.lift, attached)
  if (Math.abs(Δ) >= staticFrom) return 0
  const f = fst + (before - fst) * Math.exp(-chords / separationLag)
  mixture.attached = attached
  mixture.fst = fst
  mixture.f = f
  mixture.leastDrag = Math.min(leastDrag, out.drag)
  withShare(out, mixture)
  return f
}
