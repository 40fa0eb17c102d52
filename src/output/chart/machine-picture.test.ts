/** Checks of the pictures drawn of a whole design: sound markup whatever the design, and drawings that cannot differ from what was computed. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { designOf, exampleChain, exampleDocument, exampleNames } from '../../../test/example.ts'
import { markupFaults } from '../../../test/markup.ts'
import { variedDocument } from '../../../test/varied-document.ts'
import { bladeFigure } from '../../analysis/blade-figure.ts'
import { circuitPlan } from '../../analysis/circuit-plan.ts'
import { coilPhasors } from '../../analysis/coil-phasor.ts'
import { type Chain, computeDesign } from '../../analysis/compute.ts'
import { energyByWind } from '../../analysis/energy-by-wind.ts'
import { gapMap } from '../../analysis/gap-map.ts'
import { machineFace } from '../../analysis/machine-face.ts'
import { machineSection } from '../../analysis/machine-section.ts'
import { finished } from '../../analysis/step.ts'
import { temperatureByWind } from '../../analysis/temperature-by-wind.ts'
import { voltageHarmonics } from '../../analysis/voltage-harmonics.ts'
import { windingPlan } from '../../analysis/winding-plan.ts'
import { parseDesign } from '../../machine/parse.ts'
import { bladeChart, bladeCoefficientTable, bladeStationTable } from './blade.ts'
import { causeShareChart, causeShareTable } from './cause-share.ts'
import { type ChartTable, cellText, tableCsv } from './chart-table.ts'
import { circuitChart, circuitTable } from './circuit.ts'
import { energyByWindChart, energyByWindTable } from './energy-by-wind.ts'
import { gapMapChart, gapMapTable } from './gap-map.ts'
import { harmonicChart, harmonicTable } from './harmonic.ts'
import { type IntervalRow, intervalChart, intervalTable } from './interval.ts'
import { machineFaceChart, machineFaceTable } from './machine-face.ts'
import { machineSectionChart, machineSectionTable } from './machine-section.ts'
import { phasorChart, phasorTable } from './phasor.ts'
import { starOfSlotsChart, starOfSlotsTable } from './star-of-slots.ts'
import { temperatureChart, temperatureTable } from './temperature.ts'
import { windingDiagram, windingDiagramTable } from './winding-diagram.ts'
import { coilChains, windingNets } from './winding-net.ts'

interface Drawn {
  readonly svg: string
  readonly table: ChartTable
}

const intervals: readonly IntervalRow[] = [
  {
    label: 'energy <&>',
    text: '41 kWh (22 to 63)',
    value: 41,
    low: 22,
    high: 63,
    causes: [
      { label: 'mean wind, "guessed"', share: 0.7 },
      { label: 'shear', share: 0.2 },
    ],
  },
  { label: 'nothing moves it', text: '3 V', value: 3, low: 3, high: 3, causes: [] },
  { label: 'about nothing', text: '0 V', value: 0, low: -1, high: 1, causes: [{ label: 'shear', share: 1 }] },
]

const warming = { quantity: 'time', values: Float64Array.of(0, 60, 120, 600) } as const
const warmingLines = [
  { label: 'copper', values: Float64Array.of(290, 310, 325, 341) },
  { label: 'magnets', values: Float64Array.of(290, 290.5, 291, 295) },
]

/** Every picture of a chain at a width, with its table. */
function picturesOf(chain: Chain, width: number): Record<string, Drawn> {
  const harmonics = voltageHarmonics(chain)
  const phasors = coilPhasors(chain)
  const plan = windingPlan(chain)
  const section = machineSection(chain)
  const face = machineFace(chain)
  const map = finished(gapMap(chain, { columns: 16, rows: 6 }))
  const circuit = circuitPlan(chain)
  const figure = bladeFigure(chain)
  const { wind, lines, limits } = temperatureByWind(chain)
  const along = { quantity: 'wind', values: wind } as const
  const energy = energyByWind(chain)
  return {
    harmonics: { svg: harmonicChart({ width, height: 300, harmonics }), table: harmonicTable(harmonics) },
    phasors: { svg: phasorChart({ width, phasors, windingFactors: [0.9] }), table: phasorTable(phasors) },
    star: { svg: starOfSlotsChart({ width, phasors }), table: starOfSlotsTable(phasors) },
    diagram: { svg: windingDiagram({ width, plan }), table: windingDiagramTable(plan) },
    section: { svg: machineSectionChart({ width, section }), table: machineSectionTable(section) },
    face: { svg: machineFaceChart({ width, face }), table: machineFaceTable(face) },
    map: { svg: gapMapChart({ width, map }), table: gapMapTable(map) },
    circuit: { svg: circuitChart({ width, plan: circuit }), table: circuitTable(circuit) },
    blade: { svg: bladeChart({ width, figure, chosenWind: 6 }), table: bladeCoefficientTable(figure) },
    stations: { svg: bladeChart({ width, figure }), table: bladeStationTable(figure) },
    temperature: {
      svg: temperatureChart({ width, height: 300, along, lines, limits }),
      table: temperatureTable({ along, lines }),
    },
    warming: {
      svg: temperatureChart({ width, height: 240, along: warming, lines: warmingLines, limits }),
      table: temperatureTable({ along: warming, lines: warmingLines }),
    },
    energy: { svg: energyByWindChart({ width, height: 300, energy }), table: energyByWindTable(energy) },
    interval: { svg: intervalChart({ width, rows: intervals }), table: intervalTable(intervals) },
    causes: { svg: causeShareChart({ width, row: intervals[0]! }), table: causeShareTable(intervals[0]!) },
  }
}

