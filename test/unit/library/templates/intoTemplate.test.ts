import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../../server/model/effectiveValues';
import { NotationFinder } from '../../../../server/workspace/notations/notationFinder';
import { notations } from '../../../../server/workspace/notations/notationOf';
import { SampleStore } from '../../../../server/workspace/samples/sampleStore';
import { MemoryFiles } from '../../workspace/memoryFiles';
import { putInto } from './putInto';

const soft = `<group> group_label=Soft hivel=63
<region> sample=soft a.wav lokey=57 hikey=58 pitch_keycenter=57
<region> sample=soft b.wav lokey=59 hikey=60 pitch_keycenter=59 tune=-4
`;

describe('a template in SFZ', () => {
  it('keeps all but its example as it is and writes regions as the example is written', async () => {
    const before =
      '// My layout.\n<control> label_cc1=Sway\n<global> ampeg_attack=0.01\n\n/* the notes */\n<group> ampeg_release=0.5\n';
    const after = '\n// The room.\n<effect> type=reverb\n';
    const { text } = await putInto(
      `${before}<region>  sample=x.wav  lokey=c4  hikey=c4  pitch_keycenter=c4 // one note\n${after}`,
      '<region> sample=a.wav lokey=57 hikey=58 pitch_keycenter=57\n<region> sample=b.wav lokey=59 hikey=60 pitch_keycenter=60\n',
    );
    expect(text).toBe(
      `${before}<region>  sample=a.wav  lokey=a3  hikey=a#3  pitch_keycenter=a3 // one note\n` +
        `<region>  sample=b.wav  lokey=b3  hikey=c4  pitch_keycenter=c4 // one note\n${after}`,
    );
  });

  it('repeats its group for each group of the source', async () => {
    const { text } = await putInto(
      '<group> group_label=Example ampeg_release=0.5 hivel=100\n<region> sample=x.wav key=60\n// end\n',
      `${soft}<group> group_label=Loud lovel=64\n<region> sample=loud a.wav key=57\n`,
    );
    expect(text).toBe(
      '<group> group_label=Soft ampeg_release=0.5 hivel=63\n' +
        '<region> sample=soft a.wav lokey=57 hikey=58 pitch_keycenter=57\n' +
        '<region> sample=soft b.wav lokey=59 hikey=60 pitch_keycenter=59 tune=-4\n' +
        '<group> group_label=Loud ampeg_release=0.5 lovel=64\n<region> sample=loud a.wav key=57\n// end\n',
    );
  });

  const kinds =
    '<group> group_label=Held ampeg_release=0.6\n<region> sample=x.wav key=60\n' +
    '<group> group_label=Soft hivel=63 cutoff=900\n<region> sample=x.wav key=60\n' +
    '<group> group_label=Ends trigger=release ampeg_release=0.1\n<region> sample=x.wav key=60\n' +
    '<group> group_label=Turns seq_length=2 amp_random=1\n<region> sample=x.wav key=60 seq_position=1\n' +
    '<group> group_label=pizzicato sw_last=25\n<region> sample=x.wav key=60 ampeg_decay=0.2\n';
  const put = async (source: string) => {
    const { result } = await putInto(kinds, source);
    expect(result.regions).toHaveLength(1);
    return effectiveValues(result, result.regions[0]);
  };

  it.each([
    [
      'a release',
      '<region> sample=a.wav key=60 trigger=release',
      { ampeg_release: 0.1, group_label: 'Ends' },
    ],
    ['a soft layer', '<region> sample=a.wav key=60 lovel=1 hivel=50', { cutoff: 900, hivel: 50 }],
    ['a round robin', '<region> sample=a.wav key=60 seq_length=3', { amp_random: 1, seq_length: 3 }],
    ['all else', '<region> sample=a.wav key=60', { ampeg_release: 0.6 }],
  ])('gives %s the values of the group of its kind', async (_, source, values) => {
    expect(await put(source)).toMatchObject(values);
  });

  it('gives a group of the same name what decides when it sounds, where the source says nothing of it', async () => {
    const named = await put('<group> group_label=Pizzicato\n<region> sample=a.wav key=60');
    expect(named).toMatchObject({ sw_last: 25, ampeg_decay: 0.2, group_label: 'Pizzicato' });
    const own = await put('<group> group_label=Pizzicato sw_last=30\n<region> sample=a.wav key=60');
    expect(own.sw_last).toBe(30);
  });

  it('never narrows a region that says when it sounds', async () => {
    const { result } = await putInto(
      '<global> hivel=100\n<group> lovel=20 hivel=90\n<region> sample=x.wav key=60\n',
      '<region> sample=a.wav key=60 lovel=64',
    );
    expect([result.lowVelocity[result.regions[0]], result.highVelocity[result.regions[0]]]).toEqual([
      64, 127,
    ]);
  });

  it('lets what the source says of the sound come before what the template says', async () => {
    const { result, notes } = await putInto(
      '<group> volume=-6 ampeg_release=1\n<region> sample=x.wav key=60\n',
      '<region> sample=a.wav key=60 volume=-2',
    );
    expect(effectiveValues(result, result.regions[0])).toMatchObject({ volume: -2, ampeg_release: 1 });
    expect(notes.map(({ kind, message }) => `${kind}: ${message}`)).toEqual([
      'assumed: ampeg_release=1 comes from the template, for 1 region.',
    ]);
  });

  it('keeps what is marked as staying', async () => {
    const stays = '// stays here\n<region> sample=*sine key=20\n';
    const { text, result } = await putInto(
      `<group>\n<region> sample=x.wav key=60\n<group>\n${stays}`,
      '<region> sample=a.wav key=61',
    );
    expect(text).toBe(`<group>\n<region> sample=a.wav key=61\n<group>\n${stays}`);
    expect(result.regions).toHaveLength(2);
  });

  it('makes groups where it has none and the source has', async () => {
    const { result } = await putInto('// top\n<region> sample=x.wav key=60\n// end\n', soft);
    expect([...result.regions].map((region) => result.groupLabel(region))).toEqual(['Soft', 'Soft']);
    expect(result.sources[0].text).toMatch(/^\/\/ top\n<group>[\s\S]*\n\/\/ end\n$/);
  });

  it('leads paths and keys through what the template puts before them', async () => {
    const { text, result } = await putInto(
      '<control> default_path=Samples/ note_offset=12\n<region> sample=x.wav key=60\n',
      '<control> default_path=Samples/\n<region> sample=a.wav key=60',
    );
    expect(text).toContain('<region> sample=a.wav key=48');
    expect(effectiveValues(result, result.regions[0])).toMatchObject({ sample: 'Samples/a.wav', lokey: 60 });
  });

  it('tells what has no place: controllers, effects, remarks', async () => {
    const { notes, kept } = await putInto(
      '<region> sample=x.wav key=60\n',
      '// made by hand\n<control> set_cc7=90\n<region> sample=a.wav key=60\n<effect> type=reverb\n',
    );
    expect(kept).toBe(2);
    expect(notes.map(({ kind, start }) => `${kind} ${start}`)).toEqual([
      'dropped 26',
      'dropped 75',
      'ignored 0',
    ]);
  });

  it('refuses a template without an example', async () => {
    await expect(putInto('<global> volume=1\n', soft)).rejects.toThrow('no example');
  });

  it('refuses a source without regions', async () => {
    await expect(putInto('<region> sample=a.wav key=60\n', '<control> set_cc1=2\n')).rejects.toThrow(
      'no regions',
    );
  });
});

