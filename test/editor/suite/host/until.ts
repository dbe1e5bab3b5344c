const pollMilliseconds = 50;

/**
 * Waits until `look` gives something other than `undefined` or `false`, and gives that. What `look` throws counts as
 * not yet. Throws after `timeoutSeconds` (15 where nothing is said) with `what` was awaited and the last
 * thing that `look` threw.
 */
export async function until<T>(
  what: string,
  look: () => T | undefined | false | Promise<T | undefined | false>,
  timeoutSeconds = 15,
): Promise<T> {
  const deadline = Date.now() + timeoutSeconds * 1000;
  let lastError: unknown;
  while (true) {
    try {
      const found = await look();
      if (found !== undefined && found !== false) return found;
      lastError = undefined;
    } catch (error) {
      lastError = error;
    }
    if (Date.now() > deadline) {
      const cause = lastError instanceof Error ? `: ${lastError.message}` : '';
      throw new Error(`Waited ${timeoutSeconds} s for ${what}${cause}`);
    }
    await new Promise((resolve) => setTimeout(resolve, pollMilliseconds));
  }
}
