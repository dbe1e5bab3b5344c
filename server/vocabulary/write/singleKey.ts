import { keyNearRoot } from '../../model/keys';
import type { Accounts } from './writeAccounts';
import type { SourceValue } from './writeOwnValues';
import type { LevelPlaces } from './writePlaces';

/** The names of the one place that a level has for a key, where it has none for the ends of a range. */
function singleKeyPlace({ byName }: LevelPlaces): readonly string[] | undefined {
  const [low, ...otherLows] = byName.get('lokey') ?? [];
  const [high, ...otherHighs] = byName.get('hikey') ?? [];
  if (!low && !high) return byName.has('key') ? ['key'] : undefined;
  if (!low || !high || otherLows.length > 0 || otherHighs.length > 0 || byName.has('key')) return undefined;
  return low.slot === high.slot && low.parameter.part === undefined ? ['lokey', 'hikey'] : undefined;
}

/**
 * Values with a key range as one key, where a level has a place for no more: without any the region would play on all keys. It is the root
 * key, or the key of the range that is nearest to it, so that this one sounds as before; the others fall silent, which is noted.
 */
export function withSingleKey(
  level: LevelPlaces,
  values: ReadonlyMap<string, SourceValue>,
  rootInForce: () => string | undefined,
  accounts: Accounts,
): ReadonlyMap<string, SourceValue> {
  const [low, high] = [values.get('lokey'), values.get('hikey')];
  const source = low ?? high;
  const names = source && singleKeyPlace(level);
  if (!source || !names) return values;
  const [from, to] = [Number(low?.value ?? '0'), Number(high?.value ?? '127')];
  if (!(from >= 0 && to <= 127 && from < to)) return values;
  const root = values.get('pitch_keycenter');
  const rootKey = Number(root?.value ?? rootInForce() ?? '60');
  const key = String(keyNearRoot(from, to, rootKey));
  const changed = new Map(values);
  changed.delete('lokey');
  changed.delete('hikey');
  if (names.includes('key') && root?.value === key && !level.byName.has('pitch_keycenter')) {
    changed.delete('pitch_keycenter');
    accounts.keep(root.parameter);
  }
  for (const name of names)
    changed.set(name, {
      name,
      value: key,
      parameter: (name === 'hikey' ? high?.parameter : low?.parameter) ?? source.parameter,
    });
  const message = `Keys ${from} to ${to} become key ${key} alone, and the others are silent: <${level.level.element}> has a place for one key. Make one region for each key to play them all.`;
  for (const one of [low, high]) if (one) accounts.note(one.parameter, 'dropped', message, 'keys');
  return changed;
}
