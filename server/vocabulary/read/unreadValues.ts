import { isAudioFileName } from '../../model/fileNames';
import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import type { Steps } from '../../model/steps';
import { finish } from '../../model/steps';
import { mainSpan } from '../../model/text/span';
import { declaredEntities } from '../../xml/declaredEntities';
import type { XmlHandler } from '../../xml/scan/handler';
import { decodeXmlAttribute } from '../../xml/scan/references';
import { scanXmlInSteps } from '../../xml/scan/scan';
import { parseListedFolder } from '../listedFolder';
import { folderPlaces, parsePlace } from '../places';
import type { SampleListPlace, Vocabulary } from '../vocabulary';
import { formsExplainedIn } from './explainedForms';
import type { PlacedUnread } from './gatheredUnread';
import { GatheredUnread } from './gatheredUnread';
import { LostFiles } from './lostFiles';
import { keyOfEntry, readEntries, referencesTo } from './sampleList';
import type { OffElement } from './switchedOff';
import { switchedOffIn } from './switchedOff';
import { pathFormsOf, sampleListsOf, sampleTexts } from './usedSamples';

/**
 * A note for the values of elements of each name that a vocabulary has no parameter for, so that they are not read: attributes and
 * texts; one for each element that is switched off, with all in it; and one for each listed sample that no region uses. What a vocabulary tells elements apart by, switches them by or finds samples by is no such value, nor what explains how
 * it reads others, nor what starts at a place that is `understood` all the same.
 */
export function unreadValues(
  instrument: Instrument,
  vocabulary: Vocabulary,
  understood: ReadonlySet<number> = new Set(),
): ConversionNote[] {
  return finish(unreadValuesInSteps(instrument, vocabulary, understood));
}

/** As {@link unreadValues}, in steps. */
export function* unreadValuesInSteps(
  instrument: Instrument,
  vocabulary: Vocabulary,
  understood: ReadonlySet<number> = new Set(),
): Steps<ConversionNote[]> {
  const search = yield* searched(instrument, vocabulary, understood);
  return [...search.notes, ...search.gathered(vocabulary.name)];
}

/** Each value that {@link unreadValues} tells of because the vocabulary has no parameter for it. */
export function unreadOneByOne(
  instrument: Instrument,
  vocabulary: Vocabulary,
  understood: ReadonlySet<number> = new Set(),
): readonly PlacedUnread[] {
  return finish(searched(instrument, vocabulary, understood)).unread;
}

function* searched(
  instrument: Instrument,
  vocabulary: Vocabulary,
  understood: ReadonlySet<number>,
): Steps<UnreadSearch> {
  const text = instrument.sources[0]?.text ?? '';
  // Samples are looked for in lists alone.
  const used = sampleListsOf(vocabulary).length > 0 ? sampleTexts(instrument) : new Set<string>();
  const search = new UnreadSearch(text, vocabulary, used, understood, new LostFiles(instrument));
  yield 0;
  yield* scanXmlInSteps(text, search);
  return search;
}

/** A longer text is no path. */
const longestPath = 400;
/** So many different values of a place are looked at for an explanation of others. */
const mostLooks = 32;

/** A place that a vocabulary reads: the elements from its level inwards, with what they are told apart by. */
interface Site {
  path: readonly { element: string; selectors: readonly (readonly [string, string])[] }[];
  /** `undefined` where it is the text of the last element. */
  attribute: string | undefined;
}

/** An element that is switched off, how deep it stands, and the audio files named in it. */
interface OffStretch {
  depth: number;
  element: string;
  off: OffElement;
  files: string[];
}

interface OpenElement {
  name: string;
  attributes: Map<string, string>;
}

