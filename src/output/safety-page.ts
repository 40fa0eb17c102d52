/** The electrical side's safety as a page of text, and as JSON: volts and amps, ratings, order of switching, who to ask. */

import type { Chain } from '../analysis/compute.ts'
import { gassingCurrent, ventilation } from '../analysis/concern/battery-gas.ts'
import {
  batteryCaution,
  electricCaution,
  fireCaution,
  towerCaution,
  turningCaution,
} from '../analysis/concern/caution.ts'
import { isOpen } from '../analysis/concern/concern.ts'
import { shockLimit, speedAtLimit } from '../analysis/concern/shock-band.ts'
import { dumpAlone } from '../analysis/dump-alone.ts'
import { shortedDuty, stuckDuty, workingDuty } from '../analysis/electric-duty.ts'
import { type Bound, type Rating, ratingVerdict, safetyRatings } from '../analysis/safety-rating.ts'
import { switchingOrder } from '../analysis/switching-order.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { concernResult } from './result.ts'
import { answerTexts } from './sign-off.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96

/** The concerns of the electrical side, to be shown with it. */
const electricCodes: ReadonlySet<string> = new Set([
  'load-loss',
  'shock-band',
  'brake-torque',
  'brake-order',
  'brake-place',
  'dump-power',
  'dump-voltage',
  'dump-path',
  'battery-disconnect',
  'battery-fuse',
  'battery-frost',
  'battery-overcharge',
  'battery-gas',
  'switch-rating',
  'diode-rating',
  'capacitor-voltage',
  'converter-input',
  'label-voltage',
  'cable-drop',
  'earthing',
])

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
function airOf(chain: Chain) {
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
const whoToAsk = [
  electricCaution,
  'Earthing of mast, machine and battery and protection against lightning and surges are not designed here and are never left out: a licensed electrician and a lightning protection specialist plan and check them (IEC 60364, IEC 62305, IEC 61400-24, the national code; verify the editions in force).',
  batteryCaution,
  towerCaution,
  turningCaution,
  fireCaution,
] as const

export function safetyPage(chain: Chain): PageLine[] {
  const plain = (text: string): PageLine => ({ text, tone: 'plain' })
  const title = (text: string): PageLine => ({ text, tone: 'title' })
  const faint = (text: string): PageLine => ({ text, tone: 'faint' })
  const blank = plain('')
  const { machine, runaway } = chain
  const stuck = stuckDuty(chain)
  const head = ['', 'in work', 'limiter stuck', 'load lost', 'shorted']
  const shown = stuck === undefined ? [0, 1, 3, 4] : [0, 1, 2, 3, 4]
  const table = textTable(
    shown.map((c) => ({ head: head[c]!, align: 'left' as const })),
    dutyRows(chain).map(({ conductor, cells }) => {
      const row = [conductor, ...cells]
      return shown.map((c) => row[c]!)
    }),
  )
  const limit = shockLimit(machine.safetyClass, machine.wiring.surroundings)
  const passed = speedAtLimit(
    { alternating: runaway.lineVoltage, direct: runaway.directVoltage },
    runaway.speed,
    limit,
  )
  const air = airOf(chain)
  const said = chain.concerns.filter(({ code }) => electricCodes.has(code))
  const items = (texts: readonly string[], mark: (k: number) => string) =>
    texts.flatMap((text, k) => wrapped(`  ${mark(k)} ${text}`, columns, '     ').map(plain))
  return [
    title(`${machine.name} — the electrical side, ${machine.safetyClass}`),
    ...wrapped(
      '  Computed from the document; it replaces no permit, no code and no licensed person.',
      columns,
      '  ',
    ).map(faint),
    blank,
    title('Volts and amps'),
    ...table.map((text, k) => (k === 0 ? faint(`  ${text}`) : plain(`  ${text}`))),
    ...wrapped(
      `  In work: the greatest up to ${formatSi(machine.site.stormWind, 'm_per_s', 2)}, limiters at work.${
        stuck === undefined ? '' : ' Limiter stuck: the load connected in the storm.'
      } Load lost: ${formatSi(runaway.speed, 'rpm')} in ${formatSi(runaway.wind, 'm_per_s', 2)}, no limiter at work${
        machine.protection.dump
          ? '; for the dump load, it alone in the strongest wind that the limiter leaves'
          : ''
      }. Shorted: at that speed, steady, the winding cold.`,
      columns,
      '  ',
    ).map(faint),
    ...(Number.isFinite(passed) && passed > 0
      ? wrapped(
          `  Without load ${volts(limit.alternating)} rms or ${volts(limit.direct)} direct, the limit for ${machine.safetyClass === 'demonstration' ? 'a demonstration' : machine.wiring.surroundings === 'dry' ? 'a dry place' : `a ${machine.wiring.surroundings === 'wet' ? 'wet place' : 'class room'}`}, is passed at ${formatSi(passed, 'rpm')}.`,
          columns,
          '  ',
        ).map(plain)
      : []),
    blank,
    title('What must stand on the labels'),
    ...safetyRatings(chain).flatMap((rating): PageLine[] => {
      const verdict = ratingVerdict(rating)
      const text = `  ${rating.part}: ${needText(rating)}. Said: ${statedText(rating)}${verdict === 'not said' ? '' : `; ${verdict}`}.`
      return wrapped(text, columns, '     ').map((line) => ({
        text: line,
        tone: verdict === 'does not fit' ? 'warning' : 'plain',
      }))
    }),
    ...(air === undefined
      ? []
      : wrapped(
          `  air past the battery: ${formatNumber(air.airflow, 2)} m³/h, openings of ${formatNumber(air.opening, 2)} cm² low and high (EN 50272-3; verify the edition in force).`,
          columns,
          '     ',
        ).map(plain)),
    blank,
    title('Order of switching'),
    ...switchingOrder(machine).flatMap(({ name, steps }) =>
      steps.length === 0 ? [] : [faint(`  ${name}`), ...items(steps, (k) => `${k + 1} `)],
    ),
    blank,
    title('Concerns of the electrical side'),
    ...(said.length === 0
      ? [{ text: '  None.', tone: 'good' as const }]
      : said.flatMap((concern): PageLine[] => {
          const { severity, code, what } = concern
          const open = isOpen(concern)
          const mark = `${severity === 'blocking' ? 'BLOCKING' : severity}${open ? '' : ', answered'}`
          return [
            ...wrapped(`  ${mark} ${code}: ${what}`, columns, '     ').map((text) => ({
              text,
              tone: severity === 'note' || !open ? ('plain' as const) : severity,
            })),
            ...answerTexts(concern).flatMap((text) => wrapped(`     ${text}`, columns, '     ').map(plain)),
          ]
        })),
    blank,
    title('Who to ask'),
    ...items(whoToAsk, () => '–'),
  ]
}

const dutyResult = (duty: ReturnType<typeof workingDuty>) =>
  duty && {
    wind_m_per_s: duty.wind,
    speed_rpm: fromSi(duty.speed, unit('rpm')),
    direct_V: duty.directVoltage,
    direct_A: duty.directCurrent,
    line_A_rms: duty.lineCurrent,
    load_V: duty.loadVoltage,
    load_A: duty.loadCurrent,
    load_W: duty.power,
  }

/** The same for other programs. */
export function safetyResult(chain: Chain) {
  const { machine, runaway } = chain
  const { lineCurrent, directCurrent } = shortedDuty(chain)
  const air = airOf(chain)
  return {
    name: machine.name,
    class: machine.safetyClass,
    inWork: dutyResult(workingDuty(chain)) ?? null,
    limiterStuck: dutyResult(stuckDuty(chain)) ?? null,
    loadLost: {
      wind_m_per_s: runaway.wind,
      speed_rpm: fromSi(runaway.speed, unit('rpm')),
      line_V_rms: runaway.lineVoltage,
      direct_V: runaway.directVoltage,
    },
    shorted: { line_A_rms: lineCurrent, direct_A: directCurrent },
    ratings: safetyRatings(chain).map((rating) => ({
      part: rating.part,
      kind: rating.kind,
      kindStated: rating.kindStated ?? null,
      verdict: ratingVerdict(rating),
      bounds: rating.bounds.map(({ quantity, side, value, stated }) => ({
        unit: quantity,
        side,
        value: fromSi(value, unit(quantity)),
        stated: stated === undefined ? null : fromSi(stated, unit(quantity)),
      })),
    })),
    ventilation: air === undefined ? null : { airflow_m3_per_h: air.airflow, opening_cm2: air.opening },
    switching: switchingOrder(machine),
    concerns: chain.concerns.filter(({ code }) => electricCodes.has(code)).map(concernResult),
    whoToAsk,
  }
}
