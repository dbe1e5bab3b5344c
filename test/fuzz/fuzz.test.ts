import fc from 'fast-check';
import { it } from 'vitest';
import { targets } from './targets';

// A look at whether the fuzzers themselves work; `npm run fuzz` goes on for as long as is said.
it.each(targets.map((one) => [one.name, one.property] as const))('%s', async (_name, property) => {
  await fc.assert(property, { numRuns: 10 });
});