const widths = [320, 640, 1200] as const

function faultsOf(chain: Chain, width: number): string[] {
  return Object.entries(picturesOf(chain, width)).flatMap(([name, { svg, table }]) => [
    ...markupFaults(svg).map((fault) => `${name}: ${fault}`),
    ...(/NaN|Infinity|undefined/.test(svg) ? [`${name}: a number is missing`] : []),
    ...(/style=|#[0-9a-f]{6}|fill="|(width|height|r)="-/.test(svg)
      ? [`${name}: colour or a size below zero`]
      : []),
    ...(/<title id="([a-z-]+)-title">[^<]+<\/title><desc id="\1-description">[^<]{20,}<\/desc>/.test(svg)
      ? []
      : [`${name}: no title or description`]),
    ...(table.rows.some((row) => row.length !== table.columns.length)
      ? [`${name}: rows and heads differ`]
      : []),
    ...(table.rows.flat().some((cell) => typeof cell === 'number' && !Number.isFinite(cell))
      ? [`${name}: a cell is no number`]
      : []),
  ])
}

describe('law: every picture of every example is sound', () => {
  for (const name of exampleNames)
    for (const width of widths)
      test(`${name}, ${width}`, () => expect(faultsOf(exampleChain(name), width)).toEqual([]))
})

describe('law: every picture of any design is sound', () => {
  test('varied documents', { timeout: 300_000 }, () =>
    fc.assert(
      fc.property(variedDocument(3), fc.constantFrom(...widths), ({ document }, width) => {
        const parsed = parseDesign(document)
        if (!parsed.ok) return
        expect(faultsOf(computeDesign(parsed.design), width)).toEqual([])
      }),
      { numRuns: 40 },
    ),
  )
})

describe('law: the field’s map stays light', () => {
  test('elements', () => {
    const svg = gapMapChart({ width: 1100, map: finished(gapMap(exampleChain('boathouse-two-disc'))) })
    expect(svg.match(/<(rect|path|circle|text|g)/g)!.length).toBeLessThan(1500)
  })
})

/** Documents whose windings differ in what a drawing could get wrong. */
const windings: Record<string, () => Chain> = {
  'reversed coils and a phase': () =>
    changed('boathouse-two-disc', { reversedCoils: [2, 4], reversedPhases: [3] }),
  'two groups in delta': () => changed('garden-vertical', { parallelGroups: 2 }, 'delta'),
  'three groups, separate': () => changed('boathouse-two-disc', { parallelGroups: 3 }, 'separate'),
  'waves on a drum': () => exampleChain('hen-house-drum'),
  'many faults': () => exampleChain('many-faults'),
}

function changed(name: string, winding: object, connection = 'star'): Chain {
  const document = exampleDocument(name)
  Object.assign(document.stator.winding, winding)
  document.stator.connection = connection
  return computeDesign(designOf(document))
}

