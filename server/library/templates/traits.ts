import { dynamicIn, dynamicLetters } from '../../trade/dynamics';
import { nameKinds } from '../../trade/names/nameParts';

/** What tells groups of a kind: how they are played, and what their names say of it. */
export interface Traits {
  /** The name in small letters and figures alone; empty where there is none. */
  name: string;
  /** `attack`, `release`, `first` or `legato`. */
  trigger: string;
  takesTurns: boolean;
  hasKeyswitch: boolean;
  /** A word for the way of playing, such as `pizzicato`. */
  articulation: string | undefined;
  /** The middle of the velocities, 0..127; `undefined` where all are answered. */
  velocity: number | undefined;
  /** Traits that the name alone tells, so that the values which go with them may be missing. */
  named: ReadonlySet<'trigger' | 'takesTurns' | 'articulation' | 'velocity'>;
}

const labelOf = new Map(nameKinds.map(({ kind, labelOf }) => [kind, labelOf]));

/** The traits of regions with the given values in force, and of the group that has the given name. */
export function traitsOf(values: ReadonlyMap<string, string>, name: string | undefined): Traits {
  const words = (name ?? '').toLowerCase().match(/[\p{L}]+\d*/gu) ?? [];
  const find = (kind: (typeof nameKinds)[number]['kind']) =>
    words.map((word) => labelOf.get(kind)?.(word)).find((one) => one !== undefined);
  const named = new Set<'trigger' | 'takesTurns' | 'articulation' | 'velocity'>();
  const isNamedRelease = find('releases') !== undefined;
  if (isNamedRelease) named.add('trigger');
  const trigger = values.get('trigger')?.replace(/_key$/, '') ?? (isNamedRelease ? 'release' : 'attack');
  const isNamedTurn = find('round_robins') !== undefined;
  if (isNamedTurn) named.add('takesTurns');
  const articulation = find('articulations');
  if (articulation !== undefined) named.add('articulation');
  let velocity = velocityIn(values);
  const dynamic = name === undefined ? -1 : dynamicIn(name);
  if (dynamic >= 0) {
    named.add('velocity');
    velocity ??= ((dynamic + 0.5) / dynamicLetters.length) * 127;
  }
  return {
    name: plain(name),
    trigger,
    takesTurns: takesTurns(values) || isNamedTurn,
    hasKeyswitch: [...values.keys()].some((one) => /^sw_(?:last|down|up|previous)$/.test(one)),
    articulation,
    velocity,
    named,
  };
}

/** Whether regions with these values sound in turn with others or by chance. */
export function takesTurns(values: ReadonlyMap<string, string>): boolean {
  return Number(values.get('seq_length') ?? 1) > 1 || values.has('lorand') || values.has('hirand');
}

function plain(name: string | undefined): string {
  return (name ?? '').toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

function velocityIn(values: ReadonlyMap<string, string>): number | undefined {
  const low = Number(values.get('lovel') ?? 0);
  const high = Number(values.get('hivel') ?? 127);
  return low <= 1 && high >= 127 ? undefined : (low + high) / 2;
}

/** How well an example stands for others; more is better, and the same name beats all else. Weights are our choice. */
export function likeness(example: Traits, one: Traits): number {
  if (example.name !== '' && example.name === one.name) return 100;
  return (
    (example.trigger === one.trigger ? 8 : -8) +
    sameWord(example.articulation, one.articulation) +
    (example.hasKeyswitch === one.hasKeyswitch ? 1 : -1) +
    (example.takesTurns === one.takesTurns ? 1 : -1) +
    nearVelocity(example.velocity, one.velocity)
  );
}

function sameWord(a: string | undefined, b: string | undefined): number {
  if (a === undefined && b === undefined) return 0;
  if (a === undefined || b === undefined) return -1;
  return a === b ? 4 : -4;
}

function nearVelocity(a: number | undefined, b: number | undefined): number {
  if (a === undefined && b === undefined) return 0;
  if (a === undefined || b === undefined) return -1;
  return 2 - Math.abs(a - b) / 32;
}

/** Whether it is the name that says of regions that they are what an example stands for. */
export function isAlikeByName(example: Traits, one: Traits): boolean {
  if (example.name !== '' && example.name === one.name) return true;
  return (
    (one.named.has('trigger') && one.trigger === example.trigger) ||
    (one.named.has('takesTurns') && example.takesTurns) ||
    (one.named.has('articulation') && one.articulation === example.articulation) ||
    (one.named.has('velocity') &&
      one.velocity !== undefined &&
      example.velocity !== undefined &&
      Math.abs(one.velocity - example.velocity) < 32)
  );
}
