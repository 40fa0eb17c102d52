/** SHA-256, the digest of a text that tells two texts apart (FIPS 180-4). */

/** The first primes, whose roots give the standard's constants. */
const primes: readonly number[] = (() => {
  const found: number[] = []
  for (let n = 2; found.length < 64; n++) if (found.every((p) => n % p !== 0)) found.push(n)
  return found
})()

/** The first 32 bits of the fraction of a root. */
const fractionBits = (root: number): number => Math.floor((root - Math.floor(root)) * 2 ** 32) >>> 0

const K = Uint32Array.from(primes, (p) => fractionBits(Math.cbrt(p)))
const initial = Uint32Array.from(primes.slice(0, 8), (p) => fractionBits(Math.sqrt(p)))

const rotr = (x: number, n: number): number => (x >>> n) | (x << (32 - n))

/** UTF-8; a text with half a surrogate pair has none and is refused by the runtime. */
function bytesOf(text: string): number[] {
  const bytes: number[] = []
  const coded = encodeURIComponent(text)
  for (let k = 0; k < coded.length; k++) {
    if (coded[k] === '%') {
      bytes.push(Number.parseInt(coded.slice(k + 1, k + 3), 16))
      k += 2
    } else bytes.push(coded.charCodeAt(k))
  }
  return bytes
}

/** Whole blocks of 64 bytes: a one, zeros, the length in bits. */
function padded(bytes: readonly number[]): Uint8Array {
  const blocks = Math.ceil((bytes.length + 9) / 64)
  const all = new Uint8Array(64 * blocks)
  all.set(bytes)
  all[bytes.length] = 0x80
  const bits = 8 * bytes.length
  for (let k = 0; k < 7; k++) all[all.length - 1 - k] = Math.floor(bits / 2 ** (8 * k)) % 256
  return all
}

function round(H: Uint32Array, block: Uint8Array): void {
  const W = new Uint32Array(64)
  for (let t = 0; t < 64; t++) {
    if (t < 16)
      W[t] = (block[4 * t]! << 24) | (block[4 * t + 1]! << 16) | (block[4 * t + 2]! << 8) | block[4 * t + 3]!
    else {
      const [x, y] = [W[t - 15]!, W[t - 2]!]
      const σ0 = rotr(x, 7) ^ rotr(x, 18) ^ (x >>> 3)
      const σ1 = rotr(y, 17) ^ rotr(y, 19) ^ (y >>> 10)
      W[t] = σ1 + W[t - 7]! + σ0 + W[t - 16]!
    }
  }
  let [a, b, c, d, e, f, g, h] = H as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  for (let t = 0; t < 64; t++) {
    const Σ1 = rotr(e, 6) ^ rotr(e, 11) ^ rotr(e, 25)
    const T1 = (h + Σ1 + ((e & f) ^ (~e & g)) + K[t]! + W[t]!) >>> 0
    const Σ0 = rotr(a, 2) ^ rotr(a, 13) ^ rotr(a, 22)
    const T2 = (Σ0 + ((a & b) ^ (a & c) ^ (b & c))) >>> 0
    h = g
    g = f
    f = e
    e = (d + T1) >>> 0
    d = c
    c = b
    b = a
    a = (T1 + T2) >>> 0
  }
  for (const [k, x] of [a, b, c, d, e, f, g, h].entries()) H[k] = H[k]! + x
}

/** 64 hexadecimal digits of the text's UTF-8. */
export function sha256(text: string): string {
  const message = padded(bytesOf(text))
  const H = Uint32Array.from(initial)
  for (let at = 0; at < message.length; at += 64) round(H, message.subarray(at, at + 64))
  return Array.from(H, (word) => word.toString(16).padStart(8, '0')).join('')
}
