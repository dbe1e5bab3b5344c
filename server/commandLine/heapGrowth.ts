/** By how much of what is in use the heap grows before it is looked through again, in percent; else up to four times as much. */
const percent = 40;
/** UTF-16 units of a text from which on that pays. */
const long = 32 * 1024 * 1024;

/** Whether work on a text leaves so much behind that it should be looked for sooner. */
export function isLong(text: string): boolean {
  return text.length >= long;
}

/**
 * Has the engine look for memory that is free again sooner, for work through very many files, or large ones, that leave much behind: a third
 * less memory for a tenth more time of the processor (`npm run bench:library`).
 */
export async function keepHeapSmall(): Promise<void> {
  // Loaded when it is wanted: most commands are over before their heap has grown.
  const { setFlagsFromString } = await import('node:v8');
  setFlagsFromString(`--heap-growing-percent=${percent}`);
}
