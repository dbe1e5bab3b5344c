import type { MiddleC } from '../../../model/keys';
import { keyboardSpans } from '../../../trade/instrumentSpans';
import { conventions, octaveShifts } from '../../../trade/middleC';
import { lettersIn } from '../../../trade/readings/keyReading';
import { lacksLines, readLinedKey } from '../../../trade/readings/linedKeys';
import type { ValueForm } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, otherForm } from '../draft';
import type { RowKey } from '../ranges/rowKeys';
import { rowKey } from '../ranges/rowKeys';
import type { SampleFiles } from '../samples/sampleFiles';
import { saysSo } from '../saysSo';
import type { XmlStatements } from '../stated/statements';
import { isNoteName } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import { noteSpellingOf } from './noteSpelling';
import type { NumberWitness } from './numberWitness';
import { numberPlaceWitness } from './numberWitness';

type Key = Extract<ValueForm, { kind: 'key' }>;
/** How keys are written: all key places of a document follow one convention. */
export interface KeyForms {
  formOf: (assigned: Assigned) => Key;
  drafts: Draft[];
}

/** Decides how keys are written from their texts and from what the sample files say. */
export function decideKeyForms(
  keys: readonly Assigned[],
  files: SampleFiles,
  rows: Pick<Rows, 'count' | 'columns'>,
  stated?: Partial<Pick<XmlStatements, 'middleC' | 'keyOffset'>>,
): KeyForms {
  const naming = linedByRoots(keys, files, rows.count) ?? namingOf(keys);
  const isNamed = ({ facts }: Assigned) =>
    (facts.notes + facts.unlined) * 2 >= facts.filled && facts.notes + facts.unlined > 0;
  const named = keys.filter(isNamed);
  const drafts: Draft[] = [];
  // One letter among numbers is a slip, and no place holds names then.
  const isLined = named.length > 0 && naming.naming?.endsWith('lines') === true;
  if (isLined) drafts.push(linedDraft(named));
  const spelling = isLined
    ? undefined
    : noteSpellingOf(
        named.flatMap(({ facts }) => [...facts.tally.keys()]),
        { kind: 'key', written: 'name', ...naming },
      );
  const octave =
    named.length === 0 || isLined
      ? undefined
      : stated?.middleC
        ? { middleC: stated.middleC.is, confidence: 0.97, reason: saysSo(stated.middleC.text) }
        : (byNumbers(numberPlaceWitness(keys, rows.columns)) ?? decideOctave(keys, files, rows.count));
  if (octave) {
    drafts.push({
      id: 'middleC',
      message: `Note names give key 60 as ${octave.middleC}.`,
      confidence: octave.confidence,
      // All keys lie an octave off where it is wrong.
      ...(!stated?.middleC && { isGuess: true }),
      evidence: [octave.reason],
      span: firstValueOf(named[0]),
      isAbout: ({ form }) => form.kind === 'key' && form.written === 'name',
      alternatives: conventions
        .filter((one) => one !== octave.middleC)
        .map((middleC) =>
          otherForm(`${middleC} is key 60`, (form) => (form.kind === 'key' ? { ...form, middleC } : form)),
        ),
    });
  }
  const offset = decideOffset(
    keys.filter((one) => !isNamed(one)),
    files,
    stated?.keyOffset,
  );
  if (offset) drafts.push(offset.draft);
  return {
    formOf: (assigned) =>
      assigned.unit === 'Hz'
        ? { kind: 'key', written: 'frequency' }
        : isNamed(assigned)
          ? {
              kind: 'key',
              written: 'name',
              ...(!isLined && { middleC: octave?.middleC ?? 'C4' }),
              ...naming,
              ...(spelling !== undefined && { names: spelling }),
            }
          : {
              kind: 'key',
              written: assigned.facts.hexadecimal * 2 > assigned.facts.filled ? 'hexadecimal' : 'number',
              ...(assigned.facts.notes > 0 && octave && { middleC: octave.middleC, ...naming }),
              ...shiftOf(assigned, offset?.offset ?? 0),
            },
    drafts,
  };
}

