/** A worker's pause between two steps. */

const channel = new MessageChannel()
const paused: (() => void)[] = []
channel.port1.onmessage = () => paused.shift()?.()

/** Lets messages that have arrived meanwhile be heard; a timer would be slowed to 4 ms. */
export const nextTurn = () =>
  new Promise<void>((resolve) => {
    paused.push(resolve)
    channel.port2.postMessage(null)
  })
