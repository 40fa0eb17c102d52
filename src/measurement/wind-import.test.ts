/** Checks of the import of loggers' files: any writing gives the same series, and every row is accounted for. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  dateFormNames,
  drawn,
  type LogForm,
  type LogRow,
  logRows,
  logText,
  plainForm,
} from '../../test/sample-log.ts'
import { clockReading } from './clock-text.ts'
import { cellReading } from './number-text.ts'
import { importWind, type WindImport, type WindImportOptions } from './wind-import.ts'

function imported(text: string, options: WindImportOptions = {}): WindImport {
  const steps = importWind(text, options)
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
  }
}

function good(text: string, options: WindImportOptions = {}) {
  const found = imported(text, options)
  if (!found.ok) throw new Error(found.reason)
  const { rows, refused } = found.report
  expect(refused.reduce((sum, { lines }) => sum + lines.length, 0)).toBe(rows.refused)
  expect(rows.blank + rows.comment + rows.header + rows.read + rows.refused).toBe(rows.total)
  expect(found.series.wind.length).toBe(rows.read)
  const { time } = found.series
  expect(time.every((each, k) => k === 0 || each > time[k - 1]!)).toBe(true)
  return found
}

const countOf = (found: ReturnType<typeof good>, kind: string): number =>
  found.report.refused.find((each) => each.kind === kind)?.lines.length ?? 0

const form: fc.Arbitrary<LogForm> = fc.record({
  separator: fc.constantFrom(',', ';', '\t', '|'),
  decimal: fc.constantFrom('.', ','),
  dates: fc.constantFrom(...dateFormNames),
  twelve: fc.boolean(),
  splitTime: fc.boolean(),
  quoted: fc.boolean(),
  bom: fc.boolean(),
  end: fc.constantFrom('\n', '\r\n'),
  order: fc.constantFrom(
    ['wind', 'gust', 'direction'],
    ['direction', 'gust', 'wind'],
    ['gust', 'direction', 'wind'],
  ) as fc.Arbitrary<LogForm['order']>,
  units: fc.constantFrom('in the head', 'in a row', 'behind the number'),
  unit: fc.constantFrom('m/s', 'km/h', 'mph', 'kn'),
})

describe('law: however it is written, it is the same series', () => {
  const rows = logRows(1900)
  const wanted = good(logText(rows)).series
  test('as it was made', () => {
    expect([...wanted.wind]).toEqual(rows.map(({ wind }) => wind))
    expect([...wanted.time]).toEqual(rows.map(({ clock }) => clock))
    expect(wanted.step).toBe(600)
  })
  test('separators, decimal marks, dates, quotes, column orders, units, line ends', () =>
    fc.assert(
      fc.property(form, (one) => {
        const { series, report } = good(logText(rows, one))
        expect(series.wind.length).toBe(rows.length)
        for (let k = 0; k < rows.length; k += 211) {
          expect(series.time[k]).toBe(rows[k]!.clock)
          expect(series.wind[k]).toBeCloseTo(rows[k]!.wind, 5)
          expect(series.extra.gust!.value[k]).toBeCloseTo(rows[k]!.gust, 5)
          expect((series.extra.direction!.value[k]! * 180) / Math.PI).toBeCloseTo(rows[k]!.direction, 9)
        }
        expect(report.unit).toEqual({ unit: one.unit, how: 'named' })
        expect(report.questions).toEqual([])
      }),
      { numRuns: 20 },
    ))
  test('newest first, or in no order at all', () => {
    const reversed = good(logText([...rows].reverse()))
    expect(reversed.series.wind).toEqual(wanted.wind)
    expect(reversed.report.newestFirst).toBe(true)
    const draw = drawn(3)
    const shuffled = [...rows].sort(() => draw() - 0.5)
    const found = good(logText(shuffled))
    expect(found.series.wind).toEqual(wanted.wind)
    expect(found.report.outOfOrder).toBeGreaterThan(100)
  })
})

describe('law: every row is accounted for', () => {
  const dirt = [
    '',
    '   ',
    '# note',
    'rubbish',
    '2024-02-30 10:00,3,4,5',
    ',,,',
    '2024-01-06 10:03,,,',
    '2024-01-06 10:04,-4,1,2',
    '2024-01-06 10:05,---,1,2',
    '2024-01-06 10:06,65535,1,2',
    '2024-01-06 10:07,fast,1,2',
    '2024-01-06 10:08,200,1,2',
    '"2024-01-06 10:09","5',
    '2024-01-06',
    'Timestamp,Wind speed (m/s),Gust (m/s),Wind direction (deg)',
  ]
  test('whatever is strewn in between', () =>
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            at: fc.integer({ min: 2, max: 400 }),
            text: fc.oneof(fc.constantFrom(...dirt), fc.string({ maxLength: 30 })),
          }),
          { maxLength: 25 },
        ),
        (strewn) => {
          const lines = logText(logRows(400)).split('\n')
          for (const { at, text } of strewn) lines.splice(at, 0, text)
          good(lines.join('\n'))
        },
      ),
      { numRuns: 25 },
    ))
  test('each kind by its name, with its line', () => {
    const lines = logText(logRows(300)).split('\n')
    const copy = lines[150]!
    lines.splice(
      151,
      0,
      copy,
      `${copy.slice(0, 19)},1.23,4,5`,
      '2024-01-06 10:04:00,-4,1,2',
      '2024-01-06 10:06:30,65535,1,2',
      '2024-01-06 10:07:30,fast,1,2',
      '2024-01-06 10:08:30,200,1,2',
      'no,time,at,all',
    )
    const found = good(lines.join('\n'))
    for (const kind of [
      'duplicate',
      'same-time',
      'negative',
      'no-wind',
      'unreadable-wind',
      'too-fast',
      'no-time',
    ])
      expect(countOf(found, kind), kind).toBe(1)
    expect([...found.report.refused.find(({ kind }) => kind === 'no-time')!.lines]).toEqual([158])
    expect(found.report.rows).toEqual({ total: 309, blank: 0, comment: 1, header: 1, read: 300, refused: 7 })
  })
  test('gaps are counted, the longest first', () => {
    const rows = logRows(1000).filter((_, k) => !(k >= 100 && k < 130) && k !== 500)
    const { report } = good(logText(rows))
    expect(report.gapCount).toBe(2)
    expect(report.missingReadings).toBe(31)
    expect(report.gaps[0]!.missing).toBe(30)
    expect(report.completeness).toBeCloseTo(0.969, 6)
  })
  test('a file without a wind, or with nothing in it, is refused with a reason', () => {
    for (const text of ['', '\ufeff', 'hello', 'a,b\n1,2\n', 'time,wind\n2024-01-01 00:00,5\n', '\n\n\n'])
      expect(imported(text).ok).toBe(false)
    expect(imported(logText(logRows(10)), { windColumn: 'Humidity' }).ok).toBe(false)
    expect(good(logText(logRows(30)), { windColumn: 'Gust (m/s)' }).series.wind[0]).toBe(logRows(30)[0]!.gust)
  })
})

/** The rows as a local clock writes them: forward an hour from `spring`, back again from `autumn`. */
const onLocalClock = (rows: readonly LogRow[], spring: number, autumn: number): LogRow[] =>
  rows.map((row) => ({ ...row, clock: row.clock + (row.clock >= spring && row.clock < autumn ? 3600 : 0) }))

