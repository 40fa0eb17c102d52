/** Draws magnets, wire and steel with three.js; the only file that knows it. */
import {
  AmbientLight,
  CanvasTexture,
  Color,
  DirectionalLight,
  Group,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  MeshStandardMaterial,
  PerspectiveCamera,
  PlaneGeometry,
  Spherical,
  SRGBColorSpace,
  Vector3,
  WebGLRenderer,
  Scene as World,
} from 'three'
import { inPhasePerMetre } from '../../src/analysis/wire-reading.ts'
import type { MagnetBody, SolidView } from '../snapshot.ts'
import type { WireSnapshot } from '../wire-snapshot.ts'
import { poleGeometries } from './magnet-geometry.ts'
import { bundleGeometry, coloured, plateGeometry, wholePath } from './solid-geometry.ts'
import { greatestPerMetre, wireColour } from './wire-colour.ts'

export interface Scene {
  /** With `wire`, the wire is coloured by the volts that it gives, and the magnets stand back in grey. */
  readonly show: (solid: SolidView, wire?: WireSnapshot) => void
  /** By angles about the shaft and above the plane [rad]. */
  readonly turn: (across: number, up: number) => void
  readonly nearer: (factor: number) => void
  /** Turns the rotor on and on, by an angle each second [rad/s]; 0 lets it stand. */
  readonly spin: (rate: number) => void
  /** Whether the wire is drawn, which hides magnets. */
  readonly showWire: (shown: boolean) => void
  readonly close: () => void
}

const north = '#c0392b'
const south = '#2f6db3'
const quietNorth = '#9a948a'
const quietSouth = '#6a6f72'
const phaseColours = ['#d98a3d', '#8f5fb5', '#3f9a6c']

function letterTexture(letter: string, ground: string): CanvasTexture {
  const canvas = document.createElement('canvas')
  canvas.width = canvas.height = 128
  const pen = canvas.getContext('2d')!
  pen.fillStyle = ground
  pen.fillRect(0, 0, 128, 128)
  pen.fillStyle = '#ffffff'
  pen.font = 'bold 92px sans-serif'
  pen.textAlign = 'center'
  pen.textBaseline = 'middle'
  pen.fillText(letter, 64, 70)
  const texture = new CanvasTexture(canvas)
  texture.colorSpace = SRGBColorSpace
  return texture
}

