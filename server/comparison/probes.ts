import type { PlayedNote } from '../playing/sweep/playedNote';
import type { RegionPair } from './causes';
import type { ComparedSide } from './regionLikeness';
import { spokenDifferences } from './spokenValues';

/** Notes that are tried at the most besides the first (our choice). */
const mostProbes = 16;
const fullBend = 8191;

/**
 * Other ways to play a note that starts two regions, such that what their texts say otherwise can be heard: at the ends of
 * their key and velocity ranges, and with the controllers, the bend and the pressure that differing opcodes name.
 */
export function probesOf(
  note: PlayedNote,
  sides: readonly [ComparedSide, ComparedSide],
  pair: RegionPair,
): PlayedNote[] {
  const probes = [...corners(note, sides, pair), ...moved(note, sides, pair)];
  return probes.slice(0, mostProbes);
}

/** The ends of the ranges of both regions, where they are not the note itself. */
function corners(
  note: PlayedNote,
  [a, b]: readonly [ComparedSide, ComparedSide],
  pair: RegionPair,
): PlayedNote[] {
  const [one, other] = [a.playable, b.playable];
  const keys = [one.lowKey[pair.a], one.highKey[pair.a], other.lowKey[pair.b], other.highKey[pair.b]].filter(
    (key) => key >= 0 && key !== note.key,
  );
  const velocities = [
    one.lowVelocity[pair.a],
    one.highVelocity[pair.a],
    other.lowVelocity[pair.b],
    other.highVelocity[pair.b],
  ]
    .map((velocity) => Math.max(1, Math.min(127, Math.round(velocity))))
    .filter((velocity) => velocity !== note.velocity);
  return [
    ...[...new Set(keys)].map((key) => ({ ...note, key })),
    ...[...new Set(velocities)].map((velocity) => ({ ...note, velocity })),
  ];
}

/** States that the opcodes with differing values name. */
function moved(
  note: PlayedNote,
  [a, b]: readonly [ComparedSide, ComparedSide],
  pair: RegionPair,
): PlayedNote[] {
  const probes = new Map<string, PlayedNote>();
  for (const { opcode, a: ofA, b: ofB } of spokenDifferences(a.spoken, b.spoken, pair)) {
    const said = [
      ofA === undefined ? Number.NaN : Number(a.spoken.text(ofA)),
      ofB === undefined ? Number.NaN : Number(b.spoken.text(ofB)),
    ].filter((value) => !Number.isNaN(value));
    const switches = [a, b].flatMap(({ playable }, side) => {
      const region = side === 0 ? pair.a : pair.b;
      return [playable.switchLow[region], playable.switchHigh[region]].filter((key) => key >= 0);
    });
    for (const state of statesOf(opcode, note, said, switches))
      probes.set(JSON.stringify(state), { ...note, ...state });
  }
  return [...probes.values()];
}

/** States in which an opcode may be heard: at its values where it is the end of a range, else where it moves most. */
function statesOf(
  opcode: string,
  note: PlayedNote,
  said: readonly number[],
  switches: readonly number[],
): Partial<PlayedNote>[] {
  const number = /cc(\d+)$/.exec(opcode)?.[1];
  if (number !== undefined) {
    const controller = Number(number);
    const isRange = /(lo|hi)cc\d+$/.test(opcode);
    const values = [127, 64, 0, ...(isRange ? said : [])].filter((value) => value >= 0 && value <= 127);
    const others = (note.controllers ?? []).filter((one) => one.controller !== controller);
    if (controller > 127) return [];
    return values.map((value) => ({ controllers: [...others, { controller, value }] }));
  }
  if (/^(lo|hi)chan$/.test(opcode)) return said.map((channel) => ({ channel }));
  if (/^(lo|hi)prog$/.test(opcode)) return said.map((program) => ({ program }));
  if (/^(lo|hi)bpm$/.test(opcode)) return said.map((tempoBpm) => ({ tempoBpm }));
  if (/^(lo|hi)bend$/.test(opcode)) return said.map((bend) => ({ bend }));
  if (/bend/.test(opcode)) return [{ bend: fullBend }, { bend: -fullBend }];
  if (/chanaft/.test(opcode)) return [127, ...said].map((channelPressure) => ({ channelPressure }));
  if (/polyaft/.test(opcode)) return [127, ...said].map((polyPressure) => ({ polyPressure }));
  return /^sw_(lo|hi)?last$/.test(opcode) ? switches.map((keyswitch) => ({ keyswitch })) : [];
}
