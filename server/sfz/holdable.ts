import { scanSfz } from './scan';

const harmless = /^[\w.#()+\-\\]+(?:[ /][\w.#()+\-\\]+)*$/;

/** Names that need no closer look. */
export const harmlessName = /^\w+$/;

/** Marks characters in {@link harmlessKinds} that stand between harmless ones. */
export const parting = 2;

/** By character: 1 for those of harmless values, {@link parting} for those that stand between them, else 0. */
export const harmlessKinds = Uint8Array.from({ length: 256 }, (_, code) => {
  const sign = String.fromCharCode(code);
  if (sign === ' ' || sign === '/') return parting;
  return harmless.test(sign) ? 1 : 0;
});

/** Whether a name and value read back from SFZ text as they are. */
export function isReadBack(name: string, value: string): boolean {
  if (harmlessName.test(name) && harmless.test(value) && !value.includes(' #')) return true;
  let read = 0;
  const text = `before=1 ${name}=${value} next=1`;
  let exact = true;
  const fail = () => {
    exact = false;
  };
  scanSfz(text, {
    header: fail,
    define: fail,
    include: fail,
    comment: fail,
    stray: fail,
    problem: fail,
    opcode(nameStart, nameEnd, _hash, valueStart, valueEnd) {
      const expected =
        [
          ['before', '1'],
          [name, value],
          ['next', '1'],
        ][read++] ?? [];
      if (text.slice(nameStart, nameEnd) !== expected[0] || text.slice(valueStart, valueEnd) !== expected[1])
        exact = false;
    },
  });
  return exact && read === 3 && !/[\r\n]/.test(value);
}
