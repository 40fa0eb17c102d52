/** Answers for the page when the network does not: every built file, kept whole by version, swapped only when asked. */

/** Filled in by the build: what the page consists of, and the sum of its contents. */
declare const built: { readonly version: string; readonly files: readonly string[] }

const scope = self as unknown as ServiceWorkerGlobalScope
const prefix = 'gustloom-'
const own = prefix + built.version

const addressOf = (file: string): string => new URL(file, scope.registration.scope).href

const kept = new Set(built.files.map(addressOf))

scope.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(own)
      // past the browser's own memory of files, or an old index page might be taken for the new one
      .then((cache) => cache.addAll([...kept].map((address) => new Request(address, { cache: 'no-cache' })))),
  )
})

/** The version before stays: another window may still show it and ask for its parts. */
async function clearOlder(): Promise<void> {
  const names = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== own)
  await Promise.all(names.slice(0, -1).map((name) => caches.delete(name)))
}

scope.addEventListener('activate', (event) => {
  event.waitUntil(clearOlder().then(() => scope.clients.claim()))
})

scope.addEventListener('message', ({ data }) => {
  if (data === 'take over') void scope.skipWaiting()
})

async function answer(request: Request): Promise<Response> {
  const asked = new URL(request.url)
  asked.search = ''
  asked.hash = ''
  const cache = await caches.open(own)
  const address = request.mode === 'navigate' ? addressOf('./') : asked.href
  return (await cache.match(address)) ?? (await caches.match(address)) ?? fetch(request)
}

scope.addEventListener('fetch', (event) => {
  const { request } = event
  if (request.method !== 'GET' || !request.url.startsWith(scope.registration.scope)) return
  // other pages may live beside this one
  const { pathname } = new URL(request.url)
  const home = new URL(scope.registration.scope).pathname
  if (request.mode === 'navigate' && pathname !== home && pathname !== `${home}index.html`) return
  event.respondWith(answer(request))
})
