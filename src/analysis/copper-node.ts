/** Place of the copper in every net of temperatures. */

/** The copper is the first node. */
export const copperNode = 0
