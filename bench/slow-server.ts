/** Serves built files compressed, as over a line of so many bits a second and so long a way. */
import { existsSync, readFileSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { Socket } from 'node:net'
import { extname, join, normalize } from 'node:path'
import { gzipSync } from 'node:zlib'

export interface Line {
  /** There and back [ms]. */
  readonly roundTrip: number
  /** [bit/s] */
  readonly rate: number
}

/** What was asked for, in the order of asking. */
export interface Sent {
  readonly file: string
  /** As it went over the line. */
  readonly bytes: number
}

export interface SlowServer {
  readonly address: string
  readonly sent: readonly Sent[]
  readonly stop: () => Promise<void>
}

const kinds: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
}

const packet = 4096

const pause = (time: number) => new Promise<void>((resolve) => setTimeout(resolve, time))

/** Of one visitor: all that is sent shares the line. */
export async function slowServer(folder: string, { roundTrip, rate }: Line): Promise<SlowServer> {
  const sent: Sent[] = []
  const met = new WeakSet<Socket>()
  let free = 0
  const server: Server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname))
    const file = join(folder, path === '/' ? 'index.html' : path)
    // a connection is made by a way there and back of its own
    const newcomer = !met.has(request.socket)
    met.add(request.socket)
    await pause(newcomer ? 2 * roundTrip : roundTrip)
    if (!file.startsWith(folder) || !existsSync(file)) {
      response.writeHead(404).end()
      return
    }
    const body = gzipSync(readFileSync(file))
    sent.push({ file: file.slice(folder.length + 1), bytes: body.length })
    response.writeHead(200, {
      'content-type': kinds[extname(file)] ?? 'application/octet-stream',
      'content-encoding': 'gzip',
      'content-length': body.length,
      'cache-control': 'max-age=3600',
    })
    for (let at = 0; at < body.length; at += packet) {
      const part = body.subarray(at, at + packet)
      free = Math.max(free, performance.now()) + (8000 * part.length) / rate
      await pause(free - performance.now())
      response.write(part)
    }
    response.end()
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const bound = server.address()
  if (bound === null || typeof bound === 'string') throw new Error('the server has no port')
  return {
    address: `http://127.0.0.1:${bound.port}/`,
    sent,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}
