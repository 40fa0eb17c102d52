/** The machine wind by wind on the sheet, from 3 to 12 m/s. */
import type { Chain } from '../../analysis/compute.ts'
import type { WindState } from '../../analysis/power-curve.ts'
import { formatNumber, formatSi } from '../../units/format.ts'
import { fromSi, unit } from '../../units/unit.ts'
import { said } from '../telling.ts'
import { type Block, heading, headingHeight_mm, rowTable, rowTableHeight } from './sheet-markup.ts'

const firstWind = 3
const lastWind = 12

/** A letter stands in the table, the word is told once. */
const stateLetters: Readonly<Record<WindState, readonly [letter: string, words: string]>> = {
  'at rest': ['r', 'at rest'],
  turning: ['t', 'no current'],
  charging: ['c', 'current flows'],
  stalled: ['s', 'stalled'],
  held: ['h', 'limiter holds'],
}

/** Whole winds of the table that the design's site meets. */
export const sheetRows = ({ rows }: Pick<Chain, 'rows'>) =>
  rows.filter(({ wind }) => Number.isInteger(wind) && wind >= firstWind && wind <= lastWind)

export function powerBlock(chain: Chain): Block {
  const rows = sheetRows(chain)
  const line = (head: string, cell: (row: (typeof rows)[number]) => string) => [
    said(head),
    ...rows.map((row) => said(cell(row))),
  ]
  const lines = [
    line('wind, m/s', ({ wind }) => String(wind)),
    line('state', ({ state }) => stateLetters[state][0]),
    line('shaft, rpm', ({ speed }) => (speed > 0 ? formatNumber(fromSi(speed, unit('rpm'))) : '0')),
    line('useful, W', ({ watts }) => formatNumber(watts.useful, watts.useful < 1 ? 2 : 3)),
    line('load, A', ({ loadCurrent }) => formatNumber(loadCurrent, loadCurrent < 1 ? 2 : 3)),
    line('copper, °C', ({ copperTemperature, overheated }) =>
      overheated ? 'burns' : formatSi(copperTemperature, 'degC', 2).replace(' °C', ''),
    ),
  ]
  const legend = [...new Set(rows.map(({ state }) => stateLetters[state].join(' ')))].map(said).join(', ')
  return {
    markup: `${heading('Wind by wind', 'h2', legend)}${rowTable(lines, 'winds')}`,
    height: headingHeight_mm + rowTableHeight(lines.length),
  }
}
