/** The first machines from a stock as a page of text, and as JSON in workshop units. */
import type { FirstMachine, FirstMachines } from '../search/first-machine.ts'
import { formatNumber } from '../units/format.ts'
import { fromSi, unit } from '../units/unit.ts'
import type { PageLine } from './chain-page.ts'
import { textTable, wrapped } from './text-table.ts'

const columns = 96

const plain = (text: string): PageLine => ({ text, tone: 'plain' })
const title = (text: string): PageLine => ({ text, tone: 'title' })

const kilowattHours = (machine: FirstMachine): number => fromSi(machine.chain.year.energy, unit('kWh'))

const mostUseful = ({ chain: { rows } }: FirstMachine): number =>
  Math.max(...rows.map(({ watts }) => watts.useful))

const magnetsUsed = ({ design: { rotor } }: FirstMachine): number =>
  rotor.poleCount * (rotor.arrangement === 'two-discs' ? 2 : 1)

const turnsOf = ({ chain: { machine } }: FirstMachine): string => {
  const { winding, wire } = machine.stator
  const coils = winding.kind === 'coils' ? `${winding.coilCount} coils of ` : 'three waves of '
  return `${coils}${winding.turns}${wire.strands > 1 ? `, ${wire.strands} in hand` : ''}`
}

function rowOf(machine: FirstMachine): string[] {
  const { chain, kind, sketch } = machine
  return [
    kind,
    formatNumber(kilowattHours(machine), 2),
    Number.isFinite(chain.cutInWind) ? formatNumber(chain.cutInWind, 2) : 'never',
    formatNumber(mostUseful(machine), 2),
    formatNumber(sketch.diameter_m, 3),
    String(magnetsUsed(machine)),
    turnsOf(machine),
    formatNumber(chain.wound.copperMass, 2),
    formatNumber(machine.greatestPart_mm, 3),
    machine.blocking.length === 0 ? 'nothing' : machine.blocking.join(', '),
  ]
}

/** What stands against a machine, the gravest first, in a line each. */
function objections({ chain, fitsPrinter, greatestPart_mm }: FirstMachine): string[] {
  const lines = chain.concerns
    .filter(({ severity }) => severity !== 'note')
    .map(({ severity, what }) => `${severity}: ${what}`)
  return fitsPrinter
    ? lines
    : [
        `The biggest part, ${formatNumber(greatestPart_mm, 3)} mm across, must be printed in pieces.`,
        ...lines,
      ]
}

export function firstPage({ machines, without, trials }: FirstMachines): PageLine[] {
  const heads = [
    'machine',
    'kWh/year',
    'charges from m/s',
    'most W',
    'blades m',
    'magnets',
    'winding',
    'copper kg',
    'part mm',
    'blocked by',
  ]
  const table = textTable(
    heads.map((head, k) => ({ head, align: k === 0 || k === 6 || k === 9 ? 'left' : 'right' })),
    machines.map(rowOf),
  )
  return [
    title('First machines from what is at hand'),
    ...table.map(plain),
    plain(''),
    ...machines
      .slice(0, 1)
      .flatMap((machine) => [
        title(`The best of these: ${machine.kind}`),
        ...objections(machine).flatMap((line) => wrapped(`  ${line}`, columns, '    ').map(plain)),
        plain(''),
      ]),
    ...without.flatMap(({ kind, reason }) => wrapped(`Not ${kind}: ${reason}.`, columns, '  ').map(plain)),
    ...wrapped(
      `${trials} whole machines were computed on the way. A walk through the sizes finds a good machine, not the best there is; the mean wind, the grade of the magnets and the bearings are guesses until they are measured, so a year’s energy may well be off by half.`,
      columns,
    ).map(plain),
    ...wrapped(
      'Moving blades, magnets that snap together, batteries and volts without load injure people: read the concerns before you build, and let a licensed electrician look at the wiring.',
      columns,
    ).map(plain),
  ]
}

export const firstResult = ({ machines, without, trials }: FirstMachines): object => ({
  machines: machines.map((machine) => ({
    kind: machine.kind,
    energy_kWh: kilowattHours(machine),
    cutInWind_m_per_s: Number.isFinite(machine.chain.cutInWind) ? machine.chain.cutInWind : null,
    mostUseful_W: mostUseful(machine),
    greatestPart_mm: machine.greatestPart_mm,
    fitsPrinter: machine.fitsPrinter,
    blocking: machine.blocking,
    design: machine.design,
  })),
  without,
  trials,
})