describe('facts in a template', () => {
  const facts = { title: 'Harp "A" & B', maker: 'Ines Moor', 'room name': 'Barn' };

  it('stand where remarks and values mark them', async () => {
    const { text, notes } = await putInto(
      '// (title goes here), (Maker goes here), (room name goes here), (picture goes here)\n' +
        '<global> global_label=by (maker goes here)\nsw_lokey=20 sw_hikey=22 // sw_lokey: lowest key goes here; sw_hikey: highest key goes here\n' +
        '<region> sample=x.wav key=60\n',
      '<region> sample=a.wav lokey=40 hikey=45\n<region> sample=b.wav lokey=46 hikey=52\n',
      facts,
    );
    expect(text.split('\n').slice(0, 3)).toEqual([
      '// Harp "A" & B, Ines Moor, Barn, (picture goes here)',
      '<global> global_label=by Ines Moor',
      'sw_lokey=40 sw_hikey=52',
    ]);
    expect(notes[0].message).toContain('"picture"');
  });

  it('stay marked where a value cannot hold them', async () => {
    const template = '<global> global_label=(title goes here)\n<region> sample=x.wav key=60\n';
    const { text, notes } = await putInto(template, '<region> sample=x.wav key=60', {
      title: 'A <region> b',
    });
    expect(text).toBe(template);
    expect(notes[0].message).toContain('"title"');
  });

  it('are written as XML needs them', async () => {
    const { text } = await putInto(
      '<instrument><!-- (title goes here) (licence goes here) -->\n<global global_label="(title goes here)"/><panel says="(title goes here)"/>\n<region sample="x.wav" key="60"/>\n</instrument>\n',
      '<region> sample=a.wav key=61',
      { title: 'A "<B>" & C', licence: 'a--b' },
      notations.xml,
    );
    const written = 'A &quot;&lt;B&gt;&quot; &amp; C';
    expect(text).toContain(`<!-- A "<B>" & C a- -b -->`);
    expect(text).toContain(`says="${written}"`);
    expect(
      notations.xml.read(text, { path: '' }).findings.filter(({ code }) => code === 'syntax-error'),
    ).toEqual([]);
  });
});

