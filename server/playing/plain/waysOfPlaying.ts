import type { Instrument } from '../../model/instrument';
import { noteNameOf } from '../../model/keys';
import type { AskedValues } from './askedValues';

/** One way of playing an instrument: what was pressed and played before. */
export interface Variant {
  /** What it is called beside the instrument; empty where there is one way only. */
  label: string;
  /** The keyswitch that was pressed last; −1 where there are none. */
  keyswitch: number;
  /** How many strikes came before: the turn of round robins. */
  turn: number;
  /** The random number drawn. */
  random: number;
}

/** What to do with ways of playing that a target cannot choose between: each comes into one of its own, or the first alone is kept. */
export interface VariantChoice {
  keyswitches: 'presets' | 'first';
  takes: 'presets' | 'first';
}

/** Turns of round robins that are told apart at the most. */
const mostTakes = 32;

/** The ways of playing an instrument, the usual one first. */
export function variantsOf(
  instrument: Instrument,
  regions: readonly AskedValues[],
  choice: VariantChoice,
): Variant[] {
  const switches = keyswitchesOf(instrument, regions);
  const chosen = choice.keyswitches === 'first' ? switches.slice(0, 1) : switches;
  const takes = choice.takes === 'first' ? 1 : takesOf(regions);
  const variants: Variant[] = [];
  for (const { key, label } of chosen)
    for (let turn = 0; turn < takes; turn++) {
      const parts = [chosen.length > 1 ? label : '', takes > 1 ? `take ${turn + 1}` : ''];
      variants.push({
        label: parts.filter((part) => part !== '').join(' '),
        keyswitch: key,
        turn,
        random: takes > 1 ? (turn + 0.5) / takes : 0,
      });
    }
  return variants;
}

interface Keyswitch {
  key: number;
  label: string;
}

/** The keyswitches of an instrument, the one that holds at first in front; one of −1 where there are none. */
function keyswitchesOf(instrument: Instrument, regions: readonly AskedValues[]): Keyswitch[] {
  const found = new Map<number, Keyswitch>();
  let first = Number.NaN;
  for (const values of regions) {
    const key = switchKey(values);
    const byDefault = values.key('sw_default');
    if (Number.isNaN(first)) first = byDefault;
    if (Number.isNaN(key) || found.has(key)) continue;
    const label = values.parameter('sw_label');
    found.set(key, { key, label: label < 0 ? noteNameOf(key) : instrument.valueText(label) });
  }
  if (found.size === 0) return [{ key: -1, label: '' }];
  const sorted = [...found.values()].sort((a, b) => a.key - b.key);
  if (!found.has(first) && soundWithoutSwitch(regions))
    return [{ key: Number.isNaN(first) ? -1 : first, label: 'no keyswitch' }, ...sorted];
  return [...sorted.filter(({ key }) => key === first), ...sorted.filter(({ key }) => key !== first)];
}

/** Whether regions that ask for no keyswitch play most of the keys of those that do: these are then silent until one is pressed. */
function soundWithoutSwitch(regions: readonly AskedValues[]): boolean {
  const switched = regions.filter((values) => !Number.isNaN(switchKey(values)));
  const others = regions.filter((values) => Number.isNaN(switchKey(values))).map(keysOf);
  const covered = switched.filter((values) => {
    const [low, high] = keysOf(values);
    return others.some(([from, to]) => from <= high && low <= to);
  });
  return covered.length * 2 > switched.length;
}

function keysOf(values: AskedValues): readonly [low: number, high: number] {
  const [low, high, key] = [values.key('lokey'), values.key('hikey'), values.key('key')];
  const or = (own: number, otherwise: number) => (Number.isNaN(own) ? otherwise : own);
  return [or(low, or(key, 0)), or(high, or(key, 127))];
}

/** The keyswitch after which a region sounds; NaN where it asks for none. */
function switchKey(values: AskedValues): number {
  const last = values.key('sw_last');
  return Number.isNaN(last) ? values.key('sw_lolast') : last;
}

function takesOf(regions: readonly AskedValues[]): number {
  let takes = 1;
  const starts = new Set<number>();
  for (const values of regions) {
    takes = Math.max(takes, values.number('seq_length', 1));
    starts.add(values.number('lorand', 0));
  }
  return Math.min(mostTakes, Math.max(takes, starts.size));
}

/** Whether a region sounds in a way of playing. */
export function soundsIn(values: AskedValues, { keyswitch, turn, random }: Variant): boolean {
  const key = switchKey(values);
  const last = values.key('sw_hilast');
  if (!Number.isNaN(key) && !(keyswitch >= key && keyswitch <= (Number.isNaN(last) ? key : last)))
    return false;
  const length = Math.max(1, values.number('seq_length', 1));
  if ((turn % length) + 1 !== values.number('seq_position', 1)) return false;
  return (
    random >= values.number('lorand', 0) &&
    (random < values.number('hirand', 1) || values.number('hirand', 1) >= 1)
  );
}
