import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

const lute = (uri: string, beside: string) =>
  `<l:lute xmlns:l="urn:sample:lute" xmlns:v="${uri}">${beside}${[41, 47]
    .map(
      (key) =>
        `<l:course><l:file>c${key}.wav</l:file><l:low>${key}</l:low><l:high>${key + 5}</l:high></l:course>`,
    )
    .join('')}</l:lute>`;

describe('elements of a namespace for what is looked at', () => {
  it.each(['urn:sample:gui', 'http://example.org/ns/skin', 'https://example.org/lute-ui#', 'urn:x:panel/'])(
    'give no keys and velocities to regions: %s',
    (uri) => {
      const text = lute(uri, '<v:place low="3" high="190"/><v:span velocityHigh="90"/>');
      expect(valuesIn(text, 'lokey', 'hikey', 'hivel')).toEqual(['41 46 -', '47 52 -']);
    },
  );

  it('are read where the namespace says nothing of the kind', () => {
    const text = lute('urn:sample:play', '<v:velocity low="1" high="90"/>');
    expect(valuesIn(text, 'hivel')).toEqual(['90', '90']);
  });
});

describe('ends in elements that are named after what is not read', () => {
  it.each(['colour', 'tempo', 'image'])('are no ends of keys or velocities: <%s>', (name) => {
    const strings = [41, 47]
      .map((key) => `<course file="c${key}.wav"><keys low="${key}" high="${key + 5}"/></course>`)
      .join('');
    const text = `<lute><${name} low="3" high="120"/>${strings}</lute>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'lovel', 'hivel')).toEqual(['41 46 - -', '47 52 - -']);
  });
});
