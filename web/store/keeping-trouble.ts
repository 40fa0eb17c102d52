/** What could not be kept, why, and what to do, in sentences for the page. */
import { say } from '../text/say.ts'

const nameOf = (fault: unknown): string =>
  fault instanceof Error || (typeof DOMException !== 'undefined' && fault instanceof DOMException)
    ? fault.name
    : ''

const reasonOf = (fault: unknown): string => {
  const text = fault instanceof Error || fault instanceof DOMException ? fault.message : String(fault)
  return text.replace(/\s+/g, ' ').slice(0, 160)
}

/** Of the shelf that refused, and of the small store beside it, which may have taken the change all the same. */
export function keepingTrouble(shelfFault: unknown, smallStoreFault: unknown): string {
  const name = nameOf(shelfFault)
  const stopgap = smallStoreFault === undefined
  if (name === 'QuotaExceededError')
    return stopgap
      ? say`The browser’s room for this page is used up, so your last change is kept in a stopgap only. Save the design as a file now, then clear designs that were put aside.`
      : say`Your last change is not kept on this machine, for the browser’s room is used up. Save the design as a file now, then clear designs that were put aside.`
  if (name === 'VersionError')
    return say`A newer Gustloom has been used on this machine, and its shelf is closed to this older one. Save the design as a file, then load the page again.`
  return stopgap
    ? say`This browser does not let the page keep designs (${reasonOf(shelfFault)}), so your last change is kept in a stopgap only. You can go on working; save the design as a file before you leave.`
    : say`This browser does not let the page keep anything (${reasonOf(shelfFault)}). You can go on working; save the design as a file before you leave.`
}

/** Of a change to the shelf itself; the open design has nothing to do with it. */
export const shelfTrouble = (fault: unknown): string =>
  nameOf(fault) === 'QuotaExceededError'
    ? say`The shelf has no room for this, for the browser’s room for this page is used up. Save designs as files, clear those that were put aside, then try again.`
    : say`The shelf does not answer (${reasonOf(fault)}). Load the page again, and save the open design as a file before.`
