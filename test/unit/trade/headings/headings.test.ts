import { describe, expect, it } from 'vitest';
import { readZoneTable } from '../../../../server/table/readTable';
import { readHeading } from '../../../../server/trade/headings/headings';
import type { ColumnMeaning } from '../../../../server/trade/meaning';

const headings: Partial<Record<ColumnMeaning, string>> = {
  sample: 'Sample,file,FILENAME,File name,Name,Path,Audio,Audio file,sample_path',
  group: 'Group,Layer,Zone group,Articulation',
  pitch_keycenter:
    'Root,root key,Root Note,Base note,Unity note,Original pitch,Pitch,rootKey,pitch_keycenter,MIDI root,Sample root',
  key: 'Key,Note',
  lokey: 'Low key,Key low,lo,loKey,LOKEY,From key,Min note,Start note,Low,low_key,Lowest note',
  hikey: 'High key,Key high,hi,hiKey,To key,Max note,End note,High,hikey',
  key_range: 'Key range,Range,Keys,Note range',
  lovel: 'Low vel,vel low,min velocity,lovel,Velocity min,Low velocity',
  hivel: 'High vel,vel high,max velocity,hivel,Velocity (max)',
  velocity_range: 'Velocity range,Velocity,Vel,Velocities',
  tune: 'Tune,Tuning,Fine,Fine tune,Cents,Tune (ct),Tune in cents,Pitch (cents)',
  transpose: 'Coarse,Transpose,Semitones,Coarse tune',
  volume: 'Volume,Gain,Level,Volume (dB),Gain dB,Vol. [dB]',
  attenuation: 'Attenuation,Attenuation (dB)',
  pan: 'Pan,Panning,Pan (L/R),Pan %',
  loop_start: 'Loop start,loop begin,LoopStart,loop_start',
  loop_end: 'Loop end,Loop-End',
  loop_length: 'Loop length',
  loop: 'Loop,Loop (on/off),Loop mode,Loop active',
  offset: 'Start,Offset,Sample start,Start offset',
  end: 'End,Sample end',
  seq_position: 'Round robin,RR,Seq,seq_position,RR #',
  comment: 'Comment,Notes,Remarks',
  row_number: '#,No.,Index,Zone #',
};

describe('headings', () => {
  it.each(
    Object.entries(headings).flatMap(([meaning, list]) =>
      list.split(',').map((text) => [text, meaning] as const),
    ),
  )('%s is %s', (text, meaning) => {
    expect(readHeading(text)?.meaning).toBe(meaning);
  });

  // A small word between may be one for an end in another language.
  it.each([
    ['Início do loop', 'loop_start'],
    ['Fim do loop', 'loop_end'],
    ['Inicio de loop', 'loop_start'],
    ['Fin de loop', 'loop_end'],
    ['Début du loop', 'loop_start'],
    ['Inizio del loop', 'loop_start'],
    ['Loop from', 'loop_start'],
    ['Loop do', 'loop_end'],
    ['Dalla nota', 'lokey'],
    ['Alla nota', 'hikey'],
    ['Dal tasto', 'lokey'],
    ['Al tasto', 'hikey'],
    ['Od klawisza', 'lokey'],
    ['Do klawisza', 'hikey'],
    ['원음 건반', 'pitch_keycenter'],
    ['音源ファイル', 'sample'],
  ])('"%s" is %s', (text, meaning) => {
    expect(readHeading(text)?.meaning).toBe(meaning);
  });

  it('takes the unit from brackets or the last word', () => {
    expect(readHeading('Volume (dB)')?.unit).toBe('dB');
    expect(readHeading('Volume (%)')?.unit).toBe('percent');
    expect(readHeading('Pan %')?.unit).toBe('percent');
    expect(readHeading('Tune [semitones]')?.unit).toBe('semitones');
    expect(readHeading('Tune in cents')?.unit).toBe('cents');
    expect(readHeading('Loop start (s)')).toEqual({ meaning: 'loop_start', unit: 's' });
  });

  it('knows nothing of other words', () => {
    for (const text of ['', 'Cutoff', 'C3', 'a.wav', '60', 'x'.repeat(5000), '('.repeat(70)])
      expect(readHeading(text), text.slice(0, 10)).toBeUndefined();
  });
});

describe('a drawn line under headings', () => {
  it('is no part of them', () => {
    const { columns } = readZoneTable('| File | Low | High |\n|:---|---:|---|\n| a.wav | 1 | 2 |');
    expect(columns.map(({ heading }) => heading)).toEqual(['File', 'Low', 'High']);
  });
});
