import type { MiddleC } from '../../../model/keys';
import { keyOfFrequency } from '../../../model/keys';
import { unitInHeading } from '../../../trade/headings/headings';
import { instrumentSpans, keyboardSpans } from '../../../trade/instrumentSpans';
import { wordsOf } from '../../../trade/languages/spelling';
import type { ColumnMeaning, Unit } from '../../../trade/meaning';
import { conventions, octaveShifts } from '../../../trade/middleC';
import { drumKeysOf } from '../../../trade/names/drumKeys';
import { readFrequency } from '../../../trade/readings/frequencyReading';
import type { KeyReading, NoteNaming } from '../../../trade/readings/keyReading';
import { keyNumbersInFileName, notesInFileName, readKeyRange } from '../../../trade/readings/keyReading';
import type { Statements } from '../../../trade/statements/statements';
import { CellReadings } from '../../cells/cellReadings';
import type { TableCells } from '../../cells/cells';
import type { SampleEvidence } from '../../sampleEvidence';
import { evenlySpread } from '../columnContents';
import type { ColumnReading } from '../columnReading';
import { shortened } from '../columnReading';
import { numberColumnWitness } from './octaveWitnesses';

const mostRows = 500;
/** From so many different roots on, one root key in all files tells nothing (our choice). */
const fewestNames = 3;
/** Of so many numbers one name is a slip rather than a habit (our choice). */
const fewAmong = 4;

/** The convention that the note names of a table follow, and why it was taken. */
export interface OctaveReading {
  middleC: MiddleC;
  /** A clause that goes on from "because". */
  reason: string;
}

interface KeyPlaces {
  root: number;
  low: number;
  high: number;
}

/** Reads a root that is given as a frequency. */
type ReadRoot = (text: string) => KeyReading | undefined;

type RowKeys = { root?: KeyReading; low?: KeyReading; high?: KeyReading };
/** Lowest and highest note name, as keys with middle C = C4, and how many keys are names and how many are numbers. */
interface Extremes {
  least: number;
  greatest: number;
  named: number;
  numbered: number;
}

type Votes = Map<MiddleC, number>;

/** A table as far as the octave goes: its rows and what its columns hold. */
export interface KeyTable {
  data: readonly number[];
  columns: readonly ColumnReading[];
}

/**
 * Decides by evidence which octave numbers the note names of some tables use, best evidence first: what the text around them
 * states, root keys in the sample files, names beside numbers, names outside 0..127, note names in file names beside numbers, measured pitches,
 * the span of keys for the kind of instrument. Without evidence it is C4 = 60, as in the open SFZ format. `undefined`
 * where the tables have no note names.
 */
export function decideOctave(
  cells: TableCells,
  tables: readonly KeyTable[],
  sources: SampleEvidence,
  naming: NoteNaming,
  stated: Statements['middleC'],
): OctaveReading | undefined {
  const evidence = new OctaveEvidence(cells, sources, naming);
  for (const table of tables) evidence.look(table);
  const { extremes } = evidence;
  if (!extremes) return undefined;
  if (stated)
    return {
      middleC: stated.is,
      reason: `the text says "${shortened(stated.text.replace(/[\s,;:]+$/, ''))}"`,
    };
  return (
    winner(
      evidence.areRootsTold ? evidence.files : new Map(),
      (count) => `the root keys in ${count} sample files agree with that`,
    ) ??
    winner(
      evidence.beside,
      (count) => `the key numbers beside the note names agree with that on ${count} rows`,
    ) ??
    winner(
      evidence.hertz,
      (count) => `the frequencies beside the note names agree with that on ${count} rows`,
    ) ??
    winner(
      evidence.ranges,
      (count) => `only then do root keys lie within their key ranges on ${count} rows`,
    ) ??
    byExtremes(extremes) ??
    winner(evidence.names, (count) => `the note names in ${count} file names agree with that`) ??
    byNumbers(evidence.numbers, evidence.numbered) ??
    byDrums(evidence.drums, evidence.drummed) ??
    winner(evidence.pitches, (count) => `the pitches measured in ${count} samples agree with that`) ??
    bySpan(extremes, evidence.words) ?? {
      middleC: 'C4',
      reason: 'nothing in the table says otherwise and SFZ names keys so',
    }
  );
}

