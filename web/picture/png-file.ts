/** A picture as a PNG of twice as many points, so that it stays sharp in a post or on paper. */
import type { SvgFile } from './svg-file.ts'

const pointsPerPixel = 2

const loaded = (address: string): Promise<HTMLImageElement> =>
  new Promise((resolve, reject) => {
    const image = new Image()
    image.onload = () => resolve(image)
    image.onerror = () => reject(new Error('the browser could not read its own picture'))
    image.src = address
  })

export async function pngFile({ text, width, height }: SvgFile): Promise<Blob> {
  // as data, not as a blob: the page's rules about images then hold as they are
  const image = await loaded(`data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`)
  const canvas = document.createElement('canvas')
  canvas.width = Math.round(width * pointsPerPixel)
  canvas.height = Math.round(height * pointsPerPixel)
  const pen = canvas.getContext('2d')
  if (pen === null) throw new Error('the browser gave no canvas to draw on')
  pen.drawImage(image, 0, 0, canvas.width, canvas.height)
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob === null ? reject(new Error('the picture is too large for a PNG')) : resolve(blob)),
      'image/png',
    )
  })
}
