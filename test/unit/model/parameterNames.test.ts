import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextHash, Parameter, ParameterNames } from '../../../server/model/parameterNames';
import { withTextBytes } from '../../../server/model/text/textBytes';

/** Names that all have one hash, 2 to the power of `words` of them. */
function sameHash(words: number): string[] {
  return Array.from({ length: 1 << words }, (_, number) =>
    Array.from({ length: words }, (_one, word) => (number & (1 << word) ? 'Aa' : 'BB')).join(''),
  );
}

describe('numbers of names', () => {
  it('are fixed for the parameters that the model works with', () => {
    const names = new ParameterNames();
    for (const [name, id] of Object.entries(Parameter)) expect(names.idOf(name)).toBe(id);
  });

  it('differ for names of one hash', () => {
    const names = new ParameterNames();
    // 31 · 65 + 97 = 31 · 66 + 66, so these two collide in every place of a word.
    const same = ['AaAa', 'AaBB', 'BBAa', 'BBBB'];
    const hashes = same.map((name) => Array.from(name, (one) => one.charCodeAt(0)).reduce(nextHash, 0));
    expect(new Set(hashes).size).toBe(1);
    const ids = same.map((name) => names.idOf(name));
    expect(new Set(ids).size).toBe(4);
    expect(same.map((name) => names.idOf(name))).toEqual(ids);
    expect(ids.map((id) => names.text(id))).toEqual(same);
  });

  it('stay apart for very many names of one hash, among others', () => {
    const names = new ParameterNames();
    const all = sameHash(12).flatMap((name, at) => [name, `other_${at}`]);
    const ids = all.map((name) => names.idOf(name));
    expect(new Set(ids).size).toBe(all.length);
    expect(all.map((name) => names.idOf(name))).toEqual(ids);
    expect(ids.map((id) => names.text(id))).toEqual(all);
  });

  it('differ for names that differ outside ASCII only', () => {
    const names = new ParameterNames();
    const [first, second] = ['caf\u00e9', 'caf\u0169'].map((name) => names.idOf(name));
    expect(first).not.toBe(second);
    expect(names.idOf('caf\u00e9')).toBe(first);
    expect(names.idOfHash('caf\u00e9', 0, 4, 12345)).toBe(first);
    expect(names.idOfHash('caf\u0169', 0, 4, 12345)).toBe(second);
  });

  it('stay when the table grows, and any text finds its own again', () => {
    const names = new ParameterNames();
    const ids = new Map<string, number>();
    for (let count = 0; count < 5000; count++) ids.set(`name_${count}`, names.idOf(`name_${count}`));
    for (const [name, id] of ids) {
      expect(names.idOf(name)).toBe(id);
      expect(names.text(id)).toBe(name);
    }
    expect(new Set(ids.values()).size).toBe(5000);
  });

  it('are the same by text, by place and by character codes', () => {
    const names = new ParameterNames();
    fc.assert(
      fc.property(fc.string(), fc.string({ minLength: 1 }), fc.string(), (before, name, after) => {
        const text = before + name + after;
        const [start, end] = [before.length, before.length + name.length];
        const id = names.idOf(name);
        expect(names.text(id)).toBe(name);
        expect(names.idAt(text, start, end)).toBe(id);
        withTextBytes(text, 0, (bytes) => {
          const hash = bytes.subarray(start, end).reduce(nextHash, 0);
          expect(names.idOfHash(text, start, end, hash)).toBe(id);
          expect(names.idOfCodes(text, bytes, start, end, hash)).toBe(id);
        });
      }),
    );
  });
});

describe('canonical names', () => {
  const names = new ParameterNames();
  const canonical = (name: string) => names.text(names.canonical(names.idOf(name)));

  // Aliases of the public documentation of the open SFZ format (CC0 1.0).
  it.each([
    ['loopstart', 'loop_start'],
    ['loopmode', 'loop_mode'],
    ['offby', 'off_by'],
    ['LOKEY', 'lokey'],
    ['lokey', 'lokey'],
    ['invented_name', 'invented_name'],
  ])('%s is %s', (name, expected) => {
    expect(canonical(name)).toBe(expected);
  });

  it('come with what the catalogue says', () => {
    expect(names.opcode(names.idOf('loopstart'))?.facts.pattern).toBe('loop_start');
    expect(names.opcode(names.idOf('invented_name'))).toBeUndefined();
  });
});
