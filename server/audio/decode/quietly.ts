/**
 * Does some work, which must not wait for anything, without letting it write to the console: decoders write what they
 * find wrong there, amid the output of whoever called them. What is wrong shows in what they give back.
 */
export function quietly<T>(work: () => T): T {
  const write = console.error;
  console.error = () => {};
  try {
    return work();
  } finally {
    console.error = write;
  }
}
