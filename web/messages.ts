/** What the page and its worker say to each other. */
import type {
  ConcernRemedyReport,
  ContestRule,
  FaultStudy,
  FieldDescription,
  FormField,
  GeneratorTarget,
  MatchMap,
  RemedyReport,
  SpreadStudy,
  StormWindKind,
  WindImportOptions,
  Worth,
} from '../src/index.ts'
import type { ContestReport } from '../src/output/contest-report.ts'
import type { ScenarioReport } from '../src/output/scenario-report.ts'
import type { RecordReport } from './record.ts'
import type { Snapshot, WindSnapshot } from './snapshot.ts'
import type { WireSnapshot } from './wire-snapshot.ts'

export type ToWorker =
  /** The raw text of the document; a newer one supersedes it. */
  | { readonly kind: 'edit'; readonly id: number; readonly text: string }
  /** Another row of the last complete result is looked at. */
  | { readonly kind: 'wind'; readonly row: number }
  /** Where along the wire of the last complete result the volts arise. */
  | { readonly kind: 'wire' }
  /** The raw texts of designs to set against each other, the present one first; a newer contest supersedes it. */
  | {
      readonly kind: 'contest'
      readonly id: number
      readonly texts: readonly string[]
      readonly rule: ContestRule
    }
  | { readonly kind: 'contest-stop' }
  /** The raw text of a design whose defects are to be studied one by one; a newer study supersedes it. */
  | { readonly kind: 'study'; readonly id: number; readonly text: string }
  | { readonly kind: 'study-stop' }
  /** The map of blades and generator of the last complete result. */
  | { readonly kind: 'match' }
  /** The raw text of a design for whose match remedies are tried; newer ones supersede it. */
  | { readonly kind: 'remedies'; readonly id: number; readonly text: string }
  | { readonly kind: 'remedies-stop' }
  /** The raw text of a design and the code of a concern whose remedies are tried; another supersedes it. */
  | { readonly kind: 'helps'; readonly id: number; readonly text: string; readonly code: string }
  | { readonly kind: 'helps-stop' }
  /** A wind logger's file, and the raw text of the design to set into its wind; a newer one supersedes it. */
  | {
      readonly kind: 'record'
      readonly id: number
      readonly file: File
      readonly options: WindImportOptions
      readonly text: string
    }
  | { readonly kind: 'record-stop' }
  /** The raw text of a design to be put through a storm; a newer storm supersedes it. */
  | {
      readonly kind: 'storm'
      readonly id: number
      readonly text: string
      readonly wind: Exclude<StormWindKind, 'logged wind'>
      /** Its highest wind [m/s]; the site's storm where none is given. */
      readonly top: number | undefined
    }
  | { readonly kind: 'storm-stop' }

/** A fault as the page shows it. */
export interface ShownFault {
  readonly path: string
  readonly condition: string
  readonly received: string
  readonly code: string
  readonly nearest?: string
  /** The whole sentence in the wording of the house. */
  readonly text: string
}

export type FromWorker =
  /** Every field that any design may have; sent once. */
  | { readonly kind: 'fields'; readonly fields: readonly FieldDescription[] }
  | { readonly kind: 'form'; readonly id: number; readonly form: readonly FormField[] }
  | { readonly kind: 'progress'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'faults'; readonly id: number; readonly faults: readonly ShownFault[] }
  | { readonly kind: 'result'; readonly id: number; readonly snapshot: Snapshot }
  | { readonly kind: 'wind'; readonly id: number; readonly wind: WindSnapshot }
  | { readonly kind: 'wire'; readonly id: number; readonly wire: WireSnapshot }
  | {
      readonly kind: 'match'
      readonly id: number
      readonly map: MatchMap
      readonly target: GeneratorTarget | undefined
    }
  /** How far the guesses let the result of that edit be off; follows it after a while. */
  | { readonly kind: 'spread-progress'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'spreads'; readonly id: number; readonly study: SpreadStudy; readonly last: boolean }
  /** The need of the design against its year, where it names one; follows it after a while. */
  | { readonly kind: 'worth'; readonly id: number; readonly worth: Worth }
  /** The engine failed in a way that no rule foresaw. */
  | { readonly kind: 'failed'; readonly id: number; readonly reason: string }

/** What an engine says of a contest. */
export type FromContest =
  | { readonly kind: 'contest-progress'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'contest'; readonly id: number; readonly report: ContestReport }
  | { readonly kind: 'contest-refused'; readonly id: number; readonly reason: string }

/** What an engine says of a study of defects. */
export type FromStudy =
  | { readonly kind: 'study-progress'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'study'; readonly id: number; readonly study: FaultStudy }
  | { readonly kind: 'study-refused'; readonly id: number; readonly reason: string }

/** What an engine says of remedies. */
export type FromRemedies =
  | { readonly kind: 'remedies-progress'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'remedies'; readonly id: number; readonly report: RemedyReport }
  | { readonly kind: 'remedies-refused'; readonly id: number; readonly reason: string }

/** What an engine says of what helps against a concern. */
export type FromHelps =
  | { readonly kind: 'helps-progress'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'helps'; readonly id: number; readonly report: ConcernRemedyReport }
  | { readonly kind: 'helps-refused'; readonly id: number; readonly reason: string }

/** What an engine says of a wind logger's file. */
export type FromRecord =
  | { readonly kind: 'record-progress'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'record'; readonly id: number; readonly report: RecordReport }
  | { readonly kind: 'record-refused'; readonly id: number; readonly reason: string }

/** What an engine says of a storm. */
export type FromStorm =
  | { readonly kind: 'storm-progress'; readonly id: number; readonly fraction: number }
  | { readonly kind: 'storm'; readonly id: number; readonly report: ScenarioReport }
  | { readonly kind: 'storm-refused'; readonly id: number; readonly reason: string }
