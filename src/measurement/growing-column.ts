/** A column of numbers that grows row by row without moving all of them each time. */

export interface Column {
  readonly push: (value: number) => void
  readonly length: () => number
  /** The numbers so far. */
  readonly done: () => Float64Array
}

export function growing(): Column {
  let room = new Float64Array(1024)
  let used = 0
  return {
    push: (value) => {
      if (used === room.length) {
        const larger = new Float64Array(2 * room.length)
        larger.set(room)
        room = larger
      }
      room[used++] = value
    },
    length: () => used,
    done: () => room.slice(0, used),
  }
}
