/** Hands a file to the person: the browser puts it where downloads go. */

/** Long enough for the slowest browser to have taken hold of it [ms]. */
const kept = 10_000

export function saveFile(name: string, content: Blob): void {
  const address = URL.createObjectURL(content)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), kept)
}
