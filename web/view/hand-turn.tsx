/** Turns the machine by hand: speed, meter, two points, and what the meter shows of the wave between them. */
import { compareVolts } from '../../src/analysis/kind-of-volts.ts'
import { type MeterReading, meterReading, probedWave } from '../../src/analysis/meter-reading.ts'
import { ohmReadings } from '../../src/analysis/ohm-reading.ts'
import type { ProbePoint } from '../../src/analysis/probe-point.ts'
import { turnVerdict } from '../../src/analysis/turn-verdict.ts'
import type { Meter, TurnSource } from '../../src/index.ts'
import { meterNames } from '../../src/machine/meter.ts'
import { turnWaveChart, turnWaveTable } from '../../src/output/chart/turn-wave.ts'
import {
  comparisonSentences,
  displayText,
  flagSentence,
  functionWords,
  leadSentence,
  ohmSentence,
  verdictSentences,
} from '../../src/output/turn-words.ts'
import { formatNumber, formatSi } from '../../src/units/format.ts'
import { snapshot } from '../store/design.ts'
import {
  chosenMeter,
  chosenProbe,
  turnMeter,
  turnPoints,
  turnProbe,
  turnRpm,
  typedNumber,
  typedVolts,
} from '../store/turn.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { ChartFrame } from './chart-frame.tsx'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** Slowest of the slider, and its end for machines that begin early [rpm]. */
const slowest = 10
const usualEnd = 300

interface Turn {
  readonly source: TurnSource
  readonly meter: Meter
  readonly probe: ProbePoint
  /** [rad/s] */
  readonly speed: number
}

function Choice({ source, meter, probe }: Turn) {
  const end = Math.max(
    usualEnd,
    Number.isFinite(source.cutIn) ? Math.ceil((1.5 * source.cutIn * 60) / (2 * Math.PI) / 50) * 50 : 0,
  )
  const rpm = turnRpm.value
  return (
    <div class="turn-choice">
      <div class="slider">
        <label for="turn-speed">
          {say`Speed:`} <b>{shown(`${formatNumber(rpm)} rpm`)}</b>
        </label>
        <input
          id="turn-speed"
          type="range"
          min={slowest}
          max={end}
          step={2}
          value={rpm}
          aria-valuetext={say`${formatNumber(rpm)} turns a minute`}
          onInput={(event) => {
            turnRpm.value = Number(event.currentTarget.value)
          }}
        />
      </div>
      <div class="fault-choice">
        <span>
          <label for="turn-meter">{say`Meter`}</label>{' '}
          <select
            id="turn-meter"
            value={meter.name}
            onChange={(event) => {
              chosenMeter.value = event.currentTarget.value
            }}
          >
            {meterNames.map((name) => (
              <option key={name} value={name}>
                {capital(told(name))}
              </option>
            ))}
          </select>
        </span>
        <span>
          <label for="turn-probe">{say`Probes on`}</label>{' '}
          <select
            id="turn-probe"
            value={probe.id}
            onChange={(event) => {
              chosenProbe.value = event.currentTarget.value
            }}
          >
            {turnPoints.value.map(({ id, words }) => (
              <option key={id} value={id}>
                {capital(told(words))}
              </option>
            ))}
          </select>
        </span>
      </div>
    </div>
  )
}

function Display({ reading }: { readonly reading: MeterReading }) {
  const [rms, peak] = [formatSi(reading.rms, 'V'), formatSi(reading.peak, 'V')]
  const frequency = formatSi(reading.frequency, 'Hz')
  return (
    <div class="turn-display">
      <output class="turn-figure" aria-label={say`The meter shows`}>
        {shown(displayText(reading.shown, reading.step, 'V'))}
      </output>
      <p>
        {say`Switch on ${told(functionWords(reading))}.`}{' '}
        {say`It may be ${formatNumber(reading.least)} … ${formatNumber(reading.most)} V.`}{' '}
        {reading.function === 'direct'
          ? say`True rms ${rms}, peak ${peak}, mean before the diodes ${formatSi(reading.mean, 'V')}; the wave runs at ${frequency}.`
          : say`True rms ${rms}, peak ${peak}; the wave runs at ${frequency}.`}
      </p>
    </div>
  )
}

