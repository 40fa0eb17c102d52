/** The known word nearest to a mistyped one. */

/** Edit distance with neighbouring swaps counted once (optimal string alignment). */
export function editDistance(a: string, b: string): number {
  // three rows of the table are enough: the one being filled and the two before it
  let older: number[] = []
  let old: number[] = []
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    older = old
    old = row
    row = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1
      let least = Math.min(old[j]! + 1, row[j - 1]! + 1, old[j - 1]! + change)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, older[j - 2]! + 1)
      row.push(least)
    }
  }
  return row[b.length]!
}

/** The nearest of `known`, unless all are further off than half of the longer word's letters. */
export function nearestKey(typed: string, known: readonly string[]): string | undefined {
  const word = typed.slice(0, 80).toLowerCase()
  let best: string | undefined
  let least = Number.POSITIVE_INFINITY
  for (const key of known) {
    const furthest = Math.max(word.length, key.length) / 2
    // the distance is at least the difference of the lengths
    if (Math.abs(word.length - key.length) > Math.min(furthest, least)) continue
    const distance = editDistance(word, key.toLowerCase())
    if (distance < least && distance <= furthest) {
      least = distance
      best = key
    }
  }
  return best
}
