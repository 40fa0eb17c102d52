/** Remedies in words: what is changed, what it brings, what it makes worse. */
import type { Remedy, RemedyReport } from '../analysis/match-remedies.ts'
import { type Change, pathText } from '../analysis/remedy/change.ts'
import type { MatchFigures } from '../analysis/remedy/figures.ts'
import { formatNumber, formatSi } from '../units/format.ts'

/** Kind → what is done, without a full stop. */
export const remedyNames: Readonly<Record<Remedy['kind'], string>> = {
  gap: 'another gap',
  turns: 'other turns, the window as full',
  connection: 'coils connected otherwise',
  'star-delta switch': 'a switch between star and delta',
  cable: 'a thicker cable',
  converter: 'electronics that follow the blades',
  magnets: 'stronger magnets',
  'blade size': 'another blade size',
  'blade shape': 'blades for another tip-speed ratio',
  'series resistance': 'a resistor in the line',
}

function listValue(list: readonly unknown[]): string {
  if (list.length === 0) return 'none'
  return list.every((part) => typeof part !== 'object')
    ? list.map(plainValue).join(', ')
    : `${list.length} ${list.length === 1 ? 'entry' : 'entries'}`
}

function plainValue(value: unknown): string {
  if (value === undefined) return 'none'
  if (typeof value === 'number') return String(value)
  if (typeof value === 'string') return value
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (Array.isArray(value)) return listValue(value)
  if (typeof value === 'object' && value !== null && 'value' in value) return plainValue(value.value)
  if (typeof value !== 'object' || value === null || 'curve' in value) return 'a curve of its own'
  return Object.entries(value)
    .filter(([, part]) => part !== undefined)
    .map(([key, part]) => `${key} ${plainValue(part)}`)
    .join(', ')
}

/** `rotor.faceDistance_mm 17 → 19`. */
export const changeText = ({ path, from, to }: Change): string =>
  `${pathText(path)} ${plainValue(from)} → ${plainValue(to)}`

export function changesText({ kind, changes, turnoverWind }: Remedy): string {
  if (kind !== 'star-delta switch') return changes.map(changeText).join('; ')
  return turnoverWind === undefined
    ? 'stator.connection star ↔ delta'
    : `stator.connection star ↔ delta, turned over near ${formatSi(turnoverWind, 'm_per_s', 2)}`
}

export const remedyColumns = [
  'kWh/year',
  'watts W',
  'stalled winds',
  'begins m/s',
  'hottest °C',
  'runaway rpm',
  'runaway V',
  'burnt W',
  'copper g',
] as const

export function figureCells(figures: MatchFigures, burnt: number): string[] {
  const bare = (value: number, suffix: string, digits = 3) =>
    formatSi(value, suffix, digits).replace(/[\s ]\S+$/, '')
  return [
    bare(figures.energy, 'kWh'),
    formatNumber(figures.usefulPower),
    String(figures.stalledWinds),
    Number.isFinite(figures.cutInWind) ? formatNumber(figures.cutInWind, 2) : 'never',
    bare(figures.hottestCopper, 'degC'),
    bare(figures.runawaySpeed, 'rpm'),
    formatNumber(figures.runawayVolts),
    burnt > 0 ? formatNumber(burnt, 2) : '–',
    bare(figures.copperMass, 'g'),
  ]
}

const massText = (mass: number): string => formatSi(mass, mass < 1 ? 'g' : 'kg')

/** Shares from which a change for the worse is worth a word. */
const worthSaying = 0.03

const grows = (change: Change | undefined): boolean =>
  Number(plainValue(change?.to)) > Number(plainValue(change?.from))

