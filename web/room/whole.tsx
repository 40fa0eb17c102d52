/** The room of the whole machine: the figures asked for first, its power in every wind, every concern. */
import { WalkOffer } from '../hint/walk-start.tsx'
import { document as design, spreads } from '../store/design.ts'
import { openingExample } from '../store/example.ts'
import { narrow } from '../store/narrow.ts'
import { say } from '../text/say.ts'
import { FoldGroup } from '../view/fold-group.tsx'
import { KeyFigures } from '../view/key-figures.tsx'
import { PowerCurve } from '../view/power-curve.tsx'
import { RiverChart } from '../view/river-chart.tsx'
import type { RoomSight, RoomView } from './room.ts'

function View({ result, index, row }: RoomView) {
  return (
    <>
      <KeyFigures snapshot={result} row={row} spreads={spreads.value} />
      {design.value['name'] === openingExample.name ? <WalkOffer /> : null}
      <PowerCurve snapshot={result} index={index} />
      {narrow.value ? (
        // the river itself runs down the page there
        <FoldGroup title={say`The watts as a picture`} note={say`To be taken along, with its table.`}>
          <RiverChart row={row} />
        </FoldGroup>
      ) : (
        <RiverChart row={row} />
      )}
    </>
  )
}

export const wholeRoom: RoomSight = { View }
