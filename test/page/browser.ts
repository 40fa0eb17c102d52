/** Finds an installed browser, serves the built page, and opens it for a check. */
import { cpSync, existsSync, readFileSync, rmSync } from 'node:fs'
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

/** Nothing that asks the network, and no graphics card. */
export const launchArguments = (): string[] => [
  ...(isRoot() ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

export const launchBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: browserPath(),
    headless: true,
    timeout: 120_000,
    args: launchArguments(),
  })

const kinds: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
}

export interface Served {
  readonly address: string
  /** Where the built files lie. */
  readonly folder: string
  /** Files that have been asked for, in the order of asking. */
  readonly asked: readonly string[]
  readonly stop: () => Promise<void>
}

/** Variable of the process that says where a page built for all checks lies. */
export const builtPlace = 'GUSTLOOM_BUILT_PAGE'

export async function buildPage(folder: string): Promise<void> {
  await build({
    root: join(root, 'web'),
    configFile: join(root, 'vite.config.ts'),
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: true },
  })
}

/**
 * Serves the page as any plain server of files would, from a folder of its own named by `purpose`, since a check may
 * change what is served. The page is a copy of the one built for all, or is built where there is none.
 */
export async function servePage(purpose: string): Promise<Served> {
  const folder = join(root, 'dist', 'checked', purpose)
  const built = process.env[builtPlace]
  if (built !== undefined && existsSync(join(built, 'index.html'))) {
    rmSync(folder, { recursive: true, force: true })
    cpSync(built, folder, { recursive: true })
  } else await buildPage(folder)
  const asked: string[] = []
  const server: Server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname))
    const file = join(folder, path.endsWith('/') || path.endsWith('\\') ? `${path}index.html` : path)
    if (!file.startsWith(folder) || !existsSync(file)) {
      response.writeHead(404).end()
      return
    }
    asked.push(file.slice(folder.length + 1))
    response.writeHead(200, { 'content-type': kinds[extname(file)] ?? 'application/octet-stream' })
    response.end(readFileSync(file))
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const bound = server.address()
  if (bound === null || typeof bound === 'string') throw new Error('the server has no port')
  return {
    address: `http://127.0.0.1:${bound.port}/`,
    folder,
    asked,
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
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    // what turns by itself would take time from what is checked
    reducedMotion: 'reduce',
    ...options,
  })
  const page = await context.newPage()
  page.setDefaultTimeout(patience)
  const complaints: string[] = []
  const strangers: string[] = []
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  const [home] = address.split('#')
  page.on('request', (request) => {
    const url = request.url()
    if (!url.startsWith(home!) && !/^(data|blob):/.test(url)) strangers.push(url)
  })
  // a first visit asks what somebody owns; checks begin with the machine that is there
  await page.goto(address.includes('#') ? address : `${address}#/whole`)
  return { page, complaints, strangers, close: () => context.close() }
}

/** Waits until the numbers on the page are those of the design as it stands. */
export async function computed(page: Page): Promise<void> {
  await page.locator('.status.done').waitFor({ timeout: patience })
  await page.locator('main.results:not(.stale, [data-awaited]) section.strip').waitFor({ timeout: patience })
}

/** Rooms of the page as its addresses name them: the stations of the river, then the benches. */
export const roomKeys = [
  ...['wind', 'blades', 'shaft', 'magnets', 'winding', 'bridge', 'cable', 'store'],
  ...['whole', 'begin', 'turn', 'storm', 'faults', 'compare', 'sure', 'sheet', 'shelf', 'words'],
] as const

/** Opens a room by its address, as a link would. */
export async function enterRoom(page: Page, key: string): Promise<void> {
  await page.evaluate((name) => {
    location.hash = `#/${name}`
  }, key)
  await page.locator(`.room-${key} .room-body:not([aria-busy])`).waitFor({ timeout: patience })
}

/** Opens what is folded: everything, or what is named. */
export const openFolds = (page: Page, which = '#page details'): Promise<void> =>
  page.locator(which).evaluateAll((all) => {
    // the settings lie over what is beside them
    for (const each of all) if (!each.matches('.settings')) (each as HTMLDetailsElement).open = true
  })

/** Waits until nothing more comes onto the page: late scripts, pictures that are drawn when their numbers are there. */
export async function settled(page: Page): Promise<void> {
  let before = ''
  for (let quiet = 0; quiet < 2; ) {
    const now = await page.evaluate(() =>
      document.documentElement.hasAttribute('data-drawing')
        ? ''
        : `${document.body.innerHTML.length} ${document.body.scrollHeight}`,
    )
    quiet = now !== '' && now === before ? quiet + 1 : 0
    before = now
    await page.waitForTimeout(100)
  }
}

export const picturePath = (name: string): string => join(root, 'artefacts', 'page', `${name}.png`)
