import type { Fix, TextEdit } from '../../../model/finding';
import { noteNameOf } from '../../../model/keys';
import { counted } from '../../../model/wording/counted';
import { closeCents } from '../../../model/wording/pitchDistance';
import type { CheckContext } from '../../rule';
import { fixOfParts, ofKind, rangeEdits } from '../parameters/parameterFixes';
import type { PitchClaim } from './pitchClaims';

/** Bounds of the opcode for tuning (public documentation of the open SFZ format, tune). */
const mostTune = 100;
/** What is left of a deviation once the root key is set, in cents, that is not worth tuning (our choice). */
const leastTune = 10;

/**
 * Fixes of regions that play one sample with the same root key and tuning: another root key, with the rest tuned away, or tuning alone
 * where that is less than a semitone.
 */
export function pitchFixes(context: CheckContext, claims: readonly PitchClaim[]): Fix[] {
  const [claim] = claims;
  if (!claim) return [];
  const { rootKey, deviationCents, tuneCents } = claim;
  const where = claims.length === 1 ? '' : ` in ${counted(claims.length, 'region')}`;
  const setRoots = (root: number) => claims.map((one) => rootEdits(context, one, root));
  const setTunes = (tune: number) => claims.map((one) => tuneEdits(context, one, tune));
  const newRoot = rootKey + Math.round(deviationCents / 100);
  const rest = deviationCents - 100 * Math.round(deviationCents / 100);
  const named = `${newRoot} (${noteNameOf(newRoot)})`;
  const tuned = Math.round(tuneCents - rest);
  const rooted: Fix[] = [];
  if (newRoot >= 0 && newRoot <= 127 && newRoot !== rootKey) {
    if (Math.abs(rest) <= leastTune) {
      rooted.push(
        ...ofKind(
          'Set root keys to the measured pitch',
          fixOfParts(`Set the root key to ${named}${where}`, setRoots(newRoot), false),
        ),
      );
    } else if (Math.abs(tuned) <= mostTune) {
      const parts = [...setRoots(newRoot), ...setTunes(tuned)];
      const title = `Set the root key to ${named} and tune by ${counted(tuned, 'cent')}${where}`;
      rooted.push(
        ...ofKind('Set root keys and tuning to the measured pitch', fixOfParts(title, parts, false)),
      );
    }
  }
  const away = Math.abs(deviationCents);
  const sameRoot = Math.round(tuneCents - deviationCents);
  if (away >= 100 || Math.abs(sameRoot) > mostTune) return rooted;
  const title = `Keep the root key and tune by ${counted(sameRoot, 'cent')}${where}`;
  const kept = ofKind('Keep root keys and tune', fixOfParts(title, setTunes(sameRoot), false));
  return away < 100 - closeCents ? [...kept, ...rooted] : [...rooted, ...kept];
}

/** A fix of many regions that are off by the same: all root keys moved by semitones, or all tuned where it is less. */
export function commonPitchFixes(
  context: CheckContext,
  claims: readonly PitchClaim[],
  deviationCents: number,
): Fix[] {
  const regions = counted(claims.length, 'region');
  const cents = Math.round(deviationCents);
  if (Math.abs(cents) < 100 - closeCents) {
    if (claims.some(({ tuneCents }) => Math.abs(tuneCents - cents) > mostTune)) return [];
    const parts = claims.map((claim) => tuneEdits(context, claim, Math.round(claim.tuneCents - cents)));
    return fixOfParts(
      `Tune ${regions} ${counted(Math.abs(cents), 'cent')} ${cents > 0 ? 'lower' : 'higher'}`,
      parts,
      false,
    );
  }
  const semitones = Math.round(cents / 100);
  const isPossible = ({ rootKey }: PitchClaim) => rootKey + semitones >= 0 && rootKey + semitones <= 127;
  if (!claims.every(isPossible)) return [];
  const parts = claims.map((claim) => rootEdits(context, claim, claim.rootKey + semitones));
  const side = semitones > 0 ? 'higher' : 'lower';
  return fixOfParts(
    `Move the root keys of ${regions} ${counted(Math.abs(semitones), 'semitone')} ${side}`,
    parts,
    false,
  );
}

function rootEdits(context: CheckContext, { region }: PitchClaim, root: number): TextEdit[] {
  return rangeEdits(context, region, 'pitch_keycenter', root - context.instrument.control(region).keyOffset);
}

function tuneEdits({ instrument, notation }: CheckContext, { region }: PitchClaim, tune: number): TextEdit[] {
  return notation.edit(instrument, { kind: 'set', header: region, name: 'tune', value: String(tune) }).edits;
}
