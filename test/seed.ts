/** Random inputs of the property tests start from one seed, so that a run repeats; GUSTLOOM_SEED tries another. */
import fc from 'fast-check'

fc.configureGlobal({ seed: Number(process.env.GUSTLOOM_SEED ?? 20261125) })
