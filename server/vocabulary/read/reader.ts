import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { Scope } from '../../model/instrumentBuilder';
import { InstrumentBuilder } from '../../model/instrumentBuilder';
import type { ReadOptions } from '../../model/notation';
import { joinPath } from '../../model/paths';
import { declaredEntities } from '../../xml/declaredEntities';
import type { XmlHandler } from '../../xml/scan/handler';
import { ValueMark } from '../../xml/scan/handler';
import { ReaderEvents } from '../../xml/scan/readerEvents';
import { decodeXmlAttribute } from '../../xml/scan/references';
import { expectedOf } from '../forms/expected';
import { readSamplePath } from '../forms/samplePath';
import { nestedFolder } from '../nestedFolders';
import type { ListPlace, ValueForm } from '../vocabulary';
import { BackwardRanges } from './backwardRanges';
import type { ChildElements, CompiledVocabulary, ElementPlace } from './compile';
import { ElementText } from './elementText';
import type { HeldAttribute, LateValues, ReadEntry } from './entries';
import { LastWords } from './lastWords';
import type { SampleLists } from './sampleList';
import { scaleBySurroundings } from './scale';
import type { StepValue } from './steps';
import type { OffElement } from './switchedOff';
import type { ReadTarget } from './targets';
import { isReadBeside, partOf } from './targets';
import type { RobinTurn } from './turns';
import type { TargetValue } from './values';
import { readTargetText } from './values';

type Path = Extract<ValueForm, { kind: 'path' }>;

/** What other ends count from. */
const countedFromNames: ReadonlySet<string> = new Set(['lokey', 'lovel', 'pitch_keycenter']);

/**
 * Puts what the scanner tells of a text in a vocabulary into an instrument. One class of more than 400 lines, since parted it
 * would pay for a further call at each value.
 */
export class VocabularyReader extends ReaderEvents implements XmlHandler {
  readonly #vocabulary: CompiledVocabulary;
  protected readonly text: string;
  readonly #options: ReadOptions;
  protected readonly builder: InstrumentBuilder;
  /** Names of parameters in `ParameterNames`, by target. */
  readonly #names: number[];
  /** Numbers in the vocabulary of the names that the scanner has counted; −1 for others. */
  readonly #attributes: number[] = [];
  readonly #hasBackslash: boolean;
  readonly #words: LastWords;

  /** The elements that are open, by depth: what they are, where their names stand, and whether their text has been read. */
  #depth = 0;
  readonly #places: (ElementPlace | undefined)[] = [];
  readonly #nameStarts: number[] = [];
  readonly #nameEnds: number[] = [];
  readonly #textRead: boolean[] = [];
  /** By level: the header of its element, what was in force before that, and the values that inner headers repeat. */
  readonly #headers: number[];
  readonly #before: (Scope | undefined)[];
  readonly #entries: (ReadEntry[] | undefined)[];
  /** The folder that the element of each level names for the paths in it. */
  readonly #folders: (string[] | undefined)[];

  #folderPlaces = 1;
  /** The path that was read last as it is written, and, once it is set, where. */
  #rawPath: string | undefined;
  #lastPath: { target: ReadTarget; header: number; parameter: number; raw: string } | undefined;

  /** The tag that is being read. */
  #place: ElementPlace | undefined;
  #nameStart = 0;
  #nameEnd = 0;
  #header = -1;
  /** Set while the attributes of the tag decide what it is. */
  #choosing: ChildElements | undefined;
  #held: HeldAttribute[] = [];
  /** The attribute that says what the others of the tag mean. */
  #naming: HeldAttribute | undefined;
  readonly #elementText: ElementText;
  readonly #lists: SampleLists;
  /** How many regions of a round robin were read; −1 outside of one. */
  #turn = -1;
  /** Sample rates that the text states, by header. */
  readonly #statedRates = new Map<number, number>();
  /** The header and the parameter that a place has set which goes before others. */
  #overHeader = -1;
  #overName = -1;
  /** Elements that are switched off, by where their tags start; `undefined` where none can be. */
  readonly #off: ReadonlyMap<number, OffElement> | undefined;

