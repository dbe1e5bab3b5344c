import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import { resolveOpcode } from '../../model/opcodes/resolve';
import { type KeyWriting, keyWritingOf } from '../../model/style/keySpeller';
import type { FilledSection } from './assignExamples';
import type { ExampleSlot } from './examples';
import { isHeldBy } from './isHeldBy';
import type { ExampleCopy } from './repeatExamples';
import type { SourceRegion } from './sourceSections';
import {
  familyOf,
  isSoundOfRecording,
  usualCondition,
  usualPlace,
  valueClass,
  valuesOfPlace,
} from './valueClass';
import { writtenValues } from './writtenValues';

/** What the group of a section sets, and what is in force around its regions. */
interface SectionPlan {
  /** What is written into the group. */
  group: Map<string, string>;
  /** Values of the example's group that stay as they are. */
  kept: Set<string>;
  /** What regions inherit from the group and from what stands around it. */
  around: Map<string, string>;
}

/** Decides what each copy of an example is to say, of what the source and the template say. */
export class CopyValues {
  readonly #template: Instrument;
  readonly #notation: Notation;
  readonly #plans = new Map<FilledSection, SectionPlan>();
  readonly #writing: KeyWriting;
  /** By kind of header, the values of each header of it. */
  readonly #groupsOf = new Map<HeaderKind, ReadonlyMap<string, string>[]>();

  constructor(template: Instrument, notation: Notation) {
    this.#template = template;
    this.#notation = notation;
    this.#writing = keyWritingOf(template);
  }

  /** Whether names of example groups were left out of groups that have none. */
  leavesNames = false;

