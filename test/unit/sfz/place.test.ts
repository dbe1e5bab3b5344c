import { describe, expect, it } from 'vitest';
import type { Place } from '../../../server/model/notation';
import { placeInSfz } from '../../../server/sfz/place';
import { readSfz } from '../../../server/sfz/read';

/** What stands at the `$0` of a text, in short: kind, the text it covers, and what belongs to it. */
function placeAt(marked: string): string {
  const offset = marked.indexOf('$0');
  const text = marked.replace('$0', '');
  const instrument = readSfz(text, { path: 'a.sfz' });
  return shown(placeInSfz(instrument, offset), text, (header) => instrument.headerName(header));
}

function shown(place: Place, text: string, headerName: (header: number) => string): string {
  if (place.kind === 'other') return 'other';
  const covered = `${place.kind} [${text.slice(place.start, place.end)}]`;
  if (place.kind === 'include' || place.kind === 'variable') return covered;
  const header = place.header >= 0 ? ` in ${headerName(place.header)}` : '';
  if (place.kind === 'header') return covered + header;
  const started = place.parameter < 0 ? ' not written yet' : '';
  return `${covered}${place.kind === 'value' ? ` of ${place.name}` : ''}${header}${started}`;
}

describe('what the cursor is on', () => {
  it.each([
    // Headers.
    ['<$0', 'header []'],
    ['<reg$0', 'header [reg]'],
    ['<$0region>', 'header [region] in region'],
    ['<region$0> key=60', 'header [region] in region'],
    ['<region$0 key=60', 'header [region]'],
    ['<region> key=60\n<gr$0', 'header [gr]'],
    // Names.
    ['$0', 'name [] not written yet'],
    ['<region> $0', 'name [] in region not written yet'],
    ['<region>$0', 'name [] in region not written yet'],
    ['<region> lok$0', 'name [lok] in region not written yet'],
    ['<region> lo$0key=60', 'name [lokey] in region'],
    ['<region> lokey$0=60', 'name [lokey] in region'],
    ['<region> lokey=60\nhi$0', 'name [hi] in region not written yet'],
    ['<region> lokey=60 hi$0', 'name [hi] in region not written yet'],
    ['<region> lokey=60 $0', 'name [] in region not written yet'],
    ['<region> sample=a b.wav lo$0', 'name [lo] in region not written yet'],
    ['<region> sample=*sine lo$0', 'name [lo] in region not written yet'],
    ['<region> sample=*si$0', 'value [*si] of sample in region'],
    ['<group> tune=1 $0<region> key=60', 'name [] in group not written yet'],
    ['<region> lokey= $0 hikey=61', 'value [] of lokey in region'],
    ['<region> key=60\n\n$0\n<region> key=61', 'name [] in region not written yet'],
    // Values.
    ['<region> lokey=$0', 'value [] of lokey in region'],
    ['<region> lokey=$0 hikey=61', 'value [] of lokey in region'],
    ['<region> lokey=6$00', 'value [60] of lokey in region'],
    ['<region> lokey=60$0 hikey=61', 'value [60] of lokey in region'],
    ['<region> loopstart=6$00', 'value [60] of loop_start in region'],
    ['<region> sample=So$0ft A.wav key=60', 'value [Soft A.wav] of sample in region'],
    ['<region> sample=Soft A$0', 'value [Soft A] of sample in region'],
    ['<group> group_label=two wo$0rds', 'value [two words] of group_label in group'],
    ['<region>\r\nlokey=6$00\r\n', 'value [60] of lokey in region'],
    // Directives.
    ['#include "map$0s/a.sfz"', 'include [maps/a.sfz]'],
    ['#include "$0"', 'include []'],
    ['#incl$0ude "a.sfz"', 'other'],
    ['#define $KE$0Y 60', 'variable [$KEY]'],
    ['#define $KEY 60\n<region> key=$K$0EY', 'variable [$KEY]'],
    ['#define $KEY 6$00', 'other'],
    // Comments.
    ['// lok$0', 'other'],
    ['<region> key=60 // $0', 'other'],
    ['/* a $0 */ <region>', 'other'],
    ['/* a */$0<region>', 'name [] not written yet'],
  ])('%j: %s', (marked, expected) => {
    expect(placeAt(marked)).toBe(expected);
  });

  it('lies inside the text at every offset', () => {
    const text =
      '#define $A 1\n<region> key=$A sample=a b.wav // c\r\n<gro\n#include "x"\nlokey= =\n<region>\tkey=60';
    const instrument = readSfz(text, { path: 'a.sfz' });
    for (let offset = 0; offset <= text.length; offset++) {
      const place = placeInSfz(instrument, offset);
      if (place.kind === 'other') continue;
      expect(place.start).toBeGreaterThanOrEqual(0);
      expect(place.start).toBeLessThanOrEqual(offset);
      expect(place.end).toBeGreaterThanOrEqual(place.start);
      expect(place.end).toBeLessThanOrEqual(text.length);
    }
  });
});
