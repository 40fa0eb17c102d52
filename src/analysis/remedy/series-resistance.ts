/** The last remedy: a resistor in the line, which frees the blades by burning their power. */
import { valueChange } from './change.ts'
import { bestAttempt } from './search.ts'
import type { Attempt, RemedyContext, RemedyRule } from './trial.ts'

const count = 14
/** Of the resistance that would burn all of the power in the wind that is told. */
const least = 0.01
const greatest = 0.8

function attempts({ design, chain, wind }: RemedyContext): Attempt[] {
  const row = chain.rowAt(wind)
  if (!(row.dcCurrent > 0)) return []
  const whole = row.watts.useful / row.dcCurrent ** 2
  return Array.from({ length: count }, (_, k) => {
    const resistance = whole * least * (greatest / least) ** (k / (count - 1))
    return {
      changes: [
        valueChange(
          ['cable', 'series_mohm'],
          design.cable.series_mohm,
          Number((1000 * resistance).toPrecision(2)),
        ),
      ],
    }
  })
}

export const seriesRemedy: RemedyRule = {
  kind: 'series resistance',
  unfit: (context) =>
    (context.design.cable.series_mohm ?? 0) !== 0
      ? 'there is one already'
      : attempts(context).length === 0
        ? 'no current flows in the wind that is told'
        : undefined,
  search: (context) => bestAttempt(context, attempts(context)),
}