  /** The values that a copy's header is to set itself, by canonical name. */
  of({ section, slot, source, example }: ExampleCopy): Map<string, string> {
    const plan = this.#plan(section, slot);
    const values = source ? this.#ofRegion(source, plan, example) : plan.group;
    const written = new Map<string, string>();
    for (const [name, value] of values)
      if (isHeldBy(this.#notation, name, value)) written.set(name, this.#spelled(name, value));
    return written;
  }

  /** Whether a value that the example has and the source does not set stays. */
  keeps({ section, slot, source }: ExampleCopy, name: string): boolean {
    return source ? valueClass(name, true) === 'style' : this.#plan(section, slot).kept.has(name);
  }

  /** What is to be in force in a region: the source's values, and usual ones where the template's would change what they mean. */
  expected({ section, slot, source, example }: ExampleCopy & { source: SourceRegion }): Map<string, string> {
    const { around } = this.#plan(section, slot);
    return new Map([...source.values, ...this.#usual(source, around, example)]);
  }

  /** Values that nobody sets and that are to be written: instead of conditions around, and where a place would be empty. */
  #usual(source: SourceRegion, around: ReadonlyMap<string, string>, example: number): Map<string, string> {
    const values = overridden(source, around);
    // What an empty place means to the program that reads it is not known, so none is left in a notation of places.
    if (!this.#notation.parameters) return values;
    for (const [name, value] of ownNames(this.#template, example)) {
      if (source.values.has(name) || around.has(name)) continue;
      // A velocity of 0 strikes no key, so that ranges which start there start at 1 as well.
      const usual = name === 'lovel' && Number(value) === 0 ? value : usualPlace(name);
      if (usual !== undefined) values.set(name, usual);
    }
    return values;
  }

  #spelled(name: string, value: string): string {
    const isKey = /^\d{1,3}$/.test(value) && resolveOpcode(name)?.facts.kind === 'key';
    return isKey ? this.#writing(Number(value)) : value;
  }

  #ofRegion(source: SourceRegion, { around }: SectionPlan, example: number): Map<string, string> {
    const own = ownNames(this.#template, example);
    const values = new Map<string, string>();
    for (const [name, value] of source.values)
      if (own.has(name) || around.get(name) !== value) values.set(name, value);
    for (const [name, value] of this.#usual(source, around, example)) values.set(name, value);
    if (own.has('key'))
      for (const name of ['lokey', 'hikey', 'pitch_keycenter']) {
        const value = source.values.get(name);
        if (value !== undefined) values.set(name, value);
      }
    return values;
  }

  #plan(section: FilledSection, slot: ExampleSlot): SectionPlan {
    let plan = this.#plans.get(section);
    if (!plan) {
      plan = this.#newPlan(section, slot);
      this.#plans.set(section, plan);
    }
    return plan;
  }

  #newPlan(section: FilledSection, slot: ExampleSlot): SectionPlan {
    const template = this.#template;
    const { group: header } = slot;
    const outside = header < 0 ? template.parent(slot.regions[0].header) : template.parent(header);
    const around =
      section.outer && slot.outer
        ? new Map(this.#plan(section.outer, { ...slot, group: slot.outer.header, outer: undefined }).around)
        : outside < 0
          ? new Map<string, string>()
          : writtenValues(template, outside);
    const plan: SectionPlan = { group: new Map(), kept: new Set(), around };
    if (header < 0) return plan;
    const own = ownNames(template, header);
    for (const [place, value] of own)
      for (const name of valuesOfPlace(place)) {
        const shared = sharedValue(section, name);
        if (shared !== undefined) plan.group.set(name, shared);
        else if (this.#isOfEach(header, name)) plan.group.set(name, usualPlace(name) ?? value);
        else if (this.#isNameOfOther(section, header, name)) this.leavesNames = true;
        else if (keepsOfGroup(section, name)) {
          plan.kept.add(name);
          plan.around.set(name, value);
        } else if (this.#notation.parameters && !this.#takes(HeaderKind.region, name)) {
          const usual = section.regions.some(({ source }) => source.values.has(name))
            ? undefined
            : usualPlace(name);
          if (usual !== undefined) plan.group.set(name, usual);
        }
      }
    for (const [name, value] of sharedOutside(section))
      if (!own.has(name) && !plan.group.has(name) && this.#takes(template.kind(header), name))
        plan.group.set(name, value);
    if (section.label !== undefined && this.#takes(template.kind(header), 'group_label'))
      plan.group.set('group_label', section.label);
    for (const [name, value] of plan.group) plan.around.set(name, value);
    return plan;
  }

  /**
   * Whether a level, a tuning or a place in the panorama is what a notation with places for some values says of each group, and no sound
   * that the template gives to all: its example groups differ in it.
   */
  #isOfEach(header: number, name: string): boolean {
    return this.#notation.parameters !== undefined && isSoundOfRecording(name) && this.#differ(header, name);
  }

  /** Whether a value is the name of one of several example groups, and the section has none. */
  #isNameOfOther({ isByName, label }: FilledSection, header: number, name: string): boolean {
    const isName = valueClass(name, false) === 'label' && label === undefined && !isByName;
    return isName && this.#notation.parameters !== undefined && this.#differ(header, name);
  }

  /** Whether example groups of one kind differ in a value. */
  #differ(header: number, name: string): boolean {
    let groups = this.#groupsOf.get(this.#template.kind(header));
    if (!groups) {
      groups = headersOf(this.#template, this.#template.kind(header));
      this.#groupsOf.set(this.#template.kind(header), groups);
    }
    const own = groups.map((values) => values.get(name) ?? usualPlace(name));
    return own.some((value) => value !== own[0]);
  }

  /** Whether a kind of header has a place for a value. */
  #takes(kind: HeaderKind, name: string): boolean {
    return this.#notation.parameters?.(kind).includes(name) ?? true;
  }
}

/** A header's own values by canonical name; the last of several counts. */
function ownNames(instrument: Instrument, header: number): Map<string, string> {
  const names = new Map<string, string>();
  for (let one = instrument.firstParameter(header); one < instrument.endParameter(header); one++)
    names.set(instrument.names.text(instrument.canonicalName(one)), instrument.valueText(one));
  return names;
}

function headersOf(instrument: Instrument, kind: HeaderKind): Map<string, string>[] {
  const all: Map<string, string>[] = [];
  for (let header = 0; header < instrument.headers.count; header++)
    if (instrument.kind(header) === kind) all.push(ownNames(instrument, header));
  return all;
}

/** The value that all regions of a section have in common. */
function sharedValue({ regions }: FilledSection, name: string): string | undefined {
  const value = regions[0]?.source.values.get(name);
  return regions.every(({ source }) => source.values.get(name) === value) ? value : undefined;
}

/** Whether a value of an example's group stays, where the regions of the section do not all have one of their own. */
function keepsOfGroup({ isByName, regions }: FilledSection, name: string): boolean {
  switch (valueClass(name, false)) {
    case 'style':
    case 'label':
      return true;
    case 'condition': {
      const family = familyOf(name);
      return isByName && !regions.some(({ source }) => setsFamily(source, family));
    }
    case 'recording':
      return false;
  }
}

function setsFamily({ values }: SourceRegion, family: string): boolean {
  for (const name of values.keys())
    if (familyOf(name) === family && valueClass(name, true) === 'condition') return true;
  return false;
}

/** What all regions of a section inherit in the source, as far as it is the same. */
function sharedOutside(section: FilledSection): Map<string, string> {
  const shared = new Map<string, string>();
  const [first] = section.regions;
  for (const [name, value] of first?.source.values ?? []) {
    const isInherited = section.regions.every(({ source }) => source.inherited.has(name));
    if (isInherited && sharedValue(section, name) === value) shared.set(name, value);
  }
  return shared;
}

/** Conditions around a region that would narrow it further than the source does, as they have to be for it to sound as there. */
function overridden(source: SourceRegion, around: ReadonlyMap<string, string>): Map<string, string> {
  const values = new Map<string, string>();
  for (const [name, value] of around) {
    if (source.values.has(name) || valueClass(name, false) !== 'condition') continue;
    const usual = usualCondition(name);
    if (usual === undefined || usual === value || !setsFamily(source, familyOf(name))) continue;
    values.set(name, usual);
  }
  return values;
}
