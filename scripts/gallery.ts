/** Draws the shared pictures of every example, wide and narrow, light and dark, to be looked at: `npx tsx scripts/gallery.ts [inches] [picture …]`. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { type Chain, computeDesign } from '../src/index.ts'
import { measuredBy } from '../src/output/measuring.ts'
import { metricMeasure, withSystem } from '../src/units/measure-choice.ts'
import { designOf, exampleDocument, exampleNames } from '../test/example.ts'
import { launchBrowser } from '../test/page/browser.ts'
import { picturesOf } from './gallery-picture.ts'
import { samplePictures } from './gallery-sample.ts'

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
const style = ['theme', 'page', 'chart', 'picture', 'river']
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
const asked = process.argv.slice(2)
const inches = asked.includes('inches')
const measure = inches ? withSystem(metricMeasure, 'inch and pound') : metricMeasure
const wanted = asked.filter((word) => word !== 'inches')
const chains: [string, Chain][] = [
  ...exampleNames.map((name): [string, unknown] => [name, exampleDocument(name)]),
  ...Object.entries(variants).map(([name, make]): [string, unknown] => [name, make()]),
].map(([name, document]) => [name, computeDesign(designOf(document))])
const all = [
  ...chains.map(([name, chain]) => ({ name, pictures: picturesOf(chain) })),
  { name: 'invented', pictures: samplePictures },
]
const browser = await launchBrowser()
for (const picture of [...Object.keys(all[0]!.pictures), ...Object.keys(samplePictures)]) {
  if (wanted.length > 0 && !wanted.includes(picture)) continue
  for (const [place, width] of Object.entries(widths)) {
    const cards = all.map(({ name, pictures }, k) => {
      const svg = measuredBy(measure, () => pictures[picture]?.(width) ?? '')
      return svg === ''
        ? ''
        : `<figure class="card"><figcaption>${name}</figcaption><div class="drawing">${renamed(svg, String(k))}</div></figure>`
    })
    const suffix = inches ? '-inches' : ''
    const html = sheet(cards.join(''), columns[place as keyof typeof columns])
    writeFileSync(`${folder}${picture}-${place}${suffix}.html`, html)
    const page = await browser.newPage({ viewport: { width: 1520, height: 900 } })
    await page.setContent(html)
    await page.evaluate(() => document.fonts.ready)
    for (const complaint of await page.evaluate(crowdedWords))
      console.log(`${picture}, ${place}: ${complaint}`)
    for (const theme of themes) {
      await page.evaluate((name) => {
        document.documentElement.dataset['theme'] = name
      }, theme)
      await page.screenshot({ path: `${folder}${picture}-${place}-${theme}${suffix}.png`, fullPage: true })
    }
    await page.close()
  }
}
await browser.close()
