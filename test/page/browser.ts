/** Finds an installed browser, serves the built page, and opens it for a check. */
import { existsSync, readFileSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import { delimiter, extname, join, normalize } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { build } from 'vite'

export const root = fileURLToPath(new URL('../..', import.meta.url))

/** Names on the path, by preference. */
const names = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
  'msedge',
  'brave-browser',
  'brave',
] as const

/** Where installers put them when the path does not know them. */
function usualPlaces(): string[] {
  const { env, platform } = process
  if (platform === 'darwin')
    return [
      '/Applications/Chromium.app/Contents/MacOS/Chromium',
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
      '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
      '/Applications/Brave Browser.app/Contents/MacOS/Brave Browser',
    ]
  if (platform === 'win32')
    return [env['PROGRAMFILES'], env['PROGRAMFILES(X86)'], env['LOCALAPPDATA']]
      .filter((folder) => folder !== undefined)
      .flatMap((folder) => [
        join(folder, 'Chromium', 'Application', 'chrome.exe'),
        join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe'),
        join(folder, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
        join(folder, 'BraveSoftware', 'Brave-Browser', 'Application', 'brave.exe'),
      ])
  return ['/snap/bin/chromium', '/opt/google/chrome/chrome', '/usr/lib/chromium/chromium']
}

export const missingBrowser =
  'No browser of the Chromium family was found: install one (on Debian `apt install chromium`) or set GUSTLOOM_BROWSER to its path.'

/** Path of the browser to drive. */
export function browserPath(env: Readonly<Record<string, string | undefined>> = process.env): string {
  const wished = env['GUSTLOOM_BROWSER']
  if (wished) {
    if (existsSync(wished)) return wished
    throw new Error(`GUSTLOOM_BROWSER must be the path of a browser; received ${wished}, which is not there.`)
  }
  const ending = process.platform === 'win32' ? '.exe' : ''
  const folders = (env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '')
  const onPath = names.flatMap((name) => folders.map((folder) => join(folder, name + ending)))
  const found = [...onPath, ...usualPlaces()].find((path) => existsSync(path))
  if (found === undefined) throw new Error(missingBrowser)
  return found
}

const isRoot = () => process.platform !== 'win32' && process.getuid?.() === 0

export const launchBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: browserPath(),
    headless: true,
    timeout: 120_000,
    args: [
      ...(isRoot() ? ['--no-sandbox'] : []),
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  })

const kinds: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
}

export interface Served {
  readonly address: string
  /** Where the built files lie. */
  readonly folder: string
  readonly stop: () => Promise<void>
}

/**
 * Builds the page and serves it as any plain server of files would. Checks run side by side, so each builds into a
 * folder of its own, named by `purpose`.
 */
export async function servePage(purpose: string): Promise<Served> {
  const folder = join(root, 'dist', 'checked', purpose)
  await build({
    root: join(root, 'web'),
    configFile: join(root, 'vite.config.ts'),
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: true },
  })
  const server: Server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname))
    const file = join(folder, path.endsWith('/') || path.endsWith('\\') ? `${path}index.html` : path)
    if (!file.startsWith(folder) || !existsSync(file)) {
      response.writeHead(404).end()
      return
    }
    response.writeHead(200, { 'content-type': kinds[extname(file)] ?? 'application/octet-stream' })
    response.end(readFileSync(file))
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const bound = server.address()
  if (bound === null || typeof bound === 'string') throw new Error('the server has no port')
  return {
    address: `http://127.0.0.1:${bound.port}/`,
    folder,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}

export interface OpenPage {
  readonly page: Page
  /** What the browser complained of, and addresses asked for outside. */
  readonly complaints: string[]
  readonly strangers: string[]
  readonly close: () => Promise<void>
}

/** Generous: the machine may be busy with other things. */
export const patience = 120_000

export async function openPage(
  browser: Browser,
  address: string,
  options: BrowserContextOptions = {},
): Promise<OpenPage> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options })
  const page = await context.newPage()
  page.setDefaultTimeout(patience)
  const complaints: string[] = []
  const strangers: string[] = []
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  page.on('request', (request) => {
    const url = request.url()
    if (!url.startsWith(address) && !/^(data|blob):/.test(url)) strangers.push(url)
  })
  await page.goto(address)
  return { page, complaints, strangers, close: () => context.close() }
}

/** Waits until the numbers on the page are those of the design as it stands. */
export async function computed(page: Page): Promise<void> {
  await page.locator('.status.done').waitFor({ timeout: patience })
  await page
    .locator('.results:not(.stale) .chart-waveform svg')
    .or(page.getByText('there is no period to draw'))
    .first()
    .waitFor({ timeout: patience })
}

export const picturePath = (name: string): string => join(root, 'artefacts', 'page', `${name}.png`)
