import { nameHash } from '../../xml/scan/nameHash';
import { parseListedFolder } from '../listedFolder';
import { lacksOutermostElement } from '../outermostElement';
import type { PlaceStep } from '../places';
import { folderPlaces, parsePlace } from '../places';
import type { Chances, StepEnd, SwitchedOff, TakesElement, Vocabulary, VocabularyLevel } from '../vocabulary';
import type { LevelHeader } from './levelHeaders';
import { levelHeaders } from './levelHeaders';
import type { StepValue } from './steps';
import type { ReadTarget } from './targets';
import { ownTarget, targetsOf } from './targets';

/** A value that an element sets by being there. */
export interface OwnValue {
  target: ReadTarget;
  value: string;
}

/** A vocabulary made ready for reading. */
export interface CompiledVocabulary {
  levels: readonly LevelHeader[];
  /** The name of each level's element. */
  elements: readonly string[];
  /** All targets; a target's index is its position. */
  targets: readonly ReadTarget[];
  /** Numbers of the names of attributes that the vocabulary speaks of. */
  attributes: ReadonlyMap<string, number>;
  /** Around the outermost element. */
  root: ElementPlace;
  /** An outermost element of any other name, where the vocabulary names none. */
  outermost: ElementPlace | undefined;
  /** The element of each level. */
  places: readonly ElementPlace[];
  /** By level and name of an element, what that sets by being there. */
  sets: readonly ReadonlyMap<string, readonly OwnValue[]>[];
  /** The position in the round robin that the regions inside an element of a level are; `undefined` where none is one. */
  turn: ReadTarget | undefined;
  /** By level, whether its element is a round robin of the regions in it. */
  isTurns: readonly boolean[];
  /** Whether it gives positions in round robins and not the number of turns. */
  lacksTurns: boolean;
  /** Whether some values count only where their element says nothing else. */
  hasStandIns: boolean;
  /** As in {@link Vocabulary.backwards}. */
  backwards: boolean;
  /** Whether ends of ranges are written as numbers of keys or velocities. */
  hasCounts: boolean;
  /** By level, the parameters of ends of ranges that follow from others. */
  steps: readonly ReadonlyMap<StepValue['parameter'], ReadTarget>[];
  stepEnds: readonly StepEnd[];
  /** As in {@link Vocabulary.keysInOrder}. */
  isOrdered: boolean;
  /** As in {@link Vocabulary.keysByRoots}. */
  isRooted: boolean;
  /** What switches elements off. */
  off: readonly SwitchedOff[];
  /** As in {@link Vocabulary.takes}. */
  takes: readonly TakesElement[];
  /** As in {@link Vocabulary.chances}. */
  chances: Chances | undefined;
}

/** An attribute that tells elements of one name apart: its number and the value that it has to have. */
type Condition = readonly [attribute: number, value: string];

/** What the vocabulary says of an element in some place. */
class Branch {
  readonly attributes: ReadTarget[][] = [];
  readonly text: ReadTarget[] = [];
  readonly children: { element: string; conditions: readonly Condition[]; branch: Branch }[] = [];

  /** `level` is the level whose element it is, or −1. */
  constructor(readonly level: number) {}
}

/** The elements of one name that can stand somewhere. */
export class ChildElements {
  readonly name: string;
  readonly hash: number;
  /** The numbers of the attributes that decide what they are. */
  readonly conditionAttributes: ReadonlySet<number>;
  readonly #always: Branch[];
  readonly #chosen: { conditions: readonly Condition[]; branch: Branch }[];
  readonly #places: Map<string, ElementPlace>;
  #single: ElementPlace | undefined;
  /** Places by the value of the one attribute that all go by. */
  #byValue: Map<string, ElementPlace> | undefined;
  #byAttribute = -1;

  constructor(name: string, branches: Branch['children']) {
    this.name = name;
    this.hash = nameHash(name, 0, name.length);
    this.#always = branches.filter(({ conditions }) => conditions.length === 0).map(({ branch }) => branch);
    this.#chosen = branches.filter(({ conditions }) => conditions.length > 0);
    this.#places = new Map();
    this.conditionAttributes = new Set(
      this.#chosen.flatMap(({ conditions }) => conditions.map(([attribute]) => attribute)),
    );
    const first = this.#chosen[0]?.conditions[0]?.[0] ?? -1;
    if (this.#chosen.every(({ conditions }) => conditions.length === 1 && conditions[0]?.[0] === first)) {
      this.#byAttribute = first;
      this.#byValue = new Map();
    }
  }

