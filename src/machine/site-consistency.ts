/** Faults between the fields of the site: months or a histogram in which no wind blows. */
import { fault } from './consistency-fault.ts'
import type { Design } from './design.ts'
import type { Fault } from './fault.ts'

export function siteFaults({ site }: Design): Fault[] {
  const { monthlyMean_m_per_s: months, windHistogram } = site
  return [
    ...(months !== undefined && !months.some((mean) => mean > 0)
      ? [fault('site.monthlyMean_m_per_s', 'above zero in one month at least', 0, { suffix: 'm_per_s' })]
      : []),
    ...(windHistogram !== undefined && !windHistogram.count.some((count) => count > 0)
      ? [fault('site.windHistogram.count', 'above zero in one bin at least', 0)]
      : []),
  ]
}
