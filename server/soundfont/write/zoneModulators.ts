import type { Modulator } from '../font';
import { Generator, generatorFacts } from '../generators';
import type { Modulation } from '../modulations';
import { modulations, usualCenterKey } from '../modulations';
import type { Mover } from '../modulatorSource';
import { mayModulate, sourceBits } from '../modulatorSource';
import type { RegionParameters } from './regionParameters';
import type { ZoneDraft } from './zoneDraft';

/** What a source of 7 bits is divided by, and the most that it reaches: the formats differ by this much. */
const steps = 128;
const most = 127;

/** Generators that do nothing to a sample without a filter. */
const ofFilter: ReadonlySet<number> = new Set([
  Generator.filterCutoff,
  Generator.filterResonance,
  Generator.modulationLfoToCutoff,
  Generator.modulationEnvelopeToCutoff,
]);

/** Puts what opcodes move in a straight line into a zone as modulators. Tracking of level by keys is left to the level. */
export function putModulators(values: RegionParameters, zone: ZoneDraft): void {
  for (const modulation of modulations) {
    const { generator } = modulation;
    if (generator === Generator.coarseTune || (ofFilter.has(generator) && !zone.hasFilter)) continue;
    putNamed(values, zone, modulation, modulation.velocity, { kind: 'velocity' });
    putNamed(values, zone, modulation, modulation.pressure, { kind: 'pressure' });
    putNamed(values, zone, modulation, modulation.keyPressure, { kind: 'keyPressure' });
    if (modulation.controller !== undefined) putControllers(values, zone, modulation, modulation.controller);
    if (modulation.key && modulation.generator !== Generator.attenuation)
      putKeyTrack(values, zone, modulation, modulation.key);
  }
}

function putNamed(
  values: RegionParameters,
  zone: ZoneDraft,
  { generator, unitsPerOpcode }: Modulation,
  name: string | undefined,
  mover: Mover,
): void {
  if (name === undefined) return;
  const depth = values.number(name, 0) * unitsPerOpcode;
  if (depth !== 0) zone.modulators.push(linear(mover, generator, depth));
}

function putControllers(
  values: RegionParameters,
  zone: ZoneDraft,
  modulation: Modulation,
  start: string,
): void {
  for (const { name, found } of values.matching(new RegExp(`^${start}(\\d+)$`))) {
    const number = Number(found[1]);
    if (mayModulate(number)) {
      putNamed(values, zone, modulation, name, { kind: 'controller', number });
      const shape = `${start.replace(/_?(?:on)?cc$/, '')}_curvecc${number}`;
      if (values.number(shape, 0) !== 0)
        values.tell(shape, 'dropped', 'Left out: the curve of this controller; it moves in a straight line.');
    } else values.tell(name, 'dropped', `Left out: in a SoundFont, controller ${number} moves nothing.`);
  }
}

function putKeyTrack(
  values: RegionParameters,
  zone: ZoneDraft,
  { generator, unitsPerOpcode }: Modulation,
  { track, center }: { track: string; center: string },
): void {
  const perKey = values.number(track, 0) * unitsPerOpcode;
  const key = values.key(center);
  if (perKey === 0) return;
  const from = Number.isNaN(key) ? usualCenterKey : key;
  const facts = generatorFacts.get(generator);
  const own = zone.generators.get(generator) ?? facts?.default ?? 0;
  const fits = ({ base }: KeyLine) => facts !== undefined && base >= facts.low && base <= facts.high;
  const lines = keyLines(perKey, from).map((line) => ({ ...line, base: own + line.base }));
  // The value itself must stay within its bounds, so the line starts where that is so.
  const line = lines.find(fits) ?? lines[0];
  zone.generators.set(generator, Math.round(line.base));
  zone.modulators.push({
    ...linear({ kind: 'key' }, generator, 0),
    source: line.source,
    amount: line.amount,
  });
  if (!fits(line))
    values.tell(
      track,
      'approximated',
      'The value that keys add to lies outside what a SoundFont holds; its nearest bound is written.',
    );
}

/** A straight line over the keys: what stands at its start, and the modulator that goes on from there. */
export interface KeyLine {
  base: number;
  source: number;
  amount: number;
}

/** The ways to add `perKey` for each key above `center`: from key 0 on, from the middle both ways, from the highest key down. */
export function keyLines(perKey: number, center: number): [KeyLine, KeyLine, KeyLine] {
  const line = (base: number, isFalling: boolean, isBipolar: boolean, amount: number): KeyLine => ({
    base: perKey * (base - center),
    source: sourceBits({ mover: { kind: 'key' }, isFalling, isBipolar, curve: 'linear' }),
    amount: clamped(perKey * amount),
  });
  return [
    line(0, false, false, steps),
    line(steps / 2, false, true, steps / 2),
    line(steps, true, false, -steps),
  ];
}

/** A modulator that adds `depth` at the greatest value of its source. */
export function linear(mover: Mover, destination: number, depth: number): Modulator {
  return {
    source: sourceBits({ mover, isFalling: false, isBipolar: false, curve: 'linear' }),
    destination,
    amount: clamped((depth * steps) / most),
    amountSource: 0,
    transform: 0,
  };
}

/** Amounts are numbers of 16 bits. */
function clamped(amount: number): number {
  return Math.max(-32768, Math.min(32767, Math.round(amount)));
}
