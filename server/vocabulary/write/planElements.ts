import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import { plainNumber } from '../../model/instrumentBuilder';
import type { WriteOptions } from '../../model/notation';
import { Parameter } from '../../model/parameterNames';
import { decimalText } from '../../model/text/decimalText';
import { spanIn } from '../../model/text/span';
import type { Chain, CommentPlaces } from '../../model/writing/writingOrder';
import { chainOf, passingKinds, placeComments } from '../../model/writing/writingOrder';
import { writtenOutText } from '../../model/writing/writtenOut';
import type { Vocabulary } from '../vocabulary';
import type { PlannedContent, Values } from './plannedElement';
import { merge, noValues, PlannedElement } from './plannedElement';
import type { Accounts } from './writeAccounts';
import { isKeyPart, ownValues, sourceValue } from './writeOwnValues';
import type { LevelPlaces } from './writePlaces';
import { placesOf } from './writePlaces';
import { effectiveText } from './writeValues';

/** What regions under the same header have in common. */
interface Surroundings {
  /** The headers whose values belong to each level, from the outermost inwards. */
  slots: readonly (readonly number[])[];
  /** By level, what its headers set there. */
  levels: readonly Values[];
  /** What these headers set that goes into the regions. */
  inherited: Values;
  /** Whether regions have a place for all of that, or no element has one. */
  isPlain: boolean;
}

/** What a region needs at each level. */
interface RegionPlan {
  region: number;
  around: Surroundings;
  /** Values of the region that only a level around it has a place for, by level; `undefined` where there are none. */
  hoisted: Values[] | undefined;
  /** `undefined` where they are those of its header, and all of them. */
  own: Values | undefined;
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
  { move, leaveOut }: Pick<WriteOptions, 'move' | 'leaveOut'> = {},
): PlannedContent[] {
  const regions = [...instrument.regions].filter((region) => !leaveOut?.has(region));
  return new ElementPlanner(instrument, regions, vocabulary, top, accounts, move).plan();
}

/** One class of more than 400 lines: its steps share what is planned so far, and none is used without the others. */
class ElementPlanner {
  readonly #instrument: Instrument;
  /** Those that are written. */
  readonly #regions: readonly number[];
  readonly #levels: readonly LevelPlaces[];
  readonly #top: number;
  readonly #accounts: Accounts;
  readonly #move: WriteOptions['move'];
  readonly #groupLevels: number[] = [];
  readonly #instrumentLevel: number;
  readonly #region: number;
  /** Whether regions have a place for their tuning and nothing has one for a transposition. */
  readonly #foldsTranspose: boolean;
  /** Where a global, master and group go. */
  #targets: Chain = [-1, -1, -1];
  readonly #ownOfHeader = new Map<number, Values>();
  /** By the header that a region stands in. */
  readonly #chains = new Map<number, Chain>();
  readonly #around = new Map<number, Surroundings>();
  /** By the number of a name, whether its values stand in the region where they stand anywhere. */
  readonly #regionHolds: (boolean | undefined)[] = [];
  /** By the number of a name, the parameter that has it in the header looked at last. */
  readonly #lastOfName: number[] = [];
  readonly #content: PlannedContent[] = [];
  readonly #open: { key: string; element: PlannedElement }[] = [];
  /** The region for which levels were opened last. */
  #opened: RegionPlan | undefined;
  #pending: PendingComment[] = [];