/** The votes for each convention by what tells of it. */
class OctaveEvidence {
  /** Root keys that stand in sample files, and pitches that were measured in them. */
  readonly files: Votes = new Map();
  readonly pitches: Votes = new Map();
  /** Key numbers and frequencies beside note names. */
  readonly beside: Votes = new Map();
  readonly hertz: Votes = new Map();
  /** Root keys that lie within their key ranges. */
  readonly ranges: Votes = new Map();
  /** Note names in file names beside key numbers. */
  readonly names: Votes = new Map();
  /** Key numbers in file names, and how many rows have one beside a note name. */
  readonly numbers: Votes = new Map();
  numbered = 0;
  /** Drums that General MIDI has a key for, and how many of these have a note name. */
  readonly drums: Votes = new Map();
  drummed = 0;
  /** Words of file names. */
  readonly words = new Set<string>();
  extremes: Extremes | undefined;
  readonly #roots = new Set<number>();
  readonly #rootNames = new Set<number>();
  readonly #cells: TableCells;
  readonly #sources: SampleEvidence;
  readonly #naming: NoteNaming;

  constructor(cells: TableCells, sources: SampleEvidence, naming: NoteNaming) {
    this.#cells = cells;
    this.#sources = sources;
    this.#naming = naming;
  }

  /** Whether root keys in sample files say something: programs write 60 into all files where nobody sets it (common practice). */
  get areRootsTold(): boolean {
    return this.#rootNames.size < fewestNames || this.#roots.size > 1;
  }

