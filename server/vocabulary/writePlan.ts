import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import type { WriteOptions } from '../model/notation';
import { Parameter } from '../model/parameterNames';
import type { Chain, CommentPlaces } from '../model/writingOrder';
import { chainOf, passingKinds, placeComments } from '../model/writingOrder';
import type { Vocabulary } from './vocabulary';
import type { Accounts } from './writeAccounts';
import type { SourceValue } from './writeOwnValues';
import { isKeyPart, ownValues, sourceValue } from './writeOwnValues';
import type { LevelPlaces } from './writePlaces';
import { placesOf } from './writePlaces';

/** An element of a level that is to be written, with the values that it carries. */
export interface PlannedElement {
  kind: 'element';
  /** Its position among the levels of the vocabulary. */
  level: number;
  /** The header that its values are for; −1 for an element that only holds others. */
  header: number;
  values: Map<string, SourceValue>;
  content: PlannedContent[];
}

export interface PlannedComment {
  kind: 'comment';
  text: string;
}

export type PlannedContent = PlannedElement | PlannedComment;

type Values = Map<string, SourceValue>;

/** What a region needs at each level. */
interface RegionPlan {
  region: number;
  /** The headers whose values belong to each level, from the outermost inwards. */
  slots: number[][];
  /** Values of the region that only a level around it has a place for, by level. */
  hoisted: Values[];
  own: Values;
}

/** A comment and the header that it belongs to. */
interface PendingComment {
  header: number;
  text: string;
}

/**
 * Plans the elements of an instrument in a vocabulary, from the level `top` inwards, so that each region has the same
 * values in force. Headers without a level of their own pass their values on to the next level inwards; what only an
 * outer level has a place for goes there where that changes nothing else.
 */
export function planElements(
  instrument: Instrument,
  vocabulary: Vocabulary,
  top: number,
  accounts: Accounts,
  move: WriteOptions['move'],
): PlannedContent[] {
  return new Planner(instrument, vocabulary, top, accounts, move).plan();
}

class Planner {
  readonly #instrument: Instrument;
  readonly #levels: readonly LevelPlaces[];
  readonly #top: number;
  readonly #accounts: Accounts;
  readonly #move: WriteOptions['move'];
  readonly #groupLevels: number[] = [];
  readonly #instrumentLevel: number;
  readonly #region: number;
  /** Where a global, master and group go. */
  #targets: Chain = [-1, -1, -1];
  readonly #ownOfHeader = new Map<number, Values>();
  readonly #content: PlannedContent[] = [];
  readonly #open: { key: string; element: PlannedElement }[] = [];
  #pending: PendingComment[] = [];

