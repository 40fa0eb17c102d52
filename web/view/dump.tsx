/** What the dump load does in the wind looked at: while the battery takes the current, and once it is full. */
import type { DumpDuty } from '../../src/analysis/dump-duty.ts'
import type { WindRow } from '../../src/index.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import { windSaid } from '../store/measure.ts'
import { useSight } from '../store/sight.ts'
import { say } from '../text/say.ts'

const watts = (value: number): string => formatSi(value, 'W')

function fullSentence({ power, takes, share, holds, on, off }: DumpDuty): string {
  if (!(power > 0))
    return say`Once the battery is full there is nothing to take: no power arrives in this wind.`
  if (!holds)
    return say`Once the battery is full about ${watts(power)} arrive and the dump load takes only ${watts(takes[1])} at ${formatSi(on, 'V')}: the volts go on rising, and the battery takes the rest.`
  const [low, high] = share.map((each) => formatNumber(100 * each, 2))
  return low === high
    ? say`Once the battery is full the dump load is on all the time, and takes the ${watts(power)} or so that arrive.`
    : say`Once the battery is full the volts swing between ${formatSi(off, 'V')} and ${formatSi(on, 'V')}, and the dump load is on for ${low} % to ${high} % of the time: it takes the ${watts(power)} or so that arrive.`
}

export function DumpView({ row }: { readonly row: WindRow }) {
  const duty = useSight('dumpDuty')
  if (duty === undefined || Math.abs(duty.wind - row.wind) > 1e-9) return null
  const { wind, voltage, on, working, takes, rated } = duty
  return (
    <section class="card dump">
      <h3>{say`The dump load at ${windSaid(wind)}`}</h3>
      <p>
        {working
          ? say`It is on: the battery stands at ${formatSi(voltage, 'V')}, at or above the ${formatSi(on, 'V')} at which it is switched.`
          : say`It is off as long as the battery takes the current: at ${formatSi(voltage, 'V')} it has not yet reached the ${formatSi(on, 'V')} at which it is switched.`}
      </p>
      <p>{fullSentence(duty)}</p>
      <p class="note">
        {takes[1] > rated
          ? say`While it is on it turns ${watts(takes[1])} into heat, and its label bears ${watts(rated)}: it gets too hot.`
          : say`While it is on it turns ${watts(takes[1])} into heat; its label bears ${watts(rated)}.`}
      </p>
    </section>
  )
}
