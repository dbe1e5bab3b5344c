import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packed, unpacked } from '../../../server/protocol/conversion/packedData';

describe('data packed for JSON', () => {
  const numbers = fc.oneof(fc.double({ noNaN: true }), fc.integer(), fc.constant(Number.POSITIVE_INFINITY));
  const arrays = fc.oneof(
    fc.int8Array(),
    fc.int16Array(),
    fc.int32Array(),
    fc.uint8Array({ maxLength: 70000, size: 'max' }),
    fc.float32Array(),
    fc.float64Array(),
  );
  const { data } = fc.letrec((tie) => ({
    data: fc.oneof(
      { maxDepth: 4 },
      numbers,
      fc.string(),
      fc.boolean(),
      fc.constant(null),
      arrays,
      fc.array(tie('data')),
      fc.dictionary(fc.string(), tie('data')),
      fc.array(fc.tuple(fc.integer(), tie('data'))).map((pairs) => new Map(pairs)),
    ),
  }));
  const noMinusZero = (value: unknown) => !Object.is(value, -0);

  it('are the same behind it, typed arrays, maps and endless numbers among them', () => {
    fc.assert(
      fc.property(data.filter(noMinusZero), (value) => {
        const through = unpacked(JSON.parse(JSON.stringify(packed(value))));
        // JSON has no −0.
        expect(through).toEqual(structuredClone(withoutMinusZero(value)));
      }),
      { numRuns: 60 },
    );
  });

  it('say base 64 as the published examples do', () => {
    // RFC 4648, section 10.
    expect(packed(Uint8Array.from(Buffer.from('foobar')))).toEqual({
      array: 'Uint8Array',
      bytes: 'Zm9vYmFy',
    });
    expect(packed(Uint8Array.from(Buffer.from('foob')))).toEqual({ array: 'Uint8Array', bytes: 'Zm9vYg==' });
  });
});

function withoutMinusZero(value: unknown): unknown {
  if (Object.is(value, -0)) return 0;
  if (Array.isArray(value)) return value.map(withoutMinusZero);
  if (value instanceof Map) return new Map([...value].map(([key, one]) => [key, withoutMinusZero(one)]));
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, withoutMinusZero(one)]));
}
