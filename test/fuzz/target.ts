import type { Arbitrary } from 'fast-check';
import fc from 'fast-check';

/** Something that holds of every input of a kind. */
export interface FuzzTarget {
  name: string;
  /** What inputs are counted as in the total. */
  unit: 'texts' | 'audio files';
  property: fc.IAsyncProperty<[unknown]>;
}

/** What one input may take, in milliseconds of the processor; `fuzz.test.ts` sets no limit. */
export const limit = { milliseconds: Number.POSITIVE_INFINITY };

/** A target of an arbitrary and what is asked of its values; `holds` throws where one does not have the property. */
export function target<Value>(
  name: string,
  unit: FuzzTarget['unit'],
  values: Arbitrary<Value>,
  holds: (value: Value) => void | Promise<void>,
): FuzzTarget {
  const property = fc.asyncProperty(values, async (value) => {
    const before = process.cpuUsage();
    await holds(value);
    const { user, system } = process.cpuUsage(before);
    const milliseconds = (user + system) / 1000;
    if (milliseconds > limit.milliseconds) throw new Error(`slow: ${Math.round(milliseconds)} ms`);
  });
  return { name, unit, property: property as fc.IAsyncProperty<[unknown]> };
}
