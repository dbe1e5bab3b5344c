import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

// An id of an element stands for what it says, as in any XML document (common practice).
describe('key ranges, roots and velocities in lists of their own', () => {
  const dynamics = (name: string) =>
    `<layers><${name} id="soft" least="1" most="60"/><${name} id="loud" least="61" most="127"/></layers>`;
  const takes = (range: string, layer: string) =>
    `<takes><take file="a.wav" ${range}="low" ${layer}="soft"/><take file="b.wav" ${range}="low" ${layer}="loud"/>
    <take file="c.wav" ${range}="high" ${layer}="soft"/></takes>`;
  const keys =
    '<spans><span id="low" first="58" last="65" played="62"/><span id="high" first="66" last="79" played="70"/></spans>';

  it('are those of the regions that refer to them, though ids are words of the trade', () => {
    const text = `<set>${dynamics('mark')}${keys}${takes('span', 'mark')}</set>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter', 'lovel', 'hivel')).toEqual([
      '58 65 62 1 60',
      '58 65 62 61 127',
      '66 79 70 1 60',
    ]);
    const messages = readInferred(text).decisions.map(({ message }) => message);
    expect(messages.filter((message) => message.includes('is not read'))).toEqual([]);
  });

  it('may stand in elements of an entry', () => {
    const text = `<set><zones><zone id="z1"><low>40</low><high>47</high><root>44</root></zone><zone id="z2"><low>48</low><high>59</high><root>52</root></zone></zones>
      <clips><clip zone="z1" file="a.wav"/><clip zone="z2" file="b.wav"/></clips></set>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter')).toEqual(['40 47 44', '48 59 52']);
  });

  it('give no keys to all regions where an entry is missing', () => {
    const text = `<set>${keys}<takes><take file="a.wav" span="low"/><take file="b.wav" span="high"/><take file="c.wav" span="middle"/></takes></set>`;
    expect(valuesIn(text, 'sample')).toEqual(['-']);
  });
});
