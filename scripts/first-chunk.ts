/** What a script needs before it runs, in one file of its own: not cut where scripts fetched later share a part of it. */

interface Parsed {
  readonly isEntry: boolean
  /** Who imports it, to be there before they run themselves. */
  readonly importers: readonly string[]
}

interface Bundle {
  readonly getModuleInfo: (id: string) => Parsed | null
}

/** For the bundler: the chunk named so for every module that an entry leads to, none for what is fetched later. */
export function firstChunk(name: string): (id: string, bundle: Bundle) => string | null {
  const first = new Set<string>()
  return (id, bundle) => {
    const met = new Set([id])
    // what is added to a set while it is walked is walked too
    for (const one of met) {
      const parsed = bundle.getModuleInfo(one)
      if (parsed?.isEntry || first.has(one)) {
        first.add(id)
        return name
      }
      for (const importer of parsed?.importers ?? []) met.add(importer)
    }
    return null
  }
}
