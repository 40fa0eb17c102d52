/** The German catalogue: every subject in one list, fetched when German is chosen. */
import chart from './chart.json'
import concern from './concern.json'
import field from './field.json'
import hint from './hint.json'
import page from './page.json'
import refusal from './refusal.json'
import result from './result.json'

export const german: Readonly<Record<string, string>> = {
  ...result,
  ...refusal,
  ...chart,
  ...concern,
  ...field,
  ...hint,
  ...page,
}