  /** The parameters that the header read last has of its own, where values of lists give way to them. */
  #ownHeader = -1;
  readonly #own = new Set<number>();

  readonly #lateBefore: LateValues | undefined;
  readonly #turns: ReadonlyMap<number, RobinTurn> | undefined;
  readonly #steps: ReadonlyMap<number, readonly StepValue[]>;
  readonly #late = new Map<number, ReadEntry[]>();
  readonly #unscaled: { parameter: number; target: ReadTarget }[] = [];
  /** Numbers of keys or velocities, and what they count from, by header and parameter. */
  readonly #counts: { parameter: number; header: number; target: ReadTarget; count: number }[] = [];
  readonly #countedFrom = new Map<string, number>();
  readonly #ranges = new BackwardRanges();

  /**
   * `off` are the elements that are switched off, by where their tags start; `late` is what a first reading of the same text gave,
   * `turns` how many turns round robins have by the header of a position, and `steps` the ends of ranges that follow from others.
   */
  constructor(
    vocabulary: CompiledVocabulary,
    text: string,
    options: ReadOptions,
    lists: SampleLists,
    off?: ReadonlyMap<number, OffElement>,
    late?: LateValues,
    turns?: ReadonlyMap<number, RobinTurn>,
    steps: ReadonlyMap<number, readonly StepValue[]> = new Map(),
  ) {
    super();
    this.#vocabulary = vocabulary;
    this.text = text;
    this.#options = options;
    this.builder = new InstrumentBuilder('xml', text.length);
    this.builder.translate();
    this.builder.enterSource(options.path, text);
    const { names } = this.builder;
    this.#names = vocabulary.targets.map(({ parameter }) => names.idOf(parameter));
    this.#words = new LastWords(text);
    this.#lists = lists;
    this.#off = off;
    this.#hasBackslash = text.includes('\\');
    this.#headers = vocabulary.levels.map(() => -1);
    this.#before = vocabulary.levels.map(() => undefined);
    this.#entries = vocabulary.levels.map(() => undefined);
    this.#folders = vocabulary.levels.map(() => undefined);
    for (const { repeats } of vocabulary.levels) for (const level of repeats) this.#entries[level] = [];
    this.#elementText = new ElementText(text);
    this.#lateBefore = late;
    this.#turns = turns;
    this.#steps = steps;
  }

  get hasLateValues(): boolean {
    return this.#late.size > 0;
  }

  /** What came too late for its header; for a second reading. */
  lateValues(): LateValues {
    return this.#late;
  }

  finish(): Instrument {
    this.#addLate();
    const builder = this.builder;
    this.#resolveCounts();
    this.#turnRanges();
    const instrument = builder.finish();
    scaleBySurroundings(instrument, builder, this.#unscaled, this.#options.sampleFacts, this.#statedRates);
    return instrument;
  }

  /** Ranges of keys and velocities that are written backwards are read the right way round, with a finding. */
  #turnRanges(): void {
    for (const { low, high, start, end, lowest, highest, words } of this.#ranges.backwards()) {
      const said = `The ${words} range ${highest} to ${lowest} is written backwards. It is read as ${lowest} to ${highest}. Swap the two values.`;
      this.builder.setNumber(low, lowest, said);
      this.builder.setNumber(high, highest);
      this.builder.addFinding({
        code: 'range-inverted',
        severity: 'warning',
        start,
        end,
        message: said,
      });
    }
  }

