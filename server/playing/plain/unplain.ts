import type { AskedValues } from './askedValues';

/** What keeps a region from sounding when a key is struck and nothing else is done. */
export interface Unplain {
  /** The parameter that says so. */
  name: string;
  /** The parameter with its value, where that tells more. */
  said?: string;
  /** When it sounds, as the end of a sentence. */
  why: string;
}

const mostOfController = 127;

/** Triggers other than a struck key, by what they are. */
const otherTriggers: Readonly<Record<string, string>> = {
  release: 'when a key is let go',
  release_key: 'when a key is let go',
  first: 'for the first key alone',
  legato: 'for later keys alone',
};

/** Ranges of bend and pressure that a region can ask for, with what holds while nothing is moved. */
export const bendRanges: readonly (readonly [
  low: string,
  high: string,
  rest: number,
  lowest: number,
  highest: number,
])[] = [
  ['lobend', 'hibend', 0, -8192, 8191],
  ['lochanaft', 'hichanaft', 0, 0, 127],
  ['lopolyaft', 'hipolyaft', 0, 0, 127],
];

/** Whether something else than a struck key starts a region. */
export function startsOtherwise(values: AskedValues): Unplain | undefined {
  const trigger = values.word('trigger');
  const why = trigger === undefined ? undefined : otherTriggers[trigger];
  if (why !== undefined) return { name: 'trigger', said: `trigger=${trigger}`, why };
  const [started] = values.matching(/^(?:on|start)_(?:lo|hi)(?:hd)?cc\d+$/);
  return started && { name: started.name, why: 'when a controller is moved' };
}

/** Whether a region asks for other keys than the one that is struck. */
export function asksForKeys(values: AskedValues): Unplain | undefined {
  if (values.has('sw_down')) return { name: 'sw_down', why: 'while another key is held' };
  return values.has('sw_previous') ? { name: 'sw_previous', why: 'after a certain key' } : undefined;
}

/** Whether a region asks for bend or pressure that is not there while nothing is moved. */
export function asksForBend(values: AskedValues): Unplain | undefined {
  for (const [low, high, rest, lowest, highest] of bendRanges)
    if (rest < values.number(low, lowest) || values.number(high, highest) < rest)
      return {
        name: values.has(low) ? low : high,
        why: 'only while the channel is bent or pressed',
      };
  return undefined;
}

/** The controllers that a region asks for. */
export function askedControllers(values: AskedValues): Set<number> {
  return new Set(values.matching(/^(?:lo|hi)(?:hd)?cc(\d+)$/).map(({ found }) => Number(found[1])));
}

/** Between which values of a controller a region sounds. */
export function controllerRange(values: AskedValues, controller: number): [low: number, high: number] {
  const fine = (name: string, without: number) =>
    mostOfController * values.number(`${name}${controller}`, without / mostOfController);
  return [
    values.number(`locc${controller}`, Math.round(fine('lohdcc', 0))),
    values.number(`hicc${controller}`, Math.round(fine('hihdcc', mostOfController))),
  ];
}

/** Whether a region asks for a controller to stand elsewhere than it does at first. */
export function asksForController(
  values: AskedValues,
  controller: number,
  firstControllers: Float64Array,
): Unplain | undefined {
  const [low, high] = controllerRange(values, controller);
  const first = firstControllers[controller] ?? 0;
  if (low <= first && first <= high) return undefined;
  const names = ['locc', 'hicc', 'lohdcc', 'hihdcc'].map((start) => `${start}${controller}`);
  const name = names.find((one) => values.has(one)) ?? '';
  return { name, why: `only where controller ${controller} is moved` };
}
