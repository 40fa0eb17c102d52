/** A refusal of the engine as the page shows faults: its place, what must hold, and what was received. */
import type { Refusal } from '../src/index.ts'
import type { ShownFault } from './messages.ts'

export function faultOfRefusal(error: Refusal): ShownFault {
  const [path = '', rest = ''] = error.message.split(' must be ')
  const [condition = '', received = ''] = rest.split('; received ')
  return {
    path,
    condition,
    received: received.replace(/ \([a-z-]+\)$/, ''),
    code: error.code,
    text: error.message,
  }
}
