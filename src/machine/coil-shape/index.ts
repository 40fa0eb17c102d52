/** All shapes of coils there are: a new one is one file beside this and one line in the list. */
import { z } from 'zod'
import type { CoilBench, CoilForm, CoilPlace, CoilShape } from './coil-shape.ts'
import { lap } from './lap.ts'
import { rectangular } from './rectangular.ts'
import { round } from './round.ts'
import { wedge } from './wedge.ts'

const shapes = [round, rectangular, wedge, lap] as const

type Shapes = typeof shapes
type SchemasOf<T extends readonly { readonly schema: z.ZodType }[]> = { [K in keyof T]: T[K]['schema'] }

export const holeSchema = z.discriminatedUnion(
  'shape',
  shapes.map(({ schema }) => schema) as unknown as SchemasOf<Shapes>,
)

type HoleFields = z.output<typeof holeSchema>

/** The hole of a coil in SI. */
export type CoilHole = ReturnType<Shapes[number]['toSi']>

// biome-ignore lint/suspicious/noExplicitAny: the shape found by its word fits the hole that says the word
type AnyShape = CoilShape<any, any>

const shapeOf = (word: string): AnyShape =>
  shapes.find(({ schema }) => schema.shape.shape.value === word) as AnyShape

export const coilHole = (fields: HoleFields, poleCount: number): CoilHole =>
  shapeOf(fields.shape).toSi(fields, poleCount)

/** The coil at azimuth 0 of its place. */
export const coilForm = (hole: CoilHole, place: CoilPlace): CoilForm => shapeOf(hole.shape).form(hole, place)

export const holeFaults = (fields: HoleFields, bench: CoilBench) =>
  shapeOf(fields.shape).faults(fields, bench)

export const holeRise = (fields: HoleFields, bench: CoilBench) => shapeOf(fields.shape).rise(fields, bench)
