import { describe, expect, it } from 'vitest';
import { tableCells } from '../../../server/table/cells/tableCells';
import { findTables } from '../../../server/table/cells/tableRows';
import { readColumns } from '../../../server/table/columns/columnMeaning';
import { notesOf, regions, table } from './tableRegions';

function columnsOf(text: string) {
  const cells = tableCells(text)!;
  return readColumns(cells, findTables(cells)[0]);
}

const meanings = (text: string) => columnsOf(text).map(({ meaning }) => meaning);

describe('columns without headings', () => {
  it.each([
    ['sample pitch_keycenter lokey hikey lovel hivel', 'a.wav,60,58,62,1,127\nb.wav,65,63,66,1,127'],
    ['sample lokey hikey pitch_keycenter', 'a.wav,58,62,60\nb.wav,63,66,65'],
    ['sample lokey pitch_keycenter hikey', 'a.wav,58,60,62\nb.wav,63,65,66'],
    ['sample lokey hikey lovel hivel', 'a.wav,58,62,1,63\nb.wav,58,62,64,127\nc.wav,63,66,1,127'],
    ['sample lokey hikey', 'a.wav,C3,E3\nb.wav,F3,A3'],
    ['sample key', 'a.wav\tC3\nb.wav\tC#3'],
    ['sample key lovel hivel', 'a.wav,36,1,80\nb.wav,36,81,127\nc.wav,38,1,127'],
    ['lovel hivel sample pitch_keycenter lokey hikey', '1,127,a.wav,60,58,62\n1,127,b.wav,65,63,66'],
    ['row_number sample lokey hikey', '1,a.wav,C3,E3\n2,b.wav,F3,A3\n3,c.wav,A#3,B3'],
    ['sample key_range velocity_range', 'a.wav\tC3-E3\t1-63\nb.wav\tF3-A3\t64-127'],
    ['sample key volume pan', 'a.wav;C3;-3 dB;L20\nb.wav;D3;0 dB;C'],
    ['sample key tune', 'a.wav;C3;-3 ct\nb.wav;D3;4 ct'],
    ['group sample key', 'soft,a.wav,60\nsoft,b.wav,61\nloud,c.wav,60\nloud,d.wav,61'],
    ['sample key loop_start loop_end', 'a.wav,60,1200,44099\nb.wav,61,800,52000'],
  ])('%s', (expected, text) => {
    expect(meanings(text).join(' ')).toBe(expected);
  });

  it('says how sure it is and why', () => {
    const columns = columnsOf('a.wav,58,62,60\nb.wav,63,66,65');
    for (const { confidence, evidence } of columns) {
      expect(confidence).toBeGreaterThan(0);
      expect(confidence).toBeLessThanOrEqual(1);
      expect(evidence.join(' ')).toMatch(/\w+.*\.$/);
    }
  });
});

describe('columns with headings', () => {
  it.each([
    [
      'sample lokey hikey pitch_keycenter',
      'Plik;Od klawisza;Do klawisza;Klawisz bazowy\na.wav;43;48;46\nb.wav;49;54;52\nc.wav;55;60;58',
    ],
    [
      'sample dynamics lokey hikey pitch_keycenter',
      'Fichier\tNuance\tDu\tAu\tNote\na.wav\tff\t41\t46\t44\nb.wav\tpp\t47\t52\t50\nc.wav\tff\t53\t60\t56',
    ],
    [
      'sample pitch_keycenter lokey hikey',
      'Sample,Root,Left post,Right post\na.wav,38,36,41\nb.wav,44,42,47\nc.wav,50,48,53',
    ],
    [
      'sample pitch_keycenter unknown unknown',
      'Sample,Root,Weight,Age\na.wav,38,70,40\nb.wav,44,12,90\nc.wav,50,33,25',
    ],
  ])('finds the ends of ranges that no heading names: %s', (expected, text) => {
    expect(meanings(text).join(' ')).toBe(expected);
  });

  it('lets the cells outvote a wrong heading', () => {
    expect(meanings('Name\tSample\nC3\ta.wav\nD3\tb.wav')).toEqual(['key', 'sample']);
    expect(meanings('File\tComment\tRoot\nx\ta.wav\t60\ny\tb.wav\t61')).toEqual([
      'unknown',
      'sample',
      'pitch_keycenter',
    ]);
    expect(meanings('Sample\tStart\tEnd\na.wav\tC3\tE3\nb.wav\tF3\tA3')).toEqual([
      'sample',
      'lokey',
      'hikey',
    ]);
  });

  it('turns low and high round where all rows say so', () => {
    const columns = columnsOf('Sample,Low key,High key\na.wav,62,58\nb.wav,66,63');
    expect(columns.map(({ meaning }) => meaning)).toEqual(['sample', 'hikey', 'lokey']);
    expect(columns[1]?.evidence.join(' ')).toMatch(/other way round/);
  });

  it('takes a key for the root beside low and high keys', () => {
    expect(meanings('File,Key,Low,High\na.wav,60,58,62')).toEqual([
      'sample',
      'pitch_keycenter',
      'lokey',
      'hikey',
    ]);
    expect(meanings('File,Key\na.wav,60')).toEqual(['sample', 'key']);
    expect(meanings('File,Key,Root\na.wav,60,61')).toEqual(['sample', 'key_range', 'pitch_keycenter']);
  });

  it('takes low and high that stand twice for keys and velocities', () => {
    expect(meanings('\tKey\t\tVelocity\t\nFile\tLow\tHigh\tLow\tHigh\na.wav\tC3\tE3\t1\t127')).toEqual([
      'sample',
      'lokey',
      'hikey',
      'lovel',
      'hivel',
    ]);
  });

  it('takes names without endings for samples', () => {
    expect(meanings('Zone\tLow\tHigh\nGong soft\tC2\tE2\nGong loud\tF2\tA2')).toEqual([
      'sample',
      'lokey',
      'hikey',
    ]);
    expect(meanings('Thing\tLow\tHigh\nGong soft\tC2\tE2\nGong loud\tF2\tA2')).toEqual([
      'sample',
      'lokey',
      'hikey',
    ]);
  });

  it('leaves what it does not know', () => {
    const columns = columnsOf('File,Root,Cutoff\na.wav,60,80\nb.wav,61,90');
    expect(columns[2]).toMatchObject({ meaning: 'unknown', confidence: 0 });
  });

  it('takes each meaning once', () => {
    const columns = columnsOf('File,Root,Root note\na.wav,60,C3\nb.wav,61,C#3');
    expect(columns[2]).toMatchObject({ meaning: 'unknown', repeats: 1 });
  });

  it('finds the columns under headings that it cannot read', () => {
    expect(meanings('Aa,Bb,Cc,Dd\na.wav,60,58,62\nb.wav,65,63,66')).toEqual([
      'sample',
      'pitch_keycenter',
      'lokey',
      'hikey',
    ]);
  });
});

