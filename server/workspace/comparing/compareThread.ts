import type { MeasuredNote, MeasureOptions } from '../../comparison/measureNotes';
import { measureNotes } from '../../comparison/measureNotes';
import type { Files } from '../../model/files';
import type { PlayedNote } from '../../playing/sweep/playedNote';
import type { RenderSource } from '../../sound/render/renderParts';
import { SampleSource } from '../../sound/samples/sampleSource';
import { withFontSamples } from '../../soundfont/fontFiles';

/** A side as it is sent to a thread. */
export type SentSide = Omit<RenderSource, 'samples'>;

/** What a thread that compares is told: the sides once, then notes. */
export type CompareMessage =
  | { kind: 'sides'; a: SentSide; b: SentSide; options: MeasureOptions }
  | { kind: 'measure'; id: number; notes: readonly PlayedNote[] };

/** What it answers to each order to measure. */
export type CompareAnswer = { id: number } & ({ measured: MeasuredNote } | { reason: string });

/** The work of a thread that compares, whatever the host. */
export function comparingThread(
  files: Files,
  answer: (answer: CompareAnswer) => void,
): (message: CompareMessage) => void {
  const withFonts = withFontSamples(files);
  let sides: { a: RenderSource; b: RenderSource; options: MeasureOptions } | undefined;
  return (message) => {
    if (message.kind === 'sides') {
      const { a, b, options } = message;
      const samples = new SampleSource(withFonts);
      sides = { a: { ...a, samples }, b: { ...b, samples }, options };
      return;
    }
    const { id, notes } = message;
    if (!sides) return;
    measureNotes(sides.a, sides.b, notes, sides.options).then(
      (measured) => answer({ id, measured }),
      (error) => answer({ id, reason: String(error) }),
    );
  };
}
