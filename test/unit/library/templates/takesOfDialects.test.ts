import { describe, expect, it } from 'vitest';
import { converted } from './dialect';

const template = (says: string, second = 2) => `<bowls>${says}
<take number="1" of="2">
<bowl clip="a1.wav" lo="40" hi="44" root="40"/>
<bowl clip="b1.wav" lo="45" hi="49" root="45"/>
</take>
<take number="${second}" of="2">
<bowl clip="a2.wav" lo="40" hi="44" root="40"/>
<bowl clip="b2.wav" lo="45" hi="49" root="45"/>
</take>
</bowls>`;

const source = [1, 2, 3].map(
  (turn) => `<group> seq_length=3 seq_position=${turn}
<region> sample=c${turn}.wav lokey=60 hikey=64 pitch_keycenter=60
<region> sample=d${turn}.wav lokey=65 hikey=69 pitch_keycenter=65
`,
);

describe('elements that hold a take each', () => {
  it.each([
    ['', ''],
    ['said in words', '<!-- takes follow each other with each stroke -->'],
  ])('are written for each turn, with its number and how many there are %s', async (_, says) => {
    const { text, notes } = await converted(template(says), source.join(''));
    expect(text.match(/<take [^>]*>|\w+\.wav/g)).toEqual([
      '<take number="1" of="3">',
      'c1.wav',
      'd1.wav',
      '<take number="2" of="3">',
      'c2.wav',
      'd2.wav',
      '<take number="3" of="3">',
      'c3.wav',
      'd3.wav',
    ]);
    expect(notes.join('\n')).not.toMatch(/seq_|left out/);
  });

  it('are none where the number counts nothing', async () => {
    const { notes } = await converted(template('', 1), source.join(''));
    expect(notes.join('\n')).toContain('sound in a later turn of a round robin');
  });
});
