import { editedText } from '../../model/editing/changedInstrument';
import { replacing } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { ConversionNote } from '../../model/notes';
import { nameOf, nameWithoutEnding } from '../../model/paths';
import { mainSpan } from '../../model/text/span';
import { counted } from '../../model/wording/counted';
import { writeValue } from '../forms/valueForms';
import type { SampleListPlace, Vocabulary, VocabularyParameter } from '../vocabulary';
import { canonicalNameOf } from '../write/writePlaces';
import { defaultText } from '../write/writeValues';
import { spaceBefore } from './elementInText';
import type { ListEntry } from './listEntries';
import { plainText } from './listEntries';
import { encodedElementText, encodedFor } from './styleElement';
import type { StyledElement } from './styleTree';

/** What an entry is to say. */
export interface NewEntry {
  key: string;
  path: string;
  separator: '/' | '\\';
  /** By canonical name, what regions get from it. */
  values: ReadonlyMap<string, string>;
}

/** A text of an entry: an attribute, or what stands in an element that holds nothing else. */
interface EntryText {
  /** The element that has it. */
  holder: StyledElement;
  /** Where it stands, as a path from the entry. */
  at: string;
  value: string;
  start: number;
  end: number;
  quote: string | undefined;
  /** What is taken out where the text goes. */
  whole: { start: number; end: number };
}

/** Writes entries of a list like one of some that it has. */
export class EntryCopy {
  readonly #text: string;
  readonly #list: SampleListPlace;
  readonly #example: ListEntry;
  readonly #listed: readonly VocabularyParameter[];
  readonly #texts: readonly EntryText[];
  /** By place, the texts of each entry. */
  readonly #all: readonly ReadonlyMap<string, string>[];
  readonly #kept = new Set<string>();
  readonly #gone = new Set<string>();

