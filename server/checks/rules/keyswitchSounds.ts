import type { Instrument } from '../../model/instrument';
import { noteNameOf } from '../../model/keys';
import type { ConditionSet } from '../../model/overlaps/conditionSets';
import type { Conditions } from '../../model/overlaps/conditions';
import { conditionsOf } from '../../model/overlaps/conditions';
import { Parameter } from '../../model/parameterNames';
import { parametersNamed, usedName } from '../facts/parameters/parameterUses';
import { rangeEndPlace } from '../facts/playedKeys';
import { regionTitle } from '../facts/regionText';
import type { CheckContext, Rule } from '../rule';

/** More keys than this that switch are notes that are played: legato written with the note before as a switch (our choice). */
const mostSwitches = 24;

/**
 * Finds regions that sound on a keyswitch although their keys reach beyond the keyswitches, no switch, controller or
 * other condition governs them. Silence, a zone on keyswitches alone and one over all keys are meant.
 */
export const keyswitchSounds: Rule = {
  code: 'keyswitch-sounds',
  severity: 'warning',
  finds: 'A keyswitch that also sounds, because a region without a keyswitch covers its key.',
  check(context, report) {
    const switches = switchesOf(context);
    if (switches.size === 0 || switches.size > mostSwitches) return;
    const { instrument } = context;
    const conditions = conditionsOf(instrument);
    const keys = [...switches.keys()];
    const plain: (boolean | undefined)[] = [];
    const seen = new Set<string>();
    for (const region of instrument.regions) {
      if (!isPlain(conditions, conditions.ofHeader[region], plain)) continue;
      const low = instrument.lowKey[region];
      const high = instrument.highKey[region];
      const sounding = keys.filter((key) => key >= low && key <= high).sort((a, b) => a - b);
      if (sounding.length === 0 || sounding.length === high - low + 1) continue;
      if (low === 0 && high === 127) continue;
      if (isSilent(instrument, region)) continue;
      const place = rangeEndPlace(
        instrument,
        region,
        sounding[0] === low ? Parameter.lokey : Parameter.hikey,
      );
      const id = `${place.source} ${place.start}`;
      if (seen.has(id)) continue;
      seen.add(id);
      const first = sounding[0];
      const key = `${first} (${noteNameOf(first)})`;
      const text =
        sounding.length > 1
          ? `Keys ${key} and ${sounding.length - 1} more choose an articulation, but they also play`
          : `Key ${key} chooses an articulation, but it also plays`;
      report({
        ...place,
        message: `${text} ${regionTitle(instrument, region)}. Narrow the keys of that region, or move the keyswitch.`,
        related: [
          {
            ...instrument.valueSpan(switches.get(first) as number),
            message: 'The keyswitch is set here.',
          },
        ],
      });
    }
  },
};

/** The keys of `sw_last`, each with a parameter that sets it. */
function switchesOf(context: CheckContext): Map<number, number> {
  const keys = new Map<number, number>();
  const last = usedName(context, 'sw_last');
  // What moves the keyswitches alone leaves open which keys they are.
  const isMoved = ['sw_note_offset', 'sw_octave_offset'].some((name) => usedName(context, name) >= 0);
  if (last < 0 || isMoved) return keys;
  const { instrument } = context;
  for (const parameter of parametersNamed(context, last)) {
    const { keyOffset } = instrument.control(instrument.headerOfParameter(parameter));
    const key = instrument.keyNumber(parameter) + keyOffset;
    if (key >= 0 && key <= 127) keys.set(key, parameter);
  }
  return keys;
}

function isPlain(conditions: Conditions, number: number, known: (boolean | undefined)[]): boolean {
  let plain = known[number];
  if (plain === undefined) {
    plain = hasNoCondition(conditions.set(number));
    known[number] = plain;
  }
  return plain;
}

function hasNoCondition({ switches, gates, lowRandom, highRandom }: ConditionSet): boolean {
  return (
    switches.size === 1 &&
    switches.get('trigger') === 'attack' &&
    gates.length === 0 &&
    lowRandom <= 0 &&
    highRandom >= 1
  );
}

function isSilent(instrument: Instrument, region: number): boolean {
  const sample = instrument.samplePath(region);
  if (sample === undefined || sample.toLowerCase() === '*silence') return true;
  const end = instrument.effective(region, Parameter.end);
  return end >= 0 && instrument.number(end) < 0;
}
