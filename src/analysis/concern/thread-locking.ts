/** Concern: a nut that may shake loose. */
import type { ConcernRule } from './concern.ts'

type Locking = 'hub' | 'bladeRoots' | 'studs'

const places: Readonly<Record<Locking, string>> = {
  hub: 'the nut on the shaft',
  bladeRoots: 'the bolts at the blades’ roots',
  studs: 'the studs of discs and stator',
}

export type LockingVerdict = 'holds' | 'useless' | 'not said'

/** A spring washer is flat when the nut is tight and locks nothing then: NASA RP-1228 as quoted by others, not opened. */
export const lockingVerdict = (locking: string): LockingVerdict =>
  locking === 'not said'
    ? 'not said'
    : locking === 'nothing' || locking === 'spring washer'
      ? 'useless'
      : 'holds'

/** Nylon of a locknut softens and adhesives of the shop let go about here [K]: common practice, no source. */
export const softLocking = 393.15

export const threadLocking: ConcernRule = {
  code: 'thread-locking',
  title: 'Nothing keeps a nut from shaking loose',
  basis: `What keeps the nut on the shaft, the bolts at the blades’ roots and the studs of discs and stator. Nothing, or a spring washer, which is flat when the nut is tight and locks nothing then (a public manual of fastener design, quoted, not opened): blocks the outdoor class where it is the shaft or the blades, else a warning. Adhesive or a nut with a plastic ring on studs beside copper hotter than ${softLocking - 273.15} °C (common practice, no source): a warning. Not said: a note outdoors, not asked in the others.`,
  judge: ({ machine, rows, runaway }) => {
    const { locking } = machine.design.shaft
    const outdoor = machine.safetyClass === 'outdoor'
    if (locking === undefined && !outdoor) return undefined
    const names: readonly Locking[] = ['hub', 'bladeRoots', 'studs']
    const said = (name: Locking) => locking?.[name] ?? 'not said'
    const having = (verdict: LockingVerdict) => names.filter((name) => lockingVerdict(said(name)) === verdict)
    const useless = having('useless')
    const unsaid = having('not said')
    const copper = rows.reduce(
      (most, { copperTemperature }) => Math.max(most, copperTemperature),
      machine.site.ambient,
    )
    const softened =
      copper > softLocking && ['thread-locking adhesive', 'prevailing-torque nut'].includes(said('studs'))
    if (useless.length === 0 && !softened && !(outdoor && unsaid.length > 0)) return undefined
    const grave = outdoor && useless.some((name) => name !== 'studs')
    const list = (of: readonly Locking[]) => of.map((name) => places[name]).join(', ')
    const turns = (runaway.speed * 60) / (2 * Math.PI)
    return {
      code: 'thread-locking',
      severity: grave ? 'blocking' : useless.length > 0 || softened ? 'warning' : 'note',
      path: useless[0] === undefined ? 'shaft.locking' : `shaft.locking.${useless[0]}`,
      what:
        useless.length > 0
          ? `Nothing keeps ${list(useless)} from shaking loose.`
          : softened
            ? 'What locks the studs may soften beside the hot winding.'
            : `It is not said what keeps ${list(unsaid)} from shaking loose.`,
      why: 'A joint that slips a little to and fro under vibration unscrews itself, however tight it was; on a rotor every turn shakes it. Then discs meet the stator, or a blade leaves.',
      figures: `${names.map((name) => `${places[name]}: ${said(name)}`).join('; ')}. Shaken up to ${Math.round(turns)} times a minute at runaway${softened ? `; copper up to ${Math.round(copper - 273.15)} °C` : ''}.`,
      remedies: [
        'Use wedge-locking washers, nuts with a prevailing torque, or a split pin; beside hot copper all of metal.',
        'Tighten with a torque wrench, paint a line across nut and part, and look at the lines after the first storm.',
        'A nut with a plastic ring is used once; a spring washer under a tight nut is no lock.',
        'Keep people out of the plane of the blades until all of it is locked.',
      ],
    }
  },
  answeredBy: 'Lines of paint across nuts and parts, looked at after the first strong wind.',
}
