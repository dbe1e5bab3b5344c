import { Generator, withinRange } from '../generators';
import { centsOfHertz, timecentsOfSeconds } from '../units';
import type { RegionParameters } from './regionParameters';
import type { ZoneDraft } from './zoneDraft';

/** An LFO of SFZ with what it moves in a SoundFont. */
interface Lfo {
  prefix: string;
  depth: string;
  generator: number;
  /** Units of the generator for one of the depth. */
  units: number;
}

const vibrato: Lfo = {
  prefix: 'pitchlfo',
  depth: 'pitchlfo_depth',
  generator: Generator.vibratoLfoToPitch,
  units: 1,
};

/** LFOs that share the second one of a SoundFont, the first that is used deciding its speed. */
const shared: readonly Lfo[] = [
  { prefix: 'amplfo', depth: 'amplfo_depth', generator: Generator.modulationLfoToVolume, units: 10 },
  { prefix: 'fillfo', depth: 'fillfo_depth', generator: Generator.modulationLfoToCutoff, units: 1 },
  { prefix: 'lfo1', depth: 'lfo1_pitch', generator: Generator.modulationLfoToPitch, units: 1 },
];

/** Puts the LFOs of a region into a zone: one for pitch, one for everything else. */
export function putLfos(values: RegionParameters, zone: ZoneDraft): void {
  if (isUsed(values, vibrato)) {
    putDepth(values, zone, vibrato);
    putSpeed(values, zone, vibrato, Generator.vibratoLfoDelay, Generator.vibratoLfoFrequency);
  } else useSpeed(values, vibrato);
  let deciding: Lfo | undefined;
  for (const lfo of shared) {
    if (!isUsed(values, lfo) || (lfo.prefix === 'fillfo' && !zone.hasFilter)) {
      useSpeed(values, lfo);
      continue;
    }
    if (!deciding) {
      deciding = lfo;
      putSpeed(values, zone, lfo, Generator.modulationLfoDelay, Generator.modulationLfoFrequency);
    } else if (!haveSameSpeed(values, deciding, lfo)) {
      values.tell(
        lfo.depth,
        'dropped',
        `Left out: a SoundFont has one LFO beside that of the pitch, and ${deciding.prefix} goes at another speed.`,
      );
      continue;
    }
    putDepth(values, zone, lfo);
    useSpeed(values, lfo);
  }
}

/** An LFO that stands still moves nothing. */
function isUsed(values: RegionParameters, { prefix, depth }: Lfo): boolean {
  const moves = values.number(depth, 0) !== 0 || values.matching(depthMoved(prefix)).length > 0;
  return moves && values.number(`${prefix}_freq`, 0) > 0;
}

function depthMoved(prefix: string): RegExp {
  return new RegExp(`^${prefix}_(?:depth|pitch)(?:_on)?(?:cc\\d+|chanaft|polyaft)$`);
}

function putDepth(values: RegionParameters, zone: ZoneDraft, { prefix, depth, generator, units }: Lfo): void {
  const value = Math.round(units * values.number(depth, 0));
  zone.generators.set(generator, withinRange(generator, value));
  if (value !== withinRange(generator, value))
    values.tell(
      depth,
      'approximated',
      'This depth is more than a SoundFont holds; the most it holds is written.',
    );
  else if (values.number(`${prefix}_wave`, Number.NaN) !== 0)
    values.tell(depth, 'approximated', 'The LFO of a SoundFont is a triangle.');
}

function putSpeed(
  values: RegionParameters,
  zone: ZoneDraft,
  { prefix }: Lfo,
  delay: number,
  frequency: number,
): void {
  const hertz = values.number(`${prefix}_freq`, 0);
  const cents = hertz > 0 ? centsOfHertz(hertz) : Number.NEGATIVE_INFINITY;
  zone.generators.set(frequency, withinRange(frequency, cents));
  zone.generators.set(delay, timecentsOfSeconds(values.number(`${prefix}_delay`, 0)));
  if (values.number(`${prefix}_fade`, 0) > 0)
    values.tell(`${prefix}_fade`, 'dropped', 'Left out: the LFO of a SoundFont starts at its full depth.');
}

function useSpeed(values: RegionParameters, { prefix }: Lfo): void {
  values.use(`${prefix}_freq`, `${prefix}_delay`, `${prefix}_wave`);
}

function haveSameSpeed(values: RegionParameters, one: Lfo, other: Lfo): boolean {
  return ['freq', 'delay'].every(
    (what) => values.number(`${one.prefix}_${what}`, 0) === values.number(`${other.prefix}_${what}`, 0),
  );
}
