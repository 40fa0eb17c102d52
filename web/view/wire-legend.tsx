/** What the colours of the wire in the picture in three dimensions mean. */
import { row, snapshot } from '../store/design.ts'
import { inMeasure } from '../store/measure.ts'
import { useSight } from '../store/sight.ts'
import { say } from '../text/say.ts'
import { rpmText } from './row-words.ts'
import { toldSpeed } from './told-speed.ts'
import { cssColour, greatestPerMetre } from './wire-colour.ts'

const stops = [-1, -0.5, 0, 0.5, 1].map(cssColour).join(', ')

export function WireLegend() {
  const wire = useSight('wire')
  const result = snapshot.value
  if (!wire || !result) return <p class="note">{say`The wire is being walked along.`}</p>
  const speed = toldSpeed(result.rows[row.value], result.cutInSpeed)
  const most = inMeasure(greatestPerMetre(wire.along) * speed, 'mV_per_mm', 2)
  return (
    <div class="wire-legend">
      <span class="wire-ramp" style={{ background: `linear-gradient(to right, ${stops})` }} />
      <span class="wire-ends">
        <span>{say`works against its phase, −${most}`}</span>
        <span>{say`nothing`}</span>
        <span>{say`gives, ${most}`}</span>
      </span>
      <p class="note">
        {say`Peak in step with the phase, at ${rpmText(speed)}. The same in numbers: “Where the volts arise”.`}
      </p>
    </div>
  )
}
