/** What became of every row of a logger's file, and what was taken for granted on the way. */
import type { ColumnRole, SpeedUnit } from './column-role.ts'
import type { ClockJump } from './logger-clock.ts'

export const refusalKinds = {
  'no-time': 'the time cannot be read',
  'no-wind': 'the wind is missing',
  'unreadable-wind': 'the wind is no number',
  negative: 'the wind is below zero',
  'too-fast': 'the wind is above any gust ever measured near the ground',
  duplicate: 'a copy of another row',
  'same-time': 'another wind at a time that is there already',
  spike: 'a single spike far above both its neighbours',
  frozen: 'the reading stands still longer than chance allows: frozen or stuck',
} as const
export type RefusalKind = keyof typeof refusalKinds

export interface RefusedRows {
  readonly kind: RefusalKind
  /** Of every row refused for this, rising. */
  readonly lines: Float64Array
}

export interface WindQuestion {
  readonly about: 'unit' | 'date order' | 'column'
  readonly text: string
  readonly choices: readonly string[]
}

export interface Gap {
  /** Last reading before and first after it [s since 1970 on the even clock]. */
  readonly from: number
  readonly to: number
  readonly missing: number
}

export interface ImportReport {
  /** Records of the file: the sum of all that follow. */
  readonly rows: {
    readonly total: number
    readonly blank: number
    readonly comment: number
    /** Heads, units and whatever else stands before the first reading, and heads that come again. */
    readonly header: number
    readonly read: number
    readonly refused: number
  }
  readonly refused: readonly RefusedRows[]
  readonly separator: string
  readonly decimal: string
  /** Head or number of the column that each role was taken from. */
  readonly columns: Readonly<Partial<Record<ColumnRole, string>>>
  readonly unused: readonly string[]
  readonly unit: { readonly unit: SpeedUnit; readonly how: 'named' | 'told' | 'assumed' }
  /** How day and month were told apart. */
  readonly dateOrder: {
    readonly order: 'day first' | 'month first' | 'either'
    readonly how: 'written plainly' | 'told' | 'a day above 12' | 'an even clock' | 'assumed'
  }
  /** Usual distance of two readings [s], and the share that keeps it. */
  readonly step: number
  readonly stepShare: number
  readonly newestFirst: boolean
  /** Rows that came after a later one; they were put in order. */
  readonly outOfOrder: number
  readonly jumps: readonly ClockJump[]
  /** The longest first, at most `mostGaps` of them. */
  readonly gaps: readonly Gap[]
  readonly gapCount: number
  readonly missingReadings: number
  /** Readings over those that the time from first to last would hold. */
  readonly completeness: number
  readonly calm: { readonly reading: number; readonly share: number; readonly longest: number }
  readonly questions: readonly WindQuestion[]
  readonly remarks: readonly string[]
}

export const mostGaps = 20
