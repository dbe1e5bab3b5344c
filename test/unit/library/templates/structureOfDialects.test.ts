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

const messages = ({ notes }: PutInto) => notes.map(({ message }) => message).join('\n');
const keys = (low: number) => `lokey=${low} hikey=${low + 4} pitch_keycenter=${low + 2}`;
const zoneKeys = (low: number) => `lowKey="${low}" highKey="${low + 4}" rootKey="${low + 2}"`;

describe('a list that zones count through', () => {
  const source = `<region> sample=New/oak.wav ${keys(40)}\n<region> sample=New/elm.wav ${keys(45)}\n<region> sample=New/fir.wav ${keys(50)}\n`;
  const shed = (says: string, first: number) =>
    `<shed>${says}<planks total="2"><plank>Old/a.wav</plank><plank>Old/b.wav</plank></planks>` +
    `<zone idx="${first}" ${zoneKeys(60)}/><zone idx="${first + 1}" ${zoneKeys(65)}/></shed>`;

  it.each([
    ['<!-- idx counts the planks from 0 -->', 0],
    ['<!-- idx: the position among the planks, counted from one -->', 1],
    ['', 0],
    ['', 1],
  ])('is read by position and keeps the number of its entries true: %s', async (says, first) => {
    const { text } = await into(shed(says, first), source);
    expect(text).toContain(
      '<planks total="3"><plank>New/oak.wav</plank><plank>New/elm.wav</plank><plank>New/fir.wav</plank></planks>',
    );
    expect(text.match(/idx="\d"/g)).toEqual([0, 1, 2].map((at) => `idx="${first + at}"`));
  });

  it('may be counted from 1 where no zone plays the last entry', async () => {
    const template =
      '<shed><!-- idx counts the planks from 1 --><planks><plank>Old/a.wav</plank><plank>Old/b.wav</plank><plank>Old/c.wav</plank></planks>' +
      `<zone idx="1" ${zoneKeys(60)}/><zone idx="2" ${zoneKeys(65)}/></shed>`;
    const { text } = await into(template, source);
    expect(text.match(/idx="\d"/g)).toEqual(['idx="1"', 'idx="2"', 'idx="3"']);
  });
});

describe('a folder that is an element around the files of a list', () => {
  it('is read and gets the folder of the new files', async () => {
    const { text, result } = await into(
      '<shed><store><dir name="Old/Low"><clip id="c1" name="a.wav"/><clip id="c2" name="b.wav"/></dir><dir name="Old/High"><clip id="c3" name="c.wav"/></dir></store>' +
        `<zone clip="c1" ${zoneKeys(60)}/><zone clip="c2" ${zoneKeys(65)}/><zone clip="c3" ${zoneKeys(70)}/></shed>`,
      `<region> sample=New/One/x.wav ${keys(20)}\n<region> sample=New/Two/y.wav ${keys(25)}\n`,
    );
    expect(text).toContain(
      '<store><dir name="New"><clip id="c1" name="One/x.wav"/><clip id="c2" name="Two/y.wav"/></dir></store>',
    );
    expect([...result.regions].map((region) => result.samplePath(region))).toEqual([
      'New/One/x.wav',
      'New/Two/y.wav',
    ]);
  });
});

describe('numbers that count elements', () => {
  it('stay true in each group and leave others alone', async () => {
    const { text } = await into(
      '<shed version="2" zones="3">' +
        `<ring name="a" count="2"><zone file="a.wav" ${zoneKeys(60)}/><zone file="b.wav" ${zoneKeys(65)}/></ring>` +
        `<ring name="b" count="1"><zone file="c.wav" ${zoneKeys(60)}/></ring></shed>`,
      `<group> group_label=x\n<region> sample=x1.wav ${keys(20)}\n<region> sample=x2.wav ${keys(25)}\n<region> sample=x3.wav ${keys(30)}\n` +
        `<group> group_label=y\n<region> sample=y1.wav ${keys(20)}\n<region> sample=y2.wav ${keys(25)}\n`,
    );
    expect(text.match(/(?:count|version)="\d"/g)).toEqual(['version="2"', 'count="3"', 'count="2"']);
  });
});

