/** The electrical side's safety as a page of text, and as JSON: volts and amps, ratings, order of switching, who to ask. */

import type { Chain } from '../analysis/compute.ts'
import { isOpen } from '../analysis/concern/concern.ts'
import { shortedDuty, stuckDuty, workingDuty } from '../analysis/electric-duty.ts'
import { ratingVerdict, safetyRatings } from '../analysis/safety-rating.ts'
import { switchingOrder } from '../analysis/switching-order.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { concernResult } from './result.ts'
import { airOf, safetyReport, whoToAsk } from './safety-report.ts'
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

export function safetyPage(chain: Chain): PageLine[] {
  const plain = (text: string): PageLine => ({ text, tone: 'plain' })
  const title = (text: string): PageLine => ({ text, tone: 'title' })
  const faint = (text: string): PageLine => ({ text, tone: 'faint' })
  const blank = plain('')
  const { machine } = chain
  const { states, duties, statesNote, limit, labels, air, switching, whoToAsk } = safetyReport(chain)
  const table = textTable(
    ['', ...states].map((head) => ({ head, align: 'left' as const })),
    duties.map(({ conductor, cells }) => [conductor, ...cells]),
  )
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
    ...wrapped(`  ${statesNote}`, columns, '  ').map(faint),
    ...(limit === undefined ? [] : wrapped(`  ${limit}`, columns, '  ').map(plain)),
    blank,
    title('What must stand on the labels'),
    ...labels.flatMap(({ part, need, said: stands, verdict }): PageLine[] => {
      const text = `  ${part}: ${need}. Said: ${stands}${verdict === 'not said' ? '' : `; ${verdict}`}.`
      return wrapped(text, columns, '     ').map((line) => ({
        text: line,
        tone: verdict === 'does not fit' ? 'warning' : 'plain',
      }))
    }),
    ...(air === undefined ? [] : wrapped(`  ${air}`, columns, '     ').map(plain)),
    blank,
    title('Order of switching'),
    ...switching.flatMap(({ name, steps }) =>
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
