/** The sentences of a language other than that of the keys, found and filled by their keys. */
import { createInstance } from 'i18next'

type Sentences = Readonly<Record<string, string>>

/** A sentence that the catalogue lacks is said in the words of its key. */
export function translation(
  name: string,
  sentences: Sentences,
): (key: string, places: Readonly<Record<string, string>>) => string {
  const catalogue = createInstance()
  void catalogue.init({
    lng: name,
    fallbackLng: false,
    initAsync: false,
    // sentences hold points and colons of their own
    keySeparator: false,
    nsSeparator: false,
    interpolation: { escapeValue: false, prefix: '{', suffix: '}', skipOnVariables: true },
    resources: { [name]: { translation: sentences } },
  })
  return (key, places) => catalogue.t(key, { ...places })
}
