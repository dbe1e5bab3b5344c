import { describe, expect, it } from 'vitest';
import { editedText, readEdited } from '../../../server/model/editing/changedInstrument';
import { addRecordings } from '../../../server/recordings/addRecordings';
import type { Recording } from '../../../server/recordings/recording';
import { sfzNotation } from '../../../server/sfz/notation';
import { xmlNotation } from '../../../server/xml/notation';

function heard(path: string, pitch: number | undefined, more: Partial<Recording> = {}): Recording {
  return {
    path,
    frames: 1000,
    rootKey: undefined,
    loop: undefined,
    pitch,
    loudness: -20,
    content: path,
    ...more,
  };
}

const notations = { sfz: sfzNotation, xml: xmlNotation };

function add(
  format: keyof typeof notations,
  text: string,
  recordings: Recording[],
  where: { key?: number; afterRegion?: number } = {},
): { text: string; told: string[]; regions: { sample: string | undefined; keys: number[] }[] } {
  const notation = notations[format];
  const instrument = notation.read(text, { path: 'a' });
  const added = addRecordings(notation, instrument, {
    recordings,
    samplePath: (path, defaultPath) => (path.startsWith(defaultPath) ? path.slice(defaultPath.length) : path),
    key: where.key,
    after: where.afterRegion === undefined ? undefined : instrument.regions[where.afterRegion],
  });
  if ('refusal' in added) return { text: added.refusal, told: [], regions: [] };
  const after = readEdited(notation, instrument, added.edits);
  return {
    text: editedText(text, added.edits),
    told: added.told,
    regions: [...after.regions].map((region) => ({
      sample: after.samplePath(region),
      keys: [after.lowKey[region], after.rootKey(region), after.highKey[region]],
    })),
  };
}

describe('a sample that is added to an instrument', () => {
  const text = `<control> default_path=S/
<group> group_label=soft hivel=63
<region> sample=a.wav lokey=c3 hikey=f3 pitch_keycenter=d3
<group> group_label=off trigger=release
<region> sample=b.wav key=g3
`;

  it('stands behind the region that it was dropped on, on its root key, spelled as the document does', () => {
    const made = add('sfz', text, [heard('S/new.wav', 57)], { afterRegion: 0, key: 90 });
    expect(made.regions).toEqual([
      { sample: 'S/a.wav', keys: [48, 50, 53] },
      { sample: 'S/new.wav', keys: [57, 57, 57] },
      { sample: 'S/b.wav', keys: [55, 55, 55] },
    ]);
    expect(made.text).toMatch(
      /pitch_keycenter=d3\n<region> sample=new\.wav .*=a3.*\n<group> group_label=off/,
    );
    expect(made.told).toEqual(['"S/new.wav" is at A3, which is the pitch that it sounds.']);
  });

  it('has a group of its own at the end, so that it takes nothing over', () => {
    const made = add('sfz', text, [heard('S/new.wav', 57)]);
    expect(made.text.slice(text.length - 1).replace(/\s+/g, ' ')).toMatch(
      /^ ?<group>? ?<region> sample=new\.wav/,
    );
    expect(made.regions.at(-1)).toEqual({ sample: 'S/new.wav', keys: [57, 57, 57] });
  });

  it('takes its root from the pitch, the name, the file, else from where it was dropped, and says so', () => {
    const told = (recording: Recording, key?: number) =>
      add('sfz', '', [recording], key === undefined ? {} : { key }).told.join() ||
      add('sfz', '', [recording]).text;
    expect(told(heard('pad A3.wav', 69))).toContain('at A4, which is the pitch that it sounds');
    expect(told(heard('tom A3.wav', undefined))).toContain('at A3, as its name says');
    expect(told(heard('tom.wav', undefined, { rootKey: 41 }))).toContain('at F2, as the file itself says');
    expect(told(heard('tom.wav', undefined), 40)).toContain('at E2, the key it was dropped on');
    expect(told(heard('tom.wav', undefined))).toContain('Drop it on the key that it is for');
  });

  it('brings its loop and its tuning along', () => {
    const loop = { start: 10, end: 900, type: 'forward' as const };
    const made = add('sfz', '', [heard('pad.wav', 60.2, { loop })]);
    expect(made.text).toMatch(/tune=-20/);
    expect(made.text).toMatch(/loop_start=10 loop_end=900/);
  });

  it('is written in our XML too, and several are placed as a folder of recordings is', () => {
    const xml =
      '<instrument>\n  <group hivel="63">\n    <region sample="a.wav" key="60"/>\n  </group>\n</instrument>\n';
    const one = add('xml', xml, [heard('new.wav', 57)], { afterRegion: 0 });
    expect(one.regions).toEqual([
      { sample: 'a.wav', keys: [60, 60, 60] },
      { sample: 'new.wav', keys: [57, 57, 57] },
    ]);
    const several = add('xml', xml, [heard('bell c4.wav', 60), heard('bell g4.wav', 67)]);
    expect(several.regions.map(({ sample }) => sample)).toEqual(['a.wav', 'bell c4.wav', 'bell g4.wav']);
    // The keys between two roots are shared out, as in a folder alone.
    expect(several.regions[1].keys[2] + 1).toBe(several.regions[2].keys[0]);
    expect(several.told[0]).toBe('2 recordings added.');
  });

  it('is refused where it would change something else or would not be on its key', () => {
    const moved = '<control> note_offset=12\n<region> sample=a.wav key=40';
    expect(add('sfz', moved, [heard('new.wav', 57)]).text).toContain('would change something else');
  });
});
