/** The design on one page, to hang beside the bench: what to build, what it does, what the meter must show, what speaks against it. */
import type { Chain } from '../../analysis/compute.ts'
import type { Spreads } from '../../analysis/spread.ts'
import { escaped } from '../chart/picture.ts'
import { bladeBlock } from './blade-block.ts'
import { circuitBlock } from './circuit-block.ts'
import { cautionBlock, concernBlock, neededLines } from './concern-block.ts'
import { figureBlock } from './figure-block.ts'
import { machineBlock } from './machine-block.ts'
import { powerBlock } from './power-block.ts'
import { footHeight_mm, sheetFoot, sheetHead } from './sheet-head.ts'
import { headingHeight_mm } from './sheet-markup.ts'
import { paperStyle, sheetStyle } from './sheet-style.ts'
import { blockGap_mm, hairline_mm, lineHeight_mm, room_mm } from './sheet-unit.ts'
import { windingCard } from './winding-card.ts'

export interface DesignSheet {
  readonly chain: Chain
  readonly spreads: Spreads
  /** As it is to be printed. */
  readonly date: string
}

/** Draws that tell a half-width within some 10 %. */
export const sheetSamples = 128

/** Over a ruled block [mm]. */
const ruleHeight = 1.2 + hairline_mm
/** Left empty for what another face takes more [mm]. */
const spareHeight = 3
/** Concerns beyond these no longer help whoever stands at the bench. */
const mostLines = 24

interface Composed {
  readonly markup: (lines: number) => string
  /** Lines that are left for concerns. */
  readonly lines: number
}

function composed({ chain, spreads, date }: DesignSheet, winding: 'drawn' | 'in words'): Composed {
  const head = sheetHead(chain)
  const machine = machineBlock(chain)
  const figures = figureBlock(chain, spreads)
  const card = windingCard(chain, spreads, winding)
  const blades = bladeBlock(chain)
  const power = powerBlock(chain)
  const circuit = circuitBlock(chain)
  const caution = cautionBlock(chain)
  const taken =
    head.height +
    Math.max(machine.height, figures.height) +
    card.height +
    Math.max(blades.height + power.height + blockGap_mm, circuit.height) +
    headingHeight_mm +
    caution.height +
    footHeight_mm +
    6 * blockGap_mm +
    3 * ruleHeight +
    spareHeight
  return {
    lines: Math.floor((room_mm.height - taken) / lineHeight_mm),
    markup: (lines) => `<article class="sheet">${head.markup}
<div class="row">${machine.markup}<section>${figures.markup}</section></div>
<div class="row ruled winding">${card.markup}</div>
<div class="row ruled"><section class="stack">${blades.markup}${power.markup}</section><section>${circuit.markup}</section></div>
<section class="ruled">${concernBlock(chain, lines)}</section>
<section>${caution.markup}</section>
${sheetFoot(chain, date)}</article>`,
  }
}

/** The sheet itself, for a page that brings `sheetStyle`. */
export function sheetBody(sheet: DesignSheet): string {
  const drawn = composed(sheet, 'drawn')
  const { markup, lines } = drawn.lines >= neededLines(sheet.chain) ? drawn : composed(sheet, 'in words')
  return markup(Math.min(mostLines, lines))
}

/** The sheet as a file of its own: no script, nothing fetched. */
export const designSheet = (sheet: DesignSheet): string =>
  `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(sheet.chain.machine.name)} — design sheet</title>
<style>${paperStyle}${sheetStyle}</style></head>
<body>${sheetBody(sheet)}</body></html>
`
