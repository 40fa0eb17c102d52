/** How many turns of wire, round or strip, go into a rectangular window, by way of packing. */
import { refuse, requireBetween, requirePositive } from '../../refusal/require.ts'

/** Densest packing of equal circles in the plane, π/(2√3). */
export const hexagonalDensity = Math.PI / (2 * Math.sqrt(3))
/** Circles in square order, π/4. */
export const squareDensity = Math.PI / 4

/**
 * Area of enamelled wire over window that a careful hand reaches: usual value and range.
 * Common practice, no source.
 */
export const handWoundFraction = { usual: 0.55, least: 0.5, greatest: 0.65 } as const

/**
 * How much more room than its own a strip takes when laid by hand, each way: edges that do not bed down, bulging
 * layers. Usual value and range. Common practice, no source.
 */
export const handStripGrowth = { usual: 1.08, least: 1.03, greatest: 1.15 } as const

/**
 * Bare copper over window in practice: random lay by hand on a ring, random by machine, orderly lay
 * (kazimierczuk2014, chapter 10, as quoted by others, not opened).
 */
export const copperFillLimit = { handRandom: 0.3, machineRandom: 0.4, orderly: 0.6 } as const

export type Packing = 'square' | 'hexagonal' | 'hand-wound'

export interface WoundWire {
  /** Bare diameter of a strand [m]. */
  readonly bareDiameter: number
  /** Over the enamel [m]. */
  readonly outerDiameter: number
  /** Strands in hand: wires side by side that make one turn [1]. */
  readonly strands: number
}

function requireWire({ bareDiameter, outerDiameter, strands }: WoundWire): void {
  requirePositive('bareDiameter', bareDiameter, 'm')
  requirePositive('outerDiameter', outerDiameter, 'm')
  if (outerDiameter < bareDiameter)
    refuse({
      name: 'outerDiameter',
      condition: `at least the bare diameter of ${bareDiameter} m`,
      value: outerDiameter,
      unit: 'm',
      code: 'below-minimum',
    })
  if (!Number.isInteger(strands) || strands < 1)
    refuse({ name: 'strands', condition: 'a whole number from 1', value: strands, code: 'not-a-choice' })
}

/** Whole steps, forgiving the last bits of a division that should come out even. */
const whole = (x: number) => Math.max(0, Math.floor(x * (1 + 1e-12) + 1e-12))

/** Wires in rows along `along`, each row nested in the gaps of the one below. */
function nested(along: number, across: number, D: number): number {
  const full = whole(along / D)
  if (full === 0 || whole(across / D) === 0) return 0
  const rows = 1 + whole((across - D) / ((D * Math.sqrt(3)) / 2))
  const shifted = whole((along - D / 2) / D)
  return full * Math.ceil(rows / 2) + shifted * Math.floor(rows / 2)
}

/**
 * Greatest share of copper that round wire can have in any window.
 *
 *   k_max = π/(2√3) · (d/D)²
 *
 * Holds: equal round wires, any packing. Accuracy: exact bound, never exceeded.
 *
 * @param wire.bareDiameter   d                 [m]
 * @param wire.outerDiameter  D  over the enamel [m]
 * @returns                   k_max             [1]
 * @throws RangeError         diameter not above zero; outer under bare
 * @source derived, from the densest packing of equal circles in the plane
 * @example copperFillBound({ bareDiameter: 0.00125, outerDiameter: 0.001316 }) // 0.818
 */
export function copperFillBound(wire: {
  readonly bareDiameter: number
  readonly outerDiameter: number
}): number {
  requireWire({ ...wire, strands: 1 })
  return hexagonalDensity * (wire.bareDiameter / wire.outerDiameter) ** 2
}

export interface WindowFill {
  /** Single wires that fit [1]. */
  readonly wires: number
  /** Whole turns: wires over strands, rounded down [1]. */
  readonly turns: number
  /** Bare copper of those turns over the window [1]. */
  readonly copperFill: number
  /** Area of wire with enamel, of those turns, over the window [1]. */
  readonly wireFill: number
  /** `copperFillBound` of this wire [1]. */
  readonly bound: number
}

/**
 * Turns of round wire that fit a rectangular window.
 *
 *   square: ⌊a/D⌋ ⌊b/D⌋;  hexagonal: rows ½√3 D apart, the better of both directions or square;
 *   hand-wound: n = ⌊f a b / (π D²/4)⌋, at most the best order
 *
 * Holds: wire stiff and round, window with straight walls. Accuracy: the orderly counts are exact for their
 * pattern; hand-wound stands and falls with the fraction f (`handWoundFraction.usual` unless given).
 *
 * @param input.width         a  of the window                         [m]
 * @param input.thickness     b  of the window                         [m]
 * @param input.wire          d, D, strands in hand                    [m], [1]
 * @param input.packing       square, hexagonal or hand-wound          [1]
 * @param input.fraction      f  wire area over window, hand-wound     [1]
 * @returns                   wires, turns, fills and bound            [1]
 * @throws RangeError         a size not above zero; outer diameter under bare; fraction outside 0…0.9069
 * @source derived, from the geometry of the packings
 * @example windowFill({ width: 0.02, thickness: 0.01, wire: { bareDiameter: 0.0009, outerDiameter: 0.001, strands: 1 }, packing: 'square' }).turns // 200
 */
