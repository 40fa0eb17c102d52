/** The rules of an equal-resource contest, and their words. */

export const contestRules = [
  'equal-copper-mass',
  'equal-winding-volume',
  'equal-loss',
  'equal-cost',
  'as-they-are',
] as const

export type ContestRule = (typeof contestRules)[number]

export const contestRuleWords: Readonly<Record<ContestRule, string>> = {
  'equal-copper-mass': 'equal copper mass',
  'equal-winding-volume': 'equal winding volume',
  'equal-loss': 'equal loss',
  'equal-cost': 'equal cost',
  'as-they-are': 'as they are',
}
