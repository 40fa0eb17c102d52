/** Version of the engine as sheets print it; a check holds it to that of the package. */
export const engineVersion = '0.1.0'
