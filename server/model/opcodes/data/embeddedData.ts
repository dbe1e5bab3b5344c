import type { OpcodeTable } from '../opcodeTable';

/** Names inside a `<sample>` header, which carries a sound file in the text itself (common practice). */
export const embeddedData: readonly OpcodeTable[] = [
  {
    category: 'Embedded Data',
    rows: `
name | extension string | Name by which regions refer to this embedded sample.
data | extension string | The embedded sample itself.
base64data | extension string | The embedded sample itself, as base64 text.
`,
  },
];
