/** The room of the bridge: the diodes, a converter behind them, and the amps they pass. */
import { windDetail } from '../store/design.ts'
import { BridgeLoss } from '../view/bridge-loss.tsx'
import { CircuitView } from '../view/circuit.tsx'
import { ConverterCurve } from '../view/converter-curve.tsx'
import { Waveform } from '../view/waveform.tsx'
import type { RoomSight, RoomView } from './room.ts'

function View({ result, row }: RoomView) {
  const detail = windDetail.value
  return (
    <>
      <BridgeLoss row={row} />
      {result.converter ? <ConverterCurve wind={row.wind} /> : null}
      {detail ? <Waveform detail={detail} row={row} /> : null}
      <CircuitView />
    </>
  )
}

export const bridgeRoom: RoomSight = { View }
