/** One line of the mechanics of a machine: a quantity, what it may be, and how both are known. */

export const mechanicsGroups = [
  'what holds the magnets',
  'pull between the faces',
  'discs under that pull',
  'air between rotor and stator',
  'bearings',
  'shaft',
  'balance',
  'blades and tower: for information',
] as const
export type MechanicsGroup = (typeof mechanicsGroups)[number]

export interface MechanicsRow {
  readonly group: MechanicsGroup
  readonly name: string
  /** In SI; undefined where it cannot be told. */
  readonly value: number | undefined
  /** Half-width, in SI; 0 where it is not guessed. */
  readonly spread: number
  /** Suffix of the unit of value, spread and limit. */
  readonly unit: string
  /** Undefined where nothing limits it, or nobody here may say what does. */
  readonly limit: { readonly value: number; readonly sound: 'below' | 'above' } | undefined
  /** How often the limit holds the value, or the value the limit; 1 and more is sound. */
  readonly margin: number | undefined
  /** Where the limit comes from. */
  readonly from: string
  /** How the value is known, or what to enter so that it can be told. */
  readonly known: string
  /** Fields of the document that would tell it, or tell it better than a guess does. */
  readonly enter: readonly string[]
}

/** A line whose margin follows from value and limit. */
export function mechanicsRow(
  row: Omit<MechanicsRow, 'margin' | 'spread' | 'limit' | 'from' | 'enter'> &
    Partial<Pick<MechanicsRow, 'spread' | 'limit' | 'from' | 'enter'>>,
): MechanicsRow {
  const { value, limit } = row
  const ratio =
    value === undefined || limit === undefined
      ? undefined
      : limit.sound === 'below'
        ? limit.value / value
        : value / limit.value
  return {
    spread: 0,
    from: '',
    enter: [],
    ...row,
    limit,
    margin: ratio === undefined || !Number.isFinite(ratio) ? undefined : ratio,
  }
}

/** A line that waits for fields of the document, told in words and by their paths. */
export const notAsked = (
  group: MechanicsGroup,
  name: string,
  words: string,
  enter: readonly string[],
  unit = '1',
): MechanicsRow =>
  mechanicsRow({
    group,
    name,
    value: undefined,
    unit,
    limit: undefined,
    known: `not asked: enter ${words}`,
    enter,
  })
