/** How strictly a machine is judged, by what may go wrong with it. */

/** Rising: shown by hand, run on a bench, left alone in a storm. */
export const safetyClasses = ['demonstration', 'bench', 'outdoor'] as const
export type SafetyClass = (typeof safetyClasses)[number]