export function openScene(place: HTMLElement): Scene {
  const renderer = new WebGLRenderer({ antialias: true, alpha: true, preserveDrawingBuffer: true })
  renderer.setPixelRatio(Math.min(devicePixelRatio, 2))
  place.replaceChildren(renderer.domElement)
  const world = new World()
  const camera = new PerspectiveCamera(32, 1, 0.001, 100)
  camera.up.set(0, 0, 1)
  world.add(new AmbientLight(0xffffff, 1.3))
  const lamp = new DirectionalLight(0xffffff, 2.2)
  world.add(lamp)

  const steel = new MeshStandardMaterial({
    color: new Color('#8a9499'),
    metalness: 0.3,
    roughness: 0.6,
    transparent: true,
    opacity: 0.32,
    depthWrite: false,
  })
  const wires = phaseColours.map(
    (colour) => new MeshStandardMaterial({ color: new Color(colour), roughness: 0.55 }),
  )
  const byVolts = new MeshStandardMaterial({ vertexColors: true, roughness: 0.7 })
  const poleOf = (letter: string, colour: string) => ({
    body: new MeshStandardMaterial({ color: new Color(colour), roughness: 0.6 }),
    face: new MeshBasicMaterial({ map: letterTexture(letter, colour) }),
  })
  const vivid = { N: poleOf('N', north), S: poleOf('S', south) }
  const quiet = { N: poleOf('N', quietNorth), S: poleOf('S', quietSouth) }
  let poles = vivid
  let content = new Group()
  /** What turns: magnets and their steel. */
  let rotor = new Group()
  content.add(rotor)
  world.add(content)
  const view = new Spherical(1, 1.05, 0.7)
  let reach = 0
  let waiting = false

  let wireShown = true

  const draw = () => {
    for (const material of [...wires, byVolts]) material.visible = wireShown
    waiting = false
    // three's spherical angles stand on y; the shaft is z here
    const { radius, phi, theta } = view
    camera.position.set(
      radius * Math.sin(phi) * Math.cos(theta),
      radius * Math.sin(phi) * Math.sin(theta),
      radius * Math.cos(phi),
    )
    camera.lookAt(0, 0, middle)
    lamp.position.copy(camera.position).add(new Vector3(0, 0, radius * 0.6))
    renderer.render(world, camera)
  }
  let middle = 0
  const ask = () => {
    if (waiting) return
    waiting = true
    requestAnimationFrame(draw)
  }

  const fill = () => {
    const width = Math.max(1, place.clientWidth)
    const height = Math.max(1, place.clientHeight)
    renderer.setSize(width, height, false)
    camera.aspect = width / height
    camera.updateProjectionMatrix()
    ask()
  }
  const watcher = new ResizeObserver(fill)
  watcher.observe(place)

  function magnetGroup(magnet: MagnetBody): Group {
    const group = new Group()
    for (const { pole, body, face, normal } of poleGeometries(magnet)) {
      group.add(new Mesh(body, poles[pole].body))
      if (magnet.letter === 0) continue
      const letter = new Mesh(new PlaneGeometry(magnet.letter, magnet.letter), poles[pole].face)
      letter.quaternion.setFromUnitVectors(new Vector3(0, 0, 1), normal)
      letter.position.copy(face)
      group.add(letter)
    }
    const [ex, ey, ez] = magnet.frame as [number[], number[], number[]]
    const column = (row: number[]) => new Vector3(row[0], row[1], row[2])
    const pose = new Matrix4().makeBasis(column(ex), column(ey), column(ez))
    const { centre } = magnet
    pose.setPosition(centre[0]!, centre[1]!, centre[2]!)
    group.applyMatrix4(pose)
    return group
  }

  const emptied = () => {
    content.traverse((part) => {
      if (part instanceof Mesh) part.geometry.dispose()
    })
    world.remove(content)
    content = new Group()
    const angle = rotor.rotation.z
    rotor = new Group()
    rotor.rotation.z = angle
    content.add(rotor)
    world.add(content)
  }

  let rate = 0
  let last = 0
  let turning: number | undefined
  /** Frames of the turning rotor: half of the screen's are enough, and leave time for the numbers. */
  const leastPause = 30
  const onward = (now: number) => {
    turning = rate === 0 ? undefined : requestAnimationFrame(onward)
    if (now - last < leastPause) return
    rotor.rotation.z = (rotor.rotation.z + rate * Math.min(0.1, (now - last) / 1000)) % (2 * Math.PI)
    last = now
    draw()
  }

  // dragging: by pointer, so that finger, pen and mouse are one
  let held: { x: number; y: number } | undefined
  const canvas = renderer.domElement
  const turn = (across: number, up: number) => {
    view.theta -= across
    view.phi = Math.min(Math.max(view.phi - up, 0.05), Math.PI - 0.05)
    ask()
  }
  canvas.addEventListener('pointerdown', (event) => {
    held = { x: event.clientX, y: event.clientY }
    canvas.setPointerCapture(event.pointerId)
  })
  canvas.addEventListener('pointermove', (event) => {
    if (!held) return
    turn((event.clientX - held.x) * 0.008, (event.clientY - held.y) * 0.008)
    held = { x: event.clientX, y: event.clientY }
  })
  const release = () => {
    held = undefined
  }
  canvas.addEventListener('pointerup', release)
  canvas.addEventListener('pointercancel', release)

  return {
    show: (solid, wire) => {
      emptied()
      poles = wire ? quiet : vivid
      if (wire) {
        const most = greatestPerMetre(wire.along) || 1
        for (const coil of wire.along.coils) {
          const colours = Array.from(inPhasePerMetre(wire.along, coil), (value) => wireColour(value / most))
          const path = {
            points: wholePath(wire.along.shapes[coil.shape]!, coil.angle),
            ...wire.bundles[coil.shape]!,
          }
          content.add(
            new Mesh(coloured(bundleGeometry(path, solid.arrangement === 'drum'), colours), byVolts),
          )
        }
      }
      for (const magnet of solid.magnets) rotor.add(magnetGroup(magnet))
      let outer = solid.outerRadius
      let low = Number.POSITIVE_INFINITY
      let high = Number.NEGATIVE_INFINITY
      for (const { centre, outline, height } of solid.magnets) {
        const half = Math.max(height, ...outline.map((edge) => 2 * Math.abs(edge))) / 2
        low = Math.min(low, centre[2]! - half)
        high = Math.max(high, centre[2]! + half)
      }
      for (const coil of solid.wires) {
        if (!wire)
          content.add(
            new Mesh(bundleGeometry(coil, solid.arrangement === 'drum'), wires[coil.phase % wires.length]!),
          )
        for (let k = 0; k < coil.points.length; k += 3) {
          outer = Math.max(outer, Math.hypot(coil.points[k]!, coil.points[k + 1]!))
          low = Math.min(low, coil.points[k + 2]!)
          high = Math.max(high, coil.points[k + 2]!)
        }
      }
      for (const { inner, outer: rim, length } of solid.tubes) {
        const tube = new Mesh(plateGeometry(inner, rim, length), steel)
        tube.position.z = -length / 2
        rotor.add(tube)
        outer = Math.max(outer, rim)
      }
      for (const { z, thickness } of solid.plates) {
        const plate = new Mesh(
          plateGeometry(solid.innerRadius * 0.8, solid.outerRadius * 1.04, thickness),
          steel,
        )
        plate.position.z = z
        rotor.add(plate)
      }
      middle = Number.isFinite(low) ? (low + high) / 2 : 0
      const size = Number.isFinite(low) ? Math.hypot(outer, (high - low) / 2) : outer
      if (reach === 0 || Math.abs(size / reach - 1) > 0.25)
        view.radius =
          (size * 3.9) / Math.min(1, Math.max(1, place.clientWidth) / Math.max(1, place.clientHeight))
      reach = size
      camera.near = size / 50
      camera.far = size * 60
      fill()
    },
    turn,
    spin: (next) => {
      rate = next
      if (rate !== 0 && turning === undefined) {
        last = performance.now()
        turning = requestAnimationFrame(onward)
      }
    },
    showWire: (shown) => {
      wireShown = shown
      ask()
    },
    nearer: (factor) => {
      view.radius = Math.min(Math.max(view.radius * factor, reach * 1.2), reach * 20)
      ask()
    },
    close: () => {
      rate = 0
      if (turning !== undefined) cancelAnimationFrame(turning)
      watcher.disconnect()
      emptied()
      renderer.dispose()
    },
  }
}
