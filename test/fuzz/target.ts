import type { Arbitrary } from 'fast-check';
import fc from 'fast-check';

/** Something that holds of every input of a kind. */
export interface FuzzTarget {
  name: string;
  /** What inputs are counted as in the total. */
  unit: 'texts' | 'audio files';
  property: fc.IAsyncProperty<[unknown]>;
}

/** A target of an arbitrary and what is asked of its values; `holds` throws where one does not have the property. */
export function target<Value>(
  name: string,
  unit: FuzzTarget['unit'],
  values: Arbitrary<Value>,
  holds: (value: Value) => void | Promise<void>,
): FuzzTarget {
  const property = fc.asyncProperty(values, async (value) => holds(value));
  return { name, unit, property: property as fc.IAsyncProperty<[unknown]> };
}