  constructor(
    instrument: Instrument,
    regions: readonly number[],
    vocabulary: Vocabulary,
    top: number,
    accounts: Accounts,
    move: WriteOptions['move'],
  ) {
    this.#instrument = instrument;
    this.#regions = regions;
    this.#levels = placesOf(vocabulary);
    this.#top = top;
    this.#accounts = accounts;
    this.#move = move;
    this.#region = this.#levels.length - 1;
    this.#foldsTranspose =
      !this.#levels.some(({ byName }) => byName.has('transpose')) &&
      this.#levels[this.#region].byName.has('tune');
    this.#instrumentLevel = this.#levels.findIndex(({ level }, at) => level.is === 'instrument' && at >= top);
    this.#levels.forEach(({ level }, at) => {
      // What an element sets by being there belongs to regions that have it; the others go without it.
      if (level.is === 'group' && !level.sets && at >= top) this.#groupLevels.push(at);
    });
  }

  plan(): PlannedContent[] {
    const instrument = this.#instrument;
    this.#noteOthers();
    for (const region of this.#regions) {
      const parent = instrument.parent(region);
      if (!this.#chains.has(parent)) this.#chains.set(parent, chainOf(instrument, region));
    }
    const globals = new Set([...this.#chains.values()].map(([global]) => global));
    const inner = this.#groupLevels.at(-1) ?? this.#region;
    const outer = this.#groupLevels.at(-2) ?? inner;
    const oneGlobal = this.#instrumentLevel >= 0 && globals.size <= 1;
    this.#targets = [oneGlobal ? this.#instrumentLevel : outer, outer, inner];
    const regions = this.#regions.map((region) => this.#regionPlan(region));
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
    for (const directive of instrument.directives) {
      const { kind, source, start, end } = directive;
      if (kind === 'comment') continue;
      const message = writtenOutText(directive);
      this.#accounts.noteSpan({ kind: 'approximated', ...spanIn(source, start, end), message });
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
    const places = this.#levels[level];
    const found = places.byName.get(name) ?? (isKeyPart(name) ? places.byName.get('key') : undefined);
    if (!found || level === this.#region) return found !== undefined;
    // A place in the sample depends on the sample of the region where it is not counted in frames.
    const depends = found.every(
      ({ parameter: { form } }) =>
        form.kind === 'count' ||
        (form.kind === 'position' && (form.unit !== 'frames' || form.from !== undefined)),
    );
    return !(depends && this.#levels[this.#region]?.byName.has(name));
  }

  #regionPlan(region: number): RegionPlan {
    const around = this.#surroundings(this.#instrument.parent(region));
    if (around.isPlain && this.#instrument.controls.length < 2 && this.#isPlain(region))
      return { region, around, hoisted: undefined, own: undefined };
    const all = new Map(around.inherited);
    this.#addRefolded(region, all);
    merge(all, this.#newOwn(region));
    this.#foldTranspose(region, all);
    const own: Values = new Map();
    let hoisted: Values[] | undefined;
    for (const [name, value] of all) {
      const level = this.#levelFor(name);
      if (level < 0 || level === this.#region) own.set(name, value);
      else {
        hoisted ??= this.#levels.map(() => new Map());
        hoisted[level].set(name, value);
      }
    }
    return { region, around, hoisted, own };
  }

  /** What regions that stand in a header, or in none, have in common. */
  #surroundings(parent: number): Surroundings {
    const known = this.#around.get(parent);
    if (known) return known;
    const slots: number[][] = this.#levels.map(() => []);
    this.#chains.get(parent)?.forEach((header, at) => {
      if (header >= 0) slots[this.#targets[at]]?.push(header);
    });
    const levels: Values[] = this.#levels.map(() => noValues);
    let carry = noValues;
    for (let level = this.#top; level < this.#region; level++) {
      const { values, carry: further } = this.#levelValues(level, slots, carry);
      levels[level] = values;
      carry = further;
    }
    const inherited = new Map(carry);
    for (const header of slots[this.#region]) merge(inherited, this.#own(header));
    let isPlain = true;
    for (const name of inherited.keys()) isPlain &&= this.#isAtRegion(name);
    const around = { slots, levels, inherited, isPlain };
    this.#around.set(parent, around);
    return around;
  }

  /** The innermost level that has a place for a value; −1 where none has. */
  #levelFor(name: string): number {
    let level = this.#region;
    while (level >= this.#top && !this.#canHold(level, name)) level--;
    return level >= this.#top ? level : -1;
  }

  /** A transposition without a place of its own goes into the tuning: a semitone is 100 cents. */
  #foldTranspose(region: number, values: Values): void {
    const transpose = this.#foldsTranspose ? values.get('transpose') : undefined;
    const semitones = transpose === undefined ? Number.NaN : plainNumber(transpose.value);
    if (!transpose || Number.isNaN(semitones)) return;
    const tune = effectiveText(this.#instrument, region, 'tune');
    const cents = plainNumber(tune ?? '0');
    if (Number.isNaN(cents)) return;
    const { parameter } = transpose;
    const value = decimalText(cents + 100 * semitones);
    values.delete('transpose');
    this.#accounts.note(
      parameter,
      'approximated',
      `transpose ${transpose.value} is written in the tuning, which becomes ${value} cents.`,
      'transpose',
    );
    this.#accounts.sameAs(values.get('tune')?.parameter ?? -1, parameter);
    values.set('tune', { name: 'tune', value, parameter });
  }

  /** Whether a value stands in the region where it stands anywhere. */
  #isAtRegion(name: string): boolean {
    if (name === 'transpose' && this.#foldsTranspose) return false;
    const level = this.#levelFor(name);
    return level < 0 || level === this.#region;
  }

  /** Whether each value of a header stands in the region where it stands anywhere, and none is set twice. */
  #isPlain(header: number): boolean {
    const instrument = this.#instrument;
    const first = instrument.firstParameter(header);
    const end = instrument.endParameter(header);
    for (let parameter = first; parameter < end; parameter++) {
      const id = instrument.canonicalName(parameter);
      const before = this.#lastOfName[id] ?? -1;
      this.#lastOfName[id] = parameter;
      if (id === Parameter.key || (before >= first && before < parameter)) return false;
      this.#regionHolds[id] ??= this.#isAtRegion(instrument.names.text(id));
      if (!this.#regionHolds[id]) return false;
    }
    return true;
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
    const lifted = regions.flatMap(({ hoisted }) => hoisted?.[level] ?? []);
    const names = new Set(lifted.flatMap((values) => [...values.keys()]));
    for (const name of names) {
      const value = lifted[0]?.get(name)?.value;
      const isAgreed = value !== undefined && lifted.every((values) => values.get(name)?.value === value);
      if (isAgreed && lifted.length === regions.length) continue;
      for (const values of lifted) {
        const odd = values.get(name);
        if (!odd) continue;
        values.delete(name);
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
    const { region, around, own } = plan;
    container.push(
      new PlannedElement(this.#region, region, own ?? (() => this.#newOwn(region)), around.inherited),
    );
    for (const text of trailing) container.push({ kind: 'comment', text });
  }

  /** Opens the elements that a region stands in, those that are open already apart; without a region only the outermost. */
  #openLevels(plan: RegionPlan | undefined): void {
    const before = this.#opened;
    this.#opened = plan;
    if (plan && before?.around === plan.around && !before.hoisted && !plan.hoisted) return;
    let key = '';
    let same = true;
    const last = plan ? this.#region : this.#top + 1;
    for (let level = this.#top; level < last; level++) {
      const headers = plan?.around.slots[level] ?? [];
      const hoisted = plan?.hoisted?.[level] ?? noValues;
      key += `/${headers.join()}:${[...hoisted].map(([name, { value }]) => `${name}=${JSON.stringify(value)}`).join()}`;
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
      const own = headers[headers.length - 1] ?? -1;
      if (own >= 0) this.#flush(own, container);
      const values = new Map(plan?.around.levels[level]);
      merge(values, hoisted);
      const header = own < 0 && hoisted.size > 0 && plan ? plan.region : own;
      const element = new PlannedElement(level, header, values);
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