describe('law: daylight saving loses no row', () => {
  const at = (...date: [number, number, number, number]) => Date.UTC(...date) / 1000
  // the clock shows 2:00 then, in Europe; the United States change on other Sundays
  const changes = [
    [at(2024, 2, 31, 2), at(2024, 9, 27, 2)],
    [at(2024, 2, 10, 2), at(2024, 10, 3, 1)],
  ] as const
  test('spring to autumn by half hours and hours, in order and sorted by the written clock', () => {
    for (const [spring, autumn] of changes)
      for (const step of [1800, 3600]) {
        const rows = logRows(Math.round((260 * 86_400) / step), { from: at(2024, 2, 1, 0), step })
        const written = onLocalClock(rows, spring, autumn)
        const { series, report } = good(logText(written))
        expect(report.rows.refused).toBe(0)
        expect(report.jumps.map(({ kind }) => kind)).toEqual(['missing hour', 'repeated hour'])
        expect(report.gapCount).toBe(0)
        expect([...series.time.slice(-3)]).toEqual(rows.slice(-3).map(({ clock }) => clock))
        if (step === 3600) continue
        const sorted = written
          .map((row, k) => ({ row, k }))
          .sort((a, b) => a.row.clock - b.row.clock || a.k - b.k)
          .map(({ row }) => row)
        const again = good(logText(sorted))
        expect(again.report.rows.refused).toBe(0)
        expect(again.series.time).toEqual(series.time)
      }
  })
  test('a night in autumn by ten minutes and by minutes', () => {
    for (const step of [60, 600]) {
      const rows = logRows(Math.round((2 * 86_400) / step), { from: at(2024, 9, 26, 0), step })
      const { series, report } = good(logText(onLocalClock(rows, 0, at(2024, 9, 27, 1))))
      expect(report.rows.refused).toBe(0)
      expect(report.jumps.map(({ kind }) => kind)).toEqual(['repeated hour'])
      expect(series.time[series.time.length - 1]! - series.time[0]!).toBe((rows.length - 1) * step)
    }
  })
  test('a stray hour that is missing on a weekday is a gap, a row written twice a copy', () => {
    const rows = logRows(2000, { from: at(2024, 2, 12, 0) })
    const gone = rows.filter(({ clock }) => !(clock >= at(2024, 2, 13, 2) && clock < at(2024, 2, 13, 3)))
    const { report } = good(logText(gone))
    expect(report.jumps).toEqual([])
    expect(report.gapCount).toBe(1)
    const hourly = logRows(200, { from: at(2024, 9, 20, 0), step: 3600 })
    const twice = hourly.flatMap((row) => (row.clock === at(2024, 9, 25, 2) ? [row, row] : [row]))
    expect(countOf(good(logText(twice)), 'duplicate')).toBe(1)
  })
  test('a clock that writes its zone needs no guess', () => {
    const lines = logRows(600, { from: at(2024, 9, 26, 0) }).map(({ clock, wind }) => {
      const summer = clock < at(2024, 9, 27, 1)
      const local = new Date((clock + (summer ? 7200 : 3600)) * 1000).toISOString().slice(0, 19)
      return `${local}${summer ? '+02:00' : '+01:00'};${wind}`
    })
    const { series, report } = good(`time;wind m/s\n${lines.join('\n')}`)
    expect(report.rows.refused).toBe(0)
    expect(report.gapCount).toBe(0)
    expect(series.time[599]! - series.time[0]!).toBe(599 * 600)
  })
})

