import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { readSfz } from '../../../server/sfz/read';
import { writeXml } from '../../../server/xml/write';
import { temporaryFolder } from '../../temporaryFolder';

// The schema is read and applied by libxml2's xmllint (W3C XML Schema 1.0, Part 1: Structures; Part 2: Datatypes).
// Where the tool is not installed these tests are skipped; the build that counts installs it.

const root = fileURLToPath(new URL('../../..', import.meta.url));
const schema = join(root, 'server/xml/instrument.xsd');
const demo = join(root, 'samples-demo');
const installed = spawnSync('xmllint', ['--version']).status === 0;

let folder = '';
beforeAll(() => {
  folder = temporaryFolder('instrument-schema');
});

/** What xmllint says of a document: empty where it is valid. */
function faultsOf(text: string): string {
  const path = join(folder, 'document.xml');
  writeFileSync(path, text);
  const { status, stderr } = spawnSync('xmllint', ['--noout', '--nonet', '--schema', schema, path], {
    encoding: 'utf8',
  });
  return status === 0 ? '' : stderr;
}

const instrument = (inside: string) => `<instrument>${inside}</instrument>`;

describe.skipIf(!installed)('the schema', () => {
  it('is taken by xmllint and takes the demo instrument', () => {
    const path = join(demo, 'millrace-chimes/millrace-chimes.instrument.xml');
    expect(faultsOf(readFileSync(path, 'utf8'))).toBe('');
  });

  it('takes what is written from SFZ', () => {
    const sfz = readFileSync(join(demo, 'millrace-chimes/millrace-chimes.sfz'), 'utf8');
    expect(faultsOf(writeXml(readSfz(sfz, { path: 'a.sfz' })).text)).toBe('');
  });

  it('takes all headers, nested and in a row, with any opcode', () => {
    const sfz = `// "quotes" & <tags> -- and dashes
      <control> default_path=A & B/ note_offset=-2 set_cc1=64 label_cc1=>Wheel
      <global> lokey=c-1 hikey=g9 <master> amp_velcurve_64=0.5 <group> lovel=1 locc74=10 cutoff_oncc74=1200
      <region> sample=a "b".wav key=60 <region> key=Db4 loop_mode=one_shot trigger=release_key end=-1
      <curve> curve_index=7 v000=0 v127=1 <effect> type=lofi <midi> x=1 <sample> name=a.wav data=00ff
      <group> <region> key=61`;
    expect(faultsOf(writeXml(readSfz(sfz, { path: 'a.sfz' })).text)).toBe('');
  });

  it.each([
    '<define name="$ROOT" value="c4"/><region key="$ROOT" tune="-$TUNE" loop_mode="$MODE"/>',
    '<include path="maps/low.xml"/><global><include path="old.sfz"/></global>',
    '<global tune="1"/><master/><group/><region/><control/>',
    '<region lokey="-1" hikey=" 60 " volume="+.5" tune="-3." region_label=""/>',
  ])('takes %s', (inside) => {
    expect(faultsOf(instrument(inside))).toBe('');
  });

  it.each([
    ['<regoin/>', 'regoin'],
    ['<region><region/></region>', 'region'],
    ['<group><global/></group>', 'global'],
    ['<master><master/></master>', 'master'],
    ['<control><region/></control>', 'control'],
    ['words', 'instrument'],
    ['<region key="128"/>', 'key'],
    ['<region key="h4"/>', 'key'],
    ['<region lovel="200"/>', 'lovel'],
    ['<region loop_mode="loop"/>', 'loop_mode'],
    ['<region loop_start="1.5"/>', 'loop_start'],
    ['<region volume="loud"/>', 'volume'],
    ['<region seq_position="0"/>', 'seq_position'],
    ['<define name="A"/>', 'value'],
    ['<define name="A B" value="1"/>', 'name'],
    ['<include path=""/>', 'path'],
    ['<include/>', 'path'],
  ])('refuses %s', (inside, named) => {
    const faults = faultsOf(instrument(inside));
    expect(faults).toContain(`'${named}'`);
    expect(faults).toContain('fails to validate');
  });

  it('refuses another outermost element, and opcodes in the outermost one', () => {
    expect(faultsOf('<region/>')).toContain('fails to validate');
    expect(faultsOf('<instrument tune="1"/>')).toContain('fails to validate');
  });
});
