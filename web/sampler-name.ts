/** Name of a worker that does nothing else than draw guesses: the script of the engine, started once more. */

export const samplerName = 'sampler'
