/** Words that stand for a unit, or for a sign that every language keeps. */
import { spokenSymbols } from '../../src/units/spoken-unit.ts'
import { units } from '../../src/units/unit.ts'

const unitWords: ReadonlySet<string> = new Set([
  ...[...units.values()].flatMap(({ symbol }) => symbol.trim().split(/[\s/·]+/)),
  ...spokenSymbols.flatMap((symbol) => symbol.split(/[\s/·]+/)),
  ...[
    'kJ',
    'kW',
    'min',
    'mT',
    'kA',
    'kHz',
    'kN',
    'nH',
    'µH',
    'μH',
    'mW',
    'mV',
    'mA',
    'µm',
    'μm',
    'GPa',
    'Pa',
  ],
  ...[
    'AWG',
    'PLA',
    'PETG',
    'ABS',
    'ASA',
    'PMMA',
    'NdFeB',
    'LiFePO4',
    'pH',
    'kV',
    'VA',
    'cm',
    'km',
    'cm²',
    'cm³',
  ],
])

export const isUnit = (word: string): boolean =>
  word.split(/[/·]/).every((part) => part === '' || unitWords.has(part))
