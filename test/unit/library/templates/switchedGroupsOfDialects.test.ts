import { describe, expect, it } from 'vitest';
import { converted } from './dialect';

const template = `<lyres><!-- key 60 is C4 -->
<manner title="Bow" switch="24" standard="yes">
<lyre clip="a1.wav" lo="40" hi="44" root="42"/>
<lyre clip="a2.wav" lo="45" hi="49" root="47"/>
</manner>
<manner title="Nail" switch="25" standard="no">
<lyre clip="b1.wav" lo="40" hi="44" root="42"/>
<lyre clip="b2.wav" lo="45" hi="49" root="47"/>
</manner>
</lyres>`;

/** Groups with a keyswitch each, of which the second counts at first. */
const source = (labels: readonly string[]) =>
  `<global> sw_lokey=30 sw_hikey=32 sw_default=31\n${labels
    .map(
      (label, at) =>
        `<group> sw_last=${30 + at} ${label}\n<region> sample=${at}.wav lokey=50 hikey=52 pitch_keycenter=51\n`,
    )
    .join('')}`;

describe('groups with keyswitches in a template', () => {
  it('are called after the keyswitch, and the one that counts at first is marked', async () => {
    const { text, notes } = await converted(
      template,
      source(['sw_label=Hum', 'sw_label=Buzz', 'sw_label=Nail']),
    );
    expect(text.match(/<manner [^>]*>/g)).toEqual([
      '<manner title="Hum" switch="30" standard="no">',
      '<manner title="Buzz" switch="31" standard="yes">',
      '<manner title="Nail" switch="32" standard="no">',
    ]);
    expect(notes.join('\n')).not.toMatch(/sw_(?:label|default)=/);
    expect(notes.join('\n')).toContain('is taken to say which keyswitch counts before one is pressed');
  });

  it('get no name of an example where they have none', async () => {
    const { text, notes } = await converted(template, source(['', '']));
    expect(text.match(/<manner [^>]*>/g)).toEqual([
      '<manner switch="30" standard="no">',
      '<manner switch="31" standard="yes">',
    ]);
    expect(notes.join('\n')).toContain('Groups of the source have no name');
  });
});
