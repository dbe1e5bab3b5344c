import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { WriteOptions, Written } from '../../model/notation';
import type { Steps } from '../../model/steps';
import { finish } from '../../model/steps';
import { LineBuffer } from '../../model/text/lineBuffer';
import { mainSpan } from '../../model/text/span';
import { encodeXmlAttribute, encodeXmlComment } from '../../xml/scan/references';
import { lacksOutermostElement, outermostElementOf } from '../outermostElement';
import type { Vocabulary } from '../vocabulary';
import { planElements } from './planElements';
import type { PlannedContent, PlannedElement } from './plannedElement';
import { Accounts } from './writeAccounts';
import { HeaderTexts } from './writeHeaderTexts';
import { layoutOf } from './writeLayout';
import { ElementLines } from './writeLines';
import type { LevelPlaces } from './writePlaces';
import { placesOf } from './writePlaces';
import type { ValueContext } from './writeValues';
import { placedTexts } from './writeValues';
import type { WrittenList, WrittenListEntry } from './writtenList';
import { writtenListOf } from './writtenList';

/** The likely length of an attribute with its blank. */
const perParameter = 24;

/** Writes a whole instrument as XML in a vocabulary; see `Notation.write`. */
export function writeInVocabulary(
  vocabulary: Vocabulary,
): (instrument: Instrument, options?: WriteOptions) => Written {
  const writeInSteps = writeInVocabularyInSteps(vocabulary);
  return (instrument, options) => finish(writeInSteps(instrument, options));
}

/** As {@link writeInVocabulary}, in two steps: planning the elements, and writing them. */
export function writeInVocabularyInSteps(
  vocabulary: Vocabulary,
): (instrument: Instrument, options?: WriteOptions) => Steps<Written> {
  return function* (instrument, options = {}) {
    const accounts = new Accounts(instrument, options.readingNotes);
    for (const region of options.leaveOut ?? []) accounts.leaveOut(region);
    const content = planElements(instrument, vocabulary, 0, accounts, options);
    yield 0.5;
    const writer = new DocumentWriter(instrument, vocabulary, accounts, options);
    return { text: writer.write(content), ...accounts.finish() };
  };
}

class DocumentWriter {
  readonly #instrument: Instrument;
  readonly #vocabulary: Vocabulary;
  readonly #accounts: Accounts;
  readonly #options: WriteOptions;
  readonly #lineEnd: string;
  readonly #buffer: LineBuffer;
  readonly #lines: ElementLines;
  readonly #context: Omit<ValueContext, 'header'>;
  readonly #list: WrittenList | undefined;
  /** Of regions that carry what their headers set and nothing else. */
  #headerTexts: HeaderTexts | undefined;

  constructor(instrument: Instrument, vocabulary: Vocabulary, accounts: Accounts, options: WriteOptions) {
    this.#instrument = instrument;
    this.#vocabulary = vocabulary;
    this.#accounts = accounts;
    this.#options = options;
    this.#lineEnd = options.lineEnd ?? '\n';
    this.#buffer = new LineBuffer(this.#lineEnd, instrument.parameters.count * perParameter);
    this.#lines = new ElementLines(this.#buffer);
    this.#list = writtenListOf(instrument, vocabulary, options);
    this.#context = {
      instrument,
      sampleFacts: options.sampleFacts,
      accounts,
      written: new Map(),
      ...(this.#list && { formThere: this.#list.formThere }),
    };
  }