  constructor(
    text: string,
    { levels }: Vocabulary,
    list: SampleListPlace,
    examples: readonly ListEntry[],
    entries: readonly ListEntry[],
  ) {
    this.#text = text;
    this.#list = list;
    this.#listed = levels.flatMap(({ parameters }) =>
      parameters.filter(({ listed }) => listed?.element === list.element),
    );
    // The one that has most of what regions get: what a sample lacks, such as a loop, is taken out.
    const counts = examples.map(
      ({ element }) => entryTexts(text, element).filter(({ at }) => this.#listedAt(at)).length,
    );
    this.#example = examples[counts.indexOf(Math.max(...counts))];
    this.#texts = entryTexts(text, this.#example.element);
    this.#all = entries.map(
      ({ element }) => new Map(entryTexts(text, element).map(({ at, value }) => [at, value])),
    );
  }

  /** An entry as text, from its tag on. */
  text(entry: NewEntry): string {
    const { start, end } = this.#example.element;
    const values = new Map(this.#texts.map((one) => [one, this.#valueOf(one, entry)]));
    const empty = this.#emptied(values);
    const edits = this.#texts.flatMap((one): TextEdit[] => {
      const value = values.get(one);
      if (value === one.value || empty.has(one.holder)) return [];
      if (value === undefined)
        return [replacing(mainSpan(one.whole.start - start, one.whole.end - start), '')];
      const encoded = one.quote === undefined ? this.#elementText(one, value) : encodedFor(one.quote, value);
      return [replacing(mainSpan(one.start - start, one.end - start), encoded)];
    });
    for (const element of empty) {
      const from = element.start - spaceBefore(this.#text, element.start).length;
      edits.push(replacing(mainSpan(from - start, element.end - start), ''));
    }
    return editedText(this.#text.slice(start, end), edits);
  }

  /** Elements within the entry of which nothing is left, such as a loop for a sample without one. */
  #emptied(values: ReadonlyMap<EntryText, string | undefined>): Set<StyledElement> {
    const empty = new Set<StyledElement>();
    const isEmpty = (holder: StyledElement) =>
      holder !== this.#example.element &&
      holder.children.length === 0 &&
      this.#texts.every((one) => one.holder !== holder || values.get(one) === undefined);
    for (const { holder } of this.#texts) if (isEmpty(holder)) empty.add(holder);
    return empty;
  }

  /** What became of texts of the example that belong to its sample or to all. */
  notes(count: number): ConversionNote[] {
    if (count === 0) return [];
    const { element } = this.#list;
    const span = mainSpan(0, 0);
    return [
      ...[...this.#kept].map(
        (at): ConversionNote => ({
          kind: 'assumed',
          ...span,
          message: `${at} of <${element}> comes from the template, for ${counted(count, 'sample')}.`,
        }),
      ),
      ...[...this.#gone].map(
        (at): ConversionNote => ({
          kind: 'ignored',
          ...span,
          message: `${at} of <${element}> is about a sample of the template, so no new <${element}> has it. Fill it in.`,
        }),
      ),
    ];
  }

  #listedAt(at: string): VocabularyParameter | undefined {
    return this.#listed.find(({ listed }) => listed?.at === at);
  }

  #hasPlaceFor(name: string): boolean {
    return this.#listed.some(({ parameter }) => canonicalNameOf(parameter) === name);
  }

  #elementText({ start }: EntryText, value: string): string {
    const isData = this.#text.startsWith('<![CDATA[', start) && !value.includes(']]>');
    return isData ? `<![CDATA[${value}]]>` : encodedElementText(value);
  }

  /** What a text of the example is to be in another entry; `undefined` where it goes. */
  #valueOf({ at, value }: EntryText, entry: NewEntry): string | undefined {
    const { key, path, rate } = this.#list;
    const written = entry.path.replaceAll('/', entry.separator);
    if (at === path) return written;
    if (at === key) return entry.key;
    const listed = this.#listedAt(at);
    if (listed) return this.#listedText(listed, entry);
    const own = (this.#example.path ?? '').replaceAll('\\', '/');
    if (value === this.#example.key) return entry.key;
    for (const part of [nameOf, (whole: string) => nameWithoutEnding(nameOf(whole))])
      if (value === part(own)) return part(entry.path);
    const isShared = this.#all.every((one) => one.get(at) === value);
    const isOfAll = isShared && at !== rate && (this.#all.length > 1 || Number.isNaN(Number(value)));
    (isOfAll ? this.#kept : this.#gone).add(at.replace(/^@/, ''));
    return isOfAll ? value : undefined;
  }

  #listedText({ parameter, form }: VocabularyParameter, { values }: NewEntry): string | undefined {
    const frameOf = (name: string) => Number(values.get(name) ?? 0);
    const around = { parameter, sampleRate: undefined, frames: undefined, frameOf };
    const name = canonicalNameOf(parameter);
    // A start without its end would make another loop, or one of a sample that has none.
    const isOfNoLoop = name === 'loop_start' && !values.has('loop_end') && this.#hasPlaceFor('loop_end');
    const value = isOfNoLoop ? undefined : (values.get(name) ?? defaultText(parameter, around));
    return value === undefined ? undefined : writeValue(form, value, around)?.text;
  }
}

function entryTexts(text: string, entry: StyledElement): EntryText[] {
  const found: EntryText[] = [];
  const waiting: [element: StyledElement, at: string][] = [[entry, '']];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const [element, at] = next;
    for (const { name, start, end, valueStart, valueEnd, quote } of element.attributes)
      found.push({
        holder: element,
        at: `${at}@${name}`,
        value: plainText(text, valueStart, valueEnd, true),
        start: valueStart,
        end: valueEnd,
        quote,
        whole: { start: start - spaceBefore(text, start).length, end },
      });
    const [first] = element.characters;
    const last = element.characters[element.characters.length - 1];
    if (first && last && element.children.length === 0)
      found.push({
        holder: element,
        at: at === '' ? '.' : at.slice(0, -1),
        value: plainText(text, first.start, last.end, false),
        start: first.start,
        end: last.end,
        quote: undefined,
        whole:
          element === entry || element.attributes.length > 0
            ? { start: first.start, end: last.end }
            : { start: element.start - spaceBefore(text, element.start).length, end: element.end },
      });
    for (const child of element.children) waiting.push([child, `${at}${child.name}/`]);
  }
  return found.sort((a, b) => a.start - b.start);
}
