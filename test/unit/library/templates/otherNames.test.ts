import { describe, expect, it } from 'vitest';
import { NotationFinder } from '../../../../server/workspace/notations/notationFinder';
import { SampleStore } from '../../../../server/workspace/samples/sampleStore';
import { MemoryFiles } from '../../workspace/memoryFiles';
import type { PutInto } from './putInto';
import { putInto } from './putInto';

async function into(template: string, source: string): Promise<PutInto> {
  const files = new MemoryFiles();
  const finder = new NotationFinder(files, new SampleStore(files), () => {});
  const found = await finder.find({ path: '/out/t.xml', text: template });
  if (!found) throw new Error('no notation');
  return putInto(template, source, {}, found.notation);
}

const dropped = ({ notes }: PutInto) =>
  notes.filter(({ kind }) => kind === 'dropped').map(({ message }) => message);

const keys = (low: number) => `lokey=${low} hikey=${low + 4} pitch_keycenter=${low + 2}`;
const zoneKeys = (low: number) => `lowKey="${low}" highKey="${low + 4}" rootKey="${low + 2}"`;

describe('a list of samples that zones refer to', () => {
  const source =
    `<region> sample=New/oak.wav ${keys(40)}\n<region> sample=New/elm.wav ${keys(45)}\n` +
    `<region> sample=New/oak.wav ${keys(50)}\n`;

  it('holds the samples of the source, each once, in the place of those of the examples', async () => {
    const { text, notes } = await into(
      '<bench>\n  <takes>\n    <take id="t4" path="Old/a.wav"/>\n    <take id="t5" path="Old/b.wav"/>\n  </takes>\n' +
        `  <zone take="t4" ${zoneKeys(60)}/>\n  <zone take="t5" ${zoneKeys(65)}/>\n</bench>\n`,
      source,
    );
    expect(text).toBe(
      '<bench>\n  <takes>\n    <take id="t4" path="New/oak.wav"/>\n    <take id="t5" path="New/elm.wav"/>\n  </takes>\n' +
        `  <zone take="t4" ${zoneKeys(40)}/>\n  <zone take="t5" ${zoneKeys(45)}/>\n  <zone take="t4" ${zoneKeys(50)}/>\n</bench>\n`,
    );
    expect(notes).toEqual([]);
  });

  it('may stand behind the zones, with numbers as keys and paths as texts', async () => {
    const { text } = await into(
      `<bench><zones><zone wave="0" ${zoneKeys(60)}/><zone wave="1" ${zoneKeys(65)}/></zones>` +
        '<waves><wave id="0"><file>Old/a.wav</file></wave><wave id="1"><file>Old/b.wav</file></wave></waves></bench>',
      source,
    );
    expect(text).toBe(
      `<bench><zones><zone wave="0" ${zoneKeys(40)}/><zone wave="1" ${zoneKeys(45)}/><zone wave="0" ${zoneKeys(50)}/></zones>` +
        '<waves><wave id="0"><file>New/oak.wav</file></wave><wave id="1"><file>New/elm.wav</file></wave></waves></bench>',
    );
  });

  it('keeps what others refer to, names entries after files where it does, and loses facts of old files', async () => {
    const made = await into(
      '<bench>\n  <cover plays="hum"/>\n  <takes>\n    <take name="hum" path="Old/hum.wav" frames="400"/>\n' +
        '    <take name="purr" path="Old/purr.wav" frames="500"/>\n  </takes>\n' +
        `  <zone take="hum" ${zoneKeys(60)}/>\n  <zone take="purr" ${zoneKeys(65)}/>\n</bench>\n`,
      source,
    );
    expect(made.text).toContain(
      '    <take name="hum" path="Old/hum.wav" frames="400"/>\n    <take name="oak" path="New/oak.wav"/>\n' +
        '    <take name="elm" path="New/elm.wav"/>\n  </takes>',
    );
    expect(made.text).toContain(`<zone take="oak" ${zoneKeys(50)}/>`);
    expect(made.notes.map(({ message }) => message).join()).toContain('frames of <take>');
  });

  it('is referred to with the sign of a fragment where the template does so', async () => {
    const { text } = await into(
      `<bench><zone ${zoneKeys(60)}><use ref="#w1"/></zone><zone ${zoneKeys(65)}><use ref="#w2"/></zone>` +
        '<pool><wave id="w1" file="Old/a.wav"/><wave id="w2" file="Old/b.wav"/></pool></bench>',
      source,
    );
    expect(text.match(/ref="[^"]*"/g)).toEqual(['ref="#w1"', 'ref="#w2"', 'ref="#w1"']);
    expect(text).toContain('<wave id="w2" file="New/elm.wav"/>');
  });

  it('gives new entries what regions take from it', async () => {
    const { text } = await into(
      '<bench><pool><wave id="a" file="Old/a.wav" rootKey="61" tuneCents="3"/><wave id="b" file="Old/b.wav" rootKey="66" tuneCents="-2"/></pool>' +
        '<zone wave="a" lowKey="60" highKey="64"/><zone wave="b" lowKey="65" highKey="69"/></bench>',
      `<region> sample=New/oak.wav ${keys(40)} tune=7\n<region> sample=New/elm.wav ${keys(45)}\n`,
    );
    expect(text).toContain(
      '<wave id="oak" file="New/oak.wav" rootKey="42" tuneCents="7"/><wave id="elm" file="New/elm.wav" rootKey="47" tuneCents="0"/>',
    );
  });

  it('counts the lengths of loops from their starts, and has no loop for a sample without one', async () => {
    const made = await into(
      '<bench>\n  <pool>\n    <wave id="w1" file="Old/a.wav"/>\n    <wave id="w2" file="Old/b.wav"><loop start="20" length="80"/></wave>\n  </pool>\n' +
        `  <zone wave="w1" ${zoneKeys(60)}/>\n  <zone wave="w2" ${zoneKeys(65)}/>\n</bench>\n`,
      `<region> sample=New/oak.wav ${keys(40)} loop_mode=loop_continuous loop_start=700 loop_end=1699\n` +
        `<region> sample=New/elm.wav ${keys(45)}\n` +
        `<region> sample=New/ash.wav ${keys(50)} loop_start=1 loop_end=5\n<region> sample=New/ash.wav ${keys(55)} loop_start=1 loop_end=9\n`,
    );
    expect(made.text).toContain('file="New/oak.wav"><loop start="700" length="1000"/></wave>');
    expect(made.text).toContain('file="New/elm.wav"></wave>');
    expect(made.text.match(/<loop/g)).toHaveLength(1);
    expect(dropped(made).join()).toContain('loop_end=5 has no place');
  });
});

describe('what elements around regions say', () => {
  const layers =
    '<bench>\n  <reach lowKey="40" highKey="44" rootKey="42">\n    <layer lowVelocity="1" highVelocity="60" file="Old/a.wav"/>\n' +
    '    <layer lowVelocity="61" highVelocity="127" file="Old/b.wav"/>\n  </reach>\n' +
    '  <reach lowKey="45" highKey="49" rootKey="47">\n    <layer lowVelocity="1" highVelocity="60" file="Old/c.wav"/>\n' +
    '    <layer lowVelocity="61" highVelocity="127" file="Old/d.wav"/>\n  </reach>\n</bench>\n';

  it('is said once for all regions that it holds for, whichever groups of the source they stand in', async () => {
    const { text } = await into(
      layers,
      `<group> hivel=50\n<region> sample=p1.wav ${keys(20)}\n<region> sample=p2.wav ${keys(25)}\n` +
        `<group> lovel=51\n<region> sample=f1.wav ${keys(20)}\n<region> sample=f2.wav ${keys(25)}\n`,
    );
    expect(text).toBe(
      '<bench>\n  <reach lowKey="20" highKey="24" rootKey="22">\n    <layer lowVelocity="1" highVelocity="50" file="p1.wav"/>\n' +
        '    <layer lowVelocity="51" highVelocity="127" file="f1.wav"/>\n  </reach>\n' +
        '  <reach lowKey="25" highKey="29" rootKey="27">\n    <layer lowVelocity="1" highVelocity="50" file="p2.wav"/>\n' +
        '    <layer lowVelocity="51" highVelocity="127" file="f2.wav"/>\n  </reach>\n</bench>\n',
    );
  });

  it('holds groups of its own in elements that stand around them', async () => {
    const { text } = await into(
      `<bench>\n  <articulation name="Old">\n${layers.replace(/<\/?bench>\n/g, '')}  </articulation>\n</bench>\n`,
      `<group> group_label=Bowed ${keys(20)}\n<region> sample=b1.wav hivel=50\n<region> sample=b2.wav lovel=51\n` +
        `<group> group_label=Plucked ${keys(30)}\n<region> sample=p1.wav\n`,
    );
    expect(text.match(/(?:articulation name|lowKey|file)="[^"]*"/g)).toEqual([
      'articulation name="Bowed"',
      'lowKey="20"',
      'file="b1.wav"',
      'file="b2.wav"',
      'articulation name="Plucked"',
      'lowKey="30"',
      'file="p1.wav"',
    ]);
  });

  it('is the folder of the regions in it', async () => {
    const { text, notes } = await into(
      '<bench>\n' +
        `  <drawer folder="Old/Deep/"><zone file="a.wav" ${zoneKeys(60)}/></drawer>\n` +
        `  <drawer folder="Old/Tall/"><zone file="b.wav" ${zoneKeys(65)}/><zone file="c.wav" ${zoneKeys(70)}/></drawer>\n</bench>\n`,
      `<region> sample=New/One/x.wav ${keys(20)}\n<region> sample=New/Two/y.wav ${keys(25)}\n<region> sample=New/One/z.wav ${keys(30)}\n`,
    );
    expect(text).toBe(
      '<bench>\n' +
        `  <drawer folder="New/One/"><zone file="x.wav" ${zoneKeys(20)}/><zone file="z.wav" ${zoneKeys(30)}/></drawer>\n` +
        `  <drawer folder="New/Two/"><zone file="y.wav" ${zoneKeys(25)}/></drawer>\n</bench>\n`,
    );
    expect(notes).toEqual([]);
  });

  it('is the folder that all samples lie in, where it is around all of them', async () => {
    const { text } = await into(
      `<bench samples="Old\\Things\\"><zone file="a.wav" ${zoneKeys(60)}/><zone file="b.wav" ${zoneKeys(65)}/></bench>`,
      `<region> sample=New/One/x.wav ${keys(20)}\n<region> sample=New/Two/y.wav ${keys(25)}\n`,
    );
    expect(text).toContain('samples="New\\"');
    expect(text).not.toContain('..');
  });
});