/** What makes the figure doubtful at this speed. */
function Flags({ reading, meter }: { readonly reading: MeterReading; readonly meter: Meter }) {
  if (reading.flags.length === 0) return null
  return (
    <ul class="turn-flags">
      {reading.flags.map((flag) => (
        <li key={flag}>{told(flagSentence(flag, reading, meter))}</li>
      ))}
    </ul>
  )
}

/** Points of the picture. */
const drawn = 241

function Wave({ turn, reading }: { readonly turn: Turn; readonly reading: MeterReading }) {
  const wave = probedWave(turn.source, turn, drawn)
  const time = 2 / reading.frequency
  return (
    <ChartFrame
      name="turn-wave"
      title={say`Between ${told(turn.probe.words)}`}
      draw={(width) =>
        turnWaveChart({
          width,
          wave,
          time,
          shown: reading.shown,
          rms: reading.rms,
          direct: reading.function === 'direct',
        })
      }
      data={() => turnWaveTable({ wave, time })}
    />
  )
}

function Read({ turn }: { readonly turn: Turn }) {
  const read = typedNumber(typedVolts.value)
  return (
    <div class="turn-read">
      <label for="turn-volts">{say`You read, V`}</label>
      <input
        id="turn-volts"
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={typedVolts.value}
        onInput={(event) => {
          typedVolts.value = event.currentTarget.value
        }}
      />
      <output for="turn-volts" aria-live="polite">
        {read === undefined
          ? typedVolts.value.trim() === ''
            ? say`Type what your meter showed at this speed, between these points.`
            : say`That is no number above zero.`
          : comparisonSentences(compareVolts(turn.source, { ...turn, read })).map((text) => (
              <p key={text}>{told(text)}</p>
            ))}
      </output>
    </div>
  )
}

function Turned({ source, meter, probe }: Omit<Turn, 'speed'>) {
  const turn = { source, meter, probe, speed: (2 * Math.PI * turnRpm.value) / 60 }
  const reading = meterReading(source, turn)
  const ohms = ohmReadings(source, meter)
  const leads = leadSentence(ohms, meter)
  return (
    <>
      <div class="card turn-bench">
        <Display reading={reading} />
        <Choice {...turn} />
        <Flags reading={reading} meter={meter} />
        <p class="note">
          {say`With nothing connected: what a meter shows between two points, how far it may be off, and what that proves. Fix what you turn; treat bare ends as live.`}
        </p>
        <Read turn={turn} />
      </div>
      <Wave turn={turn} reading={reading} />
      <dl class="turn-verdict card">
        {verdictSentences(source, turnVerdict(source, turn), turn).map(({ head, text }) => (
          <div key={head}>
            <dt>{told(head)}</dt>
            <dd>{told(text)}</dd>
          </div>
        ))}
        <div>
          <dt>{say`What do ohms show, cold and at rest?`}</dt>
          {leads === undefined ? null : <dd>{told(leads)}</dd>}
          {ohms.map((each) => (
            <dd key={each.words}>
              {capital(told(each.words))}: {told(ohmSentence(each, meter))}.
            </dd>
          ))}
        </div>
      </dl>
    </>
  )
}

export function HandTurn() {
  const source = snapshot.value?.turn
  const meter = turnMeter.value
  const probe = turnProbe.value
  return (
    <section class="bench turn" id="hand-turn">
      {source && meter && probe ? (
        <Turned source={source} meter={meter} probe={probe} />
      ) : (
        <p class="note waiting">{say`The first numbers are on their way.`}</p>
      )}
    </section>
  )
}
