/** How tracings are told apart: a letter each for as long as they are kept, a dash and a colour while laid over. */

/** So many lie over the design at once; more lines than these nobody reads. */
export const mostLaidOver = 4

/** The first letter that is free: A … Z, then A2 … Z2 and so on. */
export function freeLetter(taken: readonly string[]): string {
  for (let round = 1; ; round++)
    for (let k = 0; k < 26; k++) {
      const letter = `${String.fromCharCode(65 + k)}${round === 1 ? '' : round}`
      if (!taken.includes(letter)) return letter
    }
}

/** The first dash and colour that is free; undefined where as many lie over as may. */
export function freeLook(taken: readonly (number | undefined)[]): number | undefined {
  const free = Array.from({ length: mostLaidOver }, (_, k) => k).find((look) => !taken.includes(look))
  return free
}