  /** Whether their attributes decide what they are. */
  get goesByAttributes(): boolean {
    return this.#chosen.length > 0;
  }

  /** What they are, where their attributes do not decide that. */
  get place(): ElementPlace {
    this.#single ??= new ElementPlace(this.#always);
    return this.#single;
  }

  isNamed(text: string, start: number, end: number): boolean {
    return this.name.length === end - start && text.startsWith(this.name, start);
  }

  /** What one with these values of attributes is; `undefined` for one that means nothing. */
  choose(valueIn: (attribute: number) => string | undefined): ElementPlace | undefined {
    const value = this.#byAttribute >= 0 ? valueIn(this.#byAttribute) : undefined;
    const known = value === undefined ? undefined : this.#byValue?.get(value);
    if (known) return known;
    const fits = this.#chosen.map(({ conditions }) =>
      conditions.every(([one, wanted]) => valueIn(one) === wanted),
    );
    const chosen = this.#chosen.filter((_, at) => fits[at]);
    if (chosen.length === 0 && this.#always.length === 0) return undefined;
    const key = fits.map((fit) => (fit ? '1' : '0')).join('');
    let place = this.#places.get(key);
    if (!place) {
      place = new ElementPlace([...this.#always, ...chosen.map(({ branch }) => branch)]);
      this.#places.set(key, place);
    }
    if (value !== undefined && chosen.length > 0) this.#byValue?.set(value, place);
    return place;
  }
}

/** An element in its place: what its attributes, its text and the elements in it mean. */
export class ElementPlace {
  /** The level whose element it is, or −1. */
  readonly level: number;
  /** Targets by the number of the attribute. */
  readonly attributes: readonly (readonly ReadTarget[] | undefined)[];
  readonly text: readonly ReadTarget[] | undefined;
  /** Whether its text and its attributes both mean something. */
  readonly isMixed: boolean;
  readonly children: readonly ChildElements[];
  /** The position of the child that stood behind the one found last. */
  #expected = 0;

  constructor(branches: readonly Branch[]) {
    this.level = branches.find(({ level }) => level >= 0)?.level ?? -1;
    const attributes: (ReadTarget[] | undefined)[] = [];
    const children = new Map<string, Branch['children']>();
    for (const branch of branches) {
      branch.attributes.forEach((targets, attribute) => {
        attributes[attribute] = withInstead(attributes[attribute] ?? [], targets);
      });
      for (const child of branch.children) {
        const named = children.get(child.element);
        if (named) named.push(child);
        else children.set(child.element, [child]);
      }
    }
    this.attributes = Array.from(attributes);
    const text = branches.reduce((all, branch) => withInstead(all, branch.text), [] as ReadTarget[]);
    this.text = text.length > 0 ? text : undefined;
    this.isMixed = text.length > 0 && attributes.length > 0;
    this.children = [...children].map(([name, all]) => new ChildElements(name, all));
  }

  /** The element with nothing but one of its attributes, by number, where only that one means anything. */
  withOnly(attribute: number): ElementPlace {
    const branch = new Branch(-1);
    branch.attributes[attribute] = [...(this.attributes[attribute] ?? [])];
    return new ElementPlace([branch]);
  }

  /** The elements of the name that stands at `start`..`end` of a text. */
  childrenNamed(text: string, start: number, end: number, hash: number): ChildElements | undefined {
    const { children } = this;
    // Elements of one kind mostly repeat those in them in the same order.
    const expected = children[this.#expected];
    if (expected?.hash === hash && expected.isNamed(text, start, end)) {
      this.#expected++;
      return expected;
    }
    for (let at = 0; at < children.length; at++) {
      const child = children[at];
      if (child.hash !== hash || !child.isNamed(text, start, end)) continue;
      this.#expected = at + 1;
      return child;
    }
    return undefined;
  }
}

/** Targets, of which others of the same parameter take the place: those of elements that are told apart go before the rest. */
function withInstead(all: readonly ReadTarget[], others: readonly ReadTarget[]): ReadTarget[] {
  const isSame = (one: ReadTarget, other: ReadTarget) =>
    one.parameter === other.parameter && one.part === other.part && one.level === other.level;
  return [...all.filter((one) => !others.some((other) => isSame(one, other))), ...others];
}

const compiled = new WeakMap<Vocabulary, CompiledVocabulary>();

/** A vocabulary made ready for reading, once for each object. Places that make no sense are left out. */
export function compileVocabulary(vocabulary: Vocabulary): CompiledVocabulary {
  let ready = compiled.get(vocabulary);
  if (!ready) {
    ready = new Compiler(vocabulary).compile();
    compiled.set(vocabulary, ready);
  }
  return ready;
}

/** Gives positions in round robins a parameter for the number of turns, where no place has that; whether there are any. */
function addTurns(all: ReadTarget[]): boolean {
  const positions = all.filter(({ parameter }) => parameter === 'seq_position');
  if (positions.length === 0 || all.some(({ parameter }) => parameter === 'seq_length')) return false;
  for (const position of positions) {
    position.turns = ownTarget('seq_length', position.level, all.length);
    all.push(position.turns);
  }
  return true;
}

/** Gives the points of loops the loop mode that follows from them. */
function addLoopModes(all: ReadTarget[], loops: Vocabulary['loops']): void {
  if (!loops) return;
  const ends = all.filter(({ parameter }) => parameter === 'loop_end');
  const points = ends.length > 0 ? ends : all.filter(({ parameter }) => parameter === 'loop_start');
  for (const point of points) {
    const target = ownTarget('loop_mode', point.level, all.length);
    point.implied = { target, value: loops };
    all.push(target);
  }
}

class Compiler {
  readonly #vocabulary: Vocabulary;
  readonly #attributes = new Map<string, number>();

  constructor(vocabulary: Vocabulary) {
    this.#vocabulary = vocabulary;
  }

  compile(): CompiledVocabulary {
    const { levels } = this.#vocabulary;
    const targets = targetsOf(this.#vocabulary);
    const all = targets.flat();
    const isTurns = levels.map(({ turns }) => turns === true);
    const turn = isTurns.includes(true)
      ? ownTarget('seq_position', levels.length - 1, all.length)
      : undefined;
    if (turn) all.push(turn);
    const lacksTurns = addTurns(all);
    addLoopModes(all, this.#vocabulary.loops);
    const setBy = (sets: Record<string, string>, level: number): OwnValue[] =>
      Object.entries(sets).map(([parameter, value]) => {
        const target = ownTarget(parameter, level, all.length);
        all.push(target);
        return { target, value };
      });
    const sets = levels.map(({ element, sets = {}, also = {} }, level) => {
      const others = Object.entries(also).map(([name, values]) => [name, setBy(values, level)] as const);
      return new Map<string, OwnValue[]>([...others, [element, setBy(sets, level)]]);
    });
    const stepEnds = this.#vocabulary.steps ?? [];
    const isOrdered = this.#vocabulary.keysInOrder === true;
    const isRooted = this.#vocabulary.keysByRoots === true;
    const followEnds = new Set<StepValue['parameter']>([
      ...stepEnds,
      ...(isOrdered ? (['lokey', 'hikey', 'pitch_keycenter'] as const) : []),
      ...(isRooted ? (['lokey', 'hikey'] as const) : []),
      ...(this.#vocabulary.takes || this.#vocabulary.chances
        ? (['lorand', 'hirand', 'seq_position', 'seq_length', 'lovel', 'hivel'] as const)
        : []),
    ]);
    const steps = levels.map(
      (_, level) =>
        new Map(
          [...followEnds].map((end) => {
            const target = ownTarget(end, level, all.length);
            all.push(target);
            return [end, target] as const;
          }),
        ),
    );
    const branches = this.#branches(targets, all);
    const root = new Branch(-1);
    [root, ...branches].forEach((branch, outer) => {
      for (let level = outer; level < levels.length; level++) this.#lead(branch, level, branches);
    });
    const around = new ElementPlace([root]);
    return {
      levels: levelHeaders(this.#vocabulary),
      elements: levels.map(({ element }) => element),
      targets: all,
      sets,
      steps,
      stepEnds,
      isOrdered,
      isRooted,
      turn,
      isTurns,
      lacksTurns,
      attributes: this.#attributes,
      root: around,
      outermost: lacksOutermostElement(this.#vocabulary) ? around : undefined,
      places: branches.map((branch) => new ElementPlace([branch])),
      hasStandIns: all.some((one) => one.isStandIn === true),
      backwards: this.#vocabulary.backwards === true,
      hasCounts: all.some(({ form }) => form.kind === 'count'),
      off: this.#vocabulary.off ?? [],
      takes: this.#vocabulary.takes ?? [],
      chances: this.#vocabulary.chances,
    };
  }

  /** A branch for the element of each level, with the places of its values; the targets of sample rates are added to `all`. */
  #branches(targets: readonly (readonly ReadTarget[])[], all: ReadTarget[]): Branch[] {
    const { levels } = this.#vocabulary;
    const branches = levels.map((_, level) => new Branch(level));
    levels.forEach(({ parameters }, level) => {
      parameters.forEach(({ at }, position) => {
        this.#addTarget(branches[level], at, targets[level]?.[position]);
      });
    });
    for (const target of this.#folderTargets(targets)) {
      const { form } = target;
      if (form.kind !== 'path' || form.under === undefined) continue;
      const place = folderPlaces(form.under)[target.folderPlace ?? 0];
      const { by, listed } = parseListedFolder(place) ?? { by: place };
      this.#addTarget(branches[target.level], by, listed ? { ...target, listed } : target);
    }
    levels.forEach(({ rate }, level) => {
      if (rate === undefined) return;
      const target: ReadTarget = { ...ownTarget('sample', level, all.length), isRate: true };
      all.push(target);
      this.#addTarget(branches[level], rate, target);
    });
    return branches;
  }

  /** Places that name a folder for the paths further in. */
  #folderTargets(targets: readonly (readonly ReadTarget[])[]): ReadTarget[] {
    const folders: ReadTarget[] = [];
    for (const target of targets.flat()) {
      if (target.form.kind !== 'path' || target.form.under === undefined) continue;
      for (const folderPlace of folderPlaces(target.form.under).keys())
        for (let level = 0; level <= target.level; level++)
          folders.push({ ...target, level, isFolder: true, folderPlace });
    }
    return folders;
  }

  #addTarget(level: Branch, at: string, target: ReadTarget): void {
    const path = parsePlace(at);
    if (!path) return;
    let branch = level;
    for (const step of path.steps) branch = this.#childOf(branch, step);
    if (path.attribute === undefined) branch.text.push(target);
    else {
      const attribute = this.#numberOf(path.attribute);
      branch.attributes[attribute] ??= [];
      branch.attributes[attribute]?.push(target);
    }
  }

  #childOf(branch: Branch, { element, selectors }: PlaceStep): Branch {
    const conditions = selectors.map(([name, value]) => [this.#numberOf(name), value] as const);
    const same = branch.children.find(
      (child) => child.element === element && JSON.stringify(child.conditions) === JSON.stringify(conditions),
    );
    if (same) return same.branch;
    const child = new Branch(-1);
    branch.children.push({ element, conditions, branch: child });
    return child;
  }

  /** Leads from an element to those of a level further in, with or without the wrappers around them. */
  #lead(from: Branch, level: number, branches: readonly Branch[]): void {
    const { element, inside = [], also = {} } = this.#vocabulary.levels[level] as VocabularyLevel;
    const target = branches[level];
    const put = (branch: Branch, name: string, child: Branch): void => {
      const isTaken = branch.children.some((one) => one.element === name && one.conditions.length === 0);
      if (!isTaken) branch.children.push({ element: name, conditions: [], branch: child });
    };
    const wrappers = inside.map((name) => this.#childOf(from, { element: name, selectors: [] }));
    wrappers.forEach((wrapper, outer) => {
      for (let inner = outer + 1; inner < inside.length; inner++)
        put(wrapper, inside[inner], wrappers[inner]);
    });
    for (const branch of [from, ...wrappers])
      for (const name of [element, ...Object.keys(also)]) put(branch, name, target);
    // What stands in a group may stand beside it as well, in the same wrappers.
    this.#vocabulary.levels.slice(level + 1).forEach(({ element: inner, also: others = {} }, at) => {
      for (const wrapper of wrappers)
        for (const name of [inner, ...Object.keys(others)]) put(wrapper, name, branches[level + 1 + at]);
    });
  }

  #numberOf(attribute: string): number {
    let number = this.#attributes.get(attribute);
    if (number === undefined) {
      number = this.#attributes.size;
      this.#attributes.set(attribute, number);
    }
    return number;
  }
}
