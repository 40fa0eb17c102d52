/** Sums of harmonics at one angle, several rows at once. */

/**
 * out_k = Σ cos_kh·ch_h + sin_kh·sh_h; three rows at a time, which need not wait for one another.
 *
 * @internal a step of mode-response: the harmonics of several quantities at one angle, rows of ch's length
 */
export function harmonicSums(
  out: Float64Array,
  rows: number,
  [cos, sin]: readonly [Float64Array, Float64Array],
  [ch, sh]: readonly [Float64Array, Float64Array],
): void {
  const H = ch.length
  let k = 0
  for (; k + 2 < rows; k += 3) {
    let a = 0
    let b = 0
    let c = 0
    const first = k * H
    const second = first + H
    const third = second + H
    for (let h = 0; h < H; h++) {
      const x = ch[h]!
      const y = sh[h]!
      a += cos[first + h]! * x + sin[first + h]! * y
      b += cos[second + h]! * x + sin[second + h]! * y
      c += cos[third + h]! * x + sin[third + h]! * y
    }
    out[k] = a
    out[k + 1] = b
    out[k + 2] = c
  }
  for (; k + 1 < rows; k += 2) {
    let a = 0
    let b = 0
    const first = k * H
    const second = first + H
    for (let h = 0; h < H; h++) {
      const x = ch[h]!
      const y = sh[h]!
      a += cos[first + h]! * x + sin[first + h]! * y
      b += cos[second + h]! * x + sin[second + h]! * y
    }
    out[k] = a
    out[k + 1] = b
  }
  for (; k < rows; k++) {
    let sum = 0
    const at = k * H
    for (let h = 0; h < H; h++) sum += cos[at + h]! * ch[h]! + sin[at + h]! * sh[h]!
    out[k] = sum
  }
}
