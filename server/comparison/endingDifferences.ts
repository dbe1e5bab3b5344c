import type { PlayableInstrument } from '../playing/playable/playableInstrument';
import type { Cause } from './cause';
import type { RegionPair } from './causes';
import { scopeSize } from './polyphonyScopes';
import type { ComparedSide } from './regionLikeness';
import { countedTogether, endingColumns } from './regionLikeness';
import { sameData } from './sameData';
import { spokenDifferences } from './spokenValues';

/** Opcodes that say which voices end because of others. */
const endingOpcode = /^(group|off_by|off_mode|off_time|polyphony|note_polyphony|note_selfmask)$/;

/** Whether two regions end other voices, or are ended by others, in ways that their texts tell apart. */
export function endOtherwise([a, b]: readonly [ComparedSide, ComparedSide], pair: RegionPair): boolean {
  const [one, other] = [a.playable, b.playable];
  return (
    endingColumns.some((name) => one[name][pair.a] !== other[name][pair.b]) ||
    !sameData(countedTogether(one, pair.a), countedTogether(other, pair.b))
  );
}

/** What two texts say otherwise of how voices of a region end because of others, where any can. */
export function endingDifferences(sides: readonly [ComparedSide, ComparedSide], pair: RegionPair): Cause[] {
  const [a, b] = sides;
  if (!endOtherwise(sides, pair)) return [];
  const isTouched = touches(a.playable, pair.a) || touches(b.playable, pair.b);
  if (!isTouched) return [];
  const spoken = spokenDifferences(a.spoken, b.spoken, pair);
  const causes = spoken
    .filter(({ opcode }) => endingOpcode.test(opcode))
    .map(({ opcode, message, a: ofA, b: ofB }) => causeWith(opcode, message, ofA, ofB));
  return causes.length > 0 ? causes : scopeDifference(sides, pair);
}

/** Where a bound on voices is the same and counts other regions together. */
function scopeDifference([a, b]: readonly [ComparedSide, ComparedSide], pair: RegionPair): Cause[] {
  const [one, other] = [scopeSize(a.playable, pair.a), scopeSize(b.playable, pair.b)];
  if (one === other) return [];
  const message = `polyphony counts ${one} regions together on the first side and ${other} on the second.`;
  const places = [a.spoken.of(pair.a).get('polyphony'), b.spoken.of(pair.b).get('polyphony')];
  return [causeWith('polyphony', message, ...places)];
}

function causeWith(opcode: string, message: string, a?: number, b?: number): Cause {
  return { kind: 'condition', opcode, message, ...(a !== undefined && { a }), ...(b !== undefined && { b }) };
}

/** Whether a region has to do with others that end it or that it ends. */
function touches(playable: PlayableInstrument, region: number): boolean {
  const { silencesOthers, offBy, polyphonyScope, notePolyphony } = playable;
  return (
    silencesOthers[region] === 1 ||
    offBy[region] !== 0 ||
    polyphonyScope[region] >= 0 ||
    notePolyphony[region] > 0
  );
}
