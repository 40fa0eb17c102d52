/** The parts of the German catalogue as the build makes them of the files beside this one. */
declare module 'german:*' {
  export const sentences: Readonly<Record<string, string>>
}
