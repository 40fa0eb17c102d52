/** What part of a winding a stretch of wire is: run, slanted run, crown, coil side or coil end. */

/** Of a wave: run, slanted run, crown. Of a coil: side, slanted side, rounded side, end. */
export const wireParts = [
  'run',
  'slanted run',
  'crown',
  'side',
  'slanted side',
  'rounded side',
  'end',
] as const
export type WirePart = (typeof wireParts)[number]

/** A straight piece that leans no farther than this from the run direction is straight up and down [rad]. */
export const straightLean = (5 * Math.PI) / 180

/** A straight piece that leans farther than this goes round the shaft: it joins, and does not run [rad]. */
export const endLean = (75 * Math.PI) / 180

/** Where a bend of a coil turns from its side to its end [rad]. */
export const bendLean = Math.PI / 4

export interface WirePiece {
  /** A line drawn straight, which keeps to its level. */
  readonly straight: boolean
  /** Wholly past the ends of the magnets. */
  readonly beyond: boolean
  /** Of the piece as a whole, and where it is looked at [rad]. */
  readonly pieceLean: number
  readonly lean: number
}

/**
 * The part by shape and lean. The lean is the angle to the run direction (along the shaft on a drum, along the radius
 * on a disc), 0…π/2: of a straight piece as a whole, of a bend where it is looked at. Bends of a wave are crowns
 * throughout, also where they leave the run; a leaning piece past the magnets joins, as in the ends of lap coils.
 */
export function wirePart(wave: boolean, { straight, beyond, pieceLean, lean }: WirePiece): WirePart {
  if (!straight) {
    if (wave) return 'crown'
    return lean <= bendLean ? 'rounded side' : 'end'
  }
  if (pieceLean > (beyond ? straightLean : endLean)) return wave ? 'crown' : 'end'
  if (pieceLean > straightLean) return wave ? 'slanted run' : 'slanted side'
  return wave ? 'run' : 'side'
}
