/** Draws the icons of the installed page from its mark. */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { launchBrowser } from '../test/page/browser.ts'

const web = fileURLToPath(new URL('../web/', import.meta.url))
const mark = readFileSync(`${web}mark.svg`, 'utf8')

/** Systems cut such an icon to a shape of their own: the ground fills it, the sign keeps to the circle that is safe. */
const maskable = mark
  .replace('rx="7"', '')
  .replace('<g ', '<g transform="translate(16 16) scale(0.82) translate(-16 -16)" ')

const icons = [
  ['icon-192', mark, 192],
  ['icon-512', mark, 512],
  ['icon-maskable-512', maskable, 512],
] as const

const browser = await launchBrowser()
for (const [name, svg, size] of icons) {
  const page = await browser.newPage({ viewport: { width: size, height: size } })
  const sized = svg.replace('<svg ', `<svg width="${size}" height="${size}" style="display:block" `)
  await page.setContent(`<body style="margin:0">${sized}</body>`)
  await page.screenshot({ path: `${web}public/${name}.png`, omitBackground: true })
  await page.close()
}
await browser.close()
