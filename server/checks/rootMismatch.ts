import type { Fix } from '../model/finding';
import { noteNameOf } from '../model/keys';
import { Parameter } from '../model/parameterNames';
import { nameOf } from '../model/paths';
import { fixOf } from './parameterFixes';
import type { PitchClaim } from './pitchClaims';
import { isTuned, pitchClaimsOf } from './pitchClaims';
import type { CheckContext, Rule } from './rule';

/** Deviations from here on are reported, in cents: half a semitone. */
const leastCents = 50;
/** Within this many cents a deviation is called by the whole semitones that it is close to. */
const closeCents = 30;
/** A pitch measured with less confidence says nothing of the root key. */
const surely = 0.8;
/** Bounds of the opcode for tuning. */
const mostTune = 100;

/** Finds samples that sound at another pitch than their root key and tuning say. */
export const rootMismatch: Rule = {
  code: 'root-mismatch',
  severity: 'warning',
  finds: 'The pitch measured in the sample is 50 cents or more from what root key and tuning claim.',
  check(context, report) {
    const { instrument } = context;
    const claims = pitchClaimsOf(context);
    if (!claims) return;
    const sure = claims.filter(({ pitch }) => pitch.confidence >= surely);
    if (!sure.some(isOff) || !isTuned(claims, surely)) return;
    const seen = new Set<string>();
    for (const claim of sure) {
      if (!isOff(claim)) continue;
      const { use, rootParameter, tuneParameter, rootKey, pitch, deviationCents } = claim;
      const key = `${rootParameter} ${tuneParameter} ${use.path}`;
      if (seen.has(key)) continue;
      seen.add(key);
      const measured = `key ${pitch.key} (${noteNameOf(pitch.key)})${centsText(pitch.cents)}`;
      const root = `root key ${rootKey} (${noteNameOf(rootKey)})`;
      const claimed = rootParameter < 0 ? `${root}, which is assumed as none is set` : `its ${root}`;
      report({
        ...instrument.valueSpan(rootParameter >= 0 ? rootParameter : use.parameter),
        message: `"${nameOf(use.path)}" sounds at ${measured}, ${distanceText(deviationCents)} ${claimed}. Set the root key or the tuning to what sounds, or use the sample that was meant.`,
        fixes: () => fixesOf(context, claim),
      });
    }
  },
};

function isOff({ deviationCents }: PitchClaim): boolean {
  return Math.abs(deviationCents) >= leastCents;
}

/** How far the sound lies from where it should: octaves and single semitones by name, anything else in cents. */
function distanceText(cents: number): string {
  const side = cents > 0 ? 'above' : 'below';
  const semitones = Math.round(Math.abs(cents) / 100);
  const isClose = Math.abs(Math.abs(cents) - 100 * semitones) <= closeCents;
  if (isClose && semitones % 12 === 0) {
    return semitones === 12 ? `an octave ${side}` : `${semitones / 12} octaves ${side}`;
  }
  if (isClose) return semitones === 1 ? `a semitone ${side}` : `${semitones} semitones ${side}`;
  return `${Math.abs(cents).toFixed(0)} cents ${side}`;
}

function centsText(cents: number): string {
  const whole = Math.round(cents);
  return whole === 0 ? '' : ` ${whole < 0 ? '−' : '+'}${Math.abs(whole)} cents`;
}

function fixesOf(context: CheckContext, claim: PitchClaim): Fix[] {
  const { rootKey, deviationCents, tuneCents } = claim;
  const fixes: Fix[] = [];
  const newRoot = rootKey + Math.round(deviationCents / 100);
  const rest = deviationCents - 100 * Math.round(deviationCents / 100);
  const named = `${newRoot} (${noteNameOf(newRoot)})`;
  const tuned = Math.round(tuneCents - rest);
  if (newRoot >= 0 && newRoot <= 127 && newRoot !== rootKey) {
    if (Math.abs(rest) <= 10) fixes.push(...setFix(context, claim, `Set the root key to ${named}`, newRoot));
    else if (Math.abs(tuned) <= mostTune) {
      const title = `Set the root key to ${named} and tune by ${tuned} cents`;
      fixes.push(...setFix(context, claim, title, newRoot, tuned));
    }
  }
  const sameRoot = Math.round(tuneCents - deviationCents);
  if (Math.abs(sameRoot) <= mostTune) {
    fixes.push(
      ...setFix(context, claim, `Keep the root key and tune by ${sameRoot} cents`, undefined, sameRoot),
    );
  }
  return fixes;
}

function setFix(
  { instrument, notation }: CheckContext,
  { region }: PitchClaim,
  title: string,
  root?: number,
  tune?: number,
): Fix[] {
  const edits = [];
  if (root !== undefined) {
    const value = String(root - instrument.control(region).keyOffset);
    const name = instrument.names.text(Parameter.pitch_keycenter);
    edits.push(...notation.edit(instrument, { kind: 'set', header: region, name, value }).edits);
  }
  if (tune !== undefined) {
    edits.push(
      ...notation.edit(instrument, { kind: 'set', header: region, name: 'tune', value: String(tune) }).edits,
    );
  }
  return fixOf(title, edits, false);
}
