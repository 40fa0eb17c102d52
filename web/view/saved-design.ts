/** A design handed over as a file of its own. */
import { safe } from '../picture/file-name.ts'
import { saveFile } from '../picture/save-file.ts'
import type { RawObject } from '../store/raw-document.ts'
import { designFile, nameOf } from '../store/shown-design.ts'

export const saveDesign = (document: RawObject): void =>
  saveFile(`${safe(nameOf(document)).slice(0, 80) || 'design'}.json`, designFile(document))
