/** Draws the shared pictures of every example, wide and narrow, light and dark, to be looked at: `npx tsx scripts/gallery.ts [picture …]`. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { bladeFigure } from '../src/analysis/blade-figure.ts'
import { circuitPlan } from '../src/analysis/circuit-plan.ts'
import { coilPhasors } from '../src/analysis/coil-phasor.ts'
import { energyByWind } from '../src/analysis/energy-by-wind.ts'
import { gapMap } from '../src/analysis/gap-map.ts'
import { loadPoint } from '../src/analysis/load-point.ts'
import { machineFace } from '../src/analysis/machine-face.ts'
import { machineSection } from '../src/analysis/machine-section.ts'
import { temperatureByWind } from '../src/analysis/temperature-by-wind.ts'
import { voltageAlongWire } from '../src/analysis/voltage-along-wire.ts'
import { voltageHarmonics } from '../src/analysis/voltage-harmonics.ts'
import { shaftPower } from '../src/analysis/watts.ts'
import { windingPlan } from '../src/analysis/winding-plan.ts'
import { wireAngleCurve } from '../src/analysis/wire-angle.ts'
import { inPhasePerMetre } from '../src/analysis/wire-reading.ts'
import {
  type Chain,
  computeDesign,
  finished,
  matchMap,
  spreadStudy,
  warmUp,
  windingFactors,
} from '../src/index.ts'
import { bladeChart } from '../src/output/chart/blade.ts'
import { causeShareChart } from '../src/output/chart/cause-share.ts'
import { circuitChart } from '../src/output/chart/circuit.ts'
import { energyByWindChart } from '../src/output/chart/energy-by-wind.ts'
import { gapFieldChart } from '../src/output/chart/gap-field.ts'
import { gapMapChart } from '../src/output/chart/gap-map.ts'
import { harmonicChart } from '../src/output/chart/harmonic.ts'
import { type IntervalRow, intervalChart } from '../src/output/chart/interval.ts'
import { machineFaceChart } from '../src/output/chart/machine-face.ts'
import { machineSectionChart } from '../src/output/chart/machine-section.ts'
import { matchChart } from '../src/output/chart/match.ts'
import { phasorChart } from '../src/output/chart/phasor.ts'
import { powerCurveChart } from '../src/output/chart/power-curve.ts'
import { starOfSlotsChart } from '../src/output/chart/star-of-slots.ts'
import { temperatureChart } from '../src/output/chart/temperature.ts'
import { waveformChart } from '../src/output/chart/waveform.ts'
import { windingDiagram } from '../src/output/chart/winding-diagram.ts'
import { wireAngleChart } from '../src/output/chart/wire-angle.ts'
import { wireProfileChart } from '../src/output/chart/wire-profile.ts'
import { wireVoltageChart } from '../src/output/chart/wire-voltage.ts'
import { yearLedgerChart } from '../src/output/chart/year-ledger.ts'
import { wirePartNames } from '../src/output/wire-part-name.ts'
import { ledgerRows } from '../src/output/year-ledger-row.ts'
import { designOf, exampleDocument, exampleNames } from '../test/example.ts'
import { launchBrowser } from '../test/page/browser.ts'

type Pictures = Readonly<Record<string, (width: number) => string>>

/** The pictures of one chain, each at a width. */
function picturesOf(chain: Chain): Pictures {
  const harmonics = voltageHarmonics(chain)
  const phasors = coilPhasors(chain)
  const plan = windingPlan(chain)
  const figure = bladeFigure(chain)
  const temperatures = temperatureByWind(chain)
  const energy = energyByWind(chain)
  const circuit = circuitPlan(chain)
  const section = machineSection(chain)
  const face = machineFace(chain)
  const map = finished(gapMap(chain))
  const row = Math.max(
    0,
    chain.rows.findIndex(({ wind }) => wind === 6),
  )
  const { speed, copperTemperature } = chain.rows[row]!
  const waves =
    speed > 0
      ? loadPoint(chain.machine, chain.voltage, { speed, copperTemperature, samples: 180 }).waveforms
      : undefined
  const warming = warmUp(chain, row)
  const { curve } = finished(spreadStudy(chain, { samples: 16, curve: true }))
  const blades = finished(matchMap(chain))
  const along = voltageAlongWire(chain)
  const angle = wireAngleCurve(chain.machine, chain.field, {
    distance: chain.layout.shapes[0]!.distance,
    base: chain.voltage.base,
  })
  const windingFactor = phasors.phases.map((_, phase) => windingFactors(chain, phase).rows[0]?.textbook)
  return {
    harmonics: (width) => harmonicChart({ width, height: 300, harmonics }),
    phasors: (width) => phasorChart({ width, phasors, windingFactors: windingFactor }),
    diagram: (width) => windingDiagram({ width, plan }),
    section: (width) => machineSectionChart({ width, section }),
    face: (width) => machineFaceChart({ width, face }),
    map: (width) => gapMapChart({ width, map }),
    circuit: (width) => circuitChart({ width, plan: circuit }),
    blade: (width) => bladeChart({ width, figure, chosenWind: 6 }),
    temperature: (width) =>
      temperatureChart({
        width,
        height: 300,
        along: { quantity: 'wind', values: temperatures.wind },
        lines: temperatures.lines,
        limits: temperatures.limits,
      }),
    energy: (width) => energyByWindChart({ width, height: 320, energy }),
    interval: (width) => intervalChart({ width, rows: intervals }),
    cause: (width) => causeShareChart({ width, row: intervals[0]! }),
    star: (width) => starOfSlotsChart({ width, phasors }),
    power: (width) =>
      powerCurveChart({
        width,
        height: Math.round(Math.min(420, Math.max(300, width * 0.5))),
        wind: chain.rows.map(({ wind }) => wind),
        shaft: chain.rows.map(({ watts }) => shaftPower(watts)),
        useful: chain.rows.map(({ watts }) => watts.useful),
        usefulName: 'into the battery',
        chosenWind: 6,
        ...(curve === undefined ? {} : { spread: curve }),
      }),
    waveform: (width) =>
      waves === undefined
        ? ''
        : waveformChart({
            width,
            ...waves,
            ownLeads: ['single', 'separate'].includes(chain.machine.stator.connection),
            dcVoltage: waves.loadVoltage,
            frequency: (chain.voltage.base * speed) / (2 * Math.PI),
          }),
    'warm-up': (width) =>
      warming === undefined
        ? ''
        : temperatureChart({
            width,
            height: 300,
            along: { quantity: 'time', values: warming.time },
            lines: warming.lines,
            limits: warming.limits,
          }),
    gap: (width) => gapFieldChart({ width, height: 270, angle: chain.gap.angle, normal: chain.gap.normal }),
    match: (width) =>
      matchChart({
        width,
        height: Math.round(Math.min(460, Math.max(320, width * 0.52))),
        map: blades,
        chosen: Math.floor(blades.winds.length / 2),
      }),
    year: (width) =>
      yearLedgerChart({
        width,
        whole: chain.year.ledger.available,
        bars: ledgerRows(chain.year.ledger).map(({ label, energy }) => ({
          label,
          energy,
          className: 'ink-store',
        })),
      }),
    angle: (width) =>
      wireAngleChart({
        width,
        height: 320,
        ...angle,
        parts: along.phases[0]!.parts.map((part) => ({ ...part, label: wirePartNames[part.part] })),
      }),
    parts: (width) =>
      wireVoltageChart({
        width,
        parts: along.phases[0]!.parts.map((part) => ({ ...part, label: wirePartNames[part.part] })),
      }),
    profile: (width) => {
      const coil = along.coils[0]!
      const shape = along.shapes[coil.shape]!
      const inStep = inPhasePerMetre(along, coil).map((value) => value * speed)
      return wireProfileChart({
        width,
        height: 300,
        ...shape,
        inStep,
        moment: inStep.map((each) => each / 2),
      })
    },
  }
}

