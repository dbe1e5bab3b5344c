import { joinPath } from '../../model/paths';
import { Generator, withinRange } from '../generators';
import { admit } from './admission';
import type { RegionParameters } from './regionParameters';
import type { KnownSample } from './sampleCatalogue';
import type { ZoneDraft } from './zoneDraft';
import { putEnvelopes } from './zoneEnvelopes';
import { putFilter } from './zoneFilter';
import { putControllerFades, putKeyLevel, putPlace, putVelocityLevel, regionLevel } from './zoneLevel';
import { putLfos } from './zoneLfos';
import { putModulators } from './zoneModulators';

/** What is known where a region is planned. */
export interface PlanContext {
  /** What the instrument is called. */
  name: string;
  /** The folder that sample paths start from. */
  folder: string;
  /** What is known of a sample by its absolute path; `undefined` where it cannot be read. */
  sample(path: string): KnownSample | undefined;
  firstControllers: Float64Array;
  /** The number of a class of regions that silence one another. */
  classOf(group: number): number | undefined;
}

/** Plans the zones of a region; `undefined` where it does not come into a SoundFont, which is noted. */
export function planRegion(values: RegionParameters, context: PlanContext): ZoneDraft | undefined {
  const { instrument, region, account } = values;
  const leaveOut = (message: string) => {
    account.tellRegion(region, 'dropped', message);
    return undefined;
  };
  values.use('sample', 'lokey', 'hikey', 'lovel', 'hivel');
  useLabels(values, context);
  const low = instrument.lowKey[region] as number;
  const high = instrument.highKey[region] as number;
  const lowVelocity = Math.max(1, instrument.lowVelocity[region] as number);
  const highVelocity = instrument.highVelocity[region] as number;
  if (low < 0 || high < low || highVelocity < lowVelocity)
    return leaveOut('Left out: a region that no key and velocity starts.');
  const path = instrument.samplePath(region);
  if (path === undefined || path === '*silence') return leaveOut('Left out: a region without a sample.');
  if (path.startsWith('*'))
    return leaveOut(`Left out: a region of the generator ${path}; a SoundFont plays only samples.`);
  const absolute = joinPath(context.folder, path);
  const sample = context.sample(absolute);
  if (!sample) return leaveOut(`Left out: a region whose sample cannot be read: ${path}.`);
  if (values.number('end', 0) < 0) return leaveOut('Left out: a region that is switched off by its end.');
  const zone: ZoneDraft = {
    region,
    keys: [],
    velocities: [],
    generators: new Map(),
    modulators: [],
    hasFilter: false,
    levelDb: regionLevel(values),
    keyTrack: undefined,
    rootKey: 60,
    cents: 0,
    sample: { path: absolute, offset: 0, end: undefined, loop: undefined, mode: 'none' },
    pan: 0,
    width: 100,
    position: 0,
  };
  if (!admit(values, context.firstControllers, zone.modulators)) return undefined;
  putPitch(values, zone, sample);
  putFilter(values, zone);
  putEnvelopes(values, zone);
  putPlayback(values, zone, sample);
  putLfos(values, zone);
  putPlace(values, zone);
  putModulators(values, zone);
  putClass(values, zone, context);
  putControllerFades(values, zone, context.firstControllers);
  putVelocityLevel(values, zone, lowVelocity, highVelocity);
  putKeyLevel(values, zone, low, high, instrument.control(region).keyOffset);
  account.tellUnused(values.parameters());
  const isSilent =
    zone.levelDb === Number.NEGATIVE_INFINITY || zone.velocities.length === 0 || zone.keys.length === 0;
  return isSilent ? leaveOut('Left out: a region that is silent.') : zone;
}

/** Labels become the names of presets and of instruments. */
function useLabels(values: RegionParameters, { name }: PlanContext): void {
  const inner = ['group_label', 'master_label', 'global_label'].find((label) => values.has(label));
  if (inner) values.use(inner);
  if (values.word('global_label') !== name.toLowerCase() && inner !== 'global_label')
    values.tell('global_label', 'dropped', 'Left out: the preset has the name of its file.');
}

const centsInSemitone = 100;
const mostScale = 1200;

