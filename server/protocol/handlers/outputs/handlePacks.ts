import { encodeFlac } from '../../../audio/encode/flacEncoder';
import type { BuildHost } from '../../../library/build/runBuild';
import { packInstrument } from '../../../library/pack/packOutput';
import { portableName } from '../../../library/portableNames';
import { joinedBytes } from '../../../model/joinedBytes';
import { OutputError } from '../../../model/output';
import { nameOf, titleOf } from '../../../model/paths';
import { notationOfParts } from '../../../workspace/instrumentsAround';
import type { AnswerRequest } from '../../answerLater';
import { stopIfCancelled } from '../../cancellation';
import { base64Of } from '../../conversion/base64';
import type { PackPartResult } from '../../requests/packRequests';
import { MakePackRequest, PackPartRequest } from '../../requests/packRequests';
import type { ServerContext } from '../../serverContext';

/** Bytes that are put together for one answer. */
const partBytes = 1 << 22;

/** Answers the requests about packs; samples become FLAC where the host has an encoder. One is under way at a time; a new one ends that before it. */
export function handlePacks(
  answer: AnswerRequest,
  { documents }: ServerContext,
  flacLibrary: BuildHost['flacLibrary'],
): void {
  let parts: AsyncIterator<Uint8Array> | undefined;
  let number = 0;

  answer(MakePackRequest.type, async ({ uri, licence, maker, withoutLicence = false, audio }, token) => {
    const reading = await documents.reading(uri);
    stopIfCancelled(token);
    const path = reading?.document.path;
    if (!reading || path === undefined)
      return { problem: 'Save the instrument first, so that its samples can be found.' };
    const { instrument, notation, vocabulary } = reading;
    const title = titleOf(path);
    const facts = { title, ...(licence && { licence }), ...(maker && { maker }) };
    const text = { instrument, notation, notationOf: notationOfParts({ path, notation, instrument }) };
    const files = vocabulary?.savedIn === undefined ? [] : [vocabulary.savedIn];
    if (audio === 'flac' && !flacLibrary)
      return { problem: 'Samples become FLAC on the desktop, on a remote machine or on the command line.' };
    try {
      const library = audio === 'flac' ? await flacLibrary?.() : undefined;
      const {
        files: packed,
        contents,
        notFlac,
      } = await packInstrument(
        { name: portableName(title), texts: [text], files, facts },
        { form: 'zip', withoutLicence, ...(library && { flac: (reader) => encodeFlac(library, reader) }) },
        documents.files,
      );
      stopIfCancelled(token);
      const [[name, content]] = packed;
      if (typeof content !== 'object' || !('chunks' in content)) return { problem: 'Nothing was packed.' };
      await parts?.return?.();
      parts = content.chunks()[Symbol.asyncIterator]();
      return { pack: ++number, name: nameOf(name), contents: [...contents], notFlac: notFlac.length };
    } catch (error) {
      if (error instanceof OutputError) return { problem: `Nothing was packed: ${error.message}.` };
      throw error;
    }
  });

  answer(PackPartRequest.type, async ({ pack }) => {
    if (!parts || pack !== number) return { problem: 'Another pack was begun in the meantime.' };
    try {
      const bytes = await nextPart(parts);
      if (!bytes) parts = undefined;
      return bytes ? { data: base64Of(bytes) } : {};
    } catch (error) {
      parts = undefined;
      return {
        problem: error instanceof Error ? error.message : 'A sample could not be read.',
      } satisfies PackPartResult;
    }
  });
}

/** The next bytes, some megabytes of them; `undefined` at the end. */
async function nextPart(parts: AsyncIterator<Uint8Array>): Promise<Uint8Array | undefined> {
  const held: Uint8Array[] = [];
  let length = 0;
  while (length < partBytes) {
    const { value, done } = await parts.next();
    if (done) break;
    held.push(value);
    length += value.length;
  }
  return length === 0 ? undefined : joinedBytes(held);
}
