/** Answers to concerns in the present document: one given, one taken out. */
import type { ShownConcern } from '../shown-concern.ts'
import { document as design, setValue } from './design.ts'
import { isRawObject, type RawObject } from './raw-document.ts'

export interface TypedAnswer {
  readonly note: string
  readonly file: string
  readonly date: string
}

const answers = (): readonly RawObject[] => {
  const list = design.value['answers']
  return Array.isArray(list) ? list.filter(isRawObject) : []
}

const others = (code: string): readonly RawObject[] => answers().filter(({ concern }) => concern !== code)

const put = (list: readonly RawObject[]) => setValue(['answers'], list.length === 0 ? undefined : list)

/** In place of an earlier one to the same concern, with the figure that it answers. */
export function answerConcern({ code, figure }: ShownConcern, { note, file, date }: TypedAnswer): void {
  put([
    ...others(code),
    {
      concern: code,
      note: note.trim(),
      ...(file.trim() === '' ? {} : { file: file.trim() }),
      ...(date === '' ? {} : { date }),
      ...(figure === undefined ? {} : { figure }),
    },
  ])
}

export const takeAnswerBack = (code: string): void => put(others(code))
