/** Dates and times as loggers write them, read both ways where day and month could be either. */

/** Seconds since 1970-01-01 00:00 on the clock that was written down; undefined where that reading is no date. */
export interface ClockReading {
  readonly dayFirst: number | undefined
  readonly monthFirst: number | undefined
  /** Seconds that this clock is ahead of universal time, where it was written. */
  readonly zone: number | undefined
}

const months: Readonly<Record<string, number>> = Object.fromEntries(
  [
    'jan janv januar january ene enero gen',
    'feb fev févr fevr februar february fév febrero',
    'mar mär märz mars march mrz maart mrt marzo',
    'apr avr april avril abr abril',
    'may mai mayo mei mag maj',
    'jun juin juni june junio giu',
    'jul juil juli july juillet julio lug',
    'aug août aout august ago agosto',
    'sep sept september septembre septiembre set',
    'oct okt oktober october octobre octubre ott',
    'nov november novembre noviembre',
    'dec dez déc december dezember décembre decembre dic diciembre',
  ].flatMap((words, k) => words.split(' ').map((word) => [word, k + 1])),
)

/** Seconds of a day in the calendar; undefined for one that is in none. */
function dayStart(year: number, month: number, day: number): number | undefined {
  if (month < 1 || month > 12 || day < 1 || day > 31 || year < 1900 || year > 2200) return undefined
  const milliseconds = Date.UTC(year, month - 1, day)
  return new Date(milliseconds).getUTCDate() === day ? milliseconds / 1000 : undefined
}

const fullYear = (text: string): number =>
  text.length === 4 ? Number(text) : Number(text) + (Number(text) < 70 ? 2000 : 1900)

const timeShape =
  /^(\d{1,2})(?:[:.h](\d{2})(?:[:.](\d{2})(?:[.,](\d+))?)?)?\s*([ap]\.?m\.?)?\s*(z|utc|gmt|(?:utc|gmt)?[+-]\d{2}:?\d{2})?$/i
const compactTime = /^(\d{2})(\d{2})(\d{2})?$/

interface TimeOfDay {
  readonly seconds: number
  readonly zone: number | undefined
}

function timeOfDay(text: string): TimeOfDay | undefined {
  if (text === '') return { seconds: 0, zone: undefined }
  const compact = compactTime.exec(text)
  const match = compact ? [text, compact[1], compact[2], compact[3]] : timeShape.exec(text)
  if (!match) return undefined
  const [, hourText = '0', minuteText, secondText, fraction, half, zoneText] = match
  if (minuteText === undefined && half === undefined) return undefined
  let hour = Number(hourText)
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return undefined
    hour = (hour % 12) + (/^p/i.test(half) ? 12 : 0)
  }
  const minute = Number(minuteText ?? 0)
  const second = Number(secondText ?? 0)
  if (hour > 24 || minute > 59 || second > 60 || (hour === 24 && (minute > 0 || second > 0))) return undefined
  const signed = zoneText === undefined ? undefined : /([+-])(\d{2}):?(\d{2})$/.exec(zoneText)
  const zone =
    zoneText === undefined
      ? undefined
      : signed
        ? (signed[1] === '-' ? -1 : 1) * (Number(signed[2]) * 3600 + Number(signed[3]) * 60)
        : 0
  return { seconds: hour * 3600 + minute * 60 + second + Number(`0.${fraction ?? 0}`), zone }
}

function reading(
  dayFirst: number | undefined,
  monthFirst: number | undefined,
  rest: string,
): ClockReading | undefined {
  if (dayFirst === undefined && monthFirst === undefined) return undefined
  const time = timeOfDay(rest.trim())
  if (!time) return undefined
  return {
    dayFirst: dayFirst === undefined ? undefined : dayFirst + time.seconds,
    monthFirst: monthFirst === undefined ? undefined : monthFirst + time.seconds,
    zone: time.zone,
  }
}

