/** Where along the wire the volts arise: by part, along one turn, and against the angle of the wire. */
import { useEffect, useState } from 'preact/hooks'
import {
  inPhasePerMetre,
  instantPerMetre,
  peakAngle,
  type WireCoil,
} from '../../src/analysis/wire-reading.ts'
import type { WindRow } from '../../src/index.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import { wireAngleChart } from '../../src/output/chart/wire-angle.ts'
import { wireProfileChart } from '../../src/output/chart/wire-profile.ts'
import { shareText, wireVoltageChart } from '../../src/output/chart/wire-voltage.ts'
import { wirePartNames } from '../../src/output/wire-part-name.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import { row as chosenRow, snapshot, watchWire, wireDetail } from '../store/design.ts'
import type { WireSnapshot } from '../wire-snapshot.ts'
import { ChartFrame } from './chart-frame.tsx'
import { DataTable } from './data-table.tsx'
import { rpmText } from './row-words.ts'

/** For a machine at rest and without a cut-in speed: 100 rpm [rad/s]. */
const plainSpeed = (100 * Math.PI) / 30

/** Speed at which volts per length are told: of the wind looked at, else where current begins. */
export function toldSpeed(row: WindRow | undefined, cutInSpeed: number): number {
  if (row && row.speed > 0) return row.speed
  return cutInSpeed > 0 && Number.isFinite(cutInSpeed) ? cutInSpeed : plainSpeed
}

const degrees = (angle: number) => (180 * angle) / Math.PI

function coilName(
  { number, phase, sense, shape }: WireCoil,
  { coils, shapes }: WireSnapshot['along'],
): string {
  const alone = coils.filter((coil) => coil.phase === phase).length === 1
  const reversed = sense < 0 ? ', wound the other way' : ''
  const kind = shapes[shape]!.repeats > 1 ? 'wave' : 'coil'
  return alone ? `phase ${phase + 1}` : `${kind} ${number}, phase ${phase + 1}${reversed}`
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
  const idle = parts.filter(({ share, copperShare }) => share < 0.2 * copperShare)
  const spent = idle.reduce((sum, { copperShare }) => sum + copperShare, 0)
  return (
    <ChartFrame
      name="wire-parts"
      title={`By part of the winding, phase ${coil.phase + 1}`}
      note={`At ${rpmText(speed)} the phase raises ${formatSi(fundamental * speed, 'V')} peak, fundamental. ${
        spent > 0.005
          ? `${shareText(spent)} of its wire only joins: it costs copper and heat and gives next to nothing.`
          : 'All of its wire gives.'
      }`}
      draw={(width) =>
        wireVoltageChart({
          width,
          parts: parts.map((part) => ({ ...part, label: wirePartNames[part.part] })),
        })
      }
      table={() => (
        <DataTable
          caption={`Parts of phase ${coil.phase + 1} at ${rpmText(speed)}`}
          rows={parts}
          columns={[
            { head: 'part', cell: ({ part }) => wirePartNames[part] },
            { head: 'volts, peak', unit: 'V', cell: ({ volts }) => formatNumber(volts * speed) },
            { head: 'of the volts', unit: '%', cell: ({ share }) => formatNumber(100 * share) },
            {
              head: 'of it under the magnets',
              unit: '%',
              cell: ({ share, underShare }) => (share === 0 ? '—' : formatNumber((100 * underShare) / share)),
            },
            { head: 'wire', unit: 'm', cell: ({ length }) => formatNumber(length) },
            { head: 'of the ohms', unit: '%', cell: ({ copperShare }) => formatNumber(100 * copperShare) },
            { head: 'in step', unit: 'mV/mm', cell: ({ perMetre }) => formatNumber(perMetre * speed) },
            { head: 'angle to the run', unit: '°', cell: ({ lean }) => formatNumber(degrees(lean)) },
          ]}
        />
      )}
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
        shape.repeats > 1 ? 'Along the wire, over one pair of poles' : 'Along the wire, once round the coil'
      }
      note={`At ${rpmText(speed)}. Filled: the part in step with the phase, peak; below zero it works against the phase. Dotted: at the moment chosen with the slider. Tinted: under the magnets.`}
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
      table={() => (
        <DataTable
          caption="Element by element"
          rows={part.map((name, k) => ({ name, k }))}
          columns={[
            { head: 'from', unit: 'mm', cell: ({ k }) => formatNumber(1000 * shape.path[k]!) },
            { head: 'part', cell: ({ name }) => name },
            { head: 'angle to the run', unit: '°', cell: ({ k }) => formatNumber(degrees(shape.lean[k]!)) },
            { head: 'under magnets', cell: ({ k }) => (shape.underMagnets[k] ? 'yes' : 'no') },
            { head: 'in step', unit: 'mV/mm', cell: ({ k }) => formatNumber(inStep[k]!) },
            { head: 'at the moment', unit: 'mV/mm', cell: ({ k }) => formatNumber(moment[k]!) },
          ]}
        />
      )}
    >
      <div class="slider">
        <label for="wire-moment">Rotor past the phase’s peak: {shortNumber(angle)}° electrical</label>
        <input
          id="wire-moment"
          type="range"
          min={0}
          max={360}
          step={5}
          value={angle}
          aria-valuetext={`${shortNumber(angle)} degrees electrical`}
          onInput={(event) => setAngle(Number(event.currentTarget.value))}
        />
      </div>
    </ChartFrame>
  )
}

