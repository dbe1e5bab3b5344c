import type { ComparedInstrument } from '../../../server/comparison/compareInstruments';
import { compareInstruments } from '../../../server/comparison/compareInstruments';
import type { MeasureMemory } from '../../../server/comparison/heardContent';
import type { MeasuredNote } from '../../../server/comparison/measureNotes';
import { soundOfNote } from '../../../server/comparison/measureNotes';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { coveringStrikes } from '../../../server/playing/sweep/coveringStrikes';
import { readSfz } from '../../../server/sfz/read';
import { soundOf } from '../../../server/sound/program/soundOf';
import { SampleSource } from '../../../server/sound/samples/sampleSource';
import { nodeFiles } from '../../../server/workspace/files/nodeFiles';
import { compare } from '../compare';
import type { AddRow } from '../table';
import { ratioRow } from '../table';

const keys = 100;
const layers = 50;
const regionCount = keys * layers;
const changed = 20;
const options = { toleranceDb: -90, sampleRate: 44100, seed: 0 };

/** An instrument of 5,000 regions on generators, with something more in the first ones. */
function instrumentOf(more: string): ComparedInstrument {
  const regions = Array.from({ length: regionCount }, (_, at) => {
    const key = 14 + Math.floor(at / layers);
    const low = 1 + Math.floor(((at % layers) * 127) / layers);
    const high = Math.floor((((at % layers) + 1) * 127) / layers);
    return `<region> sample=*saw key=${key} lovel=${low} hivel=${high} ${at < changed ? more : ''}`;
  });
  const instrument = readSfz(`<global> ampeg_release=0.1\n${regions.join('\n')}`, { path: '/a.sfz' });
  const program = soundOf(instrument);
  const samples = new SampleSource(nodeFiles);
  return { instrument, program, playable: playableInstrument(instrument), paths: [], samples };
}

/** What comparing costs: what is equal against reading it, what is rendered against rendering, and again against the first time. */
export async function measureComparison(add: AddRow): Promise<void> {
  const [a, b] = [instrumentOf(''), instrumentOf('volume=-1')];
  const few = { warmUp: 1, pairs: 5 };
  const equal = await compare(
    () => compareInstruments(a, a, options, nodeFiles),
    () => coveringStrikes(a.playable),
    few,
  );
  add(ratioRow('Comparing 5,000 equal regions, to finding notes for them once', equal, ''));
  const notes = coveringStrikes(a.playable).strikes.slice(0, changed);
  const rendered = await compare(
    () => compareInstruments(a, b, options, nodeFiles),
    async () => {
      await compareInstruments(a, a, options, nodeFiles);
      for (const { note } of notes) for (const side of [a, b]) await soundOfNote(side, note, options);
    },
    few,
  );
  add(
    ratioRow(
      `The same with ${changed} that differ, to that and rendering them on both sides`,
      rendered,
      '≤ 2',
    ),
  );
  const kept = new Map<string, MeasuredNote>();
  const memory: MeasureMemory = {
    read: (content) => kept.get(content),
    write: (content, measured) => void kept.set(content, measured),
    stateOf: async (path) => path,
  };
  await compareInstruments(a, b, { ...options, memory }, nodeFiles);
  const again = await compare(
    () => compareInstruments(a, b, { ...options, memory }, nodeFiles),
    () => compareInstruments(a, b, options, nodeFiles),
    few,
  );
  add(ratioRow('A second time, what was measured remembered, to the first', again, '< 1'));
}
