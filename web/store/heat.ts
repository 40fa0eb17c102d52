/** The heat of the present design when something goes wrong: how far it is computed, and its report. */
import { document as design } from './design.ts'
import { jobView } from './job.ts'

const view = jobView('heat')
export const heatState = view.state
export const heatStale = view.stale
export const stopHeat = view.stop

export const computeHeat = (): void => view.start({ text: JSON.stringify(design.value) })
