import { counted } from '../../model/wording/counted';
import { velocityToLevel } from '../defaultModulators';
import type { Modulator } from '../font';
import { Generator } from '../generators';
import { mayModulate, sourceBits } from '../modulatorSource';
import { crossfadeGain } from './crossfades';
import type { RegionParameters } from './regionParameters';
import type { VelocityGain } from './velocityLevel';
import { amountFor, curveGain, fitBands, trackedGain, usualAmount } from './velocityLevel';
import type { KeyBand, ZoneDraft } from './zoneDraft';

const levels = ['volume', 'group_volume', 'master_volume', 'global_volume'];
const amplitudes = ['amplitude', 'group_amplitude', 'master_amplitude', 'global_amplitude'];

/** The level of a region in dB, −Infinity for silence. */
export function regionLevel(values: RegionParameters): number {
  let decibels = 0;
  for (const name of levels) decibels += values.number(name, 0);
  for (const name of amplitudes) {
    const percent = values.number(name, 100);
    if (percent < 0)
      values.tell(
        name,
        'approximated',
        'A negative amplitude turns the sample upside down, which a SoundFont cannot; the level is kept.',
      );
    decibels += 20 * Math.log10(Math.abs(percent) / 100);
  }
  return decibels;
}

/** Pan, width, place between the sides, and what goes to effects. */
export function putPlace(values: RegionParameters, zone: ZoneDraft): void {
  zone.pan = Math.max(-100, Math.min(100, values.number('pan', 0)));
  zone.width = Math.max(-100, Math.min(100, values.number('width', 100)));
  zone.position = Math.max(-100, Math.min(100, values.number('position', 0)));
  for (const [name, generator] of [
    ['effect1', Generator.reverbSend],
    ['effect2', Generator.chorusSend],
  ] as const) {
    const percent = values.number(name, 0);
    if (percent === 0) continue;
    zone.generators.set(generator, Math.max(0, Math.min(1000, Math.round(10 * percent))));
    values.tell(name, 'approximated', 'What reverb and chorus sound like is up to the player.');
  }
}

/** How the level depends on the velocity, as one modulator or as bands of them. */
export function putVelocityLevel(values: RegionParameters, zone: ZoneDraft, low: number, high: number): void {
  const percent = values.number('amp_veltrack', 100);
  const points = velocityPoints(values);
  const fade = crossfadeGain(values, 'vel');
  if (points.size === 0 && !fade && percent >= 0) {
    const { amount, errorDb } = amountFor(percent);
    zone.velocities = [{ low, high, attenuation: 0, amount }];
    if (errorDb > 0.01)
      values.tell(
        'amp_veltrack',
        'approximated',
        `A SoundFont knows only powers of the velocity. From velocity 20 on the level is off by at most ${errorDb.toFixed(1)} dB.`,
      );
    return;
  }
  const gain = withFade(points.size > 0 ? scaledCurve(points, percent) : trackedGain(percent), fade);
  const { bands, errorDb } = fitBands(gain, low, high);
  zone.velocities = bands;
  const message = `Written in ${counted(bands.length, 'band')} of velocities, off by at most ${errorDb.toFixed(1)} dB.`;
  const isExact = bands.length <= 1 && errorDb < 0.1;
  if (isExact) return;
  for (const { name } of values.matching(/^(?:amp_velcurve_\d+|xf(?:in|out)_(?:lo|hi)vel)$/))
    values.tell(name, 'approximated', message);
  if (percent < 0) values.tell('amp_veltrack', 'approximated', message);
}

function velocityPoints(values: RegionParameters): Map<number, number> {
  const points = new Map<number, number>();
  for (const { name, found } of values.matching(/^amp_velcurve_(\d+)$/)) {
    const velocity = Number(found[1]);
    if (velocity <= 127) points.set(velocity, Math.max(0, Math.min(1, values.number(name, 0))));
  }
  return points;
}

function scaledCurve(points: ReadonlyMap<number, number>, percent: number): VelocityGain {
  const curve = curveGain(points);
  const track = Math.max(0, Math.min(100, percent)) / 100;
  return (velocity) => 1 - track + track * curve(velocity);
}

function withFade(gain: VelocityGain, fade: VelocityGain | undefined): VelocityGain {
  return fade ? (velocity) => gain(velocity) * fade(velocity) : gain;
}

/** Bands of keys that one region is split into at the most. */
const mostKeyBands = 16;
const usualCenter = 60;
const middleKey = 64;
/** Below this a key counts as silent. */
const silentDb = -96;