/** What lies over a key starts with the next one. */
function shiftOf({ target, column, base = 0 }: Assigned, offset: number): Pick<Key, 'offset'> {
  const isBehind = target === 'lokey' && column.own.some((word) => behindWords.has(word));
  const sum = offset - base - (isBehind ? 1 : 0);
  return sum === 0 ? {} : { offset: sum };
}

/** Words for a bound that is not part of what lies above it. */
const behindWords: ReadonlySet<string> = new Set(
  'over above past after oltre uber ueber oberhalb boven sobre nad encima'.split(' '),
);

function namingOf(keys: readonly Assigned[]): Pick<Key, 'naming'> {
  const texts = keys.flatMap(({ facts }) => [...facts.tally.keys()]);
  const syllables = texts.filter((text) =>
    /^\s*(?:do|dó|ut|re|ré|mi|fa|fá|sol|la|lá|si|ti)(?![a-z])/i.test(text),
  ).length;
  if (syllables > 0 && syllables * 2 >= texts.filter(isNoteName).length) return { naming: 'syllables' };
  const isGerman = lettersIn(texts).naming() !== 'english';
  // Only the great and the small octave have no number, and only where letter case tells octaves.
  if (texts.some(lacksLines)) return { naming: isGerman || !texts.includes('b') ? 'german lines' : 'lines' };
  return isGerman ? { naming: 'german' } : {};
}

/**
 * Names whose octave the case of their letters gives, where root keys by number lie within their ranges only so; `undefined` where
 * nothing says that.
 */
function linedByRoots(
  keys: readonly Assigned[],
  files: SampleFiles,
  rowCount: number,
): Pick<Key, 'naming'> | undefined {
  let rows = 0;
  const isWithin = { lined: true, german: true };
  for (let row = 0; row < rowCount; row++) {
    const textOf = (target: string) => keys.findLast((one) => one.target === target)?.texts[row];
    const { root } = keysOfRow(keys, row);
    const number = root?.number ?? files.facts[row]?.rootKey ?? undefined;
    const [low, high] = [textOf('lokey'), textOf('hikey')];
    if (number === undefined || low === undefined || high === undefined) continue;
    if (!/^[a-h]/.test(low) && !/^[a-h]/.test(high)) return undefined;
    const plain = [rowKey(low)?.named, rowKey(high)?.named];
    if (plain.every((key) => key !== undefined)) {
      const [from, to] = plain as [number, number];
      if (conventions.some((one) => from + octaveShifts[one] <= number && number <= to + octaveShifts[one]))
        return undefined;
    }
    for (const [name, naming] of [
      ['lined', 'english'],
      ['german', 'german'],
    ] as const) {
      const [from, to] = [readLinedKey(low.trim(), naming), readLinedKey(high.trim(), naming)];
      if (from === undefined || to === undefined || from > number || number > to) isWithin[name] = false;
    }
    rows++;
  }
  if (rows < 2) return undefined;
  if (isWithin.german) return { naming: 'german lines' };
  return isWithin.lined ? { naming: 'lines' } : undefined;
}

function linedDraft(named: readonly Assigned[]): Draft {
  const example = named.flatMap(({ facts }) => [...facts.tally.keys()]).find(lacksLines);
  return {
    id: 'middleC',
    message: 'The case of the letters and the number behind them give the octave: c1 is key 60, C is key 36.',
    confidence: 0.9,
    evidence: [
      example === undefined
        ? 'Only then do root keys lie within their key ranges.'
        : `Names such as "${example}" have no number.`,
    ],
    span: firstValueOf(named[0]),
    isAbout: () => false,
    alternatives: [],
  };
}

interface Octave {
  middleC: MiddleC;
  confidence: number;
  reason: string;
}

