/** The moments at which a version of a design is kept. */

export const turningPoints = [
  'opened',
  'working',
  'remedy',
  'replaced',
  'restored',
  'other-window',
  'left-over',
] as const
export type TurningPoint = (typeof turningPoints)[number]
