import type { Instrument } from '../../../server/model/instrument';
import type { WriteOptions, Written } from '../../../server/model/notation';
import { sfzNotation } from '../../../server/sfz/notation';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { xmlNotation } from '../../../server/xml/notation';
import { compare } from '../compare';
import { largeInstrument } from '../largeInstrument';
import type { AddRow } from '../table';
import { ratioRow } from '../table';
import { millWheel } from './measureVocabulary';

/** Text of 10,000 regions to text in another notation, reading included, against reading alone. */
export async function measureConversion(add: AddRow): Promise<void> {
  const sfz = largeInstrument(10_000, 'region-per-line');
  const xml = largeInstrument(10_000, 'xml');
  const readSfz = (text: string) => sfzNotation.read(text, { path: '/a.sfz' });
  const readXml = (text: string) => xmlNotation.read(text, { path: '/a.instrument.xml' });
  const moved: WriteOptions = { directives: 'keep', move: { from: '/in', to: '/out' } };
  const row = async (
    what: string,
    read: () => Instrument,
    write: (instrument: Instrument) => Written,
  ): Promise<void> => {
    const { kept, notes } = write(read());
    if (!kept || kept < 10_000 || notes.some(({ kind }) => kind === 'dropped'))
      throw new Error(`${what}: the large instrument was not carried over as it was meant.`);
    const options = { warmUp: 6, pairs: 21 };
    add(
      ratioRow(`${what}, 10,000 regions, to reading`, await compare(() => write(read()), read, options), ''),
    );
  };
  await row(
    'SFZ to instrument XML',
    () => readSfz(sfz),
    (instrument) => xmlNotation.write(instrument, { directives: 'keep' }),
  );
  await row(
    'The same for another folder',
    () => readSfz(sfz),
    (instrument) => xmlNotation.write(instrument, moved),
  );
  await row(
    'Instrument XML to SFZ',
    () => readXml(xml),
    (instrument) => sfzNotation.write(instrument, { directives: 'keep' }),
  );
  await row(
    'The same for another folder',
    () => readXml(xml),
    (instrument) => sfzNotation.write(instrument, moved),
  );
  await row(
    'SFZ to a vocabulary',
    () => readSfz(sfz),
    (instrument) => vocabularyNotation(millWheel).write(instrument),
  );
}
