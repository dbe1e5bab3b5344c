import { audioEndingInText, isAudioFileName } from '../../../model/fileNames';
import type { Stretch } from '../../../model/text/stretch';
import type { ColumnMeaning } from '../../../trade/meaning';
import { keyMeanings } from '../../../trade/meaning';
import type { PlacedValue } from './clauseReader';
import { bullet, isKey, keyBehind, keyFirst } from './listedKey';

import { toldIn } from './toldLine';

/** A line of a list with a key and a file, and where its parts stand. */
export interface ListLine {
  key: Stretch;
  name: Stretch;
  /** Values behind both that say what they are. */
  values: readonly PlacedValue[];
  /** What somebody remarks behind all. */
  remark: Stretch | undefined;
  isKeyFirst: boolean;
}

const fileEnd = new RegExp(String.raw`^(.*?${audioEndingInText})(?![\p{L}\p{N}])(.*)$`, 'iu');
const keyed: ReadonlySet<ColumnMeaning> = new Set([...keyMeanings, 'sample', 'key_count']);

/**
 * A line of a list with values behind the key and the file: `49 crash.wav  -3 dB`, `crash.wav = 49, L20`. `undefined` where it has none, or
 * numbers that do not say what they are. `start` is where the line stands in the text.
 */
export function valuedLine(text: string, start: number, line: string): ListLine | undefined {
  const [, named = '', behind = ''] = fileEnd.exec(line) ?? [];
  if (!/[\d\p{L}]/u.test(behind)) return undefined;
  const lead = bullet.exec(named)?.[0].length ?? 0;
  const rest = named.slice(lead);
  const from = start + lead;
  const first = keyFirst.exec(rest);
  const isFirst = first !== null && isAudioFileName(first[3]) && isKey(first[1] + (first[2] ?? ''));
  const found = isFirst ? first : keyBehind.exec(behind);
  if (!found || !isKey(found[1] + (found[2] ?? ''))) return undefined;
  const keyLength = found[1].length + (found[2]?.length ?? 0);
  const keyStart = isFirst ? from + rest.indexOf(found[1]) : start + named.length + behind.indexOf(found[1]);
  const nameStart = isFirst ? from + rest.length - found[3].length : from;
  const told = toldIn(text, {
    start: start + named.length + (isFirst ? 0 : found[0].length),
    end: start + line.length,
  });
  const isTold =
    told.values.length > 0 && told.values.every(({ isNamed, meaning }) => isNamed && !keyed.has(meaning));
  if (!isTold || told.rest.some((one) => /\d/.test(text.slice(one.start, one.end)))) return undefined;
  return {
    key: { start: keyStart, end: keyStart + keyLength },
    name: { start: nameStart, end: start + named.length },
    values: told.values,
    remark: told.rest[0],
    isKeyFirst: isFirst,
  };
}
