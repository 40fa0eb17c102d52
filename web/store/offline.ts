/** Keeps the page itself on this machine, and tells when a newer one is ready. */
import { effect, signal } from '@preact/signals'
import { saved } from './autosave.ts'

/** A newer page has been fetched whole and waits; nothing changes under the hands until it is asked for. */
export const newerReady = signal(false)

let waiting: ServiceWorker | undefined

function watch(fetching: ServiceWorker): void {
  const look = () => {
    // the very first one replaces nothing
    if (fetching.state !== 'installed' || !navigator.serviceWorker.controller) return
    waiting = fetching
    newerReady.value = true
  }
  fetching.addEventListener('statechange', look)
  look()
}

/** The newer page takes over here and now, once the last change is kept. */
export async function takeNewer(): Promise<void> {
  await saved()
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true })
  waiting?.postMessage('take over')
}

/** Another look for a newer page while it stays open [ms]. */
const lookEvery = 6 * 3_600_000

async function register(script: string): Promise<void> {
  const registration = await navigator.serviceWorker.register(script)
  if (registration.waiting) watch(registration.waiting)
  registration.addEventListener('updatefound', () => {
    if (registration.installing) watch(registration.installing)
  })
  setInterval(() => void registration.update().catch(() => {}), lookEvery)
}

/** What the first numbers are followed by goes before as well; the rest of the page may take its time [ms]. */
const pause = 1500

/** Waits until the page has had nothing to do for a while. */
const idle = () =>
  new Promise<void>((resolve) =>
    setTimeout(
      () => ('requestIdleCallback' in globalThis ? requestIdleCallback(() => resolve()) : resolve()),
      pause,
    ),
  )

/** Begins once `ready` says so: the first numbers go before. A page that is only being worked on names no script for it. */
export function keepOffline(ready: () => boolean): void {
  const script = document.querySelector<HTMLMetaElement>('meta[name=service-worker]')?.content
  if (script === undefined || !('serviceWorker' in navigator)) return
  const stop = effect(() => {
    if (!ready()) return
    queueMicrotask(() => stop())
    // a browser that declines, in a private window for one, leaves a page that works with the network
    idle()
      .then(() => register(script))
      .catch(() => {})
  })
}