/** What gets worse, in parts of a sentence; none where nothing does. */
export function worseParts(
  { before }: RemedyReport,
  { after, burnt, greatestBurnt, kind, changes }: Remedy,
): string[] {
  const parts: string[] = []
  const rises = (from: number, to: number) => to > from * (1 + worthSaying)
  if (after.usefulPower < before.usefulPower * (1 - worthSaying))
    parts.push(`${formatSi(before.usefulPower - after.usefulPower, 'W')} less in the wind that is told`)
  if (after.cutInWind > before.cutInWind + 0.1)
    parts.push(
      Number.isFinite(after.cutInWind)
        ? `current begins at ${formatSi(after.cutInWind, 'm_per_s', 2)} instead of ${formatSi(before.cutInWind, 'm_per_s', 2)}`
        : 'current never begins',
    )
  if (after.hottestCopper > before.hottestCopper + 3)
    parts.push(`copper up to ${formatNumber(after.hottestCopper - before.hottestCopper, 2)} K hotter`)
  if (rises(before.runawaySpeed, after.runawaySpeed))
    parts.push(
      `runaway at ${formatSi(after.runawaySpeed, 'rpm')} instead of ${formatSi(before.runawaySpeed, 'rpm')}`,
    )
  if (rises(before.runawayVolts, after.runawayVolts))
    parts.push(
      `${formatSi(after.runawayVolts, 'V')} at runaway instead of ${formatSi(before.runawayVolts, 'V')}`,
    )
  if (rises(before.copperMass, after.copperMass))
    parts.push(`${massText(after.copperMass - before.copperMass)} more copper`)
  if (kind === 'series resistance' || kind === 'converter')
    parts.push(`${formatSi(burnt, 'W')} burnt in it, at most ${formatSi(greatestBurnt, 'W')}`)
  if (kind === 'blade size' && grows(changes[0]))
    parts.push('mast and bearings must take the thrust of the larger blades')
  if (kind === 'star-delta switch')
    parts.push(
      'the switch must open before it closes and be rated for the current; no entry of the design holds it',
    )
  if (kind === 'series resistance')
    parts.push(
      'the rotor is held less in strong wind, and the resistor gets hot: mount it away from what burns',
    )
  const added = after.warnings.filter((code) => !before.warnings.includes(code))
  if (added.length > 0) parts.push(`new concerns: ${added.join(', ')}`)
  return parts
}

/** Kinds without use, those of one reason together. */
export function withoutTexts({ without }: RemedyReport): string[] {
  const byReason = new Map<string, string[]>()
  for (const { kind, reason } of without)
    byReason.set(reason, [...(byReason.get(reason) ?? []), remedyNames[kind]])
  return [...byReason].map(([reason, names]) => `${names.join(', ')}: ${reason}`)
}

/** What one remedy comes to, as a sentence. */
export function remedySentence(report: RemedyReport, remedy: Remedy): string {
  const { before } = report
  const { after } = remedy
  const energy = (figures: MatchFigures) => formatSi(figures.energy, 'kWh')
  const gain =
    before.energy > 0
      ? ` (${after.energy >= before.energy ? '+' : '−'}${formatNumber(Math.abs(100 * (after.energy / before.energy - 1)), 2)} %)`
      : ''
  const stall =
    before.stalledWinds === 0 && after.stalledWinds === 0
      ? ''
      : `, stalled in ${after.stalledWinds} winds instead of ${before.stalledWinds}`
  return `${energy(before)} → ${energy(after)} a year${gain}, ${formatSi(before.usefulPower, 'W')} → ${formatSi(after.usefulPower, 'W')} in ${formatSi(report.wind, 'm_per_s', 2)}${stall}`
}

export const idealSentence = ({ ideal, wind, before }: RemedyReport): string =>
  `No electronics pass ${formatSi(ideal.energy, 'kWh')} a year and ${formatSi(ideal.power, 'W')} in ${formatSi(wind, 'm_per_s', 2)} with these blades and this winding: the best speed in every wind, currents in step with the volts, nothing lost behind the winding. The machine as it is reaches ${ideal.energy > 0 ? formatNumber((100 * before.energy) / ideal.energy, 2) : '0'} % of that energy.`

export const remedyNote =
  'Each remedy is tried alone, its step searched for the most energy of a year, and computed by the whole chain. Remedies that make a machine that cannot be built, or that bring a concern that blocks its class, are left out. Before you build: what holds for voltages, batteries and masts is set by local codes and judged by licensed people.'
