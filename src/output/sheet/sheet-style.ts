/** How the sheet looks: black lines and letters on white, lengths in millimetres, words in 8 points, letters in drawings in 7.5. */
import { machineWidth } from './machine-block.ts'
import { boxWidth_mm, pairGap_mm, widestValue } from './sheet-markup.ts'
import { blockGap_mm, columnGap_mm, room_mm } from './sheet-unit.ts'
import { cardWidth } from './winding-card.ts'

/** Of the paper round it; the page of the browser does not take these over. */
export const paperStyle = `
@page { margin: 10mm; }
html, body { margin: 0; padding: 0; background: #fff; }
@media screen { body { padding: 10mm; } }
`

export const sheetStyle = `
.sheet {
  --ink: #000; --card: #fff; --line: #888; --c: #000;
  box-sizing: border-box; display: flex; flex-direction: column; gap: ${blockGap_mm}mm;
  width: ${room_mm.width}mm; height: ${room_mm.height}mm; margin: 0 auto; overflow: hidden;
  background: #fff; color: #000;
  font: 8pt/1.18 "Liberation Sans", Arial, Helvetica, "Nimbus Sans", sans-serif;
  font-variant-numeric: tabular-nums;
}
.sheet * { box-sizing: border-box; }
.sheet h1, .sheet h2, .sheet h3, .sheet p, .sheet dl, .sheet dd, .sheet ol, .sheet ul, .sheet figure { margin: 0; padding: 0; }
.sheet h1 { font-size: 15pt; line-height: 1.1; }
.sheet h2 { margin-bottom: 0.6mm; font-size: 9.5pt; line-height: 1.15; }
.sheet h3 { margin: 0.8mm 0 0.4mm; font-size: 8pt; }
.sheet h3:first-child { margin-top: 0; }
.sheet header { padding-bottom: 1mm; border-bottom: 0.5mm solid #000; font-size: 8.5pt; }
.sheet .row { display: flex; gap: ${columnGap_mm}mm; justify-content: space-between; }
.sheet .row > section { flex: 1 1 0; min-width: 0; }
.sheet .row > .machine { flex: none; width: ${machineWidth}mm; }
.sheet .ruled { padding-top: 1.2mm; border-top: 0.2mm solid #000; }
.sheet dl > div { display: flex; justify-content: space-between; gap: ${pairGap_mm}mm; margin-bottom: -1px; border-bottom: 1px dotted #888; }
.sheet dd { flex: none; max-width: ${100 * widestValue}%; text-align: right; font-weight: 700; }
.sheet .card { width: ${cardWidth}mm; }
.sheet .winding > div { flex: none; }
.sheet .winding > .drawn { flex: 1 1 0; min-width: 0; }
.sheet .stack > h2:nth-of-type(2) { margin-top: ${blockGap_mm}mm; }
.sheet .beside { display: flex; gap: 3mm; }
.sheet .beside > svg { flex: none; }
.sheet svg { display: block; font-size: 12px; }
.sheet table { width: 100%; border-collapse: collapse; }
.sheet th { padding: 0; text-align: left; font-weight: 400; white-space: nowrap; }
.sheet td { padding: 0 0 0 1mm; text-align: right; white-space: nowrap; }
.sheet .winds, .sheet .stations { table-layout: fixed; }
.sheet .winds th, .sheet .stations th { width: 16mm; }
.sheet .winds tr:first-child > *, .sheet .stations tr:first-child > * { border-bottom: 0.2mm solid #000; font-weight: 700; }
.sheet .readings th { width: 100%; white-space: normal; }
.sheet .readings td { font-weight: 700; }
.sheet .readings td:last-child { width: ${boxWidth_mm}mm; min-width: ${boxWidth_mm}mm; border-bottom: 0.2mm solid #000; }
.sheet h2 small { margin-left: 2mm; font-size: 8pt; font-weight: 400; }
.sheet tr { border-bottom: 1px dotted #888; }
.sheet .concerns, .sheet .parts { list-style: none; }
.sheet .concerns > li { overflow: hidden; white-space: nowrap; }
.sheet .concerns > .rest { white-space: normal; }
.sheet .parts > li { display: flex; gap: 1.5mm; }
.sheet .parts > li > b { flex: none; width: 2.5mm; }
.sheet .lack { font-weight: 700; }
.sheet footer { display: flex; justify-content: space-between; margin-top: auto; padding-top: 0.8mm; border-top: 0.2mm solid #000; }
.sheet text { fill: #000; font-size: 12px; }
.sheet .line-label, .sheet .pole-letter, .sheet .coil-number, .sheet .phase-name, .sheet .axis-text, .sheet .part-letter { font-weight: 700; }
.sheet .part-letter { font-size: 13px; }
.sheet .scaled text { font-size: 24px; }
.sheet .halo { paint-order: stroke; stroke: #fff; stroke-width: 4px; stroke-linejoin: round; }
.sheet .axis, .sheet .tick, .sheet .leader, .sheet .break, .sheet .scale-bar { fill: none; stroke: #000; stroke-width: 0.9; }
.sheet .grid, .sheet .guide { fill: none; stroke: #888; stroke-width: 0.8; }
.sheet .tick { stroke: #888; stroke-dasharray: 3 2; }
.sheet .body { fill: #fff; stroke: #000; stroke-width: 0.9; }
.sheet .ring-body { fill-rule: evenodd; }
.sheet .hatch-line { fill: none; stroke: #888; stroke-width: 0.7; }
.sheet .body-magnet, .sheet .pole-box { fill: #fff; stroke: #000; stroke-width: 0.9; }
.sheet .body-magnet.south, .sheet .pole-box.south { fill: #ddd; }
.sheet .body-magnet.missing, .sheet .pole-box.missing { stroke-dasharray: 3 2; }
.sheet .pole-ground { fill: none; }
.sheet .pole-ground.south { fill: #f0f0f0; }
.sheet .body-cover { fill: #fff; }
.sheet .body-winding { fill: #eee; }
.sheet .body-winding.aside { fill: #fff; stroke-dasharray: 4 3; }
.sheet .coil-band { fill: none; stroke: #000; stroke-linejoin: round; opacity: 0.1; }
.sheet .wire { fill: none; stroke: #000; stroke-width: 1.5; stroke-linejoin: round; }
.sheet .wire.ink-phase-2 { stroke-dasharray: 7 3; }
.sheet .wire.ink-phase-3 { stroke-dasharray: 2 2.5; }
.sheet .sense, .sheet .lead-tip, .sheet .joint, .sheet .current { fill: #000; }
.sheet .link { fill: none; stroke: #000; stroke-width: 1; }
.sheet .link.ink-phase-2 { stroke-dasharray: 7 3; }
.sheet .link.ink-phase-3 { stroke-dasharray: 2 2.5; }
.sheet .side { fill: #fff; stroke: #000; stroke-width: 1.1; }
.sheet .current-line { fill: none; stroke: #000; stroke-width: 1.1; }
.sheet .circuit { fill: none; stroke: #000; stroke-width: 1.4; stroke-linejoin: round; }
.sheet .circuit.solid { fill: #fff; }
.sheet .circuit.filled { fill: #000; }
.sheet .circuit.thick { stroke-width: 3.4; }
.sheet .blade { fill: #eee; stroke: #000; stroke-width: 1.1; }
.sheet .bucket { fill: none; stroke: #000; stroke-width: 2.4; }
`
