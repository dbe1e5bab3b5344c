import type { CancellationToken } from 'vscode-languageserver';
import { notesPage } from '../../../features/notesPage';
import { joinedBytes } from '../../../model/joinedBytes';
import { OutputError } from '../../../model/output';
import { lineNotes } from '../../../model/writing/lineNotes';
import type { InstrumentDocuments } from '../../../workspace/documents';
import { fontOutput } from '../../../workspace/fonts/fontOutput';
import { assumedInVocabulary } from '../../../workspace/notations/assumedInVocabulary';
import { stopIfCancelled } from '../../cancellation';
import { base64Of } from '../../conversion/base64';
import type {
  FontPartResult,
  FontRefusal,
  WriteFontParams,
  WriteFontResult,
} from '../../requests/fontRequests';

/** Bytes that are put together for one answer. */
const partBytes = 1 << 22;
/** An editor holds a file whole before it writes it; larger fonts are for the command line. */
const mostBytes = 2 ** 30;

/** A SoundFont that is written for a client, one part after the other; a new one ends that before it. */
export class FontWriting {
  readonly #documents: InstrumentDocuments;
  #font = 0;
  #parts: AsyncIterator<Uint8Array> | undefined;

  constructor(documents: InstrumentDocuments) {
    this.#documents = documents;
  }

  /** Plans the font of a document's instrument. */
  async begin(
    { uri, name }: WriteFontParams,
    token: CancellationToken,
  ): Promise<WriteFontResult | FontRefusal> {
    const reading = await this.#documents.reading(uri);
    stopIfCancelled(token);
    if (!reading) return { problem: 'This document holds no instrument that can be read.' };
    const { instrument, folder, vocabulary } = reading;
    if (folder === undefined)
      return { problem: 'Save the document first, so that its samples can be found.' };
    const output = fontOutput({
      bits: 'samples',
      attenuation: 1,
      rates: 'keep',
      keyswitches: 'presets',
      takes: 'first',
    });
    const notes = vocabulary && assumedInVocabulary(vocabulary);
    const source = { instrument, folder, name, vocabulary: vocabulary?.vocabulary, ...(notes && { notes }) };
    try {
      const { files, accounts } = await output.write(
        [source],
        { fileName: `${name}.sf2` },
        this.#documents.files,
      );
      stopIfCancelled(token);
      const [[, content]] = files;
      if (typeof content !== 'object' || !('chunks' in content)) return { problem: 'Nothing was written.' };
      const { length: bytes = 0 } = content;
      if (bytes > mostBytes)
        return { problem: 'The SoundFont would have more than 1 GB; write it on the command line.' };
      await this.#end();
      this.#parts = content.chunks()[Symbol.asyncIterator]();
      const [{ notes, kept }] = accounts;
      const lines = lineNotes(instrument, notes);
      const page = notesPage(`Conversion notes for ${name}`, lines, kept);
      return { font: ++this.#font, bytes, kept, notes: lines, page };
    } catch (error) {
      if (error instanceof OutputError) return { problem: error.message };
      throw error;
    }
  }

  /** The next bytes of a font. */
  async next(font: number): Promise<FontPartResult> {
    const parts = this.#parts;
    if (!parts || font !== this.#font) return { problem: 'Another SoundFont was begun in the meantime.' };
    const held: Uint8Array[] = [];
    let length = 0;
    try {
      while (length < partBytes) {
        const { value, done } = await parts.next();
        if (done) {
          if (length === 0) this.#parts = undefined;
          break;
        }
        held.push(value.slice());
        length += value.length;
      }
    } catch (error) {
      this.#parts = undefined;
      return { problem: error instanceof Error ? error.message : 'A sample could not be read.' };
    }
    return length === 0 ? {} : { data: base64Of(joinedBytes(held)) };
  }

  async #end(): Promise<void> {
    const parts = this.#parts;
    this.#parts = undefined;
    await parts?.return?.();
  }
}
