/** What a shape of coil tells the machine: its fields, its lengths in SI, its paths, and what cannot be built. */
import type { z } from 'zod'
import type { Curve } from '../../geometry/curve.ts'
import type { WindingSurface } from '../../geometry/winding-surface.ts'
import type { Fault } from '../fault.ts'

/** Where a shape is put, in SI. */
export interface CoilPlace {
  readonly surface: WindingSurface
  /** Away from the magnets, against the surface's outward normal: −1 where a drum is wound inside. */
  readonly away: 1 | -1
  readonly legWidth: number
  readonly bundleDepth: number
  readonly coilCount: number
}

/** A coil in its place at azimuth 0: all that later computations ask of it. */
export interface CoilForm {
  /** The closed turn at a place in the leg's section, counter-clockwise seen against the outward normal. */
  readonly turn: (across: number, normal: number) => Curve
  /** Places across a leg, from its inner to its outer side; the bundle's depth lies evenly about normal 0. */
  readonly across: readonly [inner: number, outer: number]
  /** Mean length of one turn [m]. */
  readonly turnLength: number
  /** Angle about the shaft between the middles of the two legs, and covered by one leg, half-way along [rad]. */
  readonly legSpan: number
  readonly legAngle: number
  /** Along the shaft or the radius, and along the circumference [m]. */
  readonly extent: { readonly length: number; readonly width: number }
  /** Least room to neighbouring coils [m]; below zero they are in each other's way. */
  readonly room: number
  /** How far the middle of the highest leg, and of the highest part, lies off the lowest leg, away from the magnets [m]. */
  readonly rise: { readonly legs: number; readonly ends: number }
  /** even: a mirror through the coil's axis maps every turn on itself. */
  readonly parity: 'even' | 'none'
}

/** What a shape may compare its fields with, in the document's units. */
export interface CoilBench {
  readonly arrangement: 'drum' | 'disc' | 'two-discs'
  readonly poleCount: number
  readonly coilCount: number
  /** Radius of the coils' middle, and the field that says so. */
  readonly radius_mm: number
  readonly radiusPath: string
  readonly legWidth_mm: number
  readonly bundleDepth_mm: number
}

/** One shape: one file. `Fields` is its slice of the document, `Hole` the same in SI. */
export interface CoilShape<Schema extends z.ZodType, Hole extends { readonly shape: string }> {
  readonly schema: Schema
  readonly toSi: (fields: z.output<Schema>, poleCount: number) => Hole
  readonly form: (hole: Hole, place: CoilPlace) => CoilForm
  readonly faults: (fields: z.output<Schema>, bench: CoilBench) => Fault[]
  /** As in the form, from fields without faults [mm]. */
  readonly rise: (fields: z.output<Schema>, bench: CoilBench) => CoilForm['rise']
}

/** Infers the types of a shape's parts from each other. */
export const coilShape = <Schema extends z.ZodType, Hole extends { readonly shape: string }>(
  shape: CoilShape<Schema, Hole>,
): CoilShape<Schema, Hole> => shape

/** Path of a shape's field. */
export const holePath = (name: string): string => `stator.winding.hole.${name}`
