/** Keeps the document on this machine between visits; a broken store is put aside, never lost. */
import { isRawObject, type RawObject } from './raw-document.ts'

const place = 'gustloom.document'
const aside = 'gustloom.unreadable'
const former = 'gustloom.before'

export interface Kept {
  readonly document: RawObject | undefined
  /** What went wrong, in a sentence for the page; empty when nothing did. */
  readonly trouble: string
}

const reason = (error: unknown) => (error instanceof Error ? error.message : String(error))

export function kept(): Kept {
  let text: string | null
  try {
    text = localStorage.getItem(place)
  } catch (error) {
    return {
      document: undefined,
      trouble: `This browser does not let the page keep anything (${reason(error)}). Save your design to a file.`,
    }
  }
  if (text === null) return { document: undefined, trouble: '' }
  try {
    const document: unknown = JSON.parse(text)
    if (isRawObject(document)) return { document, trouble: '' }
  } catch {
    // put aside below, whatever the reason
  }
  try {
    localStorage.setItem(aside, text)
  } catch {
    // no room for the copy: the first place still holds it until the next edit
  }
  return {
    document: undefined,
    trouble:
      'What was kept from your last visit cannot be read. It was put aside, and an example was opened.',
  }
}

/** The design that another one took the place of, for the way back. */
export function keepBefore(document: RawObject): void {
  try {
    localStorage.setItem(former, JSON.stringify(document))
  } catch {
    // the way back then lasts as long as the page is open; `keep` tells of the trouble
  }
}

export function keptBefore(): RawObject | undefined {
  try {
    const document: unknown = JSON.parse(localStorage.getItem(former) ?? 'null')
    return isRawObject(document) ? document : undefined
  } catch {
    return undefined
  }
}

/** Returns what went wrong, empty when nothing did. */
export function keep(document: RawObject): string {
  try {
    localStorage.setItem(place, JSON.stringify(document))
    return ''
  } catch (error) {
    return `Your changes are not kept on this machine (${reason(error)}). Save your design to a file.`
  }
}
