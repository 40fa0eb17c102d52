/** Draws the shared pictures of every example, wide and narrow, light and dark, to be looked at: `npx tsx scripts/gallery.ts [picture …]`. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { bladeFigure } from '../src/analysis/blade-figure.ts'
import { circuitPlan } from '../src/analysis/circuit-plan.ts'
import { coilPhasors } from '../src/analysis/coil-phasor.ts'
import { energyByWind } from '../src/analysis/energy-by-wind.ts'
import { gapMap } from '../src/analysis/gap-map.ts'
import { machineFace } from '../src/analysis/machine-face.ts'
import { machineSection } from '../src/analysis/machine-section.ts'
import { temperatureByWind } from '../src/analysis/temperature-by-wind.ts'
import { voltageHarmonics } from '../src/analysis/voltage-harmonics.ts'
import { windingPlan } from '../src/analysis/winding-plan.ts'
import { type Chain, computeDesign, finished, windingFactors } from '../src/index.ts'
import { bladeChart } from '../src/output/chart/blade.ts'
import { causeShareChart } from '../src/output/chart/cause-share.ts'
import { circuitChart } from '../src/output/chart/circuit.ts'
import { energyByWindChart } from '../src/output/chart/energy-by-wind.ts'
import { gapMapChart } from '../src/output/chart/gap-map.ts'
import { harmonicChart } from '../src/output/chart/harmonic.ts'
import { type IntervalRow, intervalChart } from '../src/output/chart/interval.ts'
import { machineFaceChart } from '../src/output/chart/machine-face.ts'
import { machineSectionChart } from '../src/output/chart/machine-section.ts'
import { phasorChart } from '../src/output/chart/phasor.ts'
import { starOfSlotsChart } from '../src/output/chart/star-of-slots.ts'
import { temperatureChart } from '../src/output/chart/temperature.ts'
import { windingDiagram } from '../src/output/chart/winding-diagram.ts'
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
const style = ['page', 'chart', 'picture']
  .map((name) => readFileSync(new URL(`../web/style/${name}.css`, import.meta.url), 'utf8'))
  .join('\n')

/** Widths of a card on a desk and on a phone [px]. */
const widths = { desk: 1060, phone: 320 } as const

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
    const html = sheet(cards.join(''), place === 'phone' ? 4 : 1)
    writeFileSync(`${folder}${picture}-${place}.html`, html)
    const page = await browser.newPage({ viewport: { width: 1520, height: 900 } })
    await page.setContent(html)
    for (const complaint of await page.evaluate(crowdedWords))
      console.log(`${picture}, ${place}: ${complaint}`)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      await page.screenshot({ path: `${folder}${picture}-${place}-${colorScheme}.png`, fullPage: true })
    }
    await page.close()
  }
}
await browser.close()
