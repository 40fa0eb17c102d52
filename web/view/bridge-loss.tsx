/** What the diodes carry, lose and must block in the wind looked at, beside their labels. */
import type { BridgeDuty } from '../../src/analysis/bridge-duty.ts'
import { shaftPower } from '../../src/analysis/watts.ts'
import type { ResultSpread, WindRow } from '../../src/index.ts'
import { intervalText } from '../../src/output/interval-words.ts'
import { formatNumber, formatSi, formatSpread } from '../../src/units/format.ts'
import { spreads } from '../store/design.ts'
import { windSaid } from '../store/measure.ts'
import { useSight } from '../store/sight.ts'
import { told } from '../text/engine-sentence.ts'
import { say, shown } from '../text/say.ts'
import { FigureList, type ShownFigure } from './figure-list.tsx'
import { dominantGuess } from './guess-words.ts'

const amps = (value: number): string => formatSi(value, 'A')

function currentFigure(duty: BridgeDuty): ShownFigure {
  const { single, mean, rms, peak, output, ratedCurrent } = duty
  const carried = single ? mean : output
  return {
    name: single ? say`One diode carries` : say`The bridge passes`,
    value: shown(amps(carried)),
    ...(ratedCurrent !== undefined && carried > ratedCurrent
      ? { trouble: say`more than its label allows` }
      : {}),
    note:
      ratedCurrent === undefined
        ? say`On average; ${amps(rms)} rms and ${amps(peak)} at the peak in one diode. Its kind is not known.`
        : single
          ? say`On average; ${amps(rms)} rms, ${amps(peak)} at the peak. Its label says ${amps(ratedCurrent)} on average, on metal that cools it.`
          : say`On average; one diode ${amps(mean)}, ${amps(rms)} rms, ${amps(peak)} at the peak. The label says ${amps(ratedCurrent)} on average, on metal that cools it.`,
  }
}

function heatFigure(duty: BridgeDuty, row: WindRow): ShownFigure {
  const { wholeLoss, lossSpread, loss, diodes, drive } = duty
  const share = formatNumber((100 * wholeLoss) / shaftPower(row.watts), 2)
  return {
    name: say`Heat in all ${diodes} diodes`,
    value: shown(formatSpread(wholeLoss, lossSpread, 'W')),
    note: [
      say`${share} % of what comes in at the shaft; ${formatSi(loss, 'W')} in the one that carries most. The spread is how far the drop of such diodes differs from maker to maker.`,
      ...(drive > 0
        ? [say`What switches its transistors draws ${formatSi(drive, 'W')} more, wind or calm.`]
        : []),
    ].join(' '),
  }
}

function reverseFigures(duty: BridgeDuty, spread: ResultSpread | undefined): ShownFigure[] {
  const { reverse, reverseLost, reverseWanted: wanted, ratedReverse } = duty
  return [
    {
      name: say`Each must block in this wind`,
      value: shown(formatSi(reverse, 'V')),
      note:
        ratedReverse === undefined
          ? say`Its label is not known.`
          : say`Its label says ${formatSi(ratedReverse, 'V')}.`,
    },
    {
      name: say`Each must block with the load lost`,
      value: told(intervalText(reverseLost, 'V', spread)),
      ...(ratedReverse !== undefined && ratedReverse < wanted
        ? { trouble: say`wanted on the label: ${formatSi(wanted, 'V')}` }
        : {}),
      note: [
        say`${formatSi(wanted, 'V')} are wanted on the label, for the spikes on top (common practice, no source).`,
        dominantGuess(spread),
      ]
        .join(' ')
        .trim(),
    },
  ]
}

export function BridgeLoss({ row }: { readonly row: WindRow }) {
  const duty = useSight('bridgeDuty')
  const title = say`What the diodes do at ${windSaid(row.wind)}`
  if (duty === undefined || Math.abs(duty.wind - row.wind) > 1e-9)
    return (
      <section class="card">
        <h3>{title}</h3>
        <p class="note">
          {row.dcCurrent > 0
            ? say`It is being worked out.`
            : say`In this wind no current flows through the bridge.`}
        </p>
      </section>
    )
  const figures = [
    currentFigure(duty),
    heatFigure(duty, row),
    ...reverseFigures(duty, spreads.value?.runawayVoltage),
  ]
  const { wholeLoss } = duty
  return (
    <section class="card bridge-loss">
      <h3>{title}</h3>
      <FigureList label={title} figures={figures} />
      <p class="note">
        {say`How warm the case gets is not computed: it hangs on the metal that it is bolted to. On a plate that warms by 1 K for each watt it stands ${formatNumber(wholeLoss, 2)} K above the air, on one half as good ${formatNumber(2 * wholeLoss, 2)} K. Feel for it with a thermometer, not with a finger.`}
      </p>
    </section>
  )
}
