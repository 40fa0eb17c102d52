/** Concern: a file that is handed on tells where somebody lives. */
import type { ConcernRule } from './concern.ts'

/** Kinds that a camera, telephone or logger stamps with its place. */
export const stampedKinds: readonly string[] = ['photo', 'video', 'sound', 'logger file']

export interface SharedFile {
  readonly kind: string
  readonly placeData: string
}

export const tellsPlace = ({ kind, placeData }: SharedFile): 'yes' | 'perhaps' | 'no' =>
  placeData === 'still in it'
    ? 'yes'
    : placeData === 'not said' && stampedKinds.includes(kind)
      ? 'perhaps'
      : 'no'

export const placeData: ConcernRule = {
  code: 'place-data',
  title: 'Files for sharing tell where they were made',
  basis:
    'Photos, films, sound and logger files of which it is said that the place is still in them: a warning; of which it is not said: a note. Cameras and telephones write it there by themselves (Exif, tags of the global positioning system).',
  judge: ({ machine }) => {
    const files = machine.design.sharing?.files ?? []
    const having = (answer: ReturnType<typeof tellsPlace>) =>
      files.flatMap((file, k) => (tellsPlace(file) === answer ? [{ k, name: file.name }] : []))
    const telling = having('yes')
    const perhaps = having('perhaps')
    const first = telling[0] ?? perhaps[0]
    if (first === undefined) return undefined
    const some = (list: readonly { readonly name: string }[]) =>
      list
        .slice(0, 3)
        .map(({ name }) => `“${name}”`)
        .join(', ') + (list.length > 3 ? ` and ${list.length - 3} more` : '')
    return {
      code: 'place-data',
      severity: telling.length > 0 ? 'warning' : 'note',
      path: `sharing.files[${first.k}].placeData`,
      what:
        telling.length > 0
          ? 'Files that are to be shared still hold the place where they were made.'
          : 'It is not said whether files that are to be shared hold the place where they were made.',
      why: 'A picture of a mast with its coordinates is a way to somebody’s home, and what stands there; once it is copied it cannot be called back.',
      figures: [
        telling.length > 0 ? `${telling.length} of ${files.length} hold it: ${some(telling)}.` : '',
        perhaps.length > 0 ? `${perhaps.length} of ${files.length} may: ${some(perhaps)}.` : '',
      ]
        .filter((text) => text !== '')
        .join(' '),
      remedies: [
        'Save a copy without metadata and share that; keep the original for the raw-data list.',
        'Look at the copy’s properties once: place, date and device must be gone.',
        'Look at the picture too: house numbers, faces and number plates tell as much. Ask everybody who is in it.',
      ],
    }
  },
  answeredBy: 'The properties of the copies that are handed on, looked at one by one.',
}
