/** Where the watts go at the wind looked at. */

import { shaftPower } from '../../src/analysis/watts.ts'
import type { WindRow } from '../../src/index.ts'
import { shortNumber } from '../../src/output/chart/picture.ts'
import { type RibbonLoss, wattRibbonChart, wattText } from '../../src/output/chart/watt-ribbon.ts'
import { formatNumber } from '../../src/units/format.ts'
import type { Snapshot } from '../snapshot.ts'
import { ChartFrame } from './chart-frame.tsx'
import { DataTable } from './data-table.tsx'
import { rowSentence, usefulName } from './row-words.ts'

export function lossesOf(snapshot: Snapshot, { available, watts }: WindRow): RibbonLoss[] {
  const cable = { part: 'cable', label: 'cable heat', watts: watts.cable, className: 'loss-copper' }
  const diodes = { part: 'bridge', label: 'diode heat', watts: watts.diodes, className: 'loss-diode' }
  return [
    {
      part: 'blades',
      label: 'past the blades',
      watts: available - shaftPower(watts),
      className: 'loss-wind',
    },
    { part: 'shaft', label: 'bearings', watts: watts.friction, className: 'loss-shaft' },
    { part: 'shaft', label: 'eddy currents', watts: watts.eddy + watts.parts, className: 'loss-copper' },
    { part: 'winding', label: 'copper heat', watts: watts.winding, className: 'loss-copper' },
    ...(snapshot.cableBeforeBridge ? [cable, diodes] : [diodes, cable]),
    ...(snapshot.converter
      ? [
          {
            part: 'converter',
            label: 'converter heat',
            watts: watts.converter,
            className: 'loss-diode',
          },
        ]
      : []),
    ...(snapshot.loadKind === 'battery' || snapshot.loadKind === 'capacitor'
      ? [
          {
            part: snapshot.loadKind,
            label: `${snapshot.loadKind} heat`,
            watts: watts.battery,
            className: 'loss-diode',
          },
        ]
      : []),
  ]
}

const percent = (part: number, whole: number) => `${formatNumber(whole > 0 ? (100 * part) / whole : 0, 2)} %`

export function Ribbon({ snapshot, row }: { readonly snapshot: Snapshot; readonly row: WindRow }) {
  const losses = lossesOf(snapshot, row)
  const store = {
    battery: 'stored',
    resistor: 'resistor',
    heater: 'heater',
    lamp: 'lamp',
    capacitor: 'drawn',
    open: 'used',
  }[snapshot.loadKind]
  const shaft = shaftPower(row.watts)
  const rows = [
    { label: 'in the wind through the rotor', watts: row.available },
    ...losses,
    { label: usefulName(snapshot), watts: row.watts.useful },
  ]
  return (
    <ChartFrame
      name="ribbon"
      title={`Where the watts go at ${shortNumber(row.wind)} m/s`}
      note={<output aria-live="polite">{rowSentence(snapshot, row)}</output>}
      draw={(width) =>
        wattRibbonChart({
          width,
          wind: row.wind,
          available: row.available,
          losses,
          useful: { label: store, watts: row.watts.useful },
        })
      }
      table={() => (
        <DataTable
          caption={`Watts at ${shortNumber(row.wind)} m/s`}
          rows={rows}
          columns={[
            { head: 'where', cell: ({ label }) => label },
            { head: 'power', unit: 'W', cell: ({ watts }) => wattText(watts).replace(' W', '') },
            { head: 'of the wind', cell: ({ watts }) => percent(watts, row.available) },
            {
              head: 'of the shaft',
              cell: ({ watts }) => (watts > shaft * 1.000001 ? '' : percent(watts, shaft)),
            },
          ]}
        />
      )}
    />
  )
}
