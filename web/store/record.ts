/** The wind logger's file that was opened: how far it is read, its report, and the way into the design. */
import { signal } from '@preact/signals'
import type { WindImportOptions } from '../../src/index.ts'
import type { RecordReport } from '../record.ts'
import { change, document as design } from './design.ts'
import { isRawObject } from './raw-document.ts'
import { sideEngine } from './side-engine.ts'

export type RecordState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly fraction: number }
  | { readonly kind: 'refused'; readonly reason: string }
  | { readonly kind: 'done'; readonly report: RecordReport }

export const record = signal<RecordState>({ kind: 'none' })

let opened: File | undefined
let told: WindImportOptions = {}

const engine = sideEngine(
  (data) => {
    if (data.kind === 'record-progress') record.value = { kind: 'reading', fraction: data.fraction }
    else if (data.kind === 'record-refused') record.value = { kind: 'refused', reason: data.reason }
    else if (data.kind === 'record') record.value = { kind: 'done', report: data.report }
  },
  (reason) => {
    record.value = { kind: 'refused', reason }
  },
)

function read(): void {
  const file = opened
  if (!file) return
  record.value = { kind: 'reading', fraction: 0 }
  const text = JSON.stringify(design.value)
  engine.ask((id) => ({ kind: 'record', id, file, options: told, text }))
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

export function stopRecord(): void {
  engine.ask(() => ({ kind: 'record-stop' }))
  record.value = { kind: 'none' }
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