  /** Takes the votes of a table, if it has note names. */
  look({ data, columns }: KeyTable): void {
    const find = (...meanings: ColumnMeaning[]) =>
      columns.find(({ meaning }) => meanings.includes(meaning))?.index ?? -1;
    const places: KeyPlaces = {
      root: find('pitch_keycenter', 'key'),
      low: find('lokey', 'key_range'),
      high: find('hikey', 'key_range'),
    };
    const readRoot = rootReader(columns.find(({ index }) => index === places.root)?.unit);
    const own = namedExtremes(this.#cells, data, places, this.#naming);
    if (!own) return;
    this.extremes = {
      least: Math.min(own.least, this.extremes?.least ?? own.least),
      greatest: Math.max(own.greatest, this.extremes?.greatest ?? own.greatest),
      named: own.named + (this.extremes?.named ?? 0),
      numbered: own.numbered + (this.extremes?.numbered ?? 0),
    };
    const sample = find('sample');
    const witness = numberColumnWitness(this.#cells, data, columns, Object.values(places), this.#naming);
    if (witness) this.beside.set(witness.middleC, (this.beside.get(witness.middleC) ?? 0) + witness.count);
    const repeats = columns.filter(
      ({ repeats: of }) => of !== undefined && Object.values(places).includes(of),
    );
    const hertz = columns.find(
      ({ meaning, heading }) => meaning === 'unknown' && /hz/iu.test(unitInHeading(heading) ?? ''),
    );
    for (const row of evenlySpread(data, mostRows)) {
      const keys = rowKeys(this.#cells, row, places, this.#naming, readRoot);
      const name = sample < 0 ? '' : this.#cells.value(this.#cells.cell(row, sample));
      for (const word of wordsOf(name.slice(-80))) this.words.add(word);
      if (name !== '') this.#lookAtFile(name, keys);
      this.#lookBeside(row, keys, repeats, hertz);
      voteFor(this.ranges, keys);
      this.#lookAtName(name, keys);
    }
  }

  #lookAtFile(name: string, keys: RowKeys): void {
    const root = this.#sources.rootKeyOf?.(name);
    if (root !== undefined) {
      this.#roots.add(root);
      if (keys.root?.named !== undefined) this.#rootNames.add(keys.root.named);
    }
    if (root !== undefined) voteFor(this.files, { ...keys, root: withNumber(keys.root, root) });
    const pitch = this.#sources.pitchOf?.(name);
    if (pitch !== undefined)
      voteFor(this.pitches, { ...keys, root: withNumber(keys.root, Math.round(pitch)) });
  }

  #lookBeside(
    row: number,
    keys: RowKeys,
    repeats: readonly ColumnReading[],
    hertz: ColumnReading | undefined,
  ): void {
    const plain = (column: number) => this.#cells.plain(this.#cells.cell(row, column));
    for (const key of [keys.root, keys.low, keys.high]) voteByPair(this.beside, key?.number, key?.named);
    for (const column of repeats) {
      const other = readKeyRange(plain(column.index), this.#naming)?.low;
      const one = readKeyRange(plain(column.repeats as number), this.#naming)?.low;
      voteByPair(this.beside, one?.number ?? other?.number, one?.named ?? other?.named);
    }
    const frequency = hertz && readFrequency(plain(hertz.index), unitInHeading(hertz.heading));
    if (frequency !== undefined)
      voteByPair(this.hertz, Math.round(keyOfFrequency(frequency)), keys.root?.named);
  }

  #lookAtName(name: string, keys: RowKeys): void {
    const named = keys.root ?? (keys.low?.named === keys.high?.named ? keys.low : undefined);
    const numbers = (keys.root ?? keys.low)?.named === undefined ? [] : keyNumbersInFileName(name);
    if (numbers.length > 0) this.numbered++;
    if (named?.named !== undefined) numbers.some((one) => voteByPair(this.numbers, one, named.named));
    else if (numbers.length === 1)
      voteFor(this.numbers, { ...keys, root: { number: numbers[0], named: undefined } });
    const drums = drumKeysOf(name);
    if (drums.length > 0 && named?.named !== undefined) {
      this.drummed++;
      drums.some((one) => voteByPair(this.drums, one, named.named));
    }
    const number =
      keys.root?.number ?? (keys.low?.number === keys.high?.number ? keys.low?.number : undefined);
    if (number === undefined) return;
    for (const one of notesInFileName(name)) if (voteByPair(this.names, number, one)) break;
  }
}

function withNumber(key: KeyReading | undefined, number: number): KeyReading {
  return { number, named: key?.number === undefined ? key?.named : undefined };
}

/** How roots of a column in a unit are read: only those in Hz are no keys. */
function rootReader(unit: Unit | undefined): ReadRoot | undefined {
  if (unit !== 'Hz' && unit !== 'kHz') return undefined;
  return (text) => {
    const hertz = readFrequency(text, unit);
    return hertz === undefined ? undefined : { number: Math.round(keyOfFrequency(hertz)), named: undefined };
  };
}

function rowKeys(
  cells: TableCells,
  row: number,
  places: KeyPlaces,
  naming: NoteNaming,
  readRoot: ReadRoot | undefined,
): RowKeys {
  const read = (column: number) =>
    column < 0 ? undefined : readKeyRange(cells.plain(cells.cell(row, column)), naming);
  const root = readRoot ? readRoot(cells.plain(cells.cell(row, places.root))) : read(places.root)?.low;
  const low = read(places.low)?.low;
  const high = read(places.high)?.high;
  return { ...(root && { root }), ...(low && { low }), ...(high && { high }) };
}

function voteByPair(votes: Votes, number: number | undefined, named: number | undefined): boolean {
  if (number === undefined || named === undefined) return false;
  const middleC = conventions.find((one) => named + octaveShifts[one] === number);
  if (middleC) votes.set(middleC, (votes.get(middleC) ?? 0) + 1);
  return middleC !== undefined;
}

/** Votes by a root key given as a number and by name, or by the only convention that puts it inside its key range. */
function voteFor(votes: Votes, { root, low, high }: RowKeys): void {
  if (voteByPair(votes, root?.number, root?.named)) return;
  if (!root || !low || !high) return;
  const mixed = (root.number === undefined) !== (low.number === undefined);
  if (!mixed || (low.number === undefined) !== (high.number === undefined)) return;
  const fitting = conventions.filter((one) => {
    const at = (key: KeyReading) => key.number ?? (key.named as number) + octaveShifts[one];
    return at(low) <= at(root) && at(root) <= at(high);
  });
  if (fitting.length === 1) votes.set(fitting[0], (votes.get(fitting[0]) ?? 0) + 1);
}

function winner(votes: Votes, reason: (count: string) => string): OctaveReading | undefined {
  let total = 0;
  let best: MiddleC | undefined;
  for (const [middleC, count] of votes) {
    total += count;
    if (best === undefined || count > (votes.get(best) ?? 0)) best = middleC;
  }
  const count = best === undefined ? 0 : (votes.get(best) ?? 0);
  if (best === undefined || count * 3 < total * 2) return undefined;
  return { middleC: best, reason: reason(`${count} of ${total}`) };
}

/** By the keys of drums in General MIDI, where at least two drums agree and most do. */
function byDrums(votes: Votes, drummed: number): OctaveReading | undefined {
  const most = Math.max(0, ...votes.values());
  if (most < 2 || most * 3 < drummed * 2) return undefined;
  return winner(votes, () => `${most} of ${drummed} drums then have their keys of General MIDI`);
}

/** By numbers in file names: they may count anything, so most of them have to agree. */
function byNumbers(votes: Votes, numbered: number): OctaveReading | undefined {
  const most = Math.max(0, ...votes.values());
  if (most === 0 || most * 3 < numbered * 2) return undefined;
  return winner(votes, () => `the key numbers in ${most} of ${numbered} file names agree with that`);
}

/** Lowest and highest note name of the key columns, as keys with middle C = C4. */
function namedExtremes(
  cells: TableCells,
  data: readonly number[],
  places: KeyPlaces,
  naming: NoteNaming,
): Extremes | undefined {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  let [named, numbered] = [0, 0];
  const ranges = new CellReadings(cells, (text) => readKeyRange(text, naming));
  for (const column of new Set(Object.values(places))) {
    if (column < 0) continue;
    for (const row of data) {
      const cell = cells.cell(row, column);
      // Plain numbers name no note.
      if (cell >= 0 && cells.digits(cell, 3) >= 0) numbered++;
      if (cell < 0 || cells.digits(cell, 3) >= 0) continue;
      const seen = ranges.count;
      const range = ranges.of(cell);
      if (range?.low.named !== undefined && range.low.number === undefined) named++;
      if (ranges.count === seen) continue;
      for (const key of range ? [range.low, range.high] : []) {
        if (key.named === undefined || key.number !== undefined) continue;
        least = Math.min(least, key.named);
        greatest = Math.max(greatest, key.named);
      }
    }
  }
  return least === Number.POSITIVE_INFINITY ? undefined : { least, greatest, named, numbered };
}

function byExtremes(extremes: Extremes): OctaveReading | undefined {
  const { least, greatest } = extremes;
  const fits = (one: MiddleC) => least + octaveShifts[one] >= 0 && greatest + octaveShifts[one] <= 127;
  if (fits('C4') || areFew(extremes)) return undefined;
  const middleC = conventions.find(fits);
  return middleC && { middleC, reason: 'otherwise some note names would lie outside the keys 0..127' };
}

/** Whether a few names stand among numbers: one of them may be a slip, and says nothing of octaves by itself. */
function areFew({ named, numbered }: Extremes): boolean {
  return named * fewAmong <= numbered;
}

/** By the usual key spans of keyboards, or of the one kind of instrument that sample names speak of. */
function bySpan(extremes: Extremes, words: ReadonlySet<string>): OctaveReading | undefined {
  const { least, greatest } = extremes;
  if (areFew(extremes)) return undefined;
  for (const { keys, low, high } of keyboardSpans) {
    const middleC = conventions.find(
      (one) => least + octaveShifts[one] === low && greatest + octaveShifts[one] === high,
    );
    if (middleC) return { middleC, reason: `the keys then span those of a keyboard of ${keys} keys` };
  }
  const kinds = instrumentSpans.filter((kind) => kind.words.some((word) => words.has(word)));
  const [kind] = kinds;
  if (!kind || kinds.length > 1) return undefined;
  const overhang = (one: MiddleC) =>
    Math.max(0, kind.low - least - octaveShifts[one]) + Math.max(0, greatest + octaveShifts[one] - kind.high);
  const fitting = conventions.filter((one) => overhang(one) === 0);
  const exact = fitting.find((one) => least + octaveShifts[one] === kind.low);
  const middleC = exact ?? (fitting.length === 1 ? fitting[0] : undefined);
  return middleC && { middleC, reason: `the keys then lie within the usual span of a ${kind.name}` };
}