  write(content: readonly PlannedContent[]): string {
    this.#accounts.startWriting();
    this.#lines.line('<?xml version="1.0" encoding="UTF-8"?>', 0);
    if (lacksOutermostElement(this.#vocabulary)) this.#wrapped(content);
    else this.#content(content, 0);
    return this.#buffer.finish();
  }

  /** Writes content in one element of a name made for it, with a note. */
  #wrapped(content: readonly PlannedContent[]): void {
    const name = outermostElementOf(this.#vocabulary);
    const start = this.#buffer.position;
    const written = { start, end: start + 1 + name.length };
    const tag = `<${name}${this.#declarations()}`;
    this.#lines.line(content.length > 0 ? `${tag}>` : `${tag}/>`, 0);
    const element = this.#vocabulary.levels[0]?.element;
    const message = `All <${element}> elements are put into one <${name}>: XML has one outermost element, and the vocabulary "${this.#vocabulary.name}" names none.`;
    this.#accounts.noteSpan({ kind: 'assumed', ...mainSpan(0, 0), message, written });
    if (content.length === 0) return;
    this.#writeList(1);
    this.#content(content, 1);
    this.#lines.line(`</${name}>`, 0);
  }

  /** Writes elements and comments; what stands between a level and the one before is opened once for a row of them. */
  #content(content: readonly PlannedContent[], depth: number): void {
    let inside: readonly string[] = [];
    for (const one of content) {
      if (one.kind === 'comment') this.#comment(one.text, depth + inside.length);
      else {
        const wrappers = this.#vocabulary.levels[one.level]?.inside ?? [];
        if (inside.length === 0 && wrappers.length > 0) {
          inside = wrappers;
          inside.forEach((name, at) => {
            this.#lines.line(`<${name}${depth + at === 0 ? this.#declarations() : ''}>`, depth + at);
          });
        }
        this.#element(one, depth + inside.length);
      }
    }
    for (let at = inside.length - 1; at >= 0; at--) this.#lines.line(`</${inside[at]}>`, depth + at);
  }

  /** Writes the entries of the list of samples, within the elements that stand around them. */
  #writeList(depth: number): void {
    if (!this.#list || this.#list.entries.length === 0) return;
    const { element, key, path, inside = '' } = this.#list.place;
    const wrappers = inside.split('/').filter((name) => name !== '');
    for (const [at, name] of wrappers.entries()) this.#lines.line(`<${name}>`, depth + at);
    for (const entry of this.#list.entries) {
      this.#lines.line(entryLine(element, key, path, entry), depth + wrappers.length);
    }
    for (let at = wrappers.length - 1; at >= 0; at--) this.#lines.line(`</${wrappers[at]}>`, depth + at);
  }

  #comment(comment: string, depth: number): void {
    const text = encodeXmlComment(comment)
      .split(/\r\n|\r|\n/)
      .join(this.#lineEnd);
    this.#lines.line(`<!-- ${text} -->`, depth);
  }

  #element(planned: PlannedElement, depth: number): void {
    const places = placesOf(this.#vocabulary)[planned.level];
    if (!places) return;
    const { content, header, level } = planned;
    const isRegion = level === this.#vocabulary.levels.length - 1;
    const layout = layoutOf(places);
    const hasList = depth === 0 && (this.#list?.entries.length ?? 0) > 0;
    const isOpen = content.length > 0 || hasList;
    const declarations = depth === 0 ? this.#declarations() : '';
    this.#lines.element(layout, this.#texts(planned, places), depth, isOpen, declarations);
    const lines = this.#lines;
    const isItsOwn = header < 0 || isRegion === (this.#instrument.kind(header) === HeaderKind.region);
    this.#accounts.placeElement(isItsOwn ? header : -1, lines.tag, (slot) => lines.stretchOf(slot));
    if (!isOpen) return;
    if (hasList) this.#writeList(depth + 1);
    this.#content(content, depth + 1);
    lines.line(`</${layout.name}>`, depth);
  }

  /** The texts of an element by slot, ready to stand where they stand. */
  #texts(planned: PlannedElement, places: LevelPlaces): readonly (string | undefined)[] {
    const { header, inherited } = planned;
    if (inherited) {
      this.#headerTexts ??= new HeaderTexts(this.#context, places, this.#options.move);
      if (this.#headerTexts.make(header, inherited)) return this.#headerTexts.texts;
    }
    const texts: (string | undefined)[] = [];
    for (const { place, encoded } of placedTexts(places, planned.values, { ...this.#context, header }))
      texts[place.slot] = encoded;
    return texts;
  }

  /** The namespaces that the outermost element declares, each with a blank before it. */
  #declarations(): string {
    return Object.entries(this.#vocabulary.namespaces ?? {})
      .map(([prefix, name]) => {
        const attribute = prefix === '' ? 'xmlns' : `xmlns:${prefix}`;
        return ` ${attribute}="${encodeXmlAttribute(name).text}"`;
      })
      .join('');
  }
}

/** An entry of a list: its key and its path in attributes, as texts of elements in it, or the path as its own text. */
function entryLine(element: string, key: string, path: string, entry: WrittenListEntry): string {
  let attributes = '';
  let content = '';
  const put = (at: string, value: string): void => {
    const text = encodeXmlAttribute(value).text;
    const [, child, attribute] = /^([^@]*?)\/?(?:@(.*))?$/.exec(at) ?? [];
    if (at === '.') content = text + content;
    else if (!child) attributes += ` ${attribute}="${text}"`;
    else content += attribute ? `<${child} ${attribute}="${text}"/>` : `<${child}>${text}</${child}>`;
  };
  if (!key.startsWith('#')) put(key, entry.key);
  put(path, entry.path);
  return content === '' ? `<${element}${attributes}/>` : `<${element}${attributes}>${content}</${element}>`;
}