class UnreadSearch implements XmlHandler {
  readonly notes: ConversionNote[] = [];
  readonly #unread = new GatheredUnread();
  readonly #text: string;
  readonly #vocabulary: Vocabulary;
  readonly #sites: readonly Site[];
  /** By the name of an element, the sites on whose way it stands and its position there. */
  readonly #through = new Map<string, { site: Site; step: number }[]>();
  readonly #open: OpenElement[] = [];
  readonly #lists: readonly SampleListPlace[];
  readonly #folders: ReadonlySet<string>;
  /** Places on elements around regions that name a folder of their paths. */
  readonly #under: ReadonlySet<string>;
  readonly #off: ReadonlyMap<number, OffElement>;
  readonly #explains: ReturnType<typeof formsExplainedIn>;
  /** By place, the values that were asked whether they explain others, with the answer. */
  readonly #looked = new Map<string, Map<string, boolean>>();
  /** The element that is switched off and open, and the audio files named in it. */
  #inOff: OffStretch | undefined;
  /** The paths of entries that no region uses, by where their tags start. */
  readonly #unused = new Map<number, string>();
  #tagStart = 0;
  #attributes: { name: string; start: number; nameStart: number; end: number }[] = [];

  readonly #understood: ReadonlySet<number>;
  readonly #lost: LostFiles;
  /** The names of elements that are regions or entries of lists of samples. */
  readonly #ofSamples: ReadonlySet<string>;

