/** The wire sizes next to a design's own, as a page of text and as JSON. */
import type { WireChoice, WireChoices } from '../analysis/wire-choice.ts'
import { formatNumber, formatSi } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96
const perRpm = (2 * Math.PI) / 60

const bare = (value: number, suffix: string, digits = 3): string => {
  const { symbol } = unit(suffix)
  return formatSi(value, suffix, digits).replace(symbol, '')
}

function cells({ name, step, asDrawn, turns, outcome }: WireChoice, reels: boolean): string[] {
  const mark = asDrawn ? '→' : step === 0 ? '·' : ' '
  if (outcome === undefined) return [mark, name, String(turns), 'does not go in']
  const rest = outcome.reelRest
  return [
    mark,
    name,
    String(turns),
    formatNumber(100 * outcome.copperFill, 2),
    formatNumber(outcome.resistance),
    formatNumber(outcome.voltage * perRpm * 1000),
    formatNumber(outcome.wireLength),
    bare(outcome.copperMass, 'g'),
    ...(reels ? [rest === undefined ? '' : formatNumber(rest.length)] : []),
    formatNumber(outcome.windingLoss),
    `${bare(outcome.copperTemperature, 'degC', 2)}${outcome.overheated ? '!' : ''}`,
    outcome.state,
    ...outcome.useful.map((watts) => formatNumber(watts)),
  ]
}

export function wirePage(name: string, { wind, winds, keepTurns, choices }: WireChoices): PageLine[] {
  const reels = choices.some(({ outcome }) => outcome?.reelRest !== undefined)
  const right = (head: string) => ({ head, align: 'right' as const })
  const table = textTable(
    [
      { head: '', align: 'left' },
      { head: 'wire', align: 'left' },
      right('turns'),
      right('copper %'),
      right('ohms Ω'),
      right('mV/rpm'),
      right('wire m'),
      right('copper g'),
      ...(reels ? [right('left m')] : []),
      right('lost W'),
      right('°C'),
      { head: 'state', align: 'left' as const },
      ...winds.map((told) => right(`W at ${told}`)),
    ],
    choices.map((choice) => cells(choice, reels)),
  )
  const note = (text: string): PageLine[] =>
    wrapped(text, columns, '  ').map((line) => ({ text: line, tone: 'faint' }))
  return [
    { text: `${name} — the wire sizes next to its own`, tone: 'title' },
    ...table.map((text, k): PageLine => ({ text: `  ${text}`, tone: k === 0 ? 'faint' : 'plain' })),
    ...note(
      `  → as drawn; every other row has ${keepTurns ? 'the same turns, where a patient hand can lay them' : 'as many turns as a patient hand lays'} into the same bundle. Ohms of a phase at 20 °C, volts of a phase on open circuit (rms); lost in the copper, its temperature and the machine’s state in ${formatSi(wind, 'm_per_s', 2)}; watts stored or used in winds of ${winds.join(', ')} m/s.`,
    ),
  ]
}

/** The same for other programs. */
export const wireResult = ({ wind, winds, keepTurns, choices }: WireChoices) => ({
  wind_m_per_s: wind,
  winds_m_per_s: winds,
  keepTurns,
  choices: choices.map(({ name, step, asDrawn, turns, handTurns, outcome }) => ({
    name,
    step,
    asDrawn,
    turns,
    handTurns,
    ...(outcome === undefined
      ? { fits: false }
      : {
          fits: true,
          resistance20_ohm: outcome.resistance,
          volts_V_per_rpm_rms: outcome.voltage * perRpm,
          copperFill: outcome.copperFill,
          wireLength_m: outcome.wireLength,
          copperMass_g: fromSi(outcome.copperMass, unit('g')),
          reelRest_m: outcome.reelRest?.length ?? null,
          winding_W: outcome.windingLoss,
          copper_degC: fromSi(outcome.copperTemperature, unit('degC')),
          overheated: outcome.overheated,
          state: outcome.state,
          useful_W: outcome.useful,
          cutInWind_m_per_s: Number.isFinite(outcome.cutInWind) ? outcome.cutInWind : null,
        }),
  })),
})
