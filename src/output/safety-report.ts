/** The electrical side's safety as sentences and cells: what conductors bear, what labels must say, how it is switched. */
import type { Chain } from '../analysis/compute.ts'
import { gassingCurrent, ventilation } from '../analysis/concern/battery-gas.ts'
import {
  batteryCaution,
  electricCaution,
  fireCaution,
  towerCaution,
  turningCaution,
} from '../analysis/concern/caution.ts'
import { shockLimit, speedAtLimit } from '../analysis/concern/shock-band.ts'
import { dumpAlone } from '../analysis/dump-alone.ts'
import { shortedDuty, stuckDuty, workingDuty } from '../analysis/electric-duty.ts'
import {
  type Bound,
  type Rating,
  type RatingVerdict,
  ratingPath,
  ratingVerdict,
  safetyRatings,
} from '../analysis/safety-rating.ts'
import { type SwitchingStep, switchingOrder } from '../analysis/switching-order.ts'
import { formatNumber, formatSi } from '../units/format.ts'

export interface LabelLine {
  readonly part: string
  /** What must stand on it, and what does. */
  readonly need: string
  readonly said: string
  readonly verdict: RatingVerdict
  /** Field of the document that settles it. */
  readonly path: string | undefined
}

export interface SafetyReport {
  /** Heads of the states, as many as the cells of a row. */
  readonly states: readonly string[]
  readonly duties: readonly { readonly conductor: string; readonly cells: readonly string[] }[]
  /** What the states are. */
  readonly statesNote: string
  /** Where the shock limit is passed without load; undefined where never. */
  readonly limit: string | undefined
  readonly labels: readonly LabelLine[]
  /** Air past a lead-acid battery. */
  readonly air: string | undefined
  readonly switching: readonly SwitchingStep[]
  /** Who decides what no computation may. */
  readonly whoToAsk: readonly string[]
}

const volts = (value: number): string => formatSi(value, 'V')
const amps = (value: number): string => formatSi(value, 'A')

interface DutyRow {
  readonly conductor: string
  /** In work; in the storm with the limiter stuck; with the load lost; shorted. */
  readonly cells: readonly [string, string, string, string]
}

/** What each conductor carries and bears. */
function dutyRows(chain: Chain): DutyRow[] {
  const { machine, runaway, voltage } = chain
  const work = workingDuty(chain)
  const stuck = stuckDuty(chain)
  const short = shortedDuty(chain)
  const drop = 2 * machine.diode.threshold
  const lost = `${volts(runaway.lineVoltage)} rms`
  const direct = volts(runaway.directVoltage)
  const line = (duty: typeof work) =>
    duty === undefined ? '–' : `${volts(duty.directVoltage + drop)} peak, ${amps(duty.lineCurrent)} rms`
  const bus = (duty: typeof work) =>
    duty === undefined ? '–' : `${volts(duty.directVoltage)}, ${amps(duty.directCurrent)}`
  const own = (duty: typeof work) =>
    duty === undefined ? '–' : `${volts(duty.loadVoltage)}, ${amps(duty.loadCurrent)}`
  const behind =
    machine.protection.electrical === 'shorting switch' && machine.protection.short.place !== 'at the machine'
  const { dump, electrical } = machine.protection
  const alone = dump && electrical === 'dump load' ? dumpAlone(chain, dump.resistance) : undefined
  const lines =
    voltage.phases.length > 1 ? `each of ${voltage.phases.length} line wires` : 'both wires of the winding'
  return [
    { conductor: lines, cells: [line(work), line(stuck), lost, `${amps(short.lineCurrent)} rms`] },
    {
      conductor: 'plus and minus, bridge',
      cells: [bus(work), bus(stuck), direct, behind ? amps(short.directCurrent) : '–'],
    },
    ...(machine.load.kind === 'open'
      ? []
      : [
          {
            conductor: machine.load.kind === 'battery' ? 'the battery’s leads' : 'the load’s leads',
            cells: [
              own(work),
              own(stuck),
              machine.load.kind === 'battery' ? `${volts(machine.load.voltage)} of its own` : direct,
              '–',
            ] as const,
          },
        ]),
    ...(dump && alone
      ? [
          {
            conductor: 'the dump load’s leads',
            cells: [
              `${volts(dump.on)}, ${amps(dump.on / dump.resistance)}`,
              '–',
              `${volts(alone.voltage)}, ${amps(alone.voltage / dump.resistance)}`,
              '–',
            ] as const,
          },
        ]
      : []),
  ]
}

