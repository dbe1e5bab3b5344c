import { velocityToLevel } from '../defaultModulators';
import type { ModulatorSource } from '../modulatorSource';
import { gainOfCentibels } from '../units';
import type { OpcodeList } from './opcodeList';

/** A modulator from velocity to level. */
export interface VelocityModulator {
  source: ModulatorSource;
  amount: number;
}

const mostValue = 127;

/** Velocities at which a curve of the level is written; between them it is a straight line, off by 0.3 dB at the most. */
const curvePoints = [1, 2, 3, 4, 5, 7, 9, 12, 16, 22, 30, 41, 56, 76, 104, 127];

/** The points of a curve, with those around velocities at which it starts or ends to be flat. */
function withKnees(attenuation: (velocity: number) => number): number[] {
  const points = new Set(curvePoints);
  for (let velocity = 2; velocity <= mostValue; velocity++) {
    if ((attenuation(velocity) === 0) === (attenuation(velocity - 1) === 0)) continue;
    points.add(velocity - 1).add(velocity);
  }
  return [...points].sort((a, b) => a - b);
}

/**
 * Says how the velocity moves the level, and answers the attenuation of the loudest velocity in centibels. A sum below 0 makes
 * nothing louder (measured with a free player), so that modulators and `base` decide together.
 */
export function velocityOpcodes(
  modulators: readonly VelocityModulator[],
  base: number,
  list: OpcodeList,
): number {
  const moving = modulators.filter(({ amount }) => amount !== 0);
  if (moving.length === 0) {
    list.put('amp_veltrack', 0);
    return Math.max(0, base);
  }
  const [only] = moving;
  const isUsual =
    moving.length === 1 && only && isStandard(only.source) && only.amount === velocityToLevel.amount;
  if (isUsual && base >= 0) return base;
  const attenuation = (velocity: number) =>
    Math.max(
      0,
      moving.reduce((sum, { source, amount }) => sum + amount * mapped(source, velocity), base),
    );
  const points = withKnees(attenuation);
  const levels = points.map(attenuation);
  const least = Math.min(...levels);
  if (levels.every((level) => level === least)) list.put('amp_veltrack', 0);
  else
    for (const [at, velocity] of points.entries())
      list.put(
        `amp_velcurve_${velocity}`,
        Number(gainOfCentibels((levels[at] as number) - least).toPrecision(5)),
      );
  return least;
}

function isStandard({ curve, isFalling, isBipolar }: ModulatorSource): boolean {
  return curve === 'concave' && isFalling && !isBipolar;
}

/**
 * What a source gives at a value from 0 to 127 (SoundFont Technical Specification 2.04, section 9.5.3): of 96 dB, a concave
 * one falls by 40·log10 of the value; a convex one is its mirror.
 */
function mapped({ curve, isFalling, isBipolar }: ModulatorSource, value: number): number {
  const x = isFalling ? mostValue - value : value;
  const shape = (at: number): number => {
    if (curve === 'switch') return at >= 64 ? 1 : 0;
    if (curve === 'concave')
      return at >= mostValue ? 1 : Math.min(1, (-40 / 96) * Math.log10(1 - at / mostValue));
    if (curve === 'convex') return at <= 0 ? 0 : Math.max(0, 1 + (40 / 96) * Math.log10(at / mostValue));
    return at / 128;
  };
  return isBipolar ? 2 * shape(x) - 1 : shape(x);
}
