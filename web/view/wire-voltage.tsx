/** Where along the wire the volts arise: by part, along one turn, and against the angle of the wire. */
import { useState } from 'preact/hooks'
import {
  inPhasePerMetre,
  instantPerMetre,
  peakAngle,
  type WireCoil,
} from '../../src/analysis/wire-reading.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import { wireAngleChart, wireAngleTable } from '../../src/output/chart/wire-angle.ts'
import { wireProfileChart, wireProfileTable } from '../../src/output/chart/wire-profile.ts'
import { shareText, wireVoltageChart, wireVoltageTable } from '../../src/output/chart/wire-voltage.ts'
import { wirePartNames } from '../../src/output/wire-part-name.ts'
import { formatSi } from '../../src/units/format.ts'
import { row as chosenRow, snapshot } from '../store/design.ts'
import { useSight } from '../store/sight.ts'
import { say } from '../text/say.ts'
import type { WireSnapshot } from '../wire-snapshot.ts'
import { ChartFrame } from './chart-frame.tsx'
import { rpmText } from './row-words.ts'
import { toldSpeed } from './told-speed.ts'

function coilName(
  { number, phase, sense, shape }: WireCoil,
  { coils, shapes }: WireSnapshot['along'],
): string {
  const alone = coils.filter((coil) => coil.phase === phase).length === 1
  if (alone) return say`phase ${phase + 1}`
  if (shapes[shape]!.repeats > 1)
    return sense < 0
      ? say`wave ${number}, phase ${phase + 1}, wound the other way`
      : say`wave ${number}, phase ${phase + 1}`
  return sense < 0
    ? say`coil ${number}, phase ${phase + 1}, wound the other way`
    : say`coil ${number}, phase ${phase + 1}`
}

function ByPart({
  wire,
  coil,
  speed,
}: {
  readonly wire: WireSnapshot
  readonly coil: WireCoil
  readonly speed: number
}) {
  const { fundamental, parts } = wire.along.phases[coil.phase]!
  const named = parts.map((part) => ({ ...part, label: wirePartNames[part.part] }))
  const idle = parts.filter(({ share, copperShare }) => share < 0.2 * copperShare)
  const spent = idle.reduce((sum, { copperShare }) => sum + copperShare, 0)
  const raised = formatSi(fundamental * speed, 'V')
  return (
    <ChartFrame
      name="wire-parts"
      title={say`By part of the winding, phase ${coil.phase + 1}`}
      note={
        spent > 0.005
          ? say`At ${rpmText(speed)} the phase raises ${raised} peak, fundamental. ${shareText(spent)} of its wire only joins: it costs copper and heat and gives next to nothing.`
          : say`At ${rpmText(speed)} the phase raises ${raised} peak, fundamental. All of its wire gives.`
      }
      draw={(width) => wireVoltageChart({ width, parts: named })}
      data={() => wireVoltageTable(named, speed)}
    />
  )
}

function AlongTurn({
  wire,
  coil,
  speed,
}: {
  readonly wire: WireSnapshot
  readonly coil: WireCoil
  readonly speed: number
}) {
  const [angle, setAngle] = useState(0)
  const { along } = wire
  const shape = along.shapes[coil.shape]!
  const rotorAngle = peakAngle(along, coil) + (angle * Math.PI) / 180 / (along.base * along.order)
  const scaled = (values: Float64Array) => values.map((value) => value * speed)
  const inStep = scaled(inPhasePerMetre(along, coil))
  const moment = scaled(instantPerMetre(along, coil, rotorAngle))
  const part = shape.part.map((word) => wirePartNames[word])
  return (
    <ChartFrame
      name="wire-profile"
      title={
        shape.repeats > 1
          ? say`Along the wire, over one pair of poles`
          : say`Along the wire, once round the coil`
      }
      note={say`At ${rpmText(speed)}. Filled: the part in step with the phase, peak; below zero it works against the phase. Dotted: at the moment chosen with the slider. Tinted: under the magnets.`}
      draw={(width) =>
        wireProfileChart({
          width,
          height: 300,
          path: shape.path,
          inStep,
          moment,
          part: shape.part,
          underMagnets: shape.underMagnets,
        })
      }
      data={() =>
        wireProfileTable({
          path: shape.path,
          inStep,
          moment,
          part,
          underMagnets: shape.underMagnets,
          lean: shape.lean,
        })
      }
    >
      <div class="slider">
        <label for="wire-moment">{say`Rotor past the phase’s peak: ${shortNumber(angle)}° electrical`}</label>
        <input
          id="wire-moment"
          type="range"
          min={0}
          max={360}
          step={5}
          value={angle}
          aria-valuetext={say`${shortNumber(angle)} degrees electrical`}
          onInput={(event) => setAngle(Number(event.currentTarget.value))}
        />
      </div>
    </ChartFrame>
  )
}

function AgainstAngle({ wire, coil }: { readonly wire: WireSnapshot; readonly coil: WireCoil }) {
  const { angle, along } = wire
  const parts = along.phases[coil.phase]!.parts.map((part) => ({ ...part, label: wirePartNames[part.part] }))
  return (
    <ChartFrame
      name="wire-angle"
      title={say`What the angle of the wire costs`}
      note={say`A straight wire across the magnets, in the first layer. A millimetre that leans by an angle cuts the cosine of that angle as much field, and a millimetre along the circumference cuts none. The cosine alone promises too much: the ends of a leaning wire lie over other places of the pole, and what they raise is out of step; the skew factor counts that. It still fails where the field fades at the magnets’ ends.`}
      draw={(width) => wireAngleChart({ width, height: 320, ...angle, parts })}
      data={() => wireAngleTable(angle)}
    />
  )
}

function Readings() {
  const [wished, setWished] = useState(0)
  const wire = useSight('wire')
  const result = snapshot.value
  if (!wire || !result) return <p class="note">{say`The wire is being walked along.`}</p>
  const { coils } = wire.along
  const index = Math.min(wished, coils.length - 1)
  const coil = coils[index]!
  const speed = toldSpeed(result.rows[chosenRow.value], result.cutInSpeed)
  return (
    <>
      {coils.length > 1 ? (
        <p class="fold-choice">
          <label for="wire-coil">{say`Winding looked at`}</label>{' '}
          <select
            id="wire-coil"
            value={index}
            onChange={(event) => setWished(Number(event.currentTarget.value))}
          >
            {coils.map((each, k) => (
              <option key={each.number} value={k}>
                {coilName(each, wire.along)}
              </option>
            ))}
          </select>
        </p>
      ) : null}
      <ByPart wire={wire} coil={coil} speed={speed} />
      <AlongTurn wire={wire} coil={coil} speed={speed} />
      <AgainstAngle wire={wire} coil={coil} />
    </>
  )
}

export function WireVoltage() {
  const [open, setOpen] = useState(false)
  return (
    <details class="card fold wire-voltage" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h3>{say`Where the volts arise`}</h3>
      </summary>
      {open ? <Readings /> : null}
    </details>
  )
}
