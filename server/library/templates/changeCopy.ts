import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { keyNearRoot } from '../../model/keys';
import type { NewParameter, Notation } from '../../model/notation';
import { resolveOpcode } from '../../model/opcodes/resolve';
import { Parameter } from '../../model/parameterNames';

/**
 * The edits that give a header exactly the values wanted of it, by canonical name, in its own order and way of writing.
 * Other values of its own stay where `keeps` says so. A value that the notation has no place for is left out.
 */
export function changeCopy(
  notation: Notation,
  document: Instrument,
  header: number,
  values: ReadonlyMap<string, string>,
  keeps: (name: string) => boolean,
): TextEdit[] {
  const wanted = withKey(notation, document, header, values);
  const set: NewParameter[] = [];
  const remove: number[] = [];
  const seen = new Set<string>();
  for (let one = document.endParameter(header) - 1; one >= document.firstParameter(header); one--) {
    const name = document.names.text(document.canonicalName(one));
    const value = wanted.get(name);
    if (value === undefined) {
      if (!keeps(name)) remove.push(one);
      continue;
    }
    if (seen.has(name)) continue;
    seen.add(name);
    if (document.valueText(one) !== value) set.push({ name: document.names.text(document.name(one)), value });
  }
  const add = [...wanted].filter(([name]) => !seen.has(name)).map(([name, value]) => ({ name, value }));
  return notation.parameters
    ? inPlaces(notation, document, header, remove, [...set, ...add])
    : freely(notation, document, header, remove.reverse(), set, add);
}

/**
 * `key` stands for three values; it stays where it can say them all, and gives way to them where it cannot. Where there is no other place for
 * keys, it says the one that is nearest to the root key.
 */
function withKey(
  notation: Notation,
  document: Instrument,
  header: number,
  values: ReadonlyMap<string, string>,
): ReadonlyMap<string, string> {
  if (document.own(header, Parameter.key) < 0) return values;
  const [low, high, root] = ['lokey', 'hikey', 'pitch_keycenter'].map((name) => values.get(name));
  const isSame = low !== undefined && low === high && low === root;
  const places = notation.parameters?.(document.kind(header));
  const isOnly = places !== undefined && !places.includes('lokey') && !places.includes('hikey');
  if (!isSame && !isOnly) return values;
  const key = isSame
    ? low
    : String(keyNearRoot(Number(low ?? '0'), Number(high ?? '127'), Number(root ?? '60')));
  const changed = new Map([['key', key], ...values]);
  for (const name of ['lokey', 'hikey', 'pitch_keycenter'])
    if (isSame || !places?.includes(name)) changed.delete(name);
  return changed;
}

function freely(
  notation: Notation,
  document: Instrument,
  header: number,
  remove: readonly number[],
  set: readonly NewParameter[],
  add: readonly NewParameter[],
): TextEdit[] {
  const edits = set.flatMap(
    ({ name, value }) => notation.edit(document, { kind: 'set', header, name, value }).edits,
  );
  if (remove.length > 0 || add.length > 0)
    edits.push(...notation.edit(document, { kind: 'revise', header, remove, add }).edits);
  return edits;
}

/** Where a notation has places for some values alone, one that it cannot write leaves the others as they are asked for. */
function inPlaces(
  notation: Notation,
  document: Instrument,
  header: number,
  remove: readonly number[],
  add: readonly NewParameter[],
): TextEdit[] {
  const places = new Set(notation.parameters?.(document.kind(header)));
  const possible = add.filter(({ name }) => places.has(name));
  const revise = (some: readonly NewParameter[], gone: readonly number[]) =>
    some.length === 0 && gone.length === 0
      ? []
      : notation.edit(document, { kind: 'revise', header, remove: gone, add: some }).edits;
  const all = revise(possible, remove);
  if (all.length > 0 || (possible.length === 0 && remove.length === 0)) return all;
  const gone = remove.filter((one) => revise([], [one]).length > 0);
  const written: NewParameter[] = [];
  const failed: NewParameter[] = [];
  for (const one of possible) (revise([...written, one], gone).length > 0 ? written : failed).push(one);
  // The example's own value would say something else of this region.
  for (const { name } of failed) {
    const own = document.own(header, document.names.canonical(document.names.idOf(name)));
    if (own >= 0 && mayGo(name) && revise(written, [...gone, own]).length > 0) gone.push(own);
  }
  return revise(written, gone);
}

/** Whether a region may go without a value: without keys it would sound on all of them. */
function mayGo(name: string): boolean {
  return name !== 'sample' && resolveOpcode(name)?.facts.kind !== 'key';
}
