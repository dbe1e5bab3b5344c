import type { Profiler } from 'node:inspector';
import { Session } from 'node:inspector';

/** How often each function, or the block in it that ran most often, has run; by file, name and offset. */
export type Work = Map<string, number>;

const session = new Session();
session.connect();
session.post('Profiler.enable');
session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });

/** The counts since they were taken last, of the project's own functions. */
function takeCounts(): Work {
  const work: Work = new Map();
  session.post('Profiler.takePreciseCoverage', (fault, { result }) => {
    if (fault) throw fault;
    for (const script of result) if (script.url.includes('/server/')) addCounts(work, script);
  });
  return work;
}

function addCounts(work: Work, { url, functions }: Profiler.ScriptCoverage): void {
  const file = url.slice(url.indexOf('/server/') + 1);
  for (const { functionName, ranges } of functions) {
    const count = Math.max(...ranges.map((range) => range.count));
    if (count > 0) work.set(`${file} ${functionName} at ${ranges[0]?.startOffset}`, count);
  }
}

/** What runs in the engine itself and takes longer the longer its text or list is, as called by the project's functions. */
let inEngine = 0;
type Method = (this: unknown, ...args: unknown[]) => unknown;

/** Has a method of the engine count what it looks at while work is counted. */
function counted(prototype: object, name: string, cost: (on: never, args: never, result: never) => number) {
  const table = prototype as Record<string, Method>;
  const original = table[name] as Method;
  const counting: Method = function (...args) {
    const result = original.apply(this, args);
    inEngine += Math.max(0, cost(this as never, args as never, result as never) || 0);
    return result;
  };
  return {
    begin: () =>
      Object.defineProperty(prototype, name, { value: counting, configurable: true, writable: true }),
    end: () =>
      Object.defineProperty(prototype, name, { value: original, configurable: true, writable: true }),
  };
}

type Found = (text: string, args: [string, number?], at: number) => number;
const forwards: Found = (text, [, from = 0], at) => (at < 0 ? text.length : at) - from;
const length = ({ length: all }: { length: number }) => all;
const ofResult = (_on: unknown, _args: unknown, result: { length: number } | null) => result?.length ?? 0;
const backwards = (text: string, [, from = text.length]: [string, number?], at: number) =>
  Math.min(text.length, from) - Math.max(0, at);
const filled = (list: { length: number }, [, from = 0, to = list.length]: [number, number?, number?]) =>
  to - from;
const typed = Object.getPrototypeOf(Uint8Array.prototype) as object;
const methods = [
  counted(String.prototype, 'indexOf', forwards),
  counted(String.prototype, 'includes', length),
  counted(String.prototype, 'lastIndexOf', backwards),
  ...['split', 'replace', 'replaceAll', 'match', 'toLowerCase'].map((name) =>
    counted(String.prototype, name, length),
  ),
  ...['indexOf', 'includes', 'shift', 'unshift', 'splice', 'sort', 'join', 'concat'].map((name) =>
    counted(Array.prototype, name, length),
  ),
  counted(Array.prototype, 'slice', ofResult),
  counted(typed, 'fill', filled),
  ...['slice', 'copyWithin', 'sort', 'indexOf'].map((name) => counted(typed, name, length)),
];

/** Forgets what has run so far: taking counts costs as much as much of the work that is counted. */
export function forgetWork(): void {
  takeCounts();
}

/**
 * What some work makes the project's functions do, and under `in the engine` what the engine does for them. What else has run since
 * work was forgotten or counted last is counted with it.
 */
export async function workOf(run: () => unknown): Promise<Work> {
  inEngine = 0;
  for (const method of methods) method.begin();
  try {
    await run();
  } finally {
    for (const method of methods) method.end();
  }
  const work = takeCounts();
  work.set('in the engine', inEngine);
  return work;
}

/**
 * The functions that do more than `most` times as much in one work as in another, the worst first. What did less than
 * `least` before counts as that much.
 */
export function growthOf(small: Work, large: Work, most: number, least: number): string[] {
  return [...large]
    .map(([name, count]) => ({ name, count, times: count / Math.max(least, small.get(name) ?? 0) }))
    .filter(({ times }) => times > most)
    .sort((a, b) => b.count - a.count)
    .map(
      ({ name, count, times }) =>
        `${name}: ${small.get(name)} became ${count}, ${times.toFixed(1)} times as much`,
    );
}
