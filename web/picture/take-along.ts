/** Takes a picture of the page along as a file: drawn, as points, or as the numbers behind it. */
import type { ChartTable } from '../../src/output/chart/chart-table.ts'
import { csvFile } from './csv-file.ts'
import { type TakenAlong, takenName } from './file-name.ts'
import { pngFile } from './png-file.ts'
import { saveFile } from './save-file.ts'
import { type FileHead, svgFile } from './svg-file.ts'

export type TakenKind = 'svg' | 'png' | 'csv'

export interface Taken extends TakenAlong {
  readonly head: FileHead
  readonly drawing: () => string
  readonly table: () => ChartTable
}

const fileOf = async (kind: TakenKind, { head, drawing, table }: Taken): Promise<Blob> => {
  if (kind === 'csv') return csvFile(table())
  const svg = svgFile(drawing(), head)
  return kind === 'png' ? pngFile(svg) : new Blob([svg.text], { type: 'image/svg+xml' })
}

export async function takeAlong(kind: TakenKind, taken: Taken): Promise<void> {
  saveFile(takenName(taken, kind), await fileOf(kind, taken))
}
