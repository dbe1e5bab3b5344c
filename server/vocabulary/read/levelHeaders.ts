import { HeaderKind } from '../../model/headerKinds';
import type { Vocabulary, VocabularyLevel } from '../vocabulary';

/** How the elements of a level stand in the instrument model. */
export interface LevelHeader {
  /** The kind of header; `undefined` for a level that is none because it carries nothing. */
  kind: HeaderKind | undefined;
  /** Levels around it whose values its header takes up as well, because the model has no further header for them. */
  repeats: readonly number[];
}

/**
 * The headers of the levels. The instrument is a global header if it carries anything; groups are groups, around them masters,
 * around them globals. More than these three are merged: each of the innermost takes up the values of those around it.
 */
export function levelHeaders({ levels }: Vocabulary): LevelHeader[] {
  const isInstrument = levels[0]?.is === 'instrument';
  const hasGlobal = isInstrument && carries(levels[0]);
  let groups = levels.flatMap(({ is }, level) => (is === 'group' ? [level] : []));
  const kinds = [HeaderKind.global, HeaderKind.master, HeaderKind.group].slice(hasGlobal ? 1 : 0);
  if (groups.length > kinds.length) {
    // Those that carry nothing need no header before those that do.
    groups = groups.filter((level) => carries(levels[level]));
  }
  const headers: LevelHeader[] = levels.map(({ is }) => ({
    kind: is === 'region' ? HeaderKind.region : undefined,
    repeats: [],
  }));
  if (hasGlobal) headers[0] = { kind: HeaderKind.global, repeats: [] };
  const outer = Math.min(groups.length, kinds.length);
  const merged: number[] = [];
  groups.forEach((level, at) => {
    const kind = at < outer ? kinds[kinds.length - outer + at] : HeaderKind.group;
    headers[level] = { kind, repeats: [...merged] };
    if (kind === HeaderKind.group) merged.push(level);
  });
  return headers;
}

function carries(level: VocabularyLevel | undefined): boolean {
  return (
    level !== undefined &&
    (level.parameters.length > 0 ||
      level.turns === true ||
      level.sets !== undefined ||
      level.rate !== undefined)
  );
}
