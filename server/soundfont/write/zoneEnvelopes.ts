import { Generator } from '../generators';
import type { EnvelopeStages } from '../modulations';
import { modulationEnvelope, volumeEnvelope } from '../modulations';
import { centibelsOfGain, soundFontFallSeconds, timecentsOfSeconds } from '../units';
import type { RegionParameters } from './regionParameters';
import type { ZoneDraft } from './zoneDraft';
import { linear } from './zoneModulators';

type Prefix = 'ampeg' | 'fileg' | 'pitcheg';

const timeStages = ['delay', 'attack', 'hold', 'decay', 'release'] as const;
const allStages = [...timeStages, 'sustain'] as const;

/** Puts the envelopes of a region into a zone: that of the level, and one of those of filter and pitch. */
export function putEnvelopes(values: RegionParameters, zone: ZoneDraft): void {
  const delay = values.number('delay', 0);
  if (delay > 0)
    values.tell(
      'delay',
      'approximated',
      'The delay is that of the envelopes in a SoundFont; players differ in whether the sample waits as well.',
    );
  putEnvelope(values, zone, 'ampeg', volumeEnvelope, delay);
  const isUsed = (prefix: Prefix) =>
    values.number(`${prefix}_depth`, 0) !== 0 ||
    values.number(`${prefix}_vel2depth`, 0) !== 0 ||
    values.matching(new RegExp(`^${prefix}_depth_oncc\\d+$`)).length > 0;
  const used = (['fileg', 'pitcheg'] as const).filter(
    (prefix) => isUsed(prefix) && (prefix === 'pitcheg' || zone.hasFilter),
  );
  const [first, second] = used;
  if (first) putEnvelope(values, zone, first, modulationEnvelope, delay);
  for (const prefix of used) {
    if (prefix === second && !haveSameTimes(values)) {
      values.tell(
        'pitcheg_depth',
        'dropped',
        'Left out: a SoundFont has one envelope for filter and pitch, and these two differ in their times; that of the filter is written.',
      );
      continue;
    }
    const depth =
      prefix === 'fileg' ? Generator.modulationEnvelopeToCutoff : Generator.modulationEnvelopeToPitch;
    set(zone, depth, Math.round(values.number(`${prefix}_depth`, 0)));
  }
  for (const prefix of ['fileg', 'pitcheg'] as const)
    if (!used.includes(prefix) || prefix === second) useAll(values, prefix);
}

function useAll(values: RegionParameters, prefix: Prefix): void {
  values.use(
    ...allStages.map((stage) => `${prefix}_${stage}`),
    ...allStages.map((stage) => `${prefix}_vel2${stage}`),
  );
}

function haveSameTimes(values: RegionParameters): boolean {
  return allStages.every(
    (stage) => values.number(`fileg_${stage}`, 0) === values.number(`pitcheg_${stage}`, 0),
  );
}

function set(zone: ZoneDraft, generator: number, value: number): void {
  zone.generators.set(generator, value);
}

const mostAttenuation = 1440;
const mostSustain = 1000;

function putEnvelope(
  values: RegionParameters,
  zone: ZoneDraft,
  prefix: Prefix,
  envelope: EnvelopeStages,
  delay: number,
): void {
  const isVolume = prefix === 'ampeg';
  const sustain = values.number(`${prefix}_sustain`, isVolume ? 100 : 0);
  const seconds = (stage: (typeof timeStages)[number], written: number) => {
    if (stage === 'delay') return written + delay;
    if (isVolume) return stage === 'decay' || stage === 'release' ? soundFontFallSeconds(written) : written;
    // The format gives the time of the whole way down, SFZ text that from where the release starts.
    return stage === 'release' && sustain > 0 ? (written * 100) / sustain : written;
  };
  for (const stage of timeStages) {
    const name = `${prefix}_${stage}`;
    // A release that is not set is the shortest there is in both formats.
    const own = values.number(name, 0);
    const time = seconds(stage, own);
    set(zone, envelope[stage], timecentsOfSeconds(time));
    tellStage(values, prefix, stage, own);
    const moved = values.number(`${prefix}_vel2${stage}`, 0);
    if (moved === 0) continue;
    const change = timecentsOfSeconds(seconds(stage, Math.max(0, own + moved))) - timecentsOfSeconds(time);
    zone.modulators.push(linear({ kind: 'velocity' }, envelope[stage], change));
    values.tell(
      `${prefix}_vel2${stage}`,
      'approximated',
      'In a SoundFont velocity multiplies a time, in SFZ text it adds to it. The two agree at the lowest and highest velocity.',
    );
  }
  set(
    zone,
    envelope.sustain,
    isVolume
      ? Math.min(mostAttenuation, Math.max(0, Math.round(centibelsOfGain(sustain / 100))))
      : Math.max(0, Math.min(mostSustain, Math.round(1000 - 10 * sustain))),
  );
}

function tellStage(values: RegionParameters, prefix: Prefix, stage: string, own: number): void {
  if (own === 0) return;
  const name = `${prefix}_${stage}`;
  if (prefix === 'ampeg' && (stage === 'decay' || stage === 'release'))
    values.tell(
      name,
      'approximated',
      'The slope is kept: 100 dB in the time that a SoundFont gives, 90 dB in that of SFZ text.',
    );
  else if (prefix === 'ampeg' && stage === 'delay')
    values.tell(name, 'approximated', 'Players of SoundFonts differ in whether the sample waits as well.');
  else if (prefix !== 'ampeg' && stage === 'attack')
    values.tell(name, 'approximated', 'The attack of this envelope is convex in a SoundFont.');
}
