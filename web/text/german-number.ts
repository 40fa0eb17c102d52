/** Numbers as German writes them: a comma before decimals, and the units that are words. */

/** The point in a file’s name or a version is left alone; a power of ten may stand behind a number. */
const withComma = (text: string): string =>
  text.replace(/(?<![\p{L}\d._])(\d+)\.(\d+)(?=e[−-]?\d|(?!\d|\.?[\p{L}_]|\.\d))/gu, '$1,$2')

/** Units that are words and not signs. */
const units: Readonly<Record<string, string>> = { rpm: 'U/min', days: 'Tage', day: 'Tag' }

export const inGerman = (text: string): string =>
  withComma(text).replace(
    /(^|[\d\s])(rpm|days?)(?![\p{L}\d])/gu,
    (_, before: string, unit: string) => before + units[unit]!,
  )