describe('one element around all regions that names their folder', () => {
  it('stays one', async () => {
    const { text } = await into(
      `<bench>\n  <files base="Old/Things/">\n    <zone file="a.wav" ${zoneKeys(60)}/>\n    <zone file="b.wav" ${zoneKeys(65)}/>\n  </files>\n</bench>\n`,
      `<group>\n<region> sample=New/One/x.wav ${keys(20)}\n<group>\n<region> sample=New/Two/y.wav ${keys(25)}\n`,
    );
    expect(text).toBe(
      `<bench>\n  <files base="New/">\n    <zone file="One/x.wav" ${zoneKeys(20)}/>\n    <zone file="Two/y.wav" ${zoneKeys(25)}/>\n  </files>\n</bench>\n`,
    );
  });
});

describe('a region that a template cannot say as what it is', () => {
  const plain = `<bench><zone file="a.wav" ${zoneKeys(60)}/><zone file="b.wav" ${zoneKeys(65)}/></bench>`;
  const files = ({ text }: PutInto) => text.match(/file="[^"]*"/g);

  it.each([
    ['trigger=release', 'sounds when a key is let go'],
    ['trigger=legato', 'sounds for later keys alone'],
    ['locc64=64', 'only where controller 64 is moved'],
    ['on_locc4=100', 'when a controller is moved'],
    ['seq_length=2 seq_position=2', 'in a later turn of a round robin'],
    ['lorand=0.5', 'by chance'],
    ['sw_down=24', 'while another key is held'],
  ])('with %s is left out, which is told', async (value, why) => {
    const made = await into(
      plain,
      `<region> sample=x.wav ${keys(20)}\n<region> sample=y.wav ${keys(20)} ${value}\n`,
    );
    expect(files(made)).toEqual(['file="x.wav"']);
    expect(dropped(made).join()).toContain(why);
  });

  it('is one of a keyswitch other than the first', async () => {
    const made = await into(
      plain,
      '<global> sw_default=25\n' +
        `<group> sw_last=24\n<region> sample=x.wav ${keys(20)}\n<group> sw_last=25\n<region> sample=y.wav ${keys(20)}\n`,
    );
    expect(files(made)).toEqual(['file="y.wav"']);
    expect(dropped(made).join()).toContain('1 region sounds after another keyswitch than the first');
  });

  it('is none where an element says so by its name', async () => {
    const made = await into(
      `<bench><hit key="60" file="a.wav"/><hit key="61" file="b.wav"/><releaseHit key="60" file="r.wav"/></bench>`,
      '<region> sample=x.wav key=30\n<region> sample=y.wav key=30 trigger=release\n',
    );
    expect(made.text).toContain('<hit key="30" file="x.wav"/>');
    expect(made.text).toContain('<releaseHit key="30" file="y.wav"/>');
    expect(dropped(made)).toEqual([]);
  });

  it('is refused where none is left', async () => {
    const source = `<region> sample=x.wav ${keys(20)} trigger=release\n`;
    await expect(into(plain, source)).rejects.toThrow('when a key is let go');
  });
});

describe('a place for one key', () => {
  it('gets the key of a range that is nearest to the root key', async () => {
    const { text } = await into(
      '<bench><hit key="60" file="a.wav"/><hit key="61" file="b.wav"/></bench>',
      `<region> sample=x.wav ${keys(20)}\n<region> sample=y.wav lokey=30 hikey=34 pitch_keycenter=40\n`,
    );
    expect(text).toBe('<bench><hit key="22" file="x.wav"/><hit key="34" file="y.wav"/></bench>');
  });
});
