/** The wind logger's file that was opened: how far it is read, its report, and the way into the design. */
import type { WindImportOptions } from '../../src/index.ts'
import type { RecordReport } from '../record.ts'
import { change, document as design } from './design.ts'
import { jobView } from './job.ts'
import { isRawObject } from './raw-document.ts'

let opened: File | undefined
let told: WindImportOptions = {}

const view = jobView('record')
export const record = view.state
export const stopRecord = view.stop

function read(): void {
  if (opened) view.start({ file: opened, options: told, text: JSON.stringify(design.value) })
}

export function openRecord(file: File): void {
  opened = file
  told = {}
  read()
}

/** Reads the file again with what it did not say. */
export function tellRecord(answer: WindImportOptions): void {
  told = { ...told, ...answer }
  read()
}

/** Puts the measured winds into the site of the design; what a former record put there and this one lacks goes. */
export function takeRecord({ site }: RecordReport): void {
  const old = design.value['site']
  const {
    monthlyMean_m_per_s: _,
    windHistogram: __,
    turbulenceIntensity: ___,
    averaging_s: ____,
    ...rest
  } = isRawObject(old) ? old : {}
  change({ ...design.value, site: { ...rest, ...site } })
}