export function windowFill(input: {
  readonly width: number
  readonly thickness: number
  readonly wire: WoundWire
  readonly packing: Packing
  readonly fraction?: number
}): WindowFill {
  const { width: a, thickness: b, wire, packing, fraction = handWoundFraction.usual } = input
  requirePositive('width', a, 'm')
  requirePositive('thickness', b, 'm')
  requireWire(wire)
  requireBetween('fraction', fraction, [0, hexagonalDensity])
  const { bareDiameter: d, outerDiameter: D, strands } = wire
  const square = whole(a / D) * whole(b / D)
  const best = Math.max(square, nested(a, b, D), nested(b, a, D))
  const circle = (Math.PI * D * D) / 4
  const byArea = whole((fraction * a * b) / circle)
  const wires = packing === 'square' ? square : packing === 'hexagonal' ? best : Math.min(best, byArea)
  const turns = Math.floor(wires / strands)
  const laid = turns * strands
  return {
    wires,
    turns,
    copperFill: (laid * Math.PI * d * d) / 4 / (a * b),
    wireFill: (laid * circle) / (a * b),
    bound: copperFillBound(wire),
  }
}

/**
 * Greatest thickness over the enamel with which a wanted number of turns still fits a window.
 *
 *   D = greatest with turns(D) ≥ N
 *
 * Holds: as `windowFill`, bare diameter aside. Accuracy: bisected to 1e-9 of itself; orderly counts are step
 * functions of D and the value returned does fit.
 *
 * @param input.width      a                                 [m]
 * @param input.thickness  b                                 [m]
 * @param input.turns      N  wanted                         [1]
 * @param input.strands    in hand                           [1]
 * @param input.packing    square, hexagonal or hand-wound   [1]
 * @param input.fraction   f  as in `windowFill`             [1]
 * @returns                D                                 [m]
 * @throws RangeError      a size not above zero; turns or strands not whole numbers from 1
 * @source derived, from `windowFill`
 * @example greatestWire({ width: 0.02, thickness: 0.01, turns: 200, strands: 1, packing: 'square' }) // 0.001000
 */
export function greatestWire(input: {
  readonly width: number
  readonly thickness: number
  readonly turns: number
  readonly strands: number
  readonly packing: Packing
  readonly fraction?: number
}): number {
  const { turns, strands, ...window } = input
  if (!Number.isInteger(turns) || turns < 1)
    refuse({ name: 'turns', condition: 'a whole number from 1', value: turns, code: 'not-a-choice' })
  requirePositive('width', input.width, 'm')
  requirePositive('thickness', input.thickness, 'm')
  if (input.fraction !== undefined) requirePositive('fraction', input.fraction)
  const fits = (D: number) =>
    windowFill({ ...window, wire: { bareDiameter: D, outerDiameter: D, strands } }).turns >= turns
  let high = Math.min(input.width, input.thickness)
  if (fits(high)) return high
  let low = high
  while (!fits(low)) low /= 2
  for (let step = 0; step < 60 && high - low > 1e-10 * high; step++) {
    const middle = (low + high) / 2
    if (fits(middle)) low = middle
    else high = middle
  }
  return low
}

export interface WoundStrip {
  /** Over the enamel, along the window's width and thickness [m]. */
  readonly across: number
  readonly through: number
  /** Metal of a strand [m²]. */
  readonly area: number
  readonly strands: number
}

/**
 * Turns of strip that fit a rectangular window, stacked in rows and columns.
 *
 *   wires = ⌊a/(g s)⌋ ⌊b/(g t)⌋
 *
 * Holds: strip laid with its sides along the window's. Accuracy: exact for g = 1; by hand it stands and falls with the
 * growth g (`handStripGrowth`).
 *
 * @param input.width      a  of the window                                  [m]
 * @param input.thickness  b  of the window                                  [m]
 * @param input.strip      s, t over the enamel along a and b, area, strands [m], [m²], [1]
 * @param input.growth     g  room over the strip's own, at least 1          [1]
 * @returns                wires, turns and fills                            [1]
 * @throws RangeError      a size not above zero; growth below 1; strands not a whole number from 1
 * @source derived, from stacking rectangles
 * @example stripFill({ width: 0.02, thickness: 0.01, strip: { across: 0.004, through: 0.001, area: 3.8e-6, strands: 1 }, growth: 1 }).turns // 50
 */
export function stripFill(input: {
  readonly width: number
  readonly thickness: number
  readonly strip: WoundStrip
  readonly growth: number
}): Omit<WindowFill, 'bound'> {
  const { width: a, thickness: b, strip, growth: g } = input
  const { across: s, through: t, area, strands } = strip
  requirePositive('width', a, 'm')
  requirePositive('thickness', b, 'm')
  requirePositive('across', s, 'm')
  requirePositive('through', t, 'm')
  requirePositive('area', area, 'm²')
  requireBetween('growth', g, [1, 10])
  if (!Number.isInteger(strands) || strands < 1)
    refuse({ name: 'strands', condition: 'a whole number from 1', value: strands, code: 'not-a-choice' })
  const wires = whole(a / (g * s)) * whole(b / (g * t))
  const turns = Math.floor(wires / strands)
  const laid = turns * strands
  return { wires, turns, copperFill: (laid * area) / (a * b), wireFill: (laid * s * t) / (a * b) }
}
