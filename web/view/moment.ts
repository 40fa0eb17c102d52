/** A moment as people write it, in the language of the page. */
import { language } from '../text/say.ts'

/** The month in letters, so that no point stands between two digits. */
export const momentText = (at: number): string =>
  new Intl.DateTimeFormat(language.value === 'en' ? 'en-GB' : language.value, {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
  }).format(at)
