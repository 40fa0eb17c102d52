/** A design in the fragment of an address: pressed small on the way out, taken as hostile on the way in. */
import { say } from '../text/say.ts'
import { type Foreign, foreignDocument, refused } from './foreign-document.ts'
import type { RawObject } from './raw-document.ts'

/** Names the form in the fragment, so that a later form can be told from it. */
const key = 'design'

/** A design with every field filled stays far below; more is an attack or a mistake [bytes]. */
export const mostPressed = 64 * 1024
export const mostUnpressed = 1024 * 1024

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'

/** RFC 4648, section 5, without padding. */
function base64url(bytes: Uint8Array): string {
  let text = ''
  for (let i = 0; i < bytes.length; i += 3) {
    const group = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0)
    const letters = Math.min(4, bytes.length - i + 1)
    for (let k = 0; k < letters; k++) text += alphabet[(group >> (18 - 6 * k)) & 63]
  }
  return text
}

function bytesOf(text: string): Uint8Array<ArrayBuffer> | undefined {
  if (text.length % 4 === 1) return undefined
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4))
  let group = 0
  let bits = 0
  let n = 0
  for (const letter of text) {
    const value = alphabet.indexOf(letter)
    if (value < 0) return undefined
    group = ((group << 6) | value) & 0xffffff
    bits += 6
    if (bits >= 8) {
      bits -= 8
      bytes[n++] = (group >> bits) & 255
    }
  }
  return bytes
}

/** All of a stream, or undefined as soon as there is more than `most`. */
async function gathered(stream: ReadableStream<Uint8Array>, most: number): Promise<Uint8Array | undefined> {
  const reader = stream.getReader()
  const parts: Uint8Array[] = []
  let length = 0
  for (;;) {
    const { done, value } = await reader.read()
    if (done) break
    length += value.length
    if (length > most) {
      await reader.cancel()
      return undefined
    }
    parts.push(value)
  }
  const whole = new Uint8Array(length)
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}

const through = (bytes: Uint8Array<ArrayBuffer>, change: CompressionStream | DecompressionStream) =>
  new Blob([bytes]).stream().pipeThrough(change)

/** `#design=…` for a document; its length is what the person is told. */
export async function shareFragment(document: RawObject): Promise<string> {
  const bytes = new TextEncoder().encode(JSON.stringify(document))
  const pressed = await gathered(through(bytes, new CompressionStream('deflate-raw')), mostUnpressed)
  return `#${key}=${base64url(pressed!)}`
}

export type Shared = { readonly kind: 'none' } | Foreign

/** What a fragment holds. Never throws, never unpacks more than `mostUnpressed`. */
export async function sharedDocument(fragment: string): Promise<Shared> {
  const found = new RegExp(`^#?${key}=(.*)$`, 's').exec(fragment)
  if (found === null) return { kind: 'none' }
  const text = found[1]!
  const most = Math.floor((mostPressed * 4) / 3)
  if (text.length > most)
    return refused(
      say`The link must be at most ${most} letters long; received ${text.length} letters (too-large)`,
    )
  const bytes = bytesOf(text)
  if (bytes === undefined || bytes.length === 0)
    return refused(
      say`The link must be made of the letters of a shared design; received other ones, perhaps it was cut off or changed (wrong-type)`,
    )
  let unpacked: Uint8Array | undefined
  try {
    unpacked = await gathered(through(bytes, new DecompressionStream('deflate-raw')), mostUnpressed)
  } catch {
    return refused(
      say`The link must be whole; received a part that cannot be unpacked, perhaps it was cut off on its way (wrong-length)`,
    )
  }
  if (unpacked === undefined)
    return refused(
      say`The link must unpack to at most ${mostUnpressed} bytes; received more than that (too-large)`,
    )
  try {
    return foreignDocument(
      new TextDecoder('utf-8', { fatal: true }).decode(unpacked),
      say`The design in the link`,
    )
  } catch {
    return refused(say`The link must hold a text; received bytes that are none (wrong-type)`)
  }
}