describe('a template in XML of other names', () => {
  const top = '<?xml version="1.0"?>\n<!-- kept -->\n<workshop>\n  <panel colour="#abc"/>\n  <layers>\n';
  const end = '  </layers>\n  <effects><room wet="0.3"/></effects>\n</workshop>\n';
  const example =
    '    <layer name="Held" release="0.4" bus="main">\n' +
    '      <zone file="x/a.wav" lowKey="60" highKey="62" rootKey="61" lowVel="1" highVel="127" gain="0" shade="blue"/>\n' +
    '      <zone file="x/b.wav" lowKey="63" highKey="65" rootKey="64" lowVel="1" highVel="127" gain="-2" shade="blue"/>\n' +
    '    </layer>\n';

  it('takes regions in its own names and keeps what no vocabulary knows', async () => {
    const template = top + example + end;
    const files = new MemoryFiles();
    const finder = new NotationFinder(files, new SampleStore(files), () => {});
    const found = await finder.find({ path: '/out/t.xml', text: template });
    expect(found).toBeDefined();
    if (!found) return;
    const { text, notes } = await putInto(
      template,
      `${soft}<region> sample=c.wav key=61 cutoff=500`,
      {},
      found.notation,
    );
    expect(text).toBe(
      `${top}    <layer name="Soft" release="0.4" bus="main">\n` +
        '      <zone file="soft a.wav" lowKey="57" highKey="58" rootKey="57" lowVel="1" highVel="63" gain="0" shade="blue"/>\n' +
        '      <zone file="soft b.wav" lowKey="59" highKey="60" rootKey="59" lowVel="1" highVel="63" gain="0" shade="blue"/>\n' +
        '      <zone file="c.wav" lowKey="61" highKey="61" rootKey="61" lowVel="1" highVel="63" gain="0" shade="blue"/>\n' +
        `    </layer>\n${end}`,
    );
    const lost = notes.filter(({ kind }) => kind === 'dropped').map(({ message }) => message.split(' ')[0]);
    expect(lost).toEqual(['tune=-4', 'cutoff=500']);
  });
});