const weekday = /^(?:mo|tu|we|th|fr|sa|su|di|mi|do|so|lu|ma|me|je|ve|sá|mié)[a-zé]{0,8}[.,]?\s+(?=\S)/i
const yearFirst = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ,_]+(.*))?$/i
const yearLast = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})(?:[T ,_]+(.*))?$/i
const dayNamed = /^(\d{1,2})[-/. ]+(\p{L}{3,9})\.?[-/. ,]+(\d{4}|\d{2})(?:[T ,_]+(.*))?$/u
const monthNamed = /^(\p{L}{3,9})\.?[-/. ]+(\d{1,2}),?[-/. ]+(\d{4})(?:[T ,_]+(.*))?$/u
const compactDate = /^((?:19|20)\d{2})(\d{2})(\d{2})(?:[T _-]?(\d{2,6}))?$/
const epochSeconds = /^\d{9,10}(?:\.\d+)?$/
const epochMilliseconds = /^\d{12,13}$/
/** Days since the last day of 1899, as spreadsheets count. */
const serialDays = /^\d{5}(?:\.\d+)?$/
const serialOfEpoch = 25_569

function sure(day: number | undefined, rest = ''): ClockReading | undefined {
  return reading(day, day, rest)
}

const digit = (text: string, at: number): number => text.charCodeAt(at) - 48

/** The usual form of a logger, 2024-03-01 12:50 or with seconds, without any pattern. */
function quick(text: string): ClockReading | undefined {
  if ((text.length !== 16 && text.length !== 19) || text[4] !== '-' || text[7] !== '-' || text[13] !== ':')
    return undefined
  if (text.length === 19 && text[16] !== ':') return undefined
  if (text[10] !== ' ' && text[10] !== 'T') return undefined
  const two = (at: number) => 10 * digit(text, at) + digit(text, at + 1)
  for (let i = 0; i < text.length; i++) {
    if (i === 4 || i === 7 || i === 10 || i === 13 || i === 16) continue
    const d = digit(text, i)
    if (!(d >= 0 && d <= 9)) return undefined
  }
  const [hour, minute, second] = [two(11), two(14), text.length === 19 ? two(17) : 0]
  if (hour > 23 || minute > 59 || second > 59) return undefined
  const day = dayStart(100 * two(0) + two(2), two(5), two(8))
  if (day === undefined) return undefined
  const seconds = day + hour * 3600 + minute * 60 + second
  return { dayFirst: seconds, monthFirst: seconds, zone: undefined }
}

/** The time that a text tells, or nothing. */
export function clockReading(written: string): ClockReading | undefined {
  const text = written.trim()
  // March and mardi begin alike: a weekday is taken off only where the whole is no date
  return (
    quick(text) ??
    dateReading(text) ??
    (weekday.test(text) ? dateReading(text.replace(weekday, '')) : undefined)
  )
}

function dateReading(text: string): ClockReading | undefined {
  let match = yearFirst.exec(text)
  if (match) return sure(dayStart(Number(match[1]), Number(match[2]), Number(match[3])), match[4])
  match = yearLast.exec(text)
  if (match) {
    const [a, b, year] = [Number(match[1]), Number(match[2]), fullYear(match[3]!)]
    return reading(dayStart(year, b, a), dayStart(year, a, b), match[4] ?? '')
  }
  match = dayNamed.exec(text)
  const named = match && months[match[2]!.toLowerCase()]
  if (match && named) return sure(dayStart(fullYear(match[3]!), named, Number(match[1])), match[4])
  match = monthNamed.exec(text)
  const first = match && months[match[1]!.toLowerCase()]
  if (match && first) return sure(dayStart(Number(match[3]), first, Number(match[2])), match[4])
  match = compactDate.exec(text)
  if (match) {
    const time = match[4] ?? ''
    const found = sure(
      dayStart(Number(match[1]), Number(match[2]), Number(match[3])),
      time.length === 2 ? `${time}00` : time,
    )
    if (found) return found
  }
  const counted = epochMilliseconds.test(text)
    ? Number(text) / 1000
    : epochSeconds.test(text)
      ? Number(text)
      : undefined
  if (counted !== undefined) return { dayFirst: counted, monthFirst: counted, zone: 0 }
  if (serialDays.test(text) && Number(text) > 20_000 && Number(text) < 80_000) {
    // a day's fraction is written to about a second
    const seconds = Math.round((Number(text) - serialOfEpoch) * 86_400)
    return { dayFirst: seconds, monthFirst: seconds, zone: undefined }
  }
  return undefined
}