describe('law: a sensor in trouble is found', () => {
  test('frozen for a night; spikes; calms are kept', () => {
    const rows = logRows(3000).map((row, k) =>
      k >= 700 && k < 760
        ? { ...row, wind: 4.4 }
        : k === 1500
          ? { ...row, wind: 48 }
          : k >= 2000 && k < 2040
            ? { ...row, wind: 0 }
            : row,
    )
    const found = good(logText(rows))
    expect(countOf(found, 'frozen')).toBe(60)
    expect(countOf(found, 'spike')).toBe(1)
    expect(found.report.calm.longest).toBe(40 * 600)
    expect(found.report.rows.read).toBe(2939)
  })
  test('a coarse sensor that often repeats itself is not frozen', () => {
    const rows = logRows(3000).map((row) => ({ ...row, wind: Math.round(row.wind) }))
    expect(countOf(good(logText(rows)), 'frozen')).toBe(0)
  })
})

describe('law: what the file does not say is asked', () => {
  const rows = logRows(300)
  const bare = (factor: number) =>
    rows
      .map(
        ({ clock, wind }) =>
          `${new Date(clock * 1000).toISOString().slice(0, 16)},${(wind * factor).toFixed(3)}`,
      )
      .join('\n')
  test('the unit where none is named, more pressing where the mean is implausible', () => {
    const plain = good(`time,wind\n${bare(1)}`)
    expect(plain.report.questions.map(({ about }) => about)).toEqual(['unit'])
    const fast = good(`time,wind\n${bare(3.6)}`)
    expect(fast.report.questions[0]!.text).toContain('hardly any site')
    const told = good(`time,wind\n${bare(3.6)}`, { unit: 'km/h' })
    expect(told.report.questions).toEqual([])
    expect(told.series.wind[9]).toBeCloseTo(rows[9]!.wind, 3)
  })
  test('the column where there is no head', () =>
    expect(good(bare(1)).report.questions.map(({ about }) => about)).toEqual(['unit', 'column']))
  test('day and month where no date tells; the clock tells where it runs over a month’s end', () => {
    const one = (month: number, day: number, count: number) =>
      good(
        logText(logRows(count, { from: Date.UTC(2024, month - 1, day) / 1000 }), {
          ...plainForm,
          dates: 'month first',
        }),
      )
    expect(one(3, 4, 100).report.dateOrder.how).toBe('assumed')
    expect(one(3, 4, 100).report.questions.map(({ about }) => about)).toEqual(['date order'])
    const crossing = one(3, 4, 300).report.dateOrder
    expect(crossing).toEqual({ order: 'month first', how: 'an even clock' })
    expect(one(3, 4, 1800).report.dateOrder).toEqual({ order: 'month first', how: 'a day above 12' })
  })
})

