/** Names nobody else has: of a design, and of a page while it is open. */

/** Sixteen letters by chance; works without a secure connection too. */
export const newIdentity = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(8)), (byte) => byte.toString(16).padStart(2, '0')).join('')
