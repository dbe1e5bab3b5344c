import type { Stretch } from '../../server/model/text/stretch';
/** A change of a text, as the editor tells it: offsets are those before any of the changes made together. */
export interface TextChange {
  rangeOffset: number;
  rangeLength: number;
  text: string;
}

/** Where a stretch stands after changes of the text around it; `undefined` where the stretch itself was changed. */
export function movedStretch({ start, end }: Stretch, changes: readonly TextChange[]): Stretch | undefined {
  let shift = 0;
  for (const { rangeOffset, rangeLength, text } of changes) {
    if (rangeOffset + rangeLength <= start) shift += text.length - rangeLength;
    else if (rangeOffset < end) return undefined;
  }
  return { start: start + shift, end: end + shift };
}
