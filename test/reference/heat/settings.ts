/** Prints what gmsh and getdp are told, one run on a line: tag | mesh | settings of one | settings of the other. */
import { faceOf, sliceOf, type WindingName, winding, windings } from './slice.ts'

const told = (numbers: Readonly<Record<string, number>>) =>
  Object.entries(numbers)
    .map(([name, value]) => `-setnumber ${name} ${Number(value.toPrecision(9))}`)
    .join(' ')

const lines = Object.keys(windings).flatMap((name, number) => {
  const wound = winding(name as WindingName)
  const { axi, x0, cover, depth, width, beside, k, ks, c, cs, q } = sliceOf(wound)
  const faces = Object.fromEntries(
    (['near', 'far'] as const).flatMap((which) => {
      const { film, air, shine, metal, castingFilm } = faceOf(wound, which)
      return Object.entries({
        Film: film,
        Air: air,
        Shine: shine,
        Metal: metal,
        CastingFilm: castingFilm,
      }).map(([key, value]) => [`${which}${key}`, value] as const)
    }),
  )
  const cold = { nearAir: 0, nearMetal: 0, farAir: 0, farMetal: 0 }
  const solid = { axi, k, ks, c, cs, q }
  const mesh = (h: number, before: number, after: number) => ({ x0, cover, depth, width, before, after, h })
  const run = (tag: string, on: ReturnType<typeof mesh>, rest: Readonly<Record<string, number>>) =>
    `${number}-${tag}|${told(on)}|${told({ ...solid, ...rest })}`
  return [
    run('coarse', mesh(1e-3, beside, beside), faces),
    run('fine', mesh(0.4e-3, beside, beside), faces),
    // a hole twice as wide as the casting between two coils
    ...(beside > 0 ? [run('uneven', mesh(0.4e-3, (4 / 3) * beside, (2 / 3) * beside), faces)] : []),
    run('step', mesh(1e-3, beside, beside), { ...faces, ...cold, steps: 600, step: 2 }),
  ]
})
console.log(lines.join('\n'))