/** The key places of a row by what they hold, the innermost element first. */
function keysOfRow(keys: readonly Assigned[], row: number): { root?: RowKey; low?: RowKey; high?: RowKey } {
  const find = (...targets: string[]) => {
    for (let at = keys.length - 1; at >= 0; at--) {
      const one = keys[at];
      if (targets.includes(one.target)) {
        const key = rowKey(one.texts[row]);
        if (key) return key;
      }
    }
    return undefined;
  };
  const root = find('pitch_keycenter', 'key');
  const low = find('lokey', 'key');
  const high = find('hikey', 'key');
  return { ...(root && { root }), ...(low && { low }), ...(high && { high }) };
}

/** Votes of rows for conventions. */
class Votes {
  readonly #counts = new Map<MiddleC, number>();
  readonly #keys = new Set<number>();
  #rows = 0;

  add(key: number, number: number): void {
    this.#rows++;
    this.#keys.add(key);
    const fitting = conventions.find((one) => key + octaveShifts[one] === number);
    if (fitting) this.#counts.set(fitting, (this.#counts.get(fitting) ?? 0) + 1);
  }

  addFor(convention: MiddleC, key: number): void {
    this.#rows++;
    this.#keys.add(key);
    this.#counts.set(convention, (this.#counts.get(convention) ?? 0) + 1);
  }