function AgainstAngle({ wire, coil }: { readonly wire: WireSnapshot; readonly coil: WireCoil }) {
  const { angle, along } = wire
  const parts = along.phases[coil.phase]!.parts.map((part) => ({ ...part, label: wirePartNames[part.part] }))
  const straight = angle.perMetre[0]!
  const percent = (value: number) => formatNumber(straight > 0 ? (100 * value) / straight : 0)
  return (
    <ChartFrame
      name="wire-angle"
      title="What the angle of the wire costs"
      note="A straight wire across the magnets, in the first layer. A millimetre that leans by an angle cuts the cosine of that angle as much field, and a millimetre along the circumference cuts none. The cosine alone promises too much: the ends of a leaning wire lie over other places of the pole, and what they raise is out of step; the skew factor counts that. It still fails where the field fades at the magnets’ ends."
      draw={(width) => wireAngleChart({ width, height: 320, ...angle, parts })}
      table={() => (
        <DataTable
          caption="Volts per length, in percent of a straight run"
          rows={Array.from(angle.lean, (lean, k) => ({ lean, k })).filter(({ k }) => k % 2 === 0)}
          columns={[
            { head: 'angle', unit: '°', cell: ({ lean }) => formatNumber(degrees(lean)) },
            { head: 'integrated', unit: '%', cell: ({ k }) => percent(angle.perMetre[k]!) },
            { head: 'cosine', unit: '%', cell: ({ k }) => percent(angle.cosine[k]!) },
            { head: 'cosine and skew', unit: '%', cell: ({ k }) => percent(angle.textbook[k]!) },
          ]}
        />
      )}
    />
  )
}

function Readings() {
  useEffect(watchWire, [])
  const [wished, setWished] = useState(0)
  const wire = wireDetail.value
  const result = snapshot.value
  if (!wire || !result) return <p class="note">The wire is being walked along.</p>
  const { coils } = wire.along
  const index = Math.min(wished, coils.length - 1)
  const coil = coils[index]!
  const speed = toldSpeed(result.rows[chosenRow.value], result.cutInSpeed)
  return (
    <>
      {coils.length > 1 ? (
        <p class="fold-choice">
          <label for="wire-coil">Winding looked at</label>{' '}
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
        <h3>Where the volts arise</h3>
      </summary>
      {open ? <Readings /> : null}
    </details>
  )
}
