/**
 * Stops a consumer's program where something is not as it should be.
 *
 * @param actual - what came
 * @param wanted - what should come
 * @param what - named in the error
 */
export function expectSame(actual: unknown, wanted: unknown, what: string): void {
  if (!Object.is(actual, wanted)) {
    throw new Error(`${what}: ${JSON.stringify(actual)}, not ${JSON.stringify(wanted)}`);
  }
}
