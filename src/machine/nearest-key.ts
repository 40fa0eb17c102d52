/** The known word nearest to a mistyped one. */

/** Edit distance with neighbouring swaps counted once (optimal string alignment). */
export function editDistance(a: string, b: string): number {
  const width = b.length + 1
  const rows = Array.from({ length: a.length + 1 }, (_, i) => {
    const row = new Uint16Array(width)
    row[0] = i
    return row
  })
  for (let j = 0; j < width; j++) rows[0]![j] = j
  for (let i = 1; i <= a.length; i++)
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1
      let least = Math.min(rows[i - 1]![j]! + 1, rows[i]![j - 1]! + 1, rows[i - 1]![j - 1]! + change)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, rows[i - 2]![j - 2]! + 1)
      rows[i]![j] = least
    }
  return rows[a.length]![b.length]!
}

/** The nearest of `known`, unless all are further off than half of the longer word's letters. */
export function nearestKey(typed: string, known: readonly string[]): string | undefined {
  const word = typed.slice(0, 80).toLowerCase()
  let best: string | undefined
  let least = Number.POSITIVE_INFINITY
  for (const key of known) {
    const distance = editDistance(word, key.toLowerCase())
    if (distance < least && distance <= Math.max(word.length, key.length) / 2) {
      least = distance
      best = key
    }
  }
  return best
}
