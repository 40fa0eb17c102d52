/** The reaches of the river of watts at one wind: what arrives at each station, and what leaves there. */
import { shaftPower } from '../../src/analysis/watts.ts'
import type { WindRow } from '../../src/index.ts'
import type { RiverReach } from '../../src/output/chart/river.ts'
import type { Snapshot } from '../snapshot.ts'
import type { StationKey } from '../store/room.ts'
import { say } from '../text/say.ts'

export interface StationReach extends RiverReach {
  readonly key: StationKey
}

export const stationNames: Readonly<Record<StationKey, () => string>> = {
  wind: () => say`Wind`,
  blades: () => say`Blades`,
  shaft: () => say`Shaft`,
  magnets: () => say`Magnets`,
  winding: () => say`Winding`,
  bridge: () => say`Bridge`,
  cable: () => say`Cable`,
  store: () => say`Store`,
}

/** What the store is called where it is known what stands there. */
export const storeNames: Readonly<Record<Snapshot['loadKind'], () => string>> = {
  battery: () => say`Battery`,
  resistor: () => say`Resistor`,
  heater: () => say`Heater`,
  lamp: () => say`Lamp`,
  capacitor: () => say`Capacitor`,
  open: () => say`No load`,
}

type Part = Omit<StationReach, 'arriving'>

export function reachesOf(snapshot: Snapshot, { available, watts }: WindRow): StationReach[] {
  const bridge: Part = {
    key: 'bridge',
    label: stationNames.bridge(),
    water: 'electric',
    losses: [
      { label: say`diode heat`, watts: watts.diodes },
      ...(snapshot.converter ? [{ label: say`converter heat`, watts: watts.converter }] : []),
    ],
  }
  const cable: Part = {
    key: 'cable',
    label: stationNames.cable(),
    water: 'electric',
    losses: [{ label: say`cable heat`, watts: watts.cable }],
  }
  const parts: Part[] = [
    { key: 'wind', label: stationNames.wind(), water: 'wind', losses: [] },
    {
      key: 'blades',
      label: stationNames.blades(),
      water: 'wind',
      losses: [{ label: say`past the blades`, watts: Math.max(0, available - shaftPower(watts)) }],
    },
    {
      key: 'shaft',
      label: stationNames.shaft(),
      water: 'shaft',
      losses: [{ label: say`bearings`, watts: watts.friction }],
    },
    {
      key: 'magnets',
      label: stationNames.magnets(),
      water: 'shaft',
      losses: [{ label: say`eddy currents`, watts: watts.eddy + watts.parts }],
    },
    {
      key: 'winding',
      label: stationNames.winding(),
      water: 'electric',
      losses: [{ label: say`copper heat`, watts: watts.winding }],
    },
    ...(snapshot.cableBeforeBridge ? [cable, bridge] : [bridge, cable]),
    {
      key: 'store',
      label: storeNames[snapshot.loadKind](),
      water: 'electric',
      losses:
        snapshot.loadKind === 'battery' || snapshot.loadKind === 'capacitor'
          ? [{ label: say`heat inside`, watts: watts.battery }]
          : [],
    },
  ]
  let arriving = available
  return parts.map((part) => {
    const reach = { ...part, arriving: Math.max(0, arriving) }
    arriving -= part.losses.reduce((sum, loss) => sum + loss.watts, 0)
    return reach
  })
}