const valueText = (bound: Bound, value: number): string => formatSi(value, bound.quantity)

const needText = ({ kind, bounds }: Rating): string =>
  `${bounds.map((bound) => `${bound.side} ${valueText(bound, bound.value)}`).join(', ')}; ${kind}`

const statedText = ({ kindStated, bounds }: Rating): string =>
  [
    ...new Set(
      bounds.flatMap((bound) => (bound.stated === undefined ? [] : [valueText(bound, bound.stated)])),
    ),
    ...(kindStated === undefined ? [] : [kindStated]),
  ].join(', ') || 'nothing'

/** Air past a lead-acid battery; undefined for any other load. */
export function airOf(chain: Chain) {
  const { load, protection } = chain.machine
  const duty = workingDuty(chain)
  if (load.kind !== 'battery' || load.chemistry !== 'lead-acid' || duty === undefined) return undefined
  const diverted = protection.electrical === 'dump load'
  return ventilation({
    cells: load.cells,
    gassing: gassingCurrent(duty.loadCurrent, load.capacity, diverted),
  })
}

/** Who decides what no computation may. */
export const whoToAsk = [
  electricCaution,
  'Earthing of mast, machine and battery and protection against lightning and surges are not designed here and are never left out: a licensed electrician and a lightning protection specialist plan and check them (IEC 60364, IEC 62305, IEC 61400-24, the national code; verify the editions in force).',
  batteryCaution,
  towerCaution,
  turningCaution,
  fireCaution,
] as const

const stateHeads = ['in work', 'limiter stuck', 'load lost', 'shorted'] as const

function statesNote({ machine, runaway }: Chain, stuck: boolean): string {
  const storm = formatSi(machine.site.stormWind, 'm_per_s', 2)
  const sentences = [
    `In work: the greatest up to ${storm}, limiters at work.`,
    ...(stuck ? ['Limiter stuck: the load connected in the storm.'] : []),
    `Load lost: ${formatSi(runaway.speed, 'rpm')} in ${formatSi(runaway.wind, 'm_per_s', 2)}, no limiter at work${
      machine.protection.dump
        ? '; for the dump load, it alone in the strongest wind that the limiter leaves'
        : ''
    }.`,
    'Shorted: at that speed, steady, the winding cold.',
  ]
  return sentences.join(' ')
}

function limitSentence({ machine, runaway }: Chain): string | undefined {
  const { surroundings } = machine.wiring
  const limit = shockLimit(machine.safetyClass, surroundings)
  const passed = speedAtLimit(
    { alternating: runaway.lineVoltage, direct: runaway.directVoltage },
    runaway.speed,
    limit,
  )
  if (!Number.isFinite(passed) || passed <= 0) return undefined
  const place =
    machine.safetyClass === 'demonstration'
      ? 'a demonstration'
      : surroundings === 'dry'
        ? 'a dry place'
        : surroundings === 'wet'
          ? 'a wet place'
          : 'a class room'
  return `Without load ${volts(limit.alternating)} rms or ${volts(limit.direct)} direct, the limit for ${place}, is passed at ${formatSi(passed, 'rpm')}.`
}

export function safetyReport(chain: Chain): SafetyReport {
  const stuck = stuckDuty(chain) !== undefined
  const shown = (texts: readonly string[]) => texts.filter((_, k) => stuck || k !== 1)
  const air = airOf(chain)
  return {
    states: shown(stateHeads),
    duties: dutyRows(chain).map(({ conductor, cells }) => ({ conductor, cells: shown(cells) })),
    statesNote: statesNote(chain, stuck),
    limit: limitSentence(chain),
    labels: safetyRatings(chain).map((rating) => ({
      part: rating.part,
      need: needText(rating),
      said: statedText(rating),
      verdict: ratingVerdict(rating),
      path: ratingPath(rating),
    })),
    air:
      air === undefined
        ? undefined
        : `air past the battery: ${formatNumber(air.airflow, 2)} m³/h, openings of ${formatNumber(air.opening, 2)} cm² low and high (EN 50272-3; verify the edition in force).`,
    switching: switchingOrder(chain.machine),
    whoToAsk,
  }
}