  /** Makes ends of numbers of keys or velocities, before regions are given their ranges. */
  #resolveCounts(): void {
    for (const { parameter, header, target, count } of this.#counts) {
      const { form, numbers } = target;
      if (form.kind !== 'count' || !numbers) continue;
      const frameOf = (name: string) => this.#countedFrom.get(`${header} ${name}`) ?? 0;
      const around = { parameter: target.parameter, sampleRate: undefined, frames: undefined, frameOf };
      this.builder.setNumber(parameter, numbers.read(count, around));
    }
  }

  open(tagStart: number, nameStart: number, nameEnd: number, hash: number): void {
    if (this.#elementText.isOpen) this.#endText();
    this.#nameStart = nameStart;
    this.#nameEnd = nameEnd;
    const around = this.#depth === 0 ? this.#vocabulary.root : this.#places[this.#depth - 1];
    const children = around?.childrenNamed(this.text, nameStart, nameEnd, hash);
    this.#header = -1;
    this.#choosing = undefined;
    this.#naming = undefined;
    if (children === undefined) this.#place = this.#depth === 0 ? this.#vocabulary.outermost : undefined;
    else if (children.goesByAttributes) {
      this.#place = undefined;
      this.#choosing = children;
      this.#held = [];
    } else {
      const { place } = children;
      const off = this.#off?.get(tagStart);
      this.#place = off ? this.#whatIsLeft(place, off) : place;
      if (off) return;
      if (place.level >= 0) this.#openLevel(place.level, tagStart, nameEnd);
    }
  }

  /** What still means something in an element that is switched off: of a level nothing, else what switches it. */
  #whatIsLeft(place: ElementPlace, { rule }: OffElement): ElementPlace | undefined {
    if (place.level >= 0 || !rule.at.startsWith('@')) return undefined;
    const attribute = this.#vocabulary.attributes.get(rule.at.slice(1));
    return attribute === undefined ? undefined : place.withOnly(attribute);
  }

  #openLevel(level: number, tagStart: number, nameEnd: number): void {
    const { kind, repeats } = this.#vocabulary.levels[level] ?? { repeats: [] };
    this.#folders[level] = undefined;
    if (kind === undefined) return;
    this.#addLate();
    const builder = this.builder;
    // A region changes nothing of what follows it, so its scope need not be kept.
    if (kind !== HeaderKind.region) this.#before[level] = builder.scope();
    const header = builder.openHeader(kind, tagStart, nameEnd);
    this.#header = header;
    for (const outer of repeats) {
      const outerHeader = this.#headers[outer] ?? -1;
      if (outerHeader < 0) continue;
      for (const entry of this.#entries[outer] ?? []) this.#addEntry(entry);
      for (const entry of this.#lateBefore?.get(outerHeader) ?? []) this.#addEntry(entry);
    }
    this.#headers[level] = header;
    if (this.#entries[level]) this.#entries[level] = [];
    const nameStart = tagStart + 1;
    const sets = this.#vocabulary.sets[level];
    const own = sets && sets.size > 0 ? sets.get(this.text.slice(nameStart, nameEnd)) : undefined;
    if (this.#vocabulary.isTurns[level]) this.#turn = 0;
    const { turn } = this.#vocabulary;
    if (turn && kind === HeaderKind.region && this.#turn >= 0)
      this.#addTurn(turn, header, nameStart, nameEnd);
    for (const { parameter, value } of this.#steps.get(header) ?? []) {
      const target = this.#vocabulary.steps[level].get(parameter);
      if (target) this.#add(target, nameStart, nameEnd, nameStart, nameEnd, value, true);
    }
    for (const { target, value } of own ?? [])
      this.#add(target, nameStart, nameEnd, nameStart, nameEnd, Number.NaN, false, value);
  }

  /** The position of a region in its round robin, where that has several turns as far as that is known. */
  #addTurn(turn: ReadTarget, header: number, start: number, end: number): void {
    this.#turn++;
    const known = this.#turns?.get(header);
    if (this.#turns && !known) return;
    this.#add(turn, start, end, start, end, known?.position ?? this.#turn, true);
  }

  /** Adds what stands in the text behind later headers to the header opened last, before another one opens. */
  #addLate(): void {
    const late = this.#lateBefore?.get(this.builder.headerCount - 1);
    if (late) for (const entry of late) this.#addEntry(entry);
  }

  attribute(
    name: number,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    number: number,
    marks: number,
  ): void {
    let attribute = this.#attributes[name];
    if (attribute === undefined) {
      attribute = this.#vocabulary.attributes.get(this.text.slice(nameStart, nameEnd)) ?? -1;
      this.#attributes[name] = attribute;
    }
    if (attribute < 0) return;
    if (this.#choosing !== undefined) {
      this.#held.push({ attribute, nameStart, nameEnd, valueStart, valueEnd, number, marks });
      return;
    }
    const targets = this.#place?.attributes[attribute];
    if (targets === undefined) return;
    for (const target of targets) {
      this.#value(target, nameStart, nameEnd, valueStart, valueEnd, number, marks);
    }
  }

  #value(
    target: ReadTarget,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    number: number,
    marks: number,
  ): void {
    const { form, readNumber } = target;
    if (target.listed && !target.isFolder) {
      const raw = this.text.slice(valueStart, valueEnd);
      const key = marks & ValueMark.encoded ? decodeXmlAttribute(raw, declaredEntities(this.text)) : raw;
      this.#listedValue(target, target.listed, nameStart, nameEnd, valueStart, valueEnd, key);
      return;
    }
    if (target.isRate) {
      this.#statedRates.set(this.#headers[target.level], Number(this.text.slice(valueStart, valueEnd)));
      return;
    }
    if (target.isFolder) {
      const raw = this.text.slice(valueStart, valueEnd);
      this.#setFolder(
        target,
        marks & ValueMark.encoded ? decodeXmlAttribute(raw, declaredEntities(this.text)) : raw,
      );
      return;
    }
    const isRaw = (marks & ValueMark.encoded) === 0 && target.part === 0;
    if (isRaw && readNumber !== undefined && !Number.isNaN(number) && !target.goesByText) {
      const value = readNumber(number);
      if (Number.isNaN(value)) this.#reportNonsense(target, valueStart, valueEnd);
      else this.#add(target, nameStart, nameEnd, valueStart, valueEnd, value, value !== number);
      return;
    }
    if (isRaw && (form.kind === 'text' || (form.kind === 'path' && this.#isPathAsWritten(form)))) {
      if (valueEnd > valueStart) this.#add(target, nameStart, nameEnd, valueStart, valueEnd, number, false);
      return;
    }
    if (isRaw && form.kind === 'words') {
      const word = this.#words.read(target.index, form, valueStart, valueEnd);
      if (word === undefined) {
        if (valueEnd > valueStart) this.#reportNonsense(target, valueStart, valueEnd);
        return;
      }
      const { raw, value } = word;
      // A word may stand for nothing.
      if (value === '') return;
      const text = value === raw ? undefined : value;
      this.#add(target, nameStart, nameEnd, valueStart, valueEnd, word.number, false, text);
      return;
    }
    const raw = this.text.slice(valueStart, valueEnd);
    const text = marks & ValueMark.encoded ? decodeXmlAttribute(raw, declaredEntities(this.text)) : raw;
    this.#textValue(target, nameStart, nameEnd, valueStart, valueEnd, text, text === raw);
  }

  #isPathAsWritten({ folder, under, ending, list }: Path): boolean {
    return !folder && under === undefined && !ending && !list && !this.#hasBackslash;
  }

  /** `isAtSpan` says that the text stands at the span as it is. */
  #textValue(
    target: ReadTarget,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    text: string,
    isAtSpan: boolean,
  ): void {
    if (text === '') return;
    if (target.isFolder) {
      this.#setFolder(target, text);
      return;
    }
    if (target.listed) {
      this.#listedValue(target, target.listed, nameStart, nameEnd, valueStart, valueEnd, text);
      return;
    }
    const part = partOf(target, text);
    const partText = part && text.slice(part.start, part.end);
    const value = partText === undefined ? undefined : this.#targetValue(target, partText);
    if (part === undefined || partText === undefined || value === undefined) {
      this.#reportNonsense(target, valueStart, valueEnd);
      return;
    }
    // A word may stand for nothing.
    if (value.text === '') return;
    const start = isAtSpan ? valueStart + part.start : valueStart;
    const end = isAtSpan ? valueStart + part.end : valueEnd;
    const ownText = value.text ?? (isAtSpan || value.isNumber ? undefined : partText);
    const isNumber = value.isNumber || (!isAtSpan && ownText === undefined);
    const { number, isUnscaled } = value;
    this.#add(target, nameStart, nameEnd, start, end, number, isNumber, ownText, isUnscaled);
  }

  /** A value of the entry that a text refers to, where the element says nothing itself. */
  #listedValue(
    target: ReadTarget,
    place: ListPlace,
    nameStart: number,
    nameEnd: number,
    start: number,
    end: number,
    key: string,
  ): void {
    const whole = this.#lists.valuesOf(place).get(key.trim());
    const part = whole === undefined ? undefined : partOf(target, whole);
    const text = part && whole?.slice(part.start, part.end);
    const value = text === undefined ? undefined : this.#targetValue(target, text);
    if (whole !== undefined && value === undefined) this.#reportNonsense(target, start, end, whole);
    if (text === undefined || value === undefined || value.text === '') return;
    const { number, isUnscaled, isNumber } = value;
    const written = value.text ?? (isNumber ? undefined : text);
    this.#add(target, nameStart, nameEnd, start, end, number, written === undefined, written, isUnscaled);
  }

  #targetValue(target: ReadTarget, text: string): TargetValue | undefined {
    const { form } = target;
    if (form.kind !== 'path' || !form.list) {
      const placed = this.#inFolder(target, text);
      const value = readTargetText(target, placed);
      // What stands in the text is not the whole path.
      return value && placed !== text ? { ...value, text: value.text ?? placed } : value;
    }
    const path = this.#lists.of(form.list).get(text.trim());
    const rate = form.list.rate && this.#lists.ratesOf(form.list).get(text.trim());
    if (rate) this.#statedRates.set(this.#headers[target.level], Number(rate));
    return path === undefined
      ? undefined
      : { number: Number.NaN, isNumber: false, text: readSamplePath(form, path) };
  }

  /** A path with the folder before it that the elements around name. */
  #inFolder({ form, level }: ReadTarget, text: string): string {
    if (form.kind !== 'path' || form.under === undefined || text.startsWith('*')) return text;
    this.#rawPath = text;
    let path = text;
    for (let place = this.#folderPlaces - 1; place >= 0; place--) {
      const around = this.#folders.slice(0, level + 1).flatMap((one, at) => {
        const folder = one?.[place];
        return folder ? [{ element: this.#vocabulary.elements[at], folder }] : [];
      });
      const folder = nestedFolder(around);
      if (folder !== undefined) path = joinPath(folder, path);
    }
    return path;
  }

  #setFolder({ level, folderPlace = 0, listed }: ReadTarget, text: string): void {
    const folder = listed ? this.#lists.valuesOf(listed).get(text.trim()) : text.trim();
    if (folder === undefined) return;
    this.#folderPlaces = Math.max(this.#folderPlaces, folderPlace + 1);
    const folders = this.#folders[level] ?? [];
    folders[folderPlace] = folder;
    this.#folders[level] = folders;
    this.#placeAgain(level);
  }

  /** Puts a path into a folder that its own element names behind it. */
  #placeAgain(level: number): void {
    const last = this.#lastPath;
    if (!last || last.target.level !== level || last.header !== this.#headers[level]) return;
    const { target, parameter, raw } = last;
    const placed = this.#inFolder(target, raw);
    this.builder.setValue(parameter, readTargetText(target, placed)?.text ?? placed);
  }

  /** Tells of a text that makes no sense: the one at the span, or what that refers to. */
  #reportNonsense(target: ReadTarget, start: number, end: number, whole = this.text.slice(start, end)): void {
    if (target.besides.length > 0 && isReadBeside(target, whole)) return;
    const text = whole.slice(0, 40);
    this.builder.addFinding({
      code: 'opcode-value',
      severity: 'error',
      start,
      end,
      message: `"${text}${whole.length > 40 ? '…' : ''}" sets no ${target.parameter}. It takes ${expectedOf(target.form)}${target.part === 0 ? '' : ', as part of a range'}.`,
    });
  }

  /** Whether a place of the same element that goes before this one has set the parameter. */
  #isOverridden({ form, index }: ReadTarget, header: number): boolean {
    const name = this.#names[index];
    if (form.kind === 'words' && form.over) {
      this.#overHeader = header;
      this.#overName = name;
      return false;
    }
    return this.#overHeader === header && this.#overName === name;
  }

  #add(
    target: ReadTarget,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    number: number,
    isNumber: boolean,
    text?: string,
    isUnscaled = false,
  ): void {
    const header = this.#headers[target.level];
    if (this.#isOverridden(target, header)) return;
    if (this.#vocabulary.hasStandIns) {
      if (header !== this.#ownHeader) this.#own.clear();
      this.#ownHeader = header;
      const name = this.#names[target.index];
      if (!target.isStandIn) this.#own.add(name);
      else if (this.#own.has(name)) return;
    }
    const repeated = this.#entries[target.level];
    const isLate = header !== this.builder.headerCount - 1;
    if (isLate || repeated) {
      const entry = { target, nameStart, nameEnd, valueStart, valueEnd, number, isNumber, text, isUnscaled };
      if (!isLate) repeated?.push(entry);
      else {
        const late = this.#late.get(header);
        if (late) late.push(entry);
        else this.#late.set(header, [entry]);
        this.#addFollowing(target, header, nameStart, nameEnd, valueStart, valueEnd);
        return;
      }
    }
    const name = this.#names[target.index];
    const builder = this.builder;
    const parameter = builder.addTranslated(name, nameStart, nameEnd, valueStart, valueEnd, number, isNumber);
    if (text !== undefined) builder.setValue(parameter, text);
    if (this.#rawPath !== undefined && target.form.kind === 'path') {
      this.#lastPath = { target, header, parameter, raw: this.#rawPath };
      this.#rawPath = undefined;
    }
    if (isUnscaled) this.#unscaled.push({ parameter, target });
    if (this.#vocabulary.hasCounts) this.#noteCount(target, header, number, parameter);
    if (this.#vocabulary.backwards)
      this.#ranges.add(target.parameter, header, parameter, number, valueStart, valueEnd);
    this.#addFollowing(target, header, nameStart, nameEnd, valueStart, valueEnd);
  }

  /** Adds what follows from a value: the loop mode from the points of a loop, how many turns there are from a position. */
  #addFollowing(
    { implied, turns }: ReadTarget,
    header: number,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
  ): void {
    if (implied)
      this.#add(implied.target, nameStart, nameEnd, valueStart, valueEnd, Number.NaN, false, implied.value);
    const count = turns && this.#turns?.get(header)?.count;
    if (turns && count !== undefined) this.#add(turns, nameStart, nameEnd, valueStart, valueEnd, count, true);
  }

  #noteCount(target: ReadTarget, header: number, number: number, parameter: number): void {
    if (target.form.kind === 'count') this.#counts.push({ parameter, header, target, count: number });
    else if (countedFromNames.has(target.parameter))
      this.#countedFrom.set(`${header} ${target.parameter}`, number);
  }

  #addEntry(entry: ReadEntry): void {
    const { target, nameStart, nameEnd, valueStart, valueEnd, number, isNumber, text, isUnscaled } = entry;
    const name = this.#names[target.index];
    const builder = this.builder;
    const parameter = builder.addTranslated(name, nameStart, nameEnd, valueStart, valueEnd, number, isNumber);
    if (text !== undefined) builder.setValue(parameter, text);
    if (isUnscaled) this.#unscaled.push({ parameter, target });
    if (this.#vocabulary.hasCounts) this.#noteCount(target, builder.headerCount - 1, number, parameter);
  }

  openEnd(end: number, empty: boolean): void {
    if (this.#choosing !== undefined) this.#choose(this.#choosing);
    const level = this.#place?.level ?? -1;
    if (this.#header >= 0) this.builder.closeHeader(this.#header, end);
    if (empty) {
      if (level >= 0) this.#leaveLevel(level);
      return;
    }
    const depth = this.#depth++;
    this.#places[depth] = this.#place;
    // Behind attributes that mean something too, an empty name keeps all names in order.
    const isMixed = this.#place?.isMixed === true;
    this.#nameStarts[depth] = isMixed ? end - 1 : (this.#naming?.valueStart ?? this.#nameStart);
    this.#nameEnds[depth] = isMixed ? end - 1 : (this.#naming?.valueEnd ?? this.#nameEnd);
    this.#textRead[depth] = false;
  }

  /** Finds out what an element is by its attributes, and reads those that carry values. */
  #choose(children: ChildElements): void {
    const held = this.#held;
    this.#choosing = undefined;
    this.#place = children.choose((attribute) => {
      const found = held.findLast((one) => one.attribute === attribute);
      if (!found) return undefined;
      const raw = this.text.slice(found.valueStart, found.valueEnd);
      return found.marks & ValueMark.encoded ? decodeXmlAttribute(raw, declaredEntities(this.text)) : raw;
    });
    if (!this.#place) return;
    const naming = held.find(({ attribute }) => children.conditionAttributes.has(attribute));
    this.#naming = naming;
    for (const { attribute, nameStart, nameEnd, valueStart, valueEnd, number, marks } of held) {
      const targets = this.#place.attributes[attribute];
      if (targets === undefined) continue;
      // The name stands before its value, where it says more than the attribute's own.
      const isNamed = naming !== undefined && naming.valueEnd < valueStart;
      const start = isNamed ? naming.valueStart : nameStart;
      const end = isNamed ? naming.valueEnd : nameEnd;
      for (const target of targets) this.#value(target, start, end, valueStart, valueEnd, number, marks);
    }
  }

  #leaveLevel(level: number): void {
    this.#folders[level] = undefined;
    if (this.#vocabulary.isTurns[level]) this.#turn = -1;
    // What stands beside an element and not in it inherits nothing from it.
    if (this.#entries[level]) this.#entries[level] = [];
    const before = this.#before[level];
    if (before) this.builder.restore(before);
  }

  close(_start: number, end: number): void {
    if (this.#elementText.isOpen) this.#endText();
    const place = this.#places[--this.#depth];
    if (place === undefined || place.level < 0) return;
    const header = this.#headers[place.level];
    if (header >= 0) this.builder.closeHeader(header, end);
    this.#leaveLevel(place.level);
  }

  textElement(
    tagStart: number,
    nameEnd: number,
    hash: number,
    start: number,
    end: number,
    number: number,
    closeStart: number,
  ): void {
    if (this.#elementText.isOpen) this.#endText();
    const nameStart = tagStart + 1;
    const around = this.#depth === 0 ? this.#vocabulary.root : this.#places[this.#depth - 1];
    const children = around?.childrenNamed(this.text, nameStart, nameEnd, hash);
    if (children === undefined) return;
    if (children.goesByAttributes || children.place.level >= 0) {
      this.open(tagStart, nameStart, nameEnd, hash);
      this.openEnd(nameEnd + 1, false);
      this.characters(start, end);
      this.close(closeStart, closeStart + nameEnd - nameStart + 3);
      return;
    }
    const { text, isMixed } = children.place;
    if (text === undefined) return;
    for (const target of text) {
      this.#value(target, isMixed ? nameEnd : nameStart, nameEnd, start, end, number, 0);
    }
  }

  characters(start: number, end: number): void {
    const depth = this.#depth - 1;
    if (this.#places[depth]?.text !== undefined && !this.#textRead[depth]) this.#elementText.add(start, end);
  }

  #endText(): void {
    const depth = this.#depth - 1;
    this.#textRead[depth] = true;
    const { start, end, number, text, isAtSpan } = this.#elementText.take();
    const nameStart = this.#nameStarts[depth];
    const nameEnd = this.#nameEnds[depth];
    for (const target of this.#places[depth]?.text ?? []) {
      if (text === undefined || (isAtSpan && text !== '')) {
        this.#value(target, nameStart, nameEnd, start, end, number, 0);
      } else this.#textValue(target, nameStart, nameEnd, start, end, text, isAtSpan);
    }
  }
}
