import type { FileStat } from '../../model/files';
import type { SampleFacts } from '../../model/samples';
import type { MeasureResult } from './measureRequest';
import { measureVersions } from './measureRequest';

/** What is remembered of a sample file in one state of it. */
export interface RememberedFile {
  /** Bytes, and the last change in milliseconds since 1970: the state that all else is about. */
  readonly size: number;
  readonly modified: number;
  facts?: SampleFacts | undefined;
  /** What was measured, by the names that `measureKey` gives. */
  measures: Record<string, MeasureResult>;
}

/** Whether a file is still in the state that something is remembered of. */
export function isSameState(one: Pick<FileStat, 'size' | 'modified'>, other: typeof one): boolean {
  return one.size === other.size && one.modified === other.modified;
}

const factsKey = `facts${measureVersions.facts}`;
const measureNames = Object.entries(measureVersions)
  .filter(([what]) => what !== 'facts')
  .map(([what, version]) => `${what}${version}`);
/** JSON has no numbers that are not finite. */
const oddNumber = '$number';

/**
 * A line of a cache file for a file name: name, size, time, facts and measures, parted by tabs, which JSON writes otherwise.
 */
export function cacheLine(name: string, { size, modified, facts, measures }: RememberedFile): string {
  const kept = facts ? { [factsKey]: facts } : {};
  return `${JSON.stringify(name)}\t${size}\t${modified}\t${jsonOf(kept)}\t${jsonOf(measures)}\n`;
}

function jsonOf(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'number' && !Number.isFinite(inner) ? { [oddNumber]: String(inner) } : inner,
  );
}

/** A line with its facts and measures as they are written. */
export interface CacheLine {
  name: string;
  size: number;
  modified: number;
  facts: string;
  measures: string;
}

/** The parts of a line without its end; `undefined` for a line that is none of ours. */
export function cacheLineParts(line: string): CacheLine | undefined {
  const [name, size, modified, facts, measures] = line.split('\t');
  if (name === undefined || facts === undefined || measures === undefined) return undefined;
  const read = parsed(name);
  return typeof read === 'string'
    ? { name: read, size: Number(size), modified: Number(modified), facts, measures }
    : undefined;
}

/** The facts of a line; `undefined` where another version found them. */
export function cacheLineFacts(facts: string): SampleFacts | undefined {
  const all = parsed(facts);
  return typeof all === 'object' && all !== null
    ? (all as Record<string, SampleFacts | undefined>)[factsKey]
    : undefined;
}

/** The measures of a line; results of measures that have another version by now are left out. */
export function cacheLineMeasures(measures: string): Record<string, MeasureResult> {
  const all = parsed(measures);
  if (typeof all !== 'object' || all === null) return {};
  const current: Record<string, MeasureResult> = {};
  for (const [key, result] of Object.entries(all as Record<string, MeasureResult>)) {
    if (measureNames.some((name) => key === name || key.startsWith(`${name} `))) current[key] = result;
  }
  return current;
}

/** A value with its odd numbers put in place; quicker than to have `JSON.parse` ask about each value. */
function withOddNumbers(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (oddNumber in value) return Number(value[oddNumber]);
  const fields = value as Record<string, unknown>;
  for (const [key, field] of Object.entries(fields)) {
    if (typeof field === 'object') fields[key] = withOddNumbers(field);
  }
  return value;
}

function parsed(json: string): unknown {
  try {
    const value: unknown = JSON.parse(json);
    return json.includes(oddNumber) ? withOddNumbers(value) : value;
  } catch {
    return undefined;
  }
}
