/** By how much of what is in use the heap grows before it is looked through again, in percent; else up to four times as much. */
const percent = 40;

/**
 * Has the engine look for memory that is free again sooner, for work through very many files, or large ones, that leave much behind: a third
 * less memory for a tenth more time of the processor (`npm run bench:library`).
 */
export async function keepHeapSmall(): Promise<void> {
  // Loaded when it is wanted: most commands are over before their heap has grown.
  const { setFlagsFromString } = await import('node:v8');
  setFlagsFromString(`--heap-growing-percent=${percent}`);
}
