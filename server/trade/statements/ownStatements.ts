import type { ColumnMeaning } from '../meaning';
import { positionMeanings } from '../meaning';
import type { StatedScale } from './statedScales';
import type { Statements } from './statements';

/** What one table of several may be said to have of its own. */
interface OwnKind {
  /** For people. */
  name: string;
  fields: readonly (keyof Statements)[];
  /** The columns that a scale is stated for. */
  scales: readonly ColumnMeaning[];
  /** Says that the usual way holds, so that none of the fields does. */
  usual?: RegExp;
}

const kinds: readonly OwnKind[] = [
  { name: 'how octaves are counted', fields: ['middleC', 'otherOctaves'], scales: [] },
  {
    name: 'how keys are counted',
    fields: ['middleKey', 'keyCount', 'keyShift', 'pianoKeys'],
    scales: [],
    usual: /(?<!\p{L})midi(?!\p{L})/iu,
  },
  { name: 'the unit of levels', fields: ['countsDown'], scales: ['volume', 'attenuation'] },
  { name: 'the scale of velocities', fields: [], scales: ['lovel', 'hivel', 'velocity_range'] },
  { name: 'the unit of tunings', fields: [], scales: ['tune', 'transpose'] },
  { name: 'the scale of pan', fields: [], scales: ['pan'] },
  { name: 'the unit of positions', fields: ['sampleRate'], scales: positionMeanings },
  { name: 'the first frame', fields: ['firstFrame'], scales: [] },
  { name: 'the ends of loops and samples', fields: ['ends'], scales: [] },
  { name: 'the folder of samples', fields: ['folder'], scales: [] },
];

/** What is stated of each table, and the names of what they differ in. */
export interface StatementsOfEach {
  each: readonly Statements[];
  differ: readonly string[];
}

/**
 * What holds for each of several tables where what stands over them differs: what is `stated` over it or, where nothing is, over the one
 * before it. What they do not differ in holds for all as it is said of `all`.
 */
export function statementsOfEach(stated: readonly Statements[], all: Statements): StatementsOfEach {
  const differing = kinds.filter((kind) => doDiffer(stated, kind));
  const each = stated.map((_, at) => {
    const scales = new Map(all.scales);
    const own: Statements = { ...all, scales };
    for (const kind of differing) {
      const over = stated.slice(0, at + 1).findLast((one) => textOf(one, kind) !== undefined);
      Object.assign(own, Object.fromEntries(kind.fields.map((field) => [field, over?.[field]])));
      if (kind.fields.includes('countsDown')) own.countsDown = over?.countsDown ?? [];
      for (const meaning of kind.scales) setScale(scales, meaning, over?.scales.get(meaning));
    }
    return own;
  });
  return { each, differ: differing.map(({ name }) => name) };
}

function setScale(
  scales: Map<ColumnMeaning, StatedScale>,
  meaning: ColumnMeaning,
  scale: StatedScale | undefined,
): void {
  if (scale) scales.set(meaning, scale);
  else scales.delete(meaning);
}

/** Whether what stands over tables differs in what can hold for one of them alone. */
export function haveOwnStatements(stated: readonly Statements[]): boolean {
  return kinds.some((kind) => doDiffer(stated, kind));
}

function doDiffer(stated: readonly Statements[], kind: OwnKind): boolean {
  const texts = stated.map((one) => textOf(one, kind)).filter((text) => text !== undefined);
  return new Set(texts).size > 1;
}

/** What is stated of a kind, as a text that is the same for the same; `undefined` where nothing is. */
function textOf(statements: Statements, { fields, scales, usual }: OwnKind): string | undefined {
  const values = [
    ...fields.map((field) => statements[field]),
    ...scales.map((meaning) => statements.scales.get(meaning)),
  ];
  const isStated = values.some(
    (value) => value !== undefined && !(Array.isArray(value) && value.length === 0),
  );
  if (isStated) return JSON.stringify(values, withoutText);
  return usual && statements.texts.some((text) => usual.test(text)) ? '' : undefined;
}

function withoutText(name: string, value: unknown): unknown {
  return name === 'text' ? undefined : value;
}