describe('a level that a group adds', () => {
  const rows = (first: string, second: string) =>
    `<shed><!-- the trim of a row is added to the trim of its zones, in dB -->` +
    `<row name="a" trim="${first}"><zone file="a.wav" trim="-1" ${zoneKeys(60)}/><zone file="b.wav" trim="0" ${zoneKeys(65)}/></row>` +
    `<row name="b" trim="${second}"><zone file="c.wav" trim="-2" ${zoneKeys(60)}/><zone file="d.wav" trim="0" ${zoneKeys(65)}/></row></shed>`;
  const source = `<group> group_label=a volume=-5\n<region> sample=x.wav ${keys(20)}\n<group> group_label=b\n<region> sample=y.wav ${keys(20)}\n`;

  it('is the source’s where the groups of the template differ in it', async () => {
    const made = await into(rows('-4', '0'), source);
    expect(made.text.match(/trim="[^"]*"/g)).toEqual(['trim="0"', 'trim="-5"', 'trim="0"', 'trim="0"']);
    expect(messages(made)).not.toContain('from the template');
  });

  it('is the template’s where all of them have it, and it is told by how much it changes the source', async () => {
    const made = await into(rows('-4', '-4'), source);
    expect(made.text.match(/trim="[^"]*"/g)).toEqual(['trim="-4"', 'trim="-5"', 'trim="-4"', 'trim="0"']);
    expect(messages(made)).toContain('4 dB quieter than in the source');
  });
});

describe('an element around takes', () => {
  const mill =
    '<mill>\n  <stones>\n' +
    `    <zone file="a.wav" lowVelocity="0" highVelocity="127" ${zoneKeys(60)}/>\n` +
    '    <roundRobin>\n' +
    `      <zone file="b.wav" lowVelocity="0" highVelocity="90" ${zoneKeys(65)}/>\n` +
    `      <zone file="c.wav" lowVelocity="0" highVelocity="90" ${zoneKeys(65)}/>\n` +
    '    </roundRobin>\n' +
    `    <zone file="d.wav" lowVelocity="91" highVelocity="127" ${zoneKeys(65)}/>\n` +
    '  </stones>\n</mill>\n';
  const shape = ({ text }: PutInto) => text.match(/<\/?roundRobin|file="[^"]*"/g)?.join(' ');

  it('holds those of the same keys and velocities, in their order, and nothing else', async () => {
    const made = await into(
      mill,
      `<group> seq_length=2\n<region> sample=p2.wav seq_position=2 ${keys(20)}\n<region> sample=p1.wav seq_position=1 ${keys(20)}\n` +
        `<region> sample=q1.wav seq_position=1 ${keys(25)}\n<region> sample=q2.wav seq_position=2 ${keys(25)}\n` +
        `<group>\n<region> sample=r.wav lovel=100 ${keys(30)}\n`,
    );
    expect(shape(made)).toBe(
      'file="r.wav" <roundRobin file="p1.wav" file="p2.wav" </roundRobin <roundRobin file="q1.wav" file="q2.wav" </roundRobin',
    );
  });

  it('goes where the source has no takes', async () => {
    const made = await into(mill, `<region> sample=p.wav ${keys(20)}\n<region> sample=q.wav ${keys(25)}\n`);
    expect(made.text).toBe(
      '<mill>\n  <stones>\n' +
        `    <zone file="p.wav" lowVelocity="0" highVelocity="127" ${zoneKeys(20)}/>\n` +
        `    <zone file="q.wav" lowVelocity="0" highVelocity="127" ${zoneKeys(25)}/>\n` +
        '  </stones>\n</mill>\n',
    );
  });

  it('may stand beside zones in a group that is repeated', async () => {
    const made = await into(
      `<mill><wheel name="Old">${mill.replace(/<\/?(?:mill|stones)>|\n */g, '')}</wheel></mill>`,
      `<group> group_label=Slow\n<region> sample=s.wav ${keys(20)}\n` +
        `<region> sample=t1.wav seq_length=2 seq_position=1 ${keys(25)}\n<region> sample=t2.wav seq_length=2 seq_position=2 ${keys(25)}\n` +
        `<group> group_label=Fast\n<region> sample=f.wav ${keys(20)}\n`,
    );
    expect(made.text.match(/name="[^"]*"|<\/?roundRobin|file="[^"]*"/g)?.join(' ')).toBe(
      'name="Slow" file="s.wav" <roundRobin file="t1.wav" file="t2.wav" </roundRobin name="Fast" file="f.wav"',
    );
  });
});

describe('a key of an element around takes', () => {
  it('is that of the takes in it', async () => {
    const { text } = await into(
      '<mill><pad key="36" entries="2"><take file="a.wav"/><take file="b.wav"/></pad><pad key="38" entries="1"><take file="c.wav"/></pad>' +
        '<!-- the takes of a pad sound one after the other --></mill>',
      '<region> sample=q.wav key=41\n<region> sample=p1.wav key=40 seq_length=2 seq_position=1\n<region> sample=p2.wav key=40 seq_length=2 seq_position=2\n',
    );
    expect(text.match(/key="\d+" entries="\d"|file="[^"]*"/g)?.join(' ')).toBe(
      'key="40" entries="2" file="p1.wav" file="p2.wav" key="41" entries="1" file="q.wav"',
    );
  });
});

describe('layers in a template that has no place for velocities', () => {
  it('are never written at once: the one that sounds at velocity 100 stays', async () => {
    const made = await into(
      `<mill><zone file="a.wav" ${zoneKeys(60)}/><zone file="b.wav" ${zoneKeys(65)}/></mill>`,
      `<region> sample=p.wav hivel=60 ${keys(20)}\n<region> sample=f.wav lovel=61 ${keys(20)}\n<region> sample=alone.wav hivel=60 ${keys(25)}\n`,
    );
    expect(made.text.match(/file="[^"]*"/g)).toEqual(['file="f.wav"', 'file="alone.wav"']);
    expect(messages(made)).toContain(
      '1 region sounds at other velocities than one that stays on its keys (hivel)',
    );
  });

  it('stay where they are laid over one another in the source', async () => {
    const made = await into(
      `<mill><zone file="a.wav" ${zoneKeys(60)}/><zone file="b.wav" ${zoneKeys(65)}/></mill>`,
      `<region> sample=p.wav ${keys(20)}\n<region> sample=f.wav lovel=61 ${keys(20)}\n`,
    );
    expect(made.text.match(/file="[^"]*"/g)).toEqual(['file="p.wav"', 'file="f.wav"']);
  });
});

describe('a microphone or a section with one layer of one example', () => {
  const cellar = (section: string) =>
    `<cellar>${['Wall', 'Vault']
      .map(
        (name) =>
          `\n  <${section} name="${name}">\n    <layer velFrom="1" velTo="127">\n      <zone file="${name}/x.wav" keyFrom="21" keyTo="108" keyRoot="60"/>\n    </layer>\n  </${section}>`,
      )
      .join('')}\n</cellar>\n`;
  const source = ['Wall', 'Vault']
    .flatMap((name) =>
      ['hivel=80', 'lovel=81'].map(
        (velocity) =>
          `<group> group_label=${name} ${velocity}\n${[40, 50].map((key) => `<region> sample=${name}/${key}${velocity.slice(0, 5)}.wav lokey=${key} hikey=${key + 9} pitch_keycenter=${key + 4}\n`).join('')}`,
      ),
    )
    .join('');

  it.each(['microphone', 'mic', 'section', 'articulation'])(
    'holds all regions of its name: <%s>',
    async (section) => {
      const { text } = await into(cellar(section), source);
      const parts = text.split(`</${section}>`).slice(0, 2);
      for (const [at, name] of ['Wall', 'Vault'].entries()) {
        expect(parts[at]).toContain(`<${section} name="${name}">`);
        expect(parts[at].match(/<zone file="[^/]*/g)).toEqual(Array(4).fill(`<zone file="${name}`));
        expect(parts[at].match(/<layer /g)).toHaveLength(2);
      }
    },
  );
});
