/** Sharing by a link: the present design into an address, and the design of an address onto the page. */
import { document as design, notice, replace } from './design.ts'
import { sharedDocument, shareFragment } from './share-link.ts'

/** Copies an address that holds the whole design; where copying is not allowed, the page's own address takes it. */
export async function copyLink(): Promise<void> {
  const fragment = await shareFragment(design.value)
  const address = location.href.replace(/#.*$/, '') + fragment
  const size = `${address.length} letters long`
  try {
    await navigator.clipboard.writeText(address)
    notice.value = `A link with the whole design is copied, ${size}. Whoever opens it has a copy; nothing is sent anywhere else.`
  } catch {
    history.replaceState(null, '', fragment)
    notice.value = `The address of this page now holds the whole design, ${size}. Copy it from the address line.`
  }
}

/** Opens the design that the address holds, if it holds one, and takes it out of the address. */
export async function openLink(): Promise<void> {
  const shared = await sharedDocument(location.hash)
  if (shared.kind === 'none') return
  history.replaceState(null, '', location.href.replace(/#.*$/, ''))
  if (shared.kind === 'refused') {
    notice.value = `${shared.reason} Your own design is untouched.`
    return
  }
  replace(shared.document, 'opened from a link')
  if (notice.value === '')
    notice.value = 'Opened from a link. “Back to what I had” brings back your own design.'
}
