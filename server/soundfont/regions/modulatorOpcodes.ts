import { identityOf, isUsualOfChannel, velocityToLevel } from '../defaultModulators';
import type { Modulator } from '../font';
import { Generator } from '../generators';
import type { Modulation } from '../modulations';
import { modulations, usualCenterKey } from '../modulations';
import type { ModulatorSource } from '../modulatorSource';
import { sourceLine, sourceOf } from '../modulatorSource';
import type { FontRegion } from './fontRegions';
import type { OpcodeList } from './opcodeList';
import type { VelocityModulator } from './velocityOpcodes';
import { velocityTimes } from './velocityTimes';

/** What modulators do beside what is said in opcodes. */
export interface ModulatorEffects {
  /** What they add to generators at all times, by generator. */
  additions: Map<number, number>;
  /** Those from velocity to level. */
  velocityToLevel: VelocityModulator[];
}

const mostValue = 127;
/** A switch that takes as much away as this leaves nothing to hear. */
const silentCentibels = 960;
const chainedBit = 0x8000;

/**
 * Says what the modulators of a region do in opcodes, and answers what is not said by that. What every player does with a
 * channel by itself is not said.
 */
export function modulatorOpcodes(region: FontRegion, list: OpcodeList): ModulatorEffects {
  const additions = new Map<number, number>();
  const toLevel: VelocityModulator[] = [];
  for (const one of region.modulators) {
    if (one.amount === 0 && identityOf(one) !== identityOf(velocityToLevel)) continue;
    if (isUsualOfChannel(one)) continue;
    const source = sourceOf(one.source);
    const isPlain = one.amountSource === 0 && (one.transform === 0 || !source.isBipolar);
    if (!isPlain || (one.destination & chainedBit) !== 0) remarkDropped(one, list);
    else if (source.mover.kind === 'velocity' && one.destination === Generator.attenuation)
      toLevel.push({ source, amount: one.amount });
    else if (!said(one, source, region, list, additions)) remarkDropped(one, list);
  }
  return { additions, velocityToLevel: toLevel };
}

/** Whether a modulator was said in opcodes. */
function said(
  one: Modulator,
  source: ModulatorSource,
  region: FontRegion,
  list: OpcodeList,
  additions: Map<number, number>,
): boolean {
  const { mover } = source;
  if (mover.kind === 'none') {
    add(additions, one.destination, one.amount);
    return true;
  }
  if (source.curve === 'switch') return switchOpcodes(one, source, list);
  if (source.curve !== 'linear') return false;
  const line = sourceLine(source);
  if (mover.kind === 'velocity' && velocityTimes(one.destination, one.amount, line, region, list))
    return true;
  const modulation = modulations.find(({ generator }) => generator === one.destination);
  if (!modulation) return false;
  const perMost = (one.amount * line.slope) / modulation.unitsPerOpcode;
  if (mover.kind === 'key') {
    if (!modulation.key) return false;
    list.measured(modulation.key.track, perMost / mostValue);
    add(additions, one.destination, one.amount * (line.base + (line.slope * usualCenterKey) / mostValue));
    return true;
  }
  const name = nameOf(modulation, mover);
  if (name === undefined) return false;
  list.measured(name, perMost);
  add(additions, one.destination, one.amount * line.base);
  return true;
}

function nameOf(modulation: Modulation, mover: ModulatorSource['mover']): string | undefined {
  switch (mover.kind) {
    case 'velocity':
      return modulation.velocity;
    case 'pressure':
      return modulation.pressure;
    case 'keyPressure':
      return modulation.keyPressure;
    case 'controller':
      return modulation.controller && `${modulation.controller}${mover.number}`;
    default:
      return undefined;
  }
}

function add(additions: Map<number, number>, generator: number, amount: number): void {
  additions.set(generator, (additions.get(generator) ?? 0) + amount);
}

/** A controller that silences the region on one side of its middle is a condition. */
function switchOpcodes(
  { destination, amount }: Modulator,
  { mover, isFalling, isBipolar }: ModulatorSource,
  list: OpcodeList,
): boolean {
  const silences = destination === Generator.attenuation && amount >= silentCentibels;
  if (!silences || isBipolar || mover.kind !== 'controller') return false;
  if (isFalling) list.put(`locc${mover.number}`, 64);
  else list.put(`hicc${mover.number}`, 63);
  return true;
}

function remarkDropped({ source, destination, amountSource }: Modulator, list: OpcodeList): void {
  const by = amountSource === 0 ? '' : ` by ${moverText(amountSource)}`;
  list.remark(
    'dropped',
    `Left out: the modulator from ${moverText(source)}${by} to ${generatorText(destination)}, because SFZ has no exact word for it.`,
  );
}

function moverText(bits: number): string {
  const { mover } = sourceOf(bits);
  const words: Record<string, string> = {
    keyPressure: 'key pressure',
    pressure: 'channel pressure',
    bend: 'pitch bend',
    bendRange: 'bend range',
    link: 'another modulator',
  };
  if (mover.kind === 'controller') return `controller ${mover.number}`;
  return words[mover.kind] ?? mover.kind;
}

/** A generator in words. */
function generatorText(operator: number): string {
  if ((operator & chainedBit) !== 0) return 'another modulator';
  const name = Object.entries(Generator).find(([, number]) => number === operator)?.[0];
  return name ? name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`) : `generator ${operator}`;
}
