import { describe, expect, it } from 'vitest';
import { notations } from '../../../server/workspace/notations/notationOf';
import { effective, readText } from '../features/anyInstrument';

// Found by fuzzing: what only looks like a header of the format became one when it was written.
describe('what is nearly a header of the format', () => {
  it.each(['<region/>\n<region>key=40', '<region key="1"/>\n<group>key=3 <region>'])(
    'stays none when SFZ is written again: %j',
    (text) => {
      const before = readText('sfz', text);
      expect(before.regions).toHaveLength(1);
      const { text: written } = notations.sfz.write(before);
      expect(effective(readText('sfz', written))).toEqual(effective(before));
    },
  );

  // U+FEFF may stand in a name of XML (Extensible Markup Language 1.0, fifth edition, production 4), and `trim` takes it away.
  it.each(['<\ufeffregion key="60"/>', '<region\ufeff key="60"/>'])(
    'stays none when XML becomes SFZ: %j',
    (element) => {
      const before = readText('xml', `<instrument><region key="1"/>${element}</instrument>`);
      expect(before.regions).toHaveLength(1);
      const { text: written } = notations.sfz.write(before);
      expect(effective(readText('sfz', written))).toEqual(effective(before));
    },
  );
});
