import type { Stretch } from '../../../model/text/stretch';
import { saysOf } from '../../../trade/phrases/toldWords';
import { readKey } from '../../../trade/readings/keyReading';
import { letterNote } from '../../../trade/readings/notePatterns';
import { turningWords } from '../../../trade/turningWords';
import type { PlacedValue } from './clauseReader';

const only = turningWords('only', 'just');
const oneKey = new RegExp(
  String.raw`^(?:(${only})\s*)?(${letterNote}-?\d{1,2}|\d{1,3})(?:\s*(${only}))?$`,
  'iu',
);
const turned = new RegExp(turningWords('not', 'none', 'except', 'without'), 'iu');

/**
 * The one key of a file that a clause of a line gives alone: `just 87 (root too)`, `nur 87, Grundton 87`. It is so where the root is the
 * same, or where a word says that it is the only one and another clause that it is the root too. `undefined` for anything else.
 */
export function onlyKeyIn(
  text: string,
  values: readonly PlacedValue[],
  rest: readonly Stretch[],
): { key: PlacedValue; used: readonly Stretch[] } | undefined {
  const written = ({ start, end }: Stretch) => text.slice(start, end);
  const [found, ...others] = rest.flatMap((clause) => {
    const [, before, key = '', behind] = oneKey.exec(written(clause)) ?? [];
    const reading = key === '' ? undefined : readKey(key);
    const isKey = reading !== undefined && (reading.number ?? 0) <= 127;
    return isKey ? [{ clause, key, isOnly: (before ?? behind) !== undefined }] : [];
  });
  if (!found || others.length > 0) return undefined;
  const { clause, key } = found;
  const root = values.find(({ meaning }) => meaning === 'pitch_keycenter');
  if (root) {
    if (root.text.toLowerCase() !== key.toLowerCase()) return undefined;
    return { key: { ...clause, meaning: 'key_range', text: key, isNamed: true }, used: [clause] };
  }
  const says = rest.find((one) => one !== clause && isRootToo(written(one)));
  if (!says || !found.isOnly) return undefined;
  return { key: { ...clause, meaning: 'key', text: key, isNamed: true }, used: [clause, says] };
}

function isRootToo(clause: string): boolean {
  return !/\d/.test(clause) && saysOf(clause, 'root') && !turned.test(clause);
}