/** Invented intervals: the picture of them is looked at here, not the numbers. */
const intervals: readonly IntervalRow[] = [
  {
    label: 'Energy in a year',
    text: '41 kWh, 22 to 63',
    value: 41,
    low: 22,
    high: 63,
    causes: [
      { label: 'mean wind', share: 0.71 },
      { label: 'shear exponent', share: 0.14 },
      { label: 'friction of the bearings', share: 0.08 },
    ],
  },
  {
    label: 'Speed at cut-in',
    text: '312 rpm, 296 to 330',
    value: 312,
    low: 296,
    high: 330,
    causes: [
      { label: 'remanence of the magnets', share: 0.62 },
      { label: 'air gap', share: 0.33 },
    ],
  },
  {
    label: 'Copper in a strong wind',
    text: '74 °C, 55 to 108',
    value: 74,
    low: 55,
    high: 108,
    causes: [
      { label: 'cooling of the winding', share: 0.9 },
      { label: 'mean wind', share: 0.06 },
    ],
  },
  { label: 'Volts of a phase', text: '12.1 V', value: 12.1, low: 12.1, high: 12.1, causes: [] },
]

/** Examples changed into windings that none of them has. */
const variants: Readonly<Record<string, () => unknown>> = {
  'two parallel groups, delta': () => {
    const document = exampleDocument('garden-vertical')
    document.stator.winding.parallelGroups = 2
    document.stator.connection = 'delta'
    return document
  },
  'many small coils, one reversed': () => {
    const document = exampleDocument('garden-vertical')
    document.rotor.poleCount = 28
    Object.assign(document.rotor, { pitchRadius_mm: 150 })
    Object.assign(document.rotor.magnet, { width_mm: 20 })
    Object.assign(document.stator.winding, { coilCount: 24, legWidth_mm: 9, reversedCoils: [9] })
    Object.assign(document.stator.winding.hole, { holeInnerWidth_mm: 8, holeOuterWidth_mm: 16 })
    return document
  },
  'wave in two layers, separate bridges': () => {
    const document = exampleDocument('hen-house-drum')
    const { winding } = document.stator
    Object.assign(winding, { layers: 2, layerPitch_mm: 2.3 })
    winding.phases = [
      { offset_deg: 0, distance_mm: 3.6 },
      { offset_deg: 20, distance_mm: 8.2, sense: 'reversed' },
    ]
    document.stator.connection = 'separate'
    document.blades = { kind: 'drag-rotor', diameter_m: 0.8, height_m: 1.2, bucketCount: 'two' }
    document.load = { kind: 'capacitor', capacitance_F: 50, ratedVoltage_V: 16, drawn_ohm: 20 }
    return document
  },
}

