/** Concern: a paper template came out of the printer at another size than it was drawn. */
import { formatNumber, formatSi } from '../../units/format.ts'
import { nominal } from '../../units/quantity.ts'
import type { ConcernRule } from './concern.ts'

/** Share by which an edge may be off: half a millimetre on 100 mm, what a rule tells; common practice, no source. */
export const scaleTolerance = 0.005

/** Shorter bars than this are not told to half a per cent by a rule [mm]: common practice, no source. */
export const shortestBar_mm = 60

export interface TemplateScale {
  /** Printed over drawn, across the sheet and down it. */
  readonly across: number
  readonly down: number
}

export const offScale = ({ across, down }: TemplateScale): boolean =>
  Math.max(Math.abs(across - 1), Math.abs(down - 1)) > scaleTolerance + 1e-12

/**
 * Most that a sheet stretched one way more than the other turns a line through the middle [rad]. With k = down/across a
 * line at φ comes out at arctan(k tan φ); the greatest difference is arctan((k − 1)/(2 √k)), at tan φ = 1/√k.
 */
export function greatestTurn({ across, down }: TemplateScale): number {
  const k = down / across
  return Math.abs(Math.atan((k - 1) / (2 * Math.sqrt(k))))
}

export const templateScale: ConcernRule = {
  code: 'template-scale',
  title: 'The paper template is printed off its scale',
  basis:
    'Measured edges of the check square over the drawn one, across and down the sheet: more than 0.5 % off either way (half a millimetre on 100 mm: common practice, no source) is a warning. What it does is told at the outer end of the magnets, and as electrical degrees where the sheet is stretched one way. A check square under 60 mm is a note, for a rule cannot tell its scale.',
  judge: (chain) => {
    const { machine } = chain
    const { template } = machine.design.bench
    if (template === undefined) return undefined
    const drawn = nominal(template.drawn_mm)
    const scale = { across: nominal(template.across_mm) / drawn, down: nominal(template.down_mm) / drawn }
    const off = offScale(scale)
    if (!off && drawn >= shortestBar_mm) return undefined
    const { pitchRadius, magnet, polePairs, arrangement } = machine.rotor
    const reach = arrangement === 'drum' ? pitchRadius : pitchRadius + magnet.length / 2
    const worst = Math.abs(scale.across - 1) >= Math.abs(scale.down - 1) ? scale.across : scale.down
    const turn = (greatestTurn(scale) * 180) / Math.PI
    return {
      code: 'template-scale',
      severity: off ? 'warning' : 'note',
      path: 'bench.template',
      what: off
        ? 'The template came out of the printer at another size than it was drawn.'
        : 'The check square is too short to tell the template’s scale with a rule.',
      why: 'Printers shrink a page to their margins unless told not to, and some feed the paper a little long or short. Angles survive an even scale, radii and pockets do not; a page stretched one way bends the angles as well.',
      figures: `Drawn ${formatNumber(drawn)} mm, measured ${formatNumber(nominal(template.across_mm), 4)} mm across and ${formatNumber(nominal(template.down_mm), 4)} mm down: ${formatNumber(100 * scale.across, 4)} % and ${formatNumber(100 * scale.down, 4)} % (limit 100 ± 0.5 %). At ${formatSi(reach, 'mm')} from the shaft a mark is ${formatSi(Math.abs(worst - 1) * reach, 'mm', 2)} out of place${
        turn * polePairs > 0.05
          ? `, and lines are turned by up to ${formatNumber(turn, 2)}°, which is ${formatNumber(turn * polePairs, 2)}° electrical`
          : ''
      }.`,
      remedies: [
        'Print anew at actual size, 100 %, with “fit to page” off, and measure both edges before anything is drilled.',
        'Measure a long edge with a steel rule, not with a tape and not from its end.',
        'Do not make up for it by scaling in the printer: a second sheet must come out alike.',
      ],
    }
  },
  measure: ({ machine }) => {
    const { template } = machine.design.bench
    if (template === undefined) return undefined
    const drawn = nominal(template.drawn_mm)
    const off = Math.max(
      Math.abs(nominal(template.across_mm) / drawn - 1),
      Math.abs(nominal(template.down_mm) / drawn - 1),
    )
    return { name: 'error of scale', value: off, limit: scaleTolerance, unit: 'percent', sound: 'below' }
  },
  answeredBy: 'Both edges of the check square on the new print, measured with a steel rule.',
}
