import { isAudioFileName } from '../../model/fileNames';
import type { Unit } from '../../trade/meaning';
import { readKeyRange } from '../../trade/readings/keyReading';
import { readLoop } from '../../trade/readings/loopReading';
import { readNumber } from '../../trade/readings/numberReading';
import { readPan } from '../../trade/readings/panReading';

/** What a cell looks like, without regard to its column. */
export type CellKind =
  | 'empty'
  | 'file'
  | 'note'
  | 'note-range'
  | 'number'
  | 'number-range'
  | 'pan'
  | 'switch'
  | 'formula'
  | 'text';

export interface CellLook {
  kind: CellKind;
  /** The number, or the key of a note name with middle C = C4; NaN for other kinds. Of a range the lower. */
  value: number;
  unit: Unit | undefined;
}

/** Hours, minutes and seconds are no range. */
const clockTime = /^\d{1,2}:[0-5]\d:[0-5]\d(?:[.,]\d+)?$/;

/** Finds out what a text looks like. */
export function lookAt(text: string): CellLook {
  if (text === '') return look('empty');
  const first = text.charCodeAt(0);
  // Two of them draw a line, as around a title.
  if (first === 61 && text.charCodeAt(1) !== 61) return look('formula');
  if (isAudioFileName(text)) return look('file');
  if (text.length > 64) return look('text');
  if (clockTime.test(text)) return look('text');
  const number = readNumber(text);
  if (number) return { kind: 'number', value: number.number, unit: number.unit };
  const keys = readKeyRange(text);
  if (keys) {
    const { named, number: key } = keys.low;
    // A name whose octave stands in words or marks is one too.
    const isWord = /^\p{L}{2,}[ -]\p{L}|^\p{L}[^\d]* \p{L}{3,}/u.test(text);
    const kind = (named === undefined || key !== undefined) && !isWord ? 'number' : 'note';
    return { kind: keys.single ? kind : `${kind}-range`, value: key ?? named ?? Number.NaN, unit: undefined };
  }
  if (readPan(text) !== undefined) return look('pan');
  const loop = readLoop(text);
  if (loop) return look(loop.start === undefined ? 'switch' : 'number-range');
  return look('text');
}

function look(kind: CellKind): CellLook {
  return { kind, value: Number.NaN, unit: undefined };
}