describe('headings in other languages', () => {
  it.each(['Tystar grupp', 'Wycisza grupę', 'ミュートグループ', 'Заглушает группу', 'vaimennusryhmä'])(
    'name groups that silence one another: %s',
    (heading) => {
      const text = table(`File | Key | ${heading}`, 'a.wav | 60 | 1', 'b.wav | 61 | 1', 'c.wav | 62 |');
      expect(regions(text).map((one) => one.off_by)).toEqual(['1', '1', undefined]);
    },
  );

  it.each(['Nota reale', 'Tono real', 'Ausgangston', 'rzeczywisty dźwięk', '実音'])(
    'name the root: %s',
    (heading) => {
      const text = table(
        `File | Low key | High key | ${heading}`,
        'a.wav | 60 | 64 | 62',
        'b.wav | 65 | 69 | 66',
      );
      expect(regions(text).map((one) => one.pitch_keycenter)).toEqual(['62', '66']);
    },
  );

  it('say that a level is a factor by what leaves it unchanged', () => {
    const text = table(
      'File | Key | gain (1.0 = unchanged)',
      'a.wav | 60 | 1.0',
      'b.wav | 61 | 0.5',
      'c.wav | 62 | 1.25',
    );
    expect(regions(text).map(({ volume }) => volume)).toEqual([undefined, '-6.02', '1.94']);
  });
});

describe('columns that their cells tell of', () => {
  it('are the root where the numbers lie between the low and the high key, and nothing else does', () => {
    const rows = ['a.wav | 60 | 64 | 62', 'b.wav | 65 | 69 | 66', 'c.wav | 70 | 79 | 75'];
    const root = (text: string) => regions(text).map((one) => one.pitch_keycenter);
    expect(root(table('File | Low key | High key | Qwx', ...rows))).toEqual(['62', '66', '75']);
    expect(notesOf(table('File | Low key | High key | Qwx', ...rows)).join(' ')).toMatch(
      /lie between the low and the high key/,
    );
    const other = rows.map((row) => row.replace('75', '80'));
    expect(root(table('File | Low key | High key | Qwx', ...other))).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('are groups that silence one another where remarks of a list say so', () => {
    const list = '42 Hat closed.wav (choke 1)\n44 Hat pedal.wav (choke 1)\n49 Crash.wav';
    expect(regions(list).map((one) => one.off_by)).toEqual(['1', '1', undefined]);
  });

  it('leave out a line of text among rows that name files and keys', () => {
    const text = table(
      'File | Low key | High key | Level',
      'a.wav | 60 | 64 | -6',
      'b.wav | 65 | 69 | -3',
      'Levels end here. | | | 62',
    );
    expect(regions(text).map((one) => one.sample)).toEqual(['a.wav', 'b.wav']);
    expect(notesOf(text).join(' ')).toMatch(/names no audio file and gives no keys/);
  });
});
