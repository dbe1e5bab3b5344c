import type { FileStat } from '../model/files';
import type { SampleFacts } from '../model/samples';
import type { MeasureResult } from './measureRequest';
import { measureVersions } from './measureRequest';

/** What is remembered of a sample file in one state of it. */
export interface RememberedFile {
  /** Bytes, and the last change in milliseconds since 1970: the state that all else is about. */
  readonly size: number;
  readonly modified: number;
  facts?: SampleFacts;
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
 * A line of a cache file for a file name: name, size, time and the rest, parted by tabs, which JSON writes otherwise.
 */
export function cacheLine(name: string, { size, modified, facts, measures }: RememberedFile): string {
  const kept = { ...(facts && { [factsKey]: facts }), ...measures };
  const json = JSON.stringify(kept, (_key, value: unknown) =>
    typeof value === 'number' && !Number.isFinite(value) ? { [oddNumber]: String(value) } : value,
  );
  return `${JSON.stringify(name)}\t${size}\t${modified}\t${json}\n`;
}

/** The name and state at the start of a line, and the rest of it unread; `undefined` for a line that is none of ours. */
export function cacheLineHead(
  line: string,
): { name: string; size: number; modified: number; rest: string } | undefined {
  const [name, size, modified, rest] = line.split('\t');
  if (name === undefined || rest === undefined) return undefined;
  const read = parsed(name);
  return typeof read === 'string'
    ? { name: read, size: Number(size), modified: Number(modified), rest }
    : undefined;
}

/** What the rest of a line tells; results of measures that have another version by now are left out. */
export function cacheLineRest(rest: string): Pick<RememberedFile, 'facts' | 'measures'> {
  const all = parsed(rest);
  if (typeof all !== 'object' || all === null) return { measures: {} };
  const { [factsKey]: facts, ...others } = all as Record<string, unknown>;
  const current = Object.entries(others).filter(([key]) =>
    measureNames.some((name) => key === name || key.startsWith(`${name} `)),
  );
  return {
    ...(facts !== undefined && { facts: facts as SampleFacts }),
    measures: Object.fromEntries(current) as Record<string, MeasureResult>,
  };
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