  constructor(
    text: string,
    vocabulary: Vocabulary,
    usedSamples: ReadonlySet<string>,
    understood: ReadonlySet<number>,
    lost: LostFiles,
  ) {
    this.#understood = understood;
    this.#lost = lost;
    this.#text = text;
    this.#vocabulary = vocabulary;
    this.#lists = sampleListsOf(vocabulary);
    for (const { element, key, path } of this.#lists) {
      for (const [position, entry] of readEntries(text, element).entries()) {
        const name = keyOfEntry(entry, position, key);
        if (name !== undefined && !referencesTo(name, key).some((one) => usedSamples.has(one)))
          this.#unused.set(entry.start, entry.values.get(path)?.text ?? name);
      }
    }
    const regions = vocabulary.levels.filter(({ is }) => is === 'region');
    this.#ofSamples = new Set([
      ...this.#lists.map(({ element }) => element),
      ...regions.flatMap(({ element, also = {} }) => [element, ...Object.keys(also)]),
    ]);
    this.#folders = new Set(
      pathFormsOf(vocabulary).flatMap(({ folder }) => (folder ? [bareFolder(folder)] : [])),
    );
    const places = pathFormsOf(vocabulary).flatMap(({ under }) => (under ? folderPlaces(under) : []));
    const named = places.flatMap((place) => parseListedFolder(place) ?? []);
    this.#under = new Set(places.map((place) => parseListedFolder(place)?.by ?? place));
    this.#off = finish(switchedOffIn(text, vocabulary.off ?? []));
    this.#explains = formsExplainedIn(vocabulary);
    const sitesOf = (element: string, at: string): Site[] => {
      const place = parsePlace(at);
      return place
        ? [{ path: [{ element, selectors: [] }, ...place.steps], attribute: place.attribute }]
        : [];
    };
    const listed = [
      ...named.map((one) => one.listed),
      ...vocabulary.levels.flatMap(({ parameters }) =>
        parameters.flatMap((one) => (one.listed ? [one.listed] : [])),
      ),
    ];
    this.#sites = [
      ...listed.flatMap(({ element, key, at }) => [...sitesOf(element, key), ...sitesOf(element, at)]),
      ...this.#lists.flatMap(({ element, key, path }) => [
        ...sitesOf(element, key),
        ...sitesOf(element, path),
      ]),
      ...vocabulary.levels.flatMap(({ element, also = {}, parameters }) =>
        [element, ...Object.keys(also)].flatMap((name) => parameters.flatMap(({ at }) => sitesOf(name, at))),
      ),
      ...vocabulary.levels.flatMap(({ element, rate }) => (rate === undefined ? [] : sitesOf(element, rate))),
      ...vocabulary.levels.flatMap(({ element }) => [...this.#under].flatMap((at) => sitesOf(element, at))),
      ...(vocabulary.off ?? []).flatMap(({ element, at }) => sitesOf(element, at)),
      ...(vocabulary.chances ? sitesOf(vocabulary.chances.element, vocabulary.chances.at) : []),
      ...(vocabulary.takes ?? []).flatMap(({ element, at }) =>
        at === undefined ? [] : sitesOf(element, at),
      ),
    ];
    for (const site of this.#sites) {
      site.path.forEach(({ element }, step) => {
        const list = this.#through.get(element);
        if (list) list.push({ site, step });
        else this.#through.set(element, [{ site, step }]);
      });
    }
  }

  open(tagStart: number, nameStart: number, nameEnd: number): void {
    this.#tagStart = tagStart;
    this.#open.push({ name: this.#text.slice(nameStart, nameEnd), attributes: new Map() });
    this.#attributes = [];
  }

  attribute(_name: number, nameStart: number, nameEnd: number, start: number, end: number): void {
    const name = this.#text.slice(nameStart, nameEnd);
    this.#open[this.#open.length - 1]?.attributes.set(
      name,
      decodeXmlAttribute(this.#text.slice(start, end), declaredEntities(this.#text)),
    );
    if (end > start && !/^xml(ns)?(:|$)/.test(name)) this.#attributes.push({ name, nameStart, start, end });
  }

  openEnd(end: number, empty: boolean): void {
    const element = this.#open[this.#open.length - 1]?.name ?? '';
    const off = this.#inOff ? undefined : this.#off.get(this.#tagStart);
    const isLevel = this.#vocabulary.levels.some((level) => level.element === element);
    if (off && isLevel) this.#inOff = { depth: this.#open.length, element, off, files: [] };
    const isTold = !this.#inOff && this.#tellUnused(element, end);
    for (const { name, nameStart, start, end } of this.#attributes) {
      const value = this.#text.slice(start, Math.min(end, start + 60));
      if (this.#inOff) this.#seeFile(value);
      else if (off && off.rule.at !== `@${name}`) this.#tellOff(nameStart, end, value, element, off);
      else if (!isTold && !this.#understood.has(start))
        this.#tell(name, value, `${name}="${value}"`, nameStart, start, end);
    }
    if (empty) this.close();
  }

  close(): void {
    if (this.#inOff?.depth === this.#open.length) this.#endOff(this.#inOff);
    this.#open.pop();
  }

  characters(start: number, end: number): void {
    const shown = this.#text.slice(start, Math.min(end, start + 60)).trim();
    if (this.#inOff) this.#seeFile(shown);
    else this.#tell(undefined, shown, `the text "${shown}"`, start, start, end);
  }

  /** Tells of a value if it is not read, `valueStart` being where it stands itself: of a file that is lost by itself. */
  #tell(
    attribute: string | undefined,
    shown: string,
    what: string,
    start: number,
    valueStart: number,
    end: number,
  ): void {
    const isRead = this.#isRead(attribute, shown);
    // What is read around regions may be another thing in each of them.
    if (isRead && this.#open.some(({ name }) => this.#ofSamples.has(name))) return;
    const value = this.#text.slice(valueStart, Math.min(end, valueStart + longestPath));
    const open = this.#open.map(({ name }) => name);
    if (this.#lost.add(value, open, start, end) || isRead) return;
    this.#unread.add(open.at(-1) ?? '', attribute ?? '', { what, start, valueStart, end });
  }

  #seeFile(text: string): void {
    if (this.#inOff && isAudioFileName(text)) this.#inOff.files.push(text);
  }

  /** What was in an element that is switched off. */
  #endOff({ element, off, files }: OffStretch): void {
    this.#inOff = undefined;
    const place = off.rule.at.replace(/^@/, '');
    const [first] = files;
    const more = files.length > 1 ? ` and ${files.length - 1} more` : '';
    const what = first === undefined ? '' : ` with "${first}"${more}`;
    const message =
      off.value === ''
        ? `<${element}>${what} is left out: nothing stands in ${place}.`
        : `<${element}>${what} is switched off by ${place}="${off.value}", so it is left out.`;
    this.notes.push({ kind: 'ignored', ...mainSpan(off.start, off.end), message });
  }

  /** A value of an element, no level, that is switched off. */
  #tellOff(
    start: number,
    end: number,
    value: string,
    element: string,
    { rule, value: said }: OffElement,
  ): void {
    if (Number(value) === 0) return;
    const what = this.#text.slice(start, Math.min(end + 1, start + 80));
    const message = `${what} of <${element}> has no effect, because ${rule.at.replace(/^@/, '')}="${said}" switches it off.`;
    this.notes.push({ kind: 'ignored', ...mainSpan(start, end), message });
  }

  /** Tells of the entry of a list that no region uses; then its other values are not told of. */
  #tellUnused(element: string, end: number): boolean {
    const path = this.#lists.some((one) => one.element === element) && this.#unused.get(this.#tagStart);
    if (!path) return false;
    const message = `"${path.slice(0, 60)}" is in the list of samples, and no region uses it.`;
    this.notes.push({ kind: 'ignored', ...mainSpan(this.#tagStart, end), message });
    return true;
  }

  get unread(): readonly PlacedUnread[] {
    return this.#unread.all;
  }

  /** What is told of values that are not read. */
  gathered(vocabulary: string): ConversionNote[] {
    return [...this.#lost.notes(), ...this.#unread.notes(vocabulary)];
  }

  /** Whether an attribute of the innermost element, or its text, is at a place that the vocabulary reads or tells elements apart by. */
  #isRead(attribute: string | undefined, value: string): boolean {
    const last = this.#open.length - 1;
    const element = this.#open[last]?.name ?? '';
    if (this.#findsSamples(element, attribute, value)) return true;
    return this.#isAtSite(element, attribute) || this.#explainsForms(element, attribute, value);
  }

  /** Whether an attribute of the innermost element, or its text, is at a place of the vocabulary. */
  #isAtSite(element: string, attribute: string | undefined): boolean {
    for (const { site, step } of this.#through.get(element) ?? []) {
      const isEnd = step === site.path.length - 1;
      const selects =
        attribute !== undefined && site.path[step]?.selectors.some(([name]) => name === attribute);
      if (!selects && !(isEnd && site.attribute === attribute)) continue;
      if (this.#standsOn(site, step)) return true;
    }
    return false;
  }

  /** Whether a value explains how others are read. What a place says in many ways explains nothing, and looking takes long. */
  #explainsForms(element: string, attribute: string | undefined, value: string): boolean {
    const place = attribute === undefined ? element : `${element} ${attribute}`;
    let looked = this.#looked.get(place);
    if (!looked) {
      looked = new Map();
      this.#looked.set(place, looked);
    }
    let explains = looked.get(value);
    if (explains === undefined) {
      if (looked.size >= mostLooks) return false;
      explains = this.#explains(attribute ?? element, value, attribute === undefined ? undefined : element);
      looked.set(value, explains);
    }
    return explains;
  }

  /** Whether a value is the key, the path or the folder of a listed sample, or a folder of paths. */
  #findsSamples(element: string, attribute: string | undefined, value: string): boolean {
    const place = attribute === undefined ? '.' : `@${attribute}`;
    const isListed = this.#lists.some(
      (list) =>
        list.under === place ||
        (list.element === element && [list.key, list.path, list.rate].includes(place)),
    );
    return isListed || this.#under.has(place) || this.#folders.has(bareFolder(value));
  }

  /** Whether the innermost element is the one at a step of the way to a site. */
  #standsOn({ path }: Site, step: number): boolean {
    const first = this.#open.length - 1 - step;
    if (first < 0) return false;
    for (let at = 0; at <= step; at++) {
      const wanted = path[at];
      const open = this.#open[first + at];
      if (!wanted || open?.name !== wanted.element) return false;
      if (!wanted.selectors.every(([name, value]) => open.attributes.get(name) === value)) return false;
    }
    return true;
  }

  comment(): void {}

  instruction(): void {}

  doctype(): void {}

  problem(): void {}
}

/** A folder with `/` between its parts and none at its end. */
function bareFolder(folder: string): string {
  return folder.trim().replaceAll('\\', '/').replace(/\/+$/, '');
}
