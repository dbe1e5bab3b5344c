/**
 * The headers of an instrument, outermost first, as the open SFZ format names them.
 * Kinds are small numbers so that an instrument of 100,000 regions can hold them in a byte each.
 */
export const HeaderKind = {
  control: 0,
  global: 1,
  master: 2,
  group: 3,
  region: 4,
  curve: 5,
  effect: 6,
  midi: 7,
  sample: 8,
  unknown: 9,
} as const;

export type HeaderKind = (typeof HeaderKind)[keyof typeof HeaderKind];

/** The header names that the format knows; the position of a name is its {@link HeaderKind}. */
export const headerNames = [
  'control',
  'global',
  'master',
  'group',
  'region',
  'curve',
  'effect',
  'midi',
  'sample',
] as const;

export type HeaderName = (typeof headerNames)[number];

const kinds: ReadonlyMap<string, HeaderKind> = new Map(
  headerNames.map((name, kind) => [name, kind as HeaderKind]),
);

/** The kind of a header by its name in any letter case; `HeaderKind.unknown` for a name outside the format. */
export function headerKindOf(name: string): HeaderKind {
  return kinds.get(name) ?? kinds.get(name.toLowerCase()) ?? HeaderKind.unknown;
}