function putPitch(values: RegionParameters, zone: ZoneDraft, sample: KnownSample): void {
  const { instrument, region } = values;
  const fromFile = values.word('pitch_keycenter') === 'sample';
  zone.rootKey = fromFile ? (sample.rootKey ?? 60) : instrument.rootKey(region);
  if (fromFile && sample.rootKey === undefined)
    values.tell('pitch_keycenter', 'assumed', 'The sample does not say its root key; 60 is taken.');
  let cents = centsInSemitone * values.number('transpose', 0);
  for (const name of ['tune', 'group_tune', 'master_tune', 'global_tune']) cents += values.number(name, 0);
  const scale = values.number('pitch_keytrack', 100);
  if (scale < 0 || scale > mostScale || !Number.isInteger(scale))
    values.tell(
      'pitch_keytrack',
      'approximated',
      'A SoundFont holds whole cents per key, from 0 to 1200. The nearest value is written.',
    );
  zone.generators.set(Generator.scaleTuning, withinRange(Generator.scaleTuning, Math.round(scale)));
  if (!Number.isInteger(cents)) values.tell('tune', 'approximated', 'A SoundFont tunes only in whole cents.');
  zone.cents = Math.round(cents);
  const coarse = Math.trunc(zone.cents / centsInSemitone);
  zone.generators.set(Generator.coarseTune, withinRange(Generator.coarseTune, coarse));
  zone.generators.set(Generator.fineTune, zone.cents - centsInSemitone * coarse);
}

/** So slow a release that a sample plays on to its end. */
const endlessRelease = 8000;

function putPlayback(values: RegionParameters, zone: ZoneDraft, sample: KnownSample): void {
  const { frames, loop: fileLoop } = sample;
  const mode = values.has('count')
    ? 'one_shot'
    : (values.word('loop_mode') ?? (fileLoop ? 'loop_continuous' : 'no_loop'));
  const offset = Math.max(0, Math.trunc(values.number('offset', 0)));
  const end = values.number('end', frames - 1);
  const last = Math.min(end, frames - 1);
  zone.sample.offset = Math.min(offset, Math.max(0, frames - 1));
  zone.sample.end = last < frames - 1 ? last : undefined;
  if (mode === 'one_shot') {
    zone.generators.set(Generator.volumeRelease, endlessRelease);
    for (const name of ['loop_mode', 'count'])
      values.tell(
        name,
        'approximated',
        'A SoundFont knows no one-shot: a very slow release stands for it, which loses 1 dB a second after the key is let go.',
      );
  }
  if (mode !== 'loop_continuous' && mode !== 'loop_sustain') {
    values.use('loop_start', 'loop_end');
    return;
  }
  const start = values.number('loop_start', fileLoop?.start ?? 0);
  const stop = values.number('loop_end', fileLoop?.end ?? frames - 1);
  const isWhole = start >= 0 && stop > start && stop <= last;
  if (!isWhole) {
    const message =
      'Left out: the loop; it does not lie between the first and the last frame that are played.';
    const named = ['loop_start', 'loop_end', 'loop_mode'].find((name) => values.has(name));
    if (named) values.tell(named, 'dropped', message);
    else values.account.tellRegion(values.region, 'dropped', message);
    return;
  }
  zone.sample.loop = { start: Math.trunc(start), end: Math.trunc(stop) };
  zone.sample.mode = mode === 'loop_sustain' ? 'untilRelease' : 'loop';
  if (zone.sample.end !== undefined && zone.sample.mode === 'loop') zone.sample.end = undefined;
}

function putClass(values: RegionParameters, zone: ZoneDraft, { classOf }: PlanContext): void {
  const group = values.number('group', 0);
  const offBy = values.number('off_by', 0);
  if (offBy === 0) return;
  if (group !== offBy) {
    values.tell(
      'off_by',
      'dropped',
      'Left out: in a SoundFont regions silence each other or not at all, but this one is only silenced by others.',
    );
    return;
  }
  const number = classOf(group);
  if (number === undefined)
    values.tell(
      'off_by',
      'dropped',
      'Left out: a SoundFont has 127 classes of regions that silence one another, and all are taken.',
    );
  else zone.generators.set(Generator.exclusiveClass, number);
}