describe('agrees: arrows of the drawn winding tell the phases of the computed volts', () => {
  for (const [name, make] of Object.entries(windings))
    for (const width of [320, 1200])
      test(`${name}, ${width}`, () => {
        const chain = make()
        const plan = windingPlan(chain)
        const svg = windingDiagram({ width, plan })
        const arrows = [
          ...svg.matchAll(
            /class="sense [^"]*" data-coil="(\d+)" data-azimuth="([-\d.]+)" data-up="(-?1)" d="M([\d.]+) ([\d.]+)l5 (-?10)h-10Z"/g,
          ),
        ]
        const p = plan.polePairs
        const drawn = plan.coils.map(({ number }) => {
          // a side at a border of a strip is drawn on both
          const own = new Map(
            arrows
              .filter(([, coil]) => Number(coil) === number)
              .map(([, , azimuth, up, , , tail]) => {
                expect(Math.sign(Number(tail)), 'the triangle points as it says').toBe(Number(up))
                return [azimuth!, Number(up)] as const
              }),
          )
          expect(own.size, `coil ${number}`).toBe(plan.coils[number - 1]!.sides.length)
          const part = (of: (angle: number) => number) =>
            [...own].reduce((sum, [azimuth, up]) => sum + up * of(p * Number(azimuth)), 0)
          return Math.atan2(part(Math.sin), part(Math.cos))
        })
        drawn.forEach((angle, k) => {
          const off = angle - drawn[0]! - chain.voltage.coils[k]!.phaseAngle
          expect(Math.cos(off)).toBeGreaterThan(1 - 1e-4)
        })
      })
})

describe('law: every end of every coil is joined once', () => {
  for (const [name, make] of Object.entries(windings))
    test(name, () => {
      const chain = make()
      const plan = windingPlan(chain)
      const nets = windingNets(plan)
      const ends = nets.flatMap((net) => net.ends.map(({ coil, end }) => `${coil} ${end}`)).sort()
      const all = plan.coils.flatMap(({ number }) => [`${number} finish`, `${number} start`]).sort()
      expect(ends).toEqual(all)
      const leads = nets.filter(({ lead }) => lead !== undefined)
      const joined = plan.connection === 'star' || plan.connection === 'delta'
      expect(leads).toHaveLength(joined ? plan.phaseCount : 2 * plan.phaseCount)
    })
  test('the branches are those that the volts were joined by', () => {
    const chain = windings['three groups, separate']!()
    const chains = coilChains(windingPlan(chain))
    for (const { phase, group, coils } of chains)
      expect(coils.map(({ number }) => number)).toEqual(
        chain.layout.coils
          .filter((coil) => coil.phase === phase && coil.group === group)
          .map(({ number }) => number),
      )
    expect(chains).toHaveLength(9)
  })
})

describe('law: phasors grow coil by coil', () => {
  test('as many coils of each phase as asked for, the resultant with the last', () => {
    const phasors = coilPhasors(exampleChain('boathouse-two-disc'))
    for (const upTo of [0, 1, 2, 3]) {
      const svg = phasorChart({ width: 400, phasors, upTo })
      expect(svg.match(/class="coil"/g) ?? []).toHaveLength(3 * upTo)
      expect(svg.match(/class="resultant"/g) ?? []).toHaveLength(upTo === 3 ? 3 : 0)
    }
  })
})

describe('law: a table as comma-separated values', () => {
  const table: ChartTable = {
    caption: 'x',
    columns: [{ head: 'part' }, { head: 'power', unit: 'W' }],
    rows: [
      ['a, "b"', 1 / 3],
      ['two\nlines', -0.25],
      [undefined, undefined],
    ],
  }
  test('quotes, ends of line, numbers', () =>
    expect(tableCsv(table)).toBe('part,"power, W"\r\n"a, ""b""",0.3333333\r\n"two\nlines",-0.25\r\n,\r\n'))
  test('cells as people read them', () =>
    expect([cellText(-1 / 3), cellText('x'), cellText(undefined)]).toEqual(['−0.3333', 'x', '—']))
})

describe('law: the circuit names what the design does not', () => {
  test('no fuse, no switch', () => {
    const { load, ...rest } = circuitPlan(exampleChain('garden-vertical'))
    const svg = circuitChart({ width: 360, plan: { ...rest, load } })
    expect(svg).toContain('no fuse is named')
    expect(svg).toContain('licensed person')
  })
  test('a cable stands on its side of the bridge', () => {
    const parts = (name: string) =>
      circuitTable(circuitPlan(exampleChain(name))).rows.map(([part]) => String(part).split(',')[0])
    const before = parts('boathouse-two-disc')
    const behind = parts('hen-house-drum')
    expect(before.indexOf('Cable')).toBeLessThan(before.indexOf('Bridge'))
    expect(behind.indexOf('Cable')).toBeGreaterThan(behind.indexOf('Bridge'))
  })
})
