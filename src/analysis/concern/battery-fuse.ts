/** Concern: the battery has no fuse near it, or one that does not suit the current and the cable. */
import type { Wiring } from '../../machine/supply-side.ts'
import { formatSi } from '../../units/format.ts'
import { cableAmpacity, leastCableSize } from '../cable-ampacity.ts'
import { stuckDuty, workingDuty } from '../electric-duty.ts'
import { fittingFuse } from '../ladder/battery.ts'
import { triable } from '../ladder/ladder.ts'
import { batteryCaution, electricCaution } from './caution.ts'
import { type ConcernRule, type Severity, severityFor } from './concern.ts'

/** Fuse over the greatest current that must pass for hours: common practice, no source. */
export const fuseMargin = 1.25

export interface FuseCase {
  readonly fuse: number | undefined
  readonly place: Wiring['fusePlace']
  /** Greatest that flows in work, and that the cable behind the fuse carries [A]; undefined where the fuse is not its. */
  readonly charging: number
  readonly ampacity: number | undefined
}

export type FuseFault = 'none' | 'elsewhere' | 'blows in work' | 'cable burns first' | 'no room' | 'not said'

/** Every fault of a fuse, the gravest first. */
export function fuseFaults({ fuse, place, charging, ampacity }: FuseCase): FuseFault[] {
  if (place === 'none') return ['none']
  const narrow = ampacity !== undefined && ampacity < fuseMargin * charging
  return [
    ...(place === 'elsewhere' ? ['elsewhere' as const] : []),
    ...(fuse !== undefined && ampacity !== undefined && fuse > ampacity
      ? ['cable burns first' as const]
      : []),
    ...(fuse !== undefined && fuse < fuseMargin * charging ? ['blows in work' as const] : []),
    ...(fuse === undefined && narrow ? ['no room' as const] : []),
    ...(fuse === undefined || place === 'not said' ? ['not said' as const] : []),
  ]
}

const words: Readonly<Record<FuseFault, string>> = {
  none: 'The battery has no fuse.',
  elsewhere: 'The fuse does not sit near the battery, so that the wire up to it is not protected.',
  'cable burns first': 'The fuse passes more than the cable behind it carries.',
  'blows in work': 'The fuse may blow in strong wind, and the rotor loses its load just then.',
  'no room': 'No fuse both passes the charging current and protects the cable.',
  'not said': 'The fuse of the battery, or where it sits, is not said.',
}

const severityOf = (fault: FuseFault, blocking: Severity): Severity =>
  fault === 'none' ? blocking : fault === 'not said' ? 'note' : 'warning'

export const batteryFuse: ConcernRule = {
  code: 'battery-fuse',
  title: 'The battery’s fuse is missing or does not suit',
  basis: `A fuse near the battery’s terminal, rated at least ${fuseMargin} times the greatest charging current (common practice, no source) and at most what the cable behind it carries: copper with PVC insulation in conduit, air at 30 °C, after IEC 60364-5-52 as transcribed, the cautious case; what is laid openly may bear more, what is bundled bears less, and the local code decides. A cable before the bridge is not the battery’s: then the size of the battery’s own leads is told. No fuse blocks the outdoor class, a warning in the others; not said is a note; all else a warning.`,
  measure: (chain) => {
    const duty = workingDuty(chain)
    const { fuse } = chain.machine.wiring
    if (chain.machine.load.kind !== 'battery' || duty === undefined || fuse === undefined) return undefined
    return {
      name: 'amps of the fuse',
      value: fuse,
      limit: fuseMargin * duty.loadCurrent,
      unit: 'A',
      sound: 'above',
    }
  },
  judge: (chain) => {
    const { machine } = chain
    const duty = workingDuty(chain)
    if (machine.load.kind !== 'battery' || duty === undefined) return undefined
    const own = machine.cable.place === 'after bridge'
    const { fuse, fusePlace: place } = machine.wiring
    const ampacity = own ? cableAmpacity(machine.cable.area) : undefined
    const charging = duty.loadCurrent
    const faults = fuseFaults({ fuse, place, charging, ampacity })
    const [first] = faults
    if (first === undefined) return undefined
    const stuck = stuckDuty(chain)
    const least = fuseMargin * charging
    return {
      code: 'battery-fuse',
      severity: severityOf(first, severityFor(chain, ['outdoor'])),
      path: 'wiring.fuse_A',
      what: faults.map((fault) => words[fault]).join(' '),
      why: 'A battery drives hundreds of amps through a short until something melts: the fuse must be the first, close to where the current comes from. A fuse that blows in a gust takes the load off the rotor, so that it must not be too small either.',
      figures: `Charging up to ${formatSi(charging, 'A')}${
        stuck !== undefined && stuck.loadCurrent > charging
          ? `, ${formatSi(stuck.loadCurrent, 'A')} in the storm should the limiter stick`
          : ''
      }; fuse at least ${formatSi(least, 'A', 2)}${
        ampacity === undefined
          ? ''
          : ` and at most ${formatSi(ampacity, 'A', 2)}, which ${formatSi(machine.cable.area, 'mm2')} carry`
      }${fuse === undefined ? '' : `; fitted ${formatSi(fuse, 'A')}`}.`,
      remedies: [
        triable(
          ampacity !== undefined && ampacity < least
            ? `Take thicker cable: it must carry more than ${formatSi(least, 'A', 2)}, and a fuse that it bears.`
            : `Fit a fuse for direct current and the battery’s volts within a hand’s breadth of its terminal: ${formatSi(least, 'A', 2)}${ampacity === undefined ? '; leads that carry as much or more' : ` to ${formatSi(ampacity, 'A', 2)}`}.`,
          fittingFuse(machine.design, least, (amps) => (own ? leastCableSize(amps) : undefined)),
        ),
        'Give a dump load a fuse of its own, before the battery’s, so that it stays when the battery’s blows.',
        `${batteryCaution} ${electricCaution}`,
      ],
    }
  },
}
