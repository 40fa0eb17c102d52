/** Sharing by a link: a design into an address, and the design of an address onto the page. */
import { say } from '../text/say.ts'
import { notice, openAnother } from './design.ts'
import type { RawObject } from './raw-document.ts'
import { sharedDocument, shareFragment } from './share-link.ts'

const withoutFragment = () => location.href.replace(/#.*$/, '')

/** The address that holds the whole design. */
export const linkOf = async (design: RawObject): Promise<string> =>
  withoutFragment() + (await shareFragment(design))

/** Copies an address that holds the whole design; where copying is not allowed, the page's own address takes it. Says so. */
export async function copyLink(design: RawObject): Promise<string> {
  const address = await linkOf(design)
  try {
    await navigator.clipboard.writeText(address)
    return say`A link with the whole design is copied, ${address.length} letters long. Whoever opens it has a copy; nothing is sent anywhere else.`
  } catch {
    history.replaceState(null, '', address)
    return say`The address of this page now holds the whole design, ${address.length} letters long. Copy it from the address line.`
  }
}

/** Opens the design that the address holds, if it holds one, and takes it out of the address. */
export async function openLink(): Promise<void> {
  const shared = await sharedDocument(location.hash)
  if (shared.kind === 'none') return
  history.replaceState(null, '', withoutFragment())
  if (shared.kind === 'refused') {
    notice.value = `${shared.reason}. ${say`Your own design is untouched.`}`
    return
  }
  openAnother(shared.document, say`opened from a link`)
  notice.value = say`Opened from a link. Your own design is on the shelf, and “Undo” goes back to it.`
}
