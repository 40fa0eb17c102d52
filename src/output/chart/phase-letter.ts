/** The letter of a phase, which tells phases apart where colours do not. */

/** A for the first, from 0. */
export const phaseLetter = (phase: number): string => String.fromCharCode(65 + (phase % 26))

/** Class that names the colour of a phase; the colours repeat after three. */
export const phaseInk = (phase: number): string => `ink-phase-${(phase % 3) + 1}`
