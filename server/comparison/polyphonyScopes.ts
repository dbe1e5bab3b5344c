import type { PlayableInstrument } from '../playing/playable/playableInstrument';

/** The regions whose voices `polyphony` counts together with those of one, itself among them; none where it has no bound. */
export function regionsInScope(playable: PlayableInstrument, region: number): number[] {
  const { group, polyphonyScope, polyphonyScopes } = playable;
  const scope = polyphonyScope[region];
  if (scope < 0) return [];
  const { regions, number } = polyphonyScopes[scope];
  const found: number[] = [];
  for (let other = 0; other < playable.regionCount; other++)
    if (regions === 'group' ? group[other] === number : polyphonyScope[other] === scope) found.push(other);
  return found;
}

const sizes = new WeakMap<PlayableInstrument, Map<number, number>>();

/** How many regions are counted together with one; 0 where it has no bound. */
export function scopeSize(playable: PlayableInstrument, region: number): number {
  const scope = playable.polyphonyScope[region];
  if (scope < 0) return 0;
  let known = sizes.get(playable);
  if (!known) {
    known = new Map();
    sizes.set(playable, known);
  }
  let size = known.get(scope);
  if (size === undefined) {
    size = regionsInScope(playable, region).length;
    known.set(scope, size);
  }
  return size;
}