  constructor(
    instrument: Instrument,
    vocabulary: Vocabulary,
    top: number,
    accounts: Accounts,
    move: WriteOptions['move'],
  ) {
    this.#instrument = instrument;
    this.#levels = placesOf(vocabulary);
    this.#top = top;
    this.#accounts = accounts;
    this.#move = move;
    this.#region = this.#levels.length - 1;
    this.#instrumentLevel = this.#levels.findIndex(({ level }, at) => level.is === 'instrument' && at >= top);
    this.#levels.forEach(({ level }, at) => {
      if (level.is === 'group' && at >= top) this.#groupLevels.push(at);
    });
  }

  plan(): PlannedContent[] {
    const instrument = this.#instrument;
    this.#noteOthers();
    const chains = [...instrument.regions].map((region) => chainOf(instrument, region));
    const inner = this.#groupLevels.at(-1) ?? this.#region;
    const outer = this.#groupLevels.at(-2) ?? inner;
    const global = chains[0]?.[0] ?? -1;
    const oneGlobal = this.#instrumentLevel >= 0 && chains.every((chain) => chain[0] === global);
    this.#targets = [oneGlobal ? this.#instrumentLevel : outer, outer, inner];
    const regions = [...instrument.regions].map((region, at) =>
      this.#regionPlan(region, chains[at] as Chain),
    );
    this.#settleOutermost(regions);
    this.#emit(regions, placeComments(instrument));
    return this.#content;
  }

  /** Says what becomes of headers and directives that no region gets anything from. */
  #noteOthers(): void {
    const instrument = this.#instrument;
    const used = new Set<number>();
    for (const region of instrument.regions) {
      for (let at = region; at >= 0 && !used.has(at); at = instrument.parent(at)) used.add(at);
    }
    for (let header = 0; header < instrument.headers.count; header++) {
      const kind = instrument.kind(header);
      if (kind === HeaderKind.control) this.#noteControl(header);
      else if (!used.has(header) && instrument.endParameter(header) > instrument.firstParameter(header)) {
        const passes = passingKinds.some((one) => one === kind);
        const name = instrument.headerName(header);
        const message =
          name === ''
            ? 'Values before the first header are left out: they have no effect.'
            : passes
              ? `<${name}> is left out: no region gets its values.`
              : `<${name}> is left out: instruments of this kind have no place for it.`;
        const noteKind = passes || name === '' ? 'ignored' : 'dropped';
        this.#accounts.noteSpan({ kind: noteKind, ...instrument.bodySpan(header), message });
      }
    }
    for (const { kind, source, start, end, name, value } of instrument.directives) {
      if (kind === 'comment') continue;
      const message =
        kind === 'define'
          ? `${name} is written out: its value ${value} stands where it was used.`
          : `The text of "${name}" is written in the place of its include.`;
      this.#accounts.noteSpan({ kind: 'approximated', source, start, end, message });
    }
  }

  #noteControl(header: number): void {
    const instrument = this.#instrument;
    const end = instrument.endParameter(header);
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
      const name = instrument.canonicalName(parameter);
      const text = instrument.names.text(name);
      if (
        name === Parameter.default_path ||
        name === Parameter.note_offset ||
        name === Parameter.octave_offset
      ) {
        this.#accounts.keep(parameter);
      } else {
        const message = `${text} ${instrument.valueText(parameter)} is left out: there is no place for it.`;
        this.#accounts.note(parameter, 'dropped', message);
      }
    }
  }

  #own(header: number): Values {
    let own = this.#ownOfHeader.get(header);
    if (!own) {
      own = this.#newOwn(header);
      this.#ownOfHeader.set(header, own);
    }
    return own;
  }

  #newOwn(header: number): Values {
    return ownValues(this.#instrument, header, header, this.#move, (parameter) => {
      const name = this.#instrument.names.text(this.#instrument.name(parameter));
      const message = `This ${name} is left out: ${name} is set again later in the same place.`;
      this.#accounts.note(parameter, 'ignored', message);
    });
  }

  /** Whether a level has a place for a value, and one that can be read without knowing the region. */
  #canHold(level: number, name: string): boolean {
    const places = this.#levels[level] as LevelPlaces;
    const found = places.byName.get(name) ?? (isKeyPart(name) ? places.byName.get('key') : undefined);
    if (!found || level === this.#region) return found !== undefined;
    // A place in the sample depends on the sample of the region where it is not counted in frames.
    const depends = found.every(
      ({ parameter: { form } }) =>
        form.kind === 'position' && (form.unit !== 'frames' || form.from !== undefined),
    );
    return !(depends && this.#levels[this.#region]?.byName.has(name));
  }

  #regionPlan(region: number, chain: Chain): RegionPlan {
    const slots: number[][] = this.#levels.map(() => []);
    chain.forEach((header, at) => {
      if (header >= 0) slots[this.#targets[at] as number]?.push(header);
    });
    let carry: Values = new Map();
    for (let level = this.#top; level < this.#region; level++) {
      carry = this.#levelValues(level, slots, carry).carry;
    }
    const all = new Map(carry);
    for (const header of slots[this.#region] as number[]) merge(all, this.#own(header));
    this.#addRefolded(region, all);
    merge(all, this.#newOwn(region));
    const own: Values = new Map();
    const hoisted: Values[] = this.#levels.map(() => new Map());
    for (const [name, value] of all) {
      let level = this.#region;
      while (level > this.#top && !this.#canHold(level, name)) level--;
      if (level === this.#region || !this.#canHold(level, name)) own.set(name, value);
      else (hoisted[level] as Values).set(name, value);
    }
    return { region, slots, hoisted, own };
  }

  /** Samples and keys from outer headers, where other control settings are in force at the region than there. */
  #addRefolded(region: number, values: Values): void {
    const instrument = this.#instrument;
    if (instrument.controls.length < 2) return;
    const control = instrument.control(region);
    for (const { name: id, parameter, header } of instrument.effectiveParameters(region)) {
      const there = instrument.control(header);
      if (there.keyOffset === control.keyOffset && there.defaultPath === control.defaultPath) continue;
      const value = sourceValue(instrument, parameter, region, this.#move);
      if (value === sourceValue(instrument, parameter, header, this.#move)) continue;
      const name = instrument.names.text(id);
      values.set(name, { name, value, parameter });
    }
  }

  /** What the headers of a level set there, and what has to go further inwards. */
  #levelValues(
    level: number,
    slots: readonly number[][],
    carried: Values,
  ): { values: Values; carry: Values } {
    const values: Values = new Map();
    const carry: Values = new Map();
    const all = new Map(carried);
    for (const header of slots[level] ?? []) merge(all, this.#own(header));
    for (const [name, value] of all) (this.#canHold(level, name) ? values : carry).set(name, value);
    return { values, carry };
  }

  /** What only the instrument itself has a place for stays there where all regions agree. */
  #settleOutermost(regions: readonly RegionPlan[]): void {
    const level = this.#instrumentLevel;
    if (level < 0) return;
    const names = new Set(regions.flatMap(({ hoisted }) => [...(hoisted[level] as Values).keys()]));
    for (const name of names) {
      const [first] = regions;
      const value = first?.hoisted[level]?.get(name)?.value;
      if (value !== undefined && regions.every(({ hoisted }) => hoisted[level]?.get(name)?.value === value))
        continue;
      for (const { hoisted } of regions) {
        const odd = hoisted[level]?.get(name);
        if (!odd) continue;
        hoisted[level]?.delete(name);
        const message = `${name} ${odd.value} is left out: <${this.#levels[level]?.level.element}> alone has a place for it, and it does not hold for all regions.`;
        this.#accounts.note(odd.parameter, 'dropped', message, name);
      }
    }
  }

  #emit(regions: readonly RegionPlan[], comments: CommentPlaces): void {
    const { count } = this.#instrument.headers;
    let next = 0;
    for (let header = 0; header < count; header++) {
      for (const text of comments.leading.get(header) ?? []) this.#pending.push({ header, text });
      const plan = regions[next];
      if (plan?.region === header) {
        next++;
        this.#addRegion(plan, comments.trailing.get(header) ?? []);
      } else {
        for (const text of comments.trailing.get(header) ?? []) this.#pending.push({ header, text });
      }
    }
    for (const text of comments.leading.get(count) ?? []) this.#pending.push({ header: count, text });
    if (this.#top === 0 && this.#open.length === 0 && this.#region > 0) this.#openLevels(undefined);
    this.#flush(Number.POSITIVE_INFINITY, this.#open[0]?.element.content ?? this.#content);
  }

  #addRegion(plan: RegionPlan, trailing: readonly string[]): void {
    this.#openLevels(plan);
    const container = this.#open[this.#open.length - 1]?.element.content ?? this.#content;
    this.#flush(plan.region, container);
    container.push({
      kind: 'element',
      level: this.#region,
      header: plan.region,
      values: plan.own,
      content: [],
    });
    for (const text of trailing) container.push({ kind: 'comment', text });
  }

  /** Opens the elements that a region stands in, those that are open already apart; without a region only the outermost. */
  #openLevels(plan: RegionPlan | undefined): void {
    let carry: Values = new Map();
    let key = '';
    let same = true;
    const last = plan ? this.#region : this.#top + 1;
    for (let level = this.#top; level < last; level++) {
      const headers = plan?.slots[level] ?? [];
      const hoisted = plan?.hoisted[level] ?? new Map<string, SourceValue>();
      key += `/${headers.join()}:${[...hoisted].map(([name, { value }]) => `${name}=${JSON.stringify(value)}`).join()}`;
      const { values, carry: further } = this.#levelValues(level, plan?.slots ?? [], carry);
      carry = further;
      const at = level - this.#top;
      same &&= this.#open[at]?.key === key;
      if (same) {
        const written = this.#open[at]?.element.values;
        for (const [name, { parameter }] of hoisted)
          this.#accounts.sameAs(parameter, written?.get(name)?.parameter ?? -1);
        continue;
      }
      this.#open.length = at;
      const container = this.#open[at - 1]?.element.content ?? this.#content;
      const header = headers[headers.length - 1] ?? -1;
      if (header >= 0) this.#flush(header, container);
      merge(values, hoisted);
      const element: PlannedElement = { kind: 'element', level, header, values, content: [] };
      if (header < 0 && hoisted.size > 0 && plan) element.header = plan.region;
      container.push(element);
      this.#open.push({ key, element });
    }
  }

  /** Puts the comments that belong to headers up to this one into a container. */
  #flush(header: number, container: PlannedContent[]): void {
    if (this.#pending.length === 0) return;
    const later: PendingComment[] = [];
    for (const comment of this.#pending) {
      if (comment.header <= header) container.push({ kind: 'comment', text: comment.text });
      else later.push(comment);
    }
    this.#pending = later;
  }
}

function merge(values: Values, more: Values): void {
  for (const [name, value] of more) values.set(name, value);
}