const folder = fileURLToPath(new URL('../.gallery/', import.meta.url))
/** The page's own letters, which decide what crowds, as a part of the sheet. */
const inlined = (css: string): string =>
  css.replace(/url\("(@[^"]+)"\)/g, (_, file: string) => {
    const bytes = readFileSync(new URL(`../node_modules/${file}`, import.meta.url))
    return `url("data:font/woff2;base64,${bytes.toString('base64')}")`
  })
const style = ['theme', 'page', 'chart', 'picture']
  .map((name) => inlined(readFileSync(new URL(`../web/style/${name}.css`, import.meta.url), 'utf8')))
  .join('\n')

/** Widths of a card on a desk and on a phone [px]. */
const widths = { desk: 900, half: 560, phone: 340 } as const
const columns = { desk: 1, half: 2, phone: 4 } as const
const themes = ['light', 'dark', 'sun'] as const

const sheet = (body: string, columns: number): string =>
  `<!doctype html><html lang="en"><meta charset="utf-8"><style>${style}
main{display:grid;grid-template-columns:repeat(${columns},max-content);gap:12px;padding:12px}</style><main>${body}</main></html>`

/** Identifiers are unique on a page of the house; here each picture stands many times. */
const renamed = (svg: string, suffix: string): string =>
  svg.replace(
    /(id="|url\(#|aria-labelledby=")([\w-]+)( [\w-]+)?/g,
    (_, lead, one, two) => `${lead}${one}-${suffix}${two === undefined ? '' : `${two}-${suffix}`}`,
  )

/** Words that leave their picture or lie on each other, told by the browser that draws them. */
function crowdedWords(): string[] {
  return [...document.querySelectorAll('figure')].flatMap((figure) => {
    const name = figure.querySelector('figcaption')?.textContent ?? ''
    const sheet = figure.querySelector('svg.picture')!.getBoundingClientRect()
    const words = [...figure.querySelectorAll('svg.picture text')]
      .map((text) => ({ text: text.textContent ?? '', box: text.getBoundingClientRect() }))
      .filter(({ text }) => text.trim() !== '')
    const outside = words
      .filter(
        ({ box }) =>
          box.left < sheet.left - 1 || box.right > sheet.right + 1 || box.bottom > sheet.bottom + 1,
      )
      .map(({ text }) => `${name}: “${text}” leaves the picture`)
    const upon = words.flatMap((one, k) =>
      words.slice(k + 1).flatMap((other) => {
        const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left)
        const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top)
        return across > 2 && down > 5 ? [`${name}: “${one.text}” lies on “${other.text}”`] : []
      }),
    )
    return [...outside, ...upon]
  })
}

mkdirSync(folder, { recursive: true })
const wanted = process.argv.slice(2)
const chains: [string, Chain][] = [
  ...exampleNames.map((name): [string, unknown] => [name, exampleDocument(name)]),
  ...Object.entries(variants).map(([name, make]): [string, unknown] => [name, make()]),
].map(([name, document]) => [name, computeDesign(designOf(document))])
const all = chains.map(([name, chain]) => ({ name, pictures: picturesOf(chain) }))
const browser = await launchBrowser()
for (const picture of Object.keys(all[0]!.pictures)) {
  if (wanted.length > 0 && !wanted.includes(picture)) continue
  for (const [place, width] of Object.entries(widths)) {
    const cards = all.map(({ name, pictures }, k) => {
      const svg = pictures[picture]?.(width) ?? ''
      return svg === ''
        ? ''
        : `<figure class="card"><figcaption>${name}</figcaption><div class="drawing">${renamed(svg, String(k))}</div></figure>`
    })
    const html = sheet(cards.join(''), columns[place as keyof typeof columns])
    writeFileSync(`${folder}${picture}-${place}.html`, html)
    const page = await browser.newPage({ viewport: { width: 1520, height: 900 } })
    await page.setContent(html)
    await page.evaluate(() => document.fonts.ready)
    for (const complaint of await page.evaluate(crowdedWords))
      console.log(`${picture}, ${place}: ${complaint}`)
    for (const theme of themes) {
      await page.evaluate((name) => {
        document.documentElement.dataset['theme'] = name
      }, theme)
      await page.screenshot({ path: `${folder}${picture}-${place}-${theme}.png`, fullPage: true })
    }
    await page.close()
  }
}
await browser.close()