describe('law: cells', () => {
  test('numbers', () => {
    const value = (cell: string, decimal: '.' | ',' = '.') => {
      const found = cellReading(cell, decimal)
      return found.kind === 'number' ? found.value : found.kind
    }
    expect(value('1.5')).toBe(1.5)
    expect(value('1,5', ',')).toBe(1.5)
    expect(value('1.5', ',')).toBe('unreadable')
    expect(value('1,5')).toBe('unreadable')
    expect(value('1.013,25', ',')).toBe(1013.25)
    expect(value('−2.5e-1')).toBe(-0.25)
    expect(value('5.2 m/s')).toBe(5.2)
    for (const cell of ['', '-', '---', 'NaN', 'n/a', 'NULL', '65535', '-9999', '999.9'])
      expect(value(cell)).toBe('missing')
    for (const cell of ['x5', '1.2.3', '0x10', 'true', '5 6']) expect(value(cell), cell).toBe('unreadable')
  })
  test('times', () => {
    const wanted = Date.UTC(2024, 2, 5, 14, 30) / 1000
    for (const text of [
      '2024-03-05 14:30',
      '2024-03-05T14:30:00',
      '2024/3/5 14:30',
      '20240305 1430',
      '202403051430',
      '20240305143000',
      '5-Mar-2024 14:30',
      '5. März 2024 14:30',
      'Mar 5, 2024 2:30 PM',
      'Tue 2024-03-05 14:30',
      '05.03.24 14:30',
      '5/3/2024 2:30pm',
      String(wanted),
      `${wanted}000`,
      '45356.6041667',
    ])
      expect(clockReading(text)?.dayFirst, text).toBe(wanted)
    expect(clockReading('3/5/2024 14:30')?.monthFirst).toBe(wanted)
    expect(clockReading('2024-03-05 24:00')?.dayFirst).toBe(Date.UTC(2024, 2, 6) / 1000)
    expect(clockReading('13/5/2024')?.monthFirst).toBeUndefined()
    for (const text of [
      '2024-02-30',
      '2024-13-01',
      '31.4.2024',
      '2024-03-05 25:00',
      '2024-03-05 12:61',
      '5.3',
      '12:30',
      '',
      '2024-03-05 13:00 PM',
    ])
      expect(clockReading(text), text).toBeUndefined()
  })
})
