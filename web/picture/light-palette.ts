/** The colours of the light theme, read off the page's own style sheets: a picture on paper is light whatever the screen is. */

/** A rule as far as it matters here: whom it styles, the condition it stands under, its custom properties. */
export interface PaletteRule {
  readonly selector: string
  /** Empty where it always holds. */
  readonly condition: string
  readonly properties: readonly (readonly [name: string, value: string])[]
}

const everywhere = /^(:root|html)$/
const light = /^(:root|html)?\[data-theme=["']?light["']?\]$/

const chooses = (selector: string, pattern: RegExp): boolean =>
  selector.split(',').some((one) => pattern.test(one.trim()))

/** Custom properties of the light theme by name: those of every theme, then the light one's own over them. */
export function lightPalette(rules: readonly PaletteRule[]): Map<string, string> {
  const plain = rules.filter(
    ({ condition }) => condition === '' || /prefers-color-scheme:\s*light/.test(condition),
  )
  return new Map(
    [everywhere, light].flatMap((pattern) =>
      plain.filter(({ selector }) => chooses(selector, pattern)).flatMap(({ properties }) => properties),
    ),
  )
}

const ownProperties = ({ style }: CSSStyleRule): (readonly [string, string])[] =>
  Array.from(style)
    .filter((name) => name.startsWith('--'))
    .map((name) => [name, style.getPropertyValue(name)] as const)

const rulesIn = (list: CSSRuleList, condition: string): PaletteRule[] =>
  Array.from(list).flatMap((rule): PaletteRule[] => {
    if (rule instanceof CSSStyleRule)
      return [{ selector: rule.selectorText, condition, properties: ownProperties(rule) }]
    return rule instanceof CSSMediaRule
      ? rulesIn(rule.cssRules, `${condition} ${rule.conditionText}`.trim())
      : []
  })

/** Those of a document. */
export const paletteRules = ({ styleSheets }: Pick<Document, 'styleSheets'>): PaletteRule[] =>
  Array.from(styleSheets).flatMap((sheet) => rulesIn(sheet.cssRules, ''))