/** How the level depends on the key: by a modulator where that can be exact, else in bands. */
export function putKeyLevel(
  values: RegionParameters,
  zone: ZoneDraft,
  low: number,
  high: number,
  keyOffset: number,
): void {
  const perKey = values.number('amp_keytrack', 0);
  const written = values.key('amp_keycenter');
  const center = Number.isNaN(written) ? usualCenter : written;
  const fade = crossfadeGain(values, 'key', keyOffset);
  // A modulator starts at a value that must not be above the level itself: at key 0, or at key 64.
  const byModulator = !fade && (perKey > 0 || (perKey < 0 && center <= middleKey));
  if (byModulator) zone.keyTrack = { perKeyDb: perKey, center };
  if (!fade && (perKey === 0 || byModulator)) {
    zone.keys = [{ low, high, levelDb: 0 }];
    return;
  }
  const gain = (key: number) => perKey * (key - center) + (fade ? 20 * Math.log10(fade(key)) : 0);
  zone.keys = keyBands(gain, low, high);
  const message = `Written in ${counted(zone.keys.length, 'band')} of keys.`;
  for (const { name } of values.matching(/^(?:amp_keytrack|xf(?:in|out)_(?:lo|hi)key)$/))
    values.tell(name, 'approximated', message);
}

function keyBands(gain: (key: number) => number, low: number, high: number): KeyBand[] {
  const sounding: number[] = [];
  for (let key = low; key <= high; key++) if (gain(key) > silentDb) sounding.push(key);
  const width = Math.ceil(sounding.length / mostKeyBands);
  const bands: KeyBand[] = [];
  for (let at = 0; at < sounding.length; at += width) {
    const keys = sounding.slice(at, at + width);
    const [first, last] = [keys[0] as number, keys.at(-1) as number];
    // Where silent keys lie between them, the band ends before.
    const end = keys.findIndex((key, index) => key !== first + index);
    const stop = end < 0 ? last : (keys[end - 1] as number);
    bands.push({ low: first, high: stop, levelDb: (gain(first) + gain(stop)) / 2 });
    if (end > 0) at -= keys.length - end;
  }
  return bands;
}

/** Half a power of the velocity's curve is the amplitude itself. */
const amplitudeAmount = usualAmount / 2;

/**
 * Crossfades by controllers over their whole range, which are powers of the controller; others stay at what the controller
 * says before anything is played.
 */
export function putControllerFades(
  values: RegionParameters,
  zone: ZoneDraft,
  firstControllers: Float64Array,
): void {
  const isGain = values.word('xf_cccurve') === 'gain';
  const amount = isGain ? amplitudeAmount : amplitudeAmount / 2;
  const numbers = new Set(
    values.matching(/^xf(?:in|out)_(?:lo|hi)cc(\d+)$/).map(({ found }) => Number(found[1])),
  );
  for (const controller of numbers) {
    for (const way of ['in', 'out'] as const) {
      const names = [`xf${way}_locc${controller}`, `xf${way}_hicc${controller}`] as const;
      if (!names.some((name) => values.has(name))) continue;
      const [low, high] = names.map((name) => values.number(name, way === 'in' ? 0 : 127)) as [
        number,
        number,
      ];
      if (low <= 0 && high >= 127 && mayModulate(controller)) {
        zone.modulators.push(fadeModulator(controller, way === 'in', amount));
        continue;
      }
      const at = Math.max(
        0,
        Math.min(1, ((firstControllers[controller] ?? 0) - low) / Math.max(1, high - low)),
      );
      const part = way === 'in' ? at : 1 - at;
      zone.levelDb += 20 * Math.log10(isGain ? part : Math.sqrt(part));
      for (const name of names)
        values.tell(
          name,
          'dropped',
          'Left out: this crossfade; a SoundFont fades only over the whole range of a controller. The level is that before the controller is moved.',
        );
    }
  }
}

function fadeModulator(number: number, isFalling: boolean, amount: number): Modulator {
  return {
    source: sourceBits({
      mover: { kind: 'controller', number },
      isFalling,
      isBipolar: false,
      curve: 'concave',
    }),
    destination: Generator.attenuation,
    amount,
    amountSource: 0,
    transform: 0,
  };
}

/** The modulator from velocity to level with an amount of its own. */
export function velocityModulator(amount: number): Modulator {
  return { ...velocityToLevel, amount };
}
