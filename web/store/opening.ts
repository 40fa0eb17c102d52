/** Opening an example or a file as the design, in its own words. */

import { say } from '../text/say.ts'
import { notice, openAnother } from './design.ts'
import { examples } from './example.ts'
import { foreignDocument, tooLargeFile } from './foreign-document.ts'

/** Whether it was opened; the notice tells what came of it. */
export async function openFile(file: File | undefined): Promise<boolean> {
  if (!file) return false
  const name = file.name.slice(0, 80)
  const large = tooLargeFile(file, name)
  if (large !== undefined) {
    notice.value = large
    return false
  }
  const read = foreignDocument(await file.text(), name)
  if (read.kind === 'refused') {
    notice.value = read.reason
    return false
  }
  openAnother(read.document, say`opened from a file`)
  notice.value = say`Opened ${name}.`
  return true
}

export function openExample(key: string): void {
  const found = examples.value.find((example) => example.key === key)
  if (!found) return
  openAnother(found.document, say`an example opened`, { example: true })
  notice.value = say`Opened the example “${found.name}”. It becomes a design of yours when you change it.`
}