  winner(confidence: number, reason: (count: string) => string, leastKeys = 1): Octave | undefined {
    let best: MiddleC | undefined;
    for (const [one, count] of this.#counts) {
      if (best === undefined || count > (this.#counts.get(best) ?? 0)) best = one;
    }
    const count = best === undefined ? 0 : (this.#counts.get(best) ?? 0);
    if (best === undefined || this.#keys.size < leastKeys || count * 10 < this.#rows * 6) return undefined;
    const share = count / this.#rows;
    return {
      middleC: best,
      confidence: share >= 0.9 ? confidence : confidence * share,
      reason: reason(`${count} of ${this.#rows}`),
    };
  }
}

function decideOctave(keys: readonly Assigned[], files: SampleFiles, rowCount: number): Octave {
  const byText = new Votes();
  const byFile = new Votes();
  const byRange = new Votes();
  const byName = new Votes();
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (const { texts } of keys) {
    for (const text of texts) {
      const { number, named } = rowKey(text) ?? {};
      if (named === undefined) continue;
      if (number !== undefined) byText.add(named, number);
      least = Math.min(least, named);
      greatest = Math.max(greatest, named);
    }
  }
  for (let row = 0; row < rowCount; row++) {
    const { root, low, high } = keysOfRow(keys, row);
    const fileRoot = files.facts[row]?.rootKey;
    if (fileRoot !== null && fileRoot !== undefined) {
      if (root?.named !== undefined) byFile.add(root.named, fileRoot);
      else if (!root && low?.named !== undefined && high?.named !== undefined) {
        voteByRange(byFile, { number: fileRoot }, low, high);
      }
    }
    if (root && low && high) voteByRange(byRange, root, low, high);
    const inName = numberInName(files.names[row]);
    const own = root?.named ?? (low?.named === high?.named ? low?.named : undefined);
    if (inName !== undefined && own !== undefined) byName.add(own, inName);
  }
  const fits = (one: MiddleC) => least + octaveShifts[one] >= 0 && greatest + octaveShifts[one] <= 127;
  return (
    byText.winner(0.97, (count) => `The numbers beside ${count} note names agree with that.`) ??
    byFile.winner(0.97, (count) => `The root keys in ${count} sample files agree with that.`) ??
    byRange.winner(
      0.95,
      (count) => `Only then do root keys lie within their key ranges, in ${count} regions.`,
    ) ??
    byName.winner(0.9, (count) => `The key numbers in ${count} file names agree with that.`, 3) ??
    byExtremes(fits) ??
    byKeyboard(least, greatest) ?? {
      middleC: conventions.find(fits) ?? 'C4',
      confidence: 0.5,
      reason: 'Nothing in the text says it; this is how the open SFZ format names keys.',
    }
  );
}

/** By numbers that stand beside the names in all regions. */
function byNumbers(witness: NumberWitness | undefined): Octave | undefined {
  if (!witness) return undefined;
  const reason = `The numbers of ${witness.count} keys that stand beside their names agree with that.`;
  return { middleC: witness.middleC, confidence: 0.95, reason };
}

function voteByRange(votes: Votes, root: RowKey, low: RowKey, high: RowKey): void {
  if ((root.number === undefined) === (low.number === undefined)) return;
  if ((low.number === undefined) !== (high.number === undefined)) return;
  const fitting = conventions.filter((one) => {
    const at = (key: RowKey) => key.number ?? (key.named as number) + octaveShifts[one];
    return at(low) <= at(root) && at(root) <= at(high);
  });
  if (fitting.length === 1) votes.addFor(fitting[0], root.named ?? (low.named as number));
}

function byExtremes(fits: (one: MiddleC) => boolean): Octave | undefined {
  const fitting = conventions.filter(fits);
  if (fits('C4') || fitting.length !== 1) return undefined;
  return {
    middleC: fitting[0],
    confidence: 0.95,
    reason: 'Otherwise some note names would lie outside the keys 0..127.',
  };
}

function byKeyboard(least: number, greatest: number): Octave | undefined {
  for (const { keys, low, high } of keyboardSpans) {
    const middleC = conventions.find(
      (one) => least + octaveShifts[one] === low && greatest + octaveShifts[one] === high,
    );
    if (middleC) {
      return { middleC, confidence: 0.85, reason: `The keys then span those of a keyboard of ${keys} keys.` };
    }
  }
  return undefined;
}

/** The one number of a file name that could be a key. */
function numberInName(name: string | undefined): number | undefined {
  if (name === undefined) return undefined;
  const stem = name
    .slice(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1)
    .replace(/\.\w{1,5}$/, '');
  const found = stem
    .match(/(?<![A-Za-z0-9#])\d{2,3}(?![A-Za-z0-9])/g)
    ?.map(Number)
    .filter((one) => one >= 12 && one <= 127);
  return found?.length === 1 ? found[0] : undefined;
}

/** Numbers that all differ by the same from the root keys in the sample files. */
function decideOffset(
  keys: readonly Assigned[],
  files: SampleFiles,
  stated?: XmlStatements['keyOffset'],
): { offset: number; draft: Draft } | undefined {
  const root = keys.findLast(({ target }) => target === 'pitch_keycenter' || target === 'key');
  const first = root ?? keys[0];
  if (stated && first) return offsetDraft(first, stated.is, 0.95, saysSo(stated.text));
  if (!root) return undefined;
  const differences = new Map<number, number>();
  const seen = new Set<number>();
  let rows = 0;
  for (const [row, facts] of files.facts.entries()) {
    const written = root.facts.numbers[row];
    if (facts?.rootKey === null || facts?.rootKey === undefined || Number.isNaN(written)) continue;
    rows++;
    seen.add(facts.rootKey);
    const difference = written - facts.rootKey;
    differences.set(difference, (differences.get(difference) ?? 0) + 1);
  }
  const [most] = [...differences].sort((one, other) => other[1] - one[1]);
  if (!most || most[0] === 0 || seen.size < 3 || most[1] * 10 < rows * 9) return undefined;
  return offsetDraft(
    root,
    most[0],
    0.7,
    `They differ so from the root keys in ${most[1]} of ${rows} sample files.`,
  );
}

function offsetDraft(
  one: Assigned,
  offset: number,
  confidence: number,
  reason: string,
): { offset: number; draft: Draft } {
  return {
    offset,
    draft: {
      id: 'keyOffset',
      message: `Key numbers are ${Math.abs(offset)} ${offset > 0 ? 'above' : 'below'} those of MIDI.`,
      confidence,
      isGuess: true,
      evidence: [reason],
      span: firstValueOf(one),
      isAbout: ({ form }) => form.kind === 'key' && form.written !== 'name',
      alternatives: [
        otherForm('key numbers are those of MIDI', (form) => {
          if (form.kind !== 'key') return form;
          const { offset: _, ...rest } = form;
          return rest;
        }),
      ],
    },
  };
}
